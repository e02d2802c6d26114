import { useLoaded } from '../data/use-loaded.ts';
import type { PhotoBar } from '../photos/photo-bar.tsx';

const load = () => import('../photos/photo-bar.tsx');

/** Pictures of what a screen asks about; loaded beside it, so that no question waits for them. */
export function PhotosHere(props: Parameters<typeof PhotoBar>[0]) {
  const loaded = useLoaded(load);
  return loaded ? <loaded.PhotoBar {...props} /> : null;
}
