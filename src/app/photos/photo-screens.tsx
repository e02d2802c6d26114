import type { WalkModel } from '../data/walk-model.ts';
import { PhotoList } from './photo-list.tsx';
import { PhotoView } from './photo-view.tsx';

/** The pictures of a walk: all of them, or the one that the address names. */
export function Photos({ model, rest }: { model: WalkModel; rest: readonly string[] }) {
  const [, sha256] = rest;
  return sha256 === undefined ? (
    <PhotoList model={model} />
  ) : (
    <PhotoView key={sha256} model={model} sha256={sha256} />
  );
}
