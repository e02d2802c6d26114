import { isDemo, makeKey, parseKey, type RecordKey } from '../../core/keys.ts';
import { mostShown, type Photo, type PhotoScale, type Shown } from '../../core/photo.ts';
import { err, ok, type Result } from '../../core/result.ts';
import type { RecordValue } from '../../core/versions.ts';
import type { StorageError } from '../../storage/errors.ts';
import type { NotEditable, Write } from '../../storage/store.ts';
import type { PhotoFault } from '../../words/en/photos.ts';
import { observedNow } from '../data/moment.ts';
import { pendingPhoto } from '../data/pending-photo.ts';
import { store } from '../data/phone.ts';
import { positionNow } from './position.ts';
import { shrinkPhoto, type Shrunk } from './shrink-photo.ts';

/** What new pictures are taken for. */
export interface TakenFor {
  readonly walk: RecordKey<'walk'>;
  readonly shows: readonly Shown[];
  readonly scale?: PhotoScale | undefined;
  /** A picture that the new one takes the place of. */
  readonly replaces?: RecordKey<'photo'>;
}

/** Why a file did not become a picture of the walk. */
export type NotTaken = PhotoFault | StorageError | NotEditable;

const united = (shows: readonly Shown[], more: readonly Shown[]): Shown[] =>
  [...new Map([...shows, ...more].map((each) => [`${each.place} ${each.item ?? ''}`, each])).values()].slice(
    0,
    mostShown,
  );

function recordOf(shrunk: Shrunk, position: Photo['position'], { shows, scale }: TakenFor): Photo {
  const { bytes, width, height, original, takenAt, from } = shrunk;
  return {
    v: 1,
    type: 'image/jpeg',
    bytes: bytes.length,
    width,
    height,
    original,
    shows: [...shows],
    ...(scale && { scale }),
    from,
    at: observedNow(),
    ...(takenAt !== undefined && { takenAt }),
    ...(position && { position }),
  };
}

/** Puts one picture on disk: its bytes, its thumbnail and its record in one transaction, the waiting note gone. */
async function keep(shrunk: Shrunk, photo: Photo, taken: TakenFor): Promise<Result<string, NotTaken>> {
  const walk = parseKey(taken.walk);
  if (walk?.kind !== 'walk') return err({ kind: 'failed' });
  const { sha256, bytes, thumbnail } = shrunk;
  const key = makeKey({ kind: 'photo', walk: walk.id, hash: sha256, demo: isDemo(taken.walk) });
  // The same picture taken in twice is one, and shows what both were taken for.
  const edit = (now: RecordValue | undefined): RecordValue =>
    now ? { ...now, shows: united((now as unknown as Photo).shows, photo.shows) } : photo;
  const replaced: Write[] =
    taken.replaces && taken.replaces !== key ? [{ key: taken.replaces, removed: true }] : [];
  const written = await store.write([{ key, edit }, ...replaced], {
    dropDrafts: [pendingPhoto],
    photos: [{ sha256, type: photo.type, bytes }],
    thumbnails: [{ sha256, bytes: thumbnail }],
  });
  return written.ok ? ok(sha256) : written;
}

/** Takes in one file after the other; each is on disk, or has its own reason why not, before the next is told. */
export function takePhotos(
  files: readonly File[],
  from: Photo['from'],
  taken: TakenFor,
  stop: AbortSignal,
): readonly Promise<Result<string, NotTaken>>[] {
  const position = positionNow();
  // All are asked for at once: a moment later the phone may no longer give them. They are worked on in a row.
  return files.map(async (file) => {
    const shrunk = await shrinkPhoto(file, from, stop);
    return shrunk.ok ? keep(shrunk.value, recordOf(shrunk.value, await position, taken), taken) : shrunk;
  });
}
