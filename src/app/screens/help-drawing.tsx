import { entry } from '../../words/entry.ts';
import { loadDrawings } from '../data/built-in.ts';
import { useLoaded } from '../data/use-loaded.ts';
import { TreeDrawing } from '../parts/tree-drawing.tsx';

/** The drawing of an item, of a sag method, `front` or `raised`; nothing where there is none. */
export function HelpDrawing({ id }: { id: string }) {
  const trees = useLoaded(loadDrawings);
  const tree = trees && entry(trees, id);
  return tree ? <TreeDrawing tree={tree} /> : null;
}
