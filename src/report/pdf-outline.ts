import { textValue, type Objects, type Ref } from './pdf-objects.ts';
import type { Element } from './pdf-tree.ts';

/** The list of headings that a reader of the file shows beside the pages; none without headings. */
export function writeOutline(objects: Objects, root: Element, pageRefs: readonly Ref[]): Ref | undefined {
  const headings = root.children.flatMap(({ title, place }) => {
    const page = place === undefined ? undefined : pageRefs[place.page];
    return title === undefined || place === undefined || page === undefined
      ? []
      : [{ title, page, y: Math.round(place.y), ref: objects.reserve() }];
  });
  if (headings.length === 0) return undefined;
  const outline = objects.add({
    Type: 'Outlines',
    First: headings[0]?.ref,
    Last: headings.at(-1)?.ref,
    Count: headings.length,
  });
  headings.forEach(({ title, page, y, ref }, index) =>
    objects.set(ref, {
      Title: textValue(title),
      Parent: outline,
      Prev: headings[index - 1]?.ref,
      Next: headings[index + 1]?.ref,
      Dest: [page, 'XYZ', 0, y, 0],
    }),
  );
  return outline;
}
