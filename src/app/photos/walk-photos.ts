import { valueIn } from '../../core/assemble.ts';
import { isDemo, parseKey, partsOf, prefixOf, type RecordKey } from '../../core/keys.ts';
import type { Photo } from '../../core/photo.ts';
import { ok } from '../../core/result.ts';
import type { RecordValue } from '../../core/versions.ts';
import type { Stored } from '../../storage/store.ts';
import { save, type Saved } from '../actions/saved.ts';
import { useLive, valueOf } from '../data/live.ts';
import { newId } from '../data/moment.ts';
import { walkPath } from '../data/paths.ts';
import { store } from '../data/phone.ts';

/** A picture's record, with where its bytes are. */
export interface WalkPhoto {
  readonly key: RecordKey<'photo'>;
  readonly sha256: string;
  readonly photo: Photo;
}

function prefixFor(walk: RecordKey<'walk'>): string {
  const parts = parseKey(walk);
  const owner = parts?.kind === 'walk' ? { owner: parts.id } : {};
  return prefixOf('photo', { ...owner, demo: isDemo(walk) });
}

const takenAt = ({ photo }: WalkPhoto): string => photo.at?.utc ?? '';

/** The pictures of a walk in the order in which they were taken; their bytes stay on the disk. */
export async function photosOf(walk: RecordKey<'walk'>): Promise<Stored<readonly WalkPhoto[]>> {
  const rows = await store.list({ prefix: prefixFor(walk) });
  if (!rows.ok) return rows;
  const photos = rows.value.flatMap(({ key, versions }): WalkPhoto[] => {
    const photo = valueIn<Photo>(versions);
    const photoKey = key as RecordKey<'photo'>;
    return photo ? [{ key: photoKey, sha256: partsOf(photoKey).hash, photo }] : [];
  });
  return ok(photos.sort((a, b) => (takenAt(a) < takenAt(b) ? -1 : 1)));
}

/** The same, kept up to date; undefined until they are there. */
export const useWalkPhotos = (walk: RecordKey<'walk'>): readonly WalkPhoto[] | undefined =>
  valueOf(useLive(walk, [prefixFor(walk)], () => photosOf(walk)));

/** Changes a picture's record as it is on disk now, so that two tabs do not undo each other. */
export const changePhoto = (
  { key, photo }: WalkPhoto,
  change: (now: Photo) => Photo,
  dropDrafts: readonly string[] = [],
): Promise<Saved> => {
  const edit = (now: RecordValue = photo): RecordValue => change(now as unknown as Photo);
  return save([{ key, edit }], dropDrafts);
};

/** The address of a walk's pictures, or of one of them; `from` is the step to come back to. */
export const photosPath = (walk: string, sha256?: string, screen?: 'measure', from?: string): string =>
  walkPath(walk, ['photos', sha256, screen].filter(Boolean).join('.')) +
  (from === undefined ? '' : `?${new URLSearchParams({ from })}`);

/** What waits from another run of the app was cut off by the end of that one. */
export const thisRun = newId();

/** A picture as a place of its walk to come back to, as steps are. */
export const photoStep = (sha256: string): string => `photos.${sha256}`;
