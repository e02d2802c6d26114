import { useLoaded } from '../data/use-loaded.ts';
import type { PhotoBar } from '../photos/photo-bar.tsx';
import type { PhotosLink } from '../photos/photos-link.tsx';

const bar = () => import('../photos/photo-bar.tsx');
const link = () => import('../photos/photos-link.tsx');

/** Pictures of what a screen asks about; loaded beside it, so that no question waits for them. */
export function PhotosHere(props: Parameters<typeof PhotoBar>[0]) {
  const loaded = useLoaded(bar);
  return loaded ? <loaded.PhotoBar {...props} /> : null;
}

/** The way to all pictures of a walk. */
export function PhotosOf(props: Parameters<typeof PhotosLink>[0]) {
  const loaded = useLoaded(link);
  return loaded ? <loaded.PhotosLink {...props} /> : null;
}
