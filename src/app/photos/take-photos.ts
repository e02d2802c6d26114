import { signal, type ReadonlySignal } from '@preact/signals';
import { isDemo, makeKey, partsOf } from '../../core/keys.ts';
import type { Photo } from '../../core/photo.ts';
import { displayed, type RecordValue } from '../../core/versions.ts';
import type { Write } from '../../storage/store.ts';
import { photoFaultLine, photos as words } from '../../words/en/photos.ts';
import { dropDraft, put, save } from '../actions/saved.ts';
import { observedNow } from '../data/moment.ts';
import { tell } from '../data/notice.ts';
import { pendingPhoto, type TakenFor } from '../data/pending-photo.ts';
import { store } from '../data/phone.ts';
import { notSavedLine } from '../data/saving.ts';
import { united } from './photo-groups.ts';
import { positionNow } from './position.ts';
import { shrinkPhoto, type Shrunk } from './shrink-photo.ts';

function recordOf(
  shrunk: Shrunk,
  position: Photo['position'],
  { shows, scale, note, shot }: TakenFor,
): Photo {
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
    ...(note !== undefined && { note }),
    ...(shot !== undefined && { shot }),
  };
}

/**
 * Puts one picture on disk: its bytes, its thumbnail and its record in one transaction, the waiting note gone. Answers
 * the sentence of what hindered it.
 */
async function keep(shrunk: Shrunk, photo: Photo, taken: TakenFor): Promise<string | undefined> {
  const { sha256, bytes, thumbnail } = shrunk;
  const key = makeKey({
    kind: 'photo',
    walk: partsOf(taken.walk).id,
    hash: sha256,
    demo: isDemo(taken.walk),
  });
  // The same picture taken in twice is one, and shows what both were taken for.
  const edit = (now: RecordValue | undefined): RecordValue =>
    now
      ? {
          ...now,
          shows: united((now as unknown as Photo).shows, photo.shows),
          ...(photo.shot !== undefined && { shot: photo.shot }),
        }
      : photo;
  const replaces = taken.replaces === key ? undefined : taken.replaces;
  const before = replaces && (await store.read(replaces));
  const old = before?.ok ? displayed(before.value)?.value : undefined;
  const replaced: Write[] = replaces && old ? [{ key: replaces, removed: true }] : [];
  const written = await store.write([{ key, edit }, ...replaced], {
    dropDrafts: [pendingPhoto],
    photos: [{ sha256, type: photo.type, bytes }],
    thumbnails: [{ sha256, bytes: thumbnail }],
  });
  if (!written.ok) return notSavedLine(written.error);
  // The picture before comes back beside the new one, which is no less true.
  if (replaces && old) tell(words.retaken, () => save([put(replaces, old)]));
  return undefined;
}

/** How far pictures of a walk are taken in; it goes on while the person walks on. */
export interface Taking {
  readonly walk: string;
  readonly done: number;
  readonly total: number;
  /** One sentence for each picture that did not come in. */
  readonly faults: readonly string[];
}

const now = signal<Taking | undefined>(undefined);
export const taking: ReadonlySignal<Taking | undefined> = now;

let stop = new AbortController();

/** Stops what is not in yet; what is in stays. */
export const stopTaking = (): void => stop.abort();

export const dropFaults = (): void => {
  if (now.value !== undefined) now.value = { ...now.value, faults: [] };
};

/** Adds pictures to those that are being taken in, or begins anew where none are. */
function begin(walk: string, count: number): AbortSignal {
  const { value } = now;
  const goesOn = value?.walk === walk && value.done < value.total;
  if (!goesOn) stop = new AbortController();
  now.value = goesOn ? { ...value, total: value.total + count } : { walk, done: 0, total: count, faults: [] };
  return stop.signal;
}

function oneDone(line: string | undefined): void {
  const { value } = now;
  if (value === undefined) return;
  const faults = line === undefined ? value.faults : [...value.faults, line];
  now.value = { ...value, done: value.done + 1, faults };
}

/** Takes pictures in, one after the other; to be called in the picker's own event. Answers the hashes of those kept. */
export async function takePhotos(
  files: readonly File[],
  from: Photo['from'],
  taken: TakenFor,
): Promise<readonly string[]> {
  const aborted = begin(taken.walk, files.length);
  // A picture out of the gallery was taken somewhere else.
  const position = from === 'camera' ? positionNow() : undefined;
  // All are asked for at once: a moment later the phone may no longer give them. They are worked on in a row.
  const coming = files.map((file) => shrinkPhoto(file, from, aborted));
  const kept: string[] = [];
  for (const [at, each] of coming.entries()) {
    const made = await each;
    const line = made.ok
      ? await keep(made.value, recordOf(made.value, await position, taken), taken)
      : made.error.kind === 'cancelled'
        ? undefined
        : photoFaultLine(made.error);
    if (made.ok && line === undefined) kept.push(made.value.sha256);
    oneDone(line !== undefined && files.length > 1 ? words.faultOf(at + 1, line) : line);
  }
  await dropDraft(pendingPhoto);
  return kept;
}
