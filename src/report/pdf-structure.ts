import { textValue, type Objects, type Ref, type Value } from './pdf-objects.ts';
import type { DrawnPage } from './pdf-pages.ts';
import type { Element } from './pdf-tree.ts';

/** Writes the structure tree with the way back from the marks of each page. */
export function writeStructure(
  objects: Objects,
  root: Element,
  pages: readonly DrawnPage[],
  pageRefs: readonly Ref[],
): Ref {
  const tree = objects.reserve();
  const refs = new Map<Element, Ref>();
  const refOf = (element: Element): Ref => {
    const known = refs.get(element) ?? objects.reserve();
    refs.set(element, known);
    return known;
  };
  const write = (element: Element): Ref => {
    const ref = refOf(element);
    const kids = [...element.marks.map((mark) => markValue(mark, pageRefs)), ...element.children.map(write)];
    objects.set(ref, {
      Type: 'StructElem',
      S: element.role,
      P: element.parent === undefined ? tree : refOf(element.parent),
      K: kids,
      ...attributesOf(element),
    });
    return ref;
  };
  const document = write(root);
  const owners = pages.map(({ owners: of }, index): Value[] => [index, of.map(refOf)]).flat();
  objects.set(tree, {
    Type: 'StructTreeRoot',
    K: [document],
    ParentTree: objects.add({ Nums: owners }),
    ParentTreeNextKey: pages.length,
  });
  return tree;
}

const markValue = ({ page, id }: { page: number; id: number }, pageRefs: readonly Ref[]): Value => ({
  Type: 'MCR',
  Pg: pageRefs[page],
  MCID: id,
});

function attributesOf({ role, alt, scope, box }: Element): { readonly [key: string]: Value } {
  if (scope !== undefined) return { A: { O: 'Table', Scope: scope } };
  if (role === 'L') return { A: { O: 'List', ListNumbering: 'None' } };
  if (role !== 'Figure') return {};
  const bounds = box === undefined ? {} : { BBox: box.map((each) => Math.round(each * 100) / 100) };
  return { Alt: textValue(alt ?? ''), A: { O: 'Layout', Placement: 'Block', ...bounds } };
}
