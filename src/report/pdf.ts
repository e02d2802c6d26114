import { assert } from '../core/result.ts';
import type { Report } from './blocks.ts';
import { piecesOf } from './pdf-blocks.ts';
import { embedFont } from './pdf-embed.ts';
import { paginate } from './pdf-flow.ts';
import { readFont } from './pdf-font.ts';
import type { Desk } from './pdf-lines.ts';
import { writeInfo, writeMetadata } from './pdf-metadata.ts';
import { newObjects, textValue, type Objects, type Ref } from './pdf-objects.ts';
import { writeOutline } from './pdf-outline.ts';
import { drawPages, type DrawnPage } from './pdf-pages.ts';
import { margins, papers, type Paper } from './pdf-paper.ts';
import { writeStructure } from './pdf-structure.ts';
import { typesetter } from './pdf-text.ts';
import { documentElement, type Element } from './pdf-tree.ts';

/** A picture of at most 80 kB: JPEG bytes, and their size in pixels. */
export interface PdfPicture {
  readonly bytes: Uint8Array;
  readonly width: number;
  readonly height: number;
}

/** What a PDF is made with. */
export interface PdfGiven {
  /** The picture of that hash; none where its bytes are not to be had. */
  readonly photo: (sha256: string) => Promise<PdfPicture | undefined>;
  /** A TrueType file whose glyphs may be embedded. */
  readonly font: Uint8Array;
  readonly paper: Paper;
  /** When it is made; `utc` as in 2026-05-01T08:30:00Z. */
  readonly at: { readonly utc: string };
}

/** In bytes, each. */
export const mostPictureBytes = 80_000;

/** A report as a tagged PDF 1.7 (ISO 32000-1, 14.8). The same report and the same means give the same bytes. */
export async function writePdf(report: Report, given: PdfGiven): Promise<Uint8Array<ArrayBuffer>> {
  const font = readFont(given.font);
  const type = typesetter(font);
  const objects = newObjects();
  const pictures = await embedPictures(report, given, objects);
  const root = documentElement();
  const { width, height } = papers[given.paper];
  const desk: Desk = {
    type,
    root,
    width: width - margins.left - margins.right,
    height: height - margins.top - margins.bottom,
    pictures,
  };
  const pages = paginate(piecesOf(report.blocks, desk), desk.height);
  const pictureName = (sha256: string): string => pictures.get(sha256)?.name ?? '';
  const drawn = drawPages(pages, { paper: given.paper, type, report, pictureName });
  const resources = objects.add({
    Font: { F: embedFont(objects, font, type.used) },
    XObject: Object.fromEntries([...pictures.values()].map(({ name, ref }) => [name, ref])),
  });
  return finish(objects, { report, given, root, drawn, resources });
}

interface EmbeddedPicture extends PdfPicture {
  readonly name: string;
  readonly ref: Ref;
}

async function embedPictures(
  report: Report,
  given: PdfGiven,
  objects: Objects,
): Promise<ReadonlyMap<string, EmbeddedPicture>> {
  const pictures = new Map<string, EmbeddedPicture>();
  for (const block of report.blocks) {
    if (block.kind !== 'photo' || pictures.has(block.sha256)) continue;
    const picture = await given.photo(block.sha256);
    if (picture === undefined) continue;
    assert(picture.bytes.length <= mostPictureBytes, 'a picture is too large for a PDF');
    const ref = await objects.jpeg(picture.bytes);
    pictures.set(block.sha256, { ...picture, name: `I${pictures.size}`, ref });
  }
  return pictures;
}

interface Made {
  readonly report: Report;
  readonly given: PdfGiven;
  readonly root: Element;
  readonly drawn: readonly DrawnPage[];
  readonly resources: Ref;
}

function finish(
  objects: Objects,
  { report, given, root, drawn, resources }: Made,
): Promise<Uint8Array<ArrayBuffer>> {
  const { width, height } = papers[given.paper];
  const tree = objects.reserve();
  const pageRefs = drawn.map(() => objects.reserve());
  drawn.forEach(({ operators }, index) => {
    const page = pageRefs[index];
    if (page === undefined) return;
    objects.set(page, {
      Type: 'Page',
      Parent: tree,
      MediaBox: [0, 0, width, height],
      Resources: resources,
      Contents: objects.stream(operators),
      StructParents: index,
      Tabs: 'S',
    });
  });
  objects.set(tree, { Type: 'Pages', Kids: pageRefs, Count: pageRefs.length });
  const catalog = objects.add({
    Type: 'Catalog',
    Pages: tree,
    Lang: textValue(report.lang),
    MarkInfo: { Marked: true },
    ViewerPreferences: { DisplayDocTitle: true },
    Metadata: writeMetadata(objects, report, given.at.utc),
    StructTreeRoot: writeStructure(objects, root, drawn, pageRefs),
    Outlines: writeOutline(objects, root, pageRefs),
  });
  return objects.write(catalog, writeInfo(objects, report, given.at.utc));
}
