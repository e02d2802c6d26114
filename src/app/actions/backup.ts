import { parseKey } from '../../core/keys.ts';
import { counterOf } from '../../core/stamp.ts';
import type { Version } from '../../core/versions.ts';
import { err, type Result } from '../../core/result.ts';
import { mostBundleEntries } from '../../files/file-limits.ts';
import { writeBackup } from '../../files/write-backup.ts';
import { localDate } from '../../words/calendar.ts';
import { files as words } from '../../words/en/files.ts';
import { backupPreference } from '../data/backup-age.ts';
import { observedNow } from '../data/moment.ts';
import { tell } from '../data/notice.ts';
import { store } from '../data/phone.ts';
import { notSavedLine } from '../data/saving.ts';
import type { StorageError } from '../../storage/errors.ts';
import { hand } from './files.ts';

/** Told as records go by; `stop` ends the work before the next batch. */
export interface LongWork {
  readonly stop: AbortSignal;
  readonly onCount: (count: number) => void;
}

type Cancelled = { readonly kind: 'cancelled' };

interface Seen {
  /** SHA-256 and bytes of the pictures that records name. */
  readonly pictures: Map<string, number>;
  count: number;
  /** The highest counter among what went by. */
  counter: number;
}

/** The batches of the store until the person stops. */
async function* batches(
  { stop, onCount }: LongWork,
  seen: Seen,
): AsyncGenerator<Result<readonly Version[], StorageError | Cancelled>> {
  for await (const batch of store.exportAll()) {
    if (stop.aborted) {
      yield err({ kind: 'cancelled' });
      return;
    }
    if (batch.ok) {
      seen.count += batch.value.length;
      seen.counter = batch.value.reduce((most, { stamp }) => Math.max(most, counterOf(stamp)), seen.counter);
      for (const version of batch.value) notePicture(version, seen.pictures);
      onCount(seen.count);
    }
    yield batch;
  }
}

/** A picture goes along while any version of its record is there. */
function notePicture({ key, value }: Version, pictures: Map<string, number>): void {
  const parts = parseKey(key);
  if (parts?.kind === 'photo' && value) pictures.set(parts.hash, Number(value['bytes']) || 0);
}

/** A container holds less than 4 GB, some of it names. */
const mostPictureBytes = 3_800_000_000;

/** With pictures a backup is a bundle; undefined where they are more than one file can hold. */
async function partsOf(document: Blob, { pictures }: Seen): Promise<readonly Blob[] | undefined> {
  const bytes = [...pictures.values()].reduce((sum, each) => sum + each, document.size);
  if (bytes > mostPictureBytes || pictures.size > mostBundleEntries - 2) return undefined;
  const { bundleOf } = await import('../handover/bundle.ts');
  return bundleOf('backup', document, [...pictures.keys()]);
}

/** Text is gathered into pieces of this many letters, so that a large backup lies in the browser's files. */
const pieceLength = 1_000_000;

/** Writes everything on this phone but the demo as one file. */
export async function backUp(work: LongWork): Promise<void> {
  const seen = { count: 0, counter: 0, pictures: new Map<string, number>() };
  const pieces: Blob[] = [];
  let text = '';
  const written = await writeBackup(batches(work, seen), (part) => {
    text += part;
    if (text.length < pieceLength) return;
    pieces.push(new Blob([text]));
    text = '';
  });
  if (!written.ok) {
    if (written.error.kind === 'cancelled') tell(words.backupCancelled);
    else tell(notSavedLine(written.error));
    return;
  }
  const at = observedNow();
  const name = `${words.backupName}-${localDate(at.utc, at.offsetMinutes)}`;
  const document = new Blob([...pieces, text]);
  const bundle = seen.pictures.size > 0 ? await partsOf(document, seen) : undefined;
  const file = bundle
    ? { name: `${name}.zip`, type: 'application/zip', parts: bundle }
    : { name: `${name}.json`, type: 'application/json', parts: [document] };
  const leftOut = seen.pictures.size > 0 && !bundle;
  await hand(file, leftOut ? words.backupWithoutPictures(file.name) : words.backupDone(file.name), () =>
    store.preferences.put(backupPreference, { at, counter: seen.counter }),
  );
}
