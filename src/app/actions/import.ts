import { canonicalJson } from '../../core/canonical-json.ts';
import { makeKey, parseKey, type RecordKey } from '../../core/keys.ts';
import { isClash, isNewer, valueVersion, type Version } from '../../core/versions.ts';
import { ok } from '../../core/result.ts';
import type { Unstamped } from '../../files/envelope.ts';
import type { FileError, RecordFault } from '../../files/file-error.ts';
import { planImport } from '../../files/import-plan.ts';
import { openFile, type Backup, type FileSource, type WalkFile } from '../../files/open-file.ts';
import type { Pictures } from '../../files/read-bundle.ts';
import type { StorageError } from '../../storage/errors.ts';
import type { CountsAhead, NotEditable, Stored } from '../../storage/store.ts';
import { loadBuiltIn } from '../data/built-in.ts';
import { store } from '../data/phone.ts';

/** A record that came in and that a person may want to look at. */
export interface Arrived {
  readonly key: RecordKey;
  readonly value: unknown;
}

export type Imported =
  | {
      readonly kind: 'done';
      readonly added: number;
      readonly known: number;
      readonly clashes: number;
      readonly refused: readonly RecordFault[];
      /** What comes with the app and the file has with other values; a file never changes these. */
      readonly leftOut: number;
      /** Seals whose signature does not hold; they were not taken. */
      readonly sealsAltered: number;
      /** Pictures that the records name and that neither the file nor this phone has. */
      readonly picturesMissing: number;
      readonly arrived: readonly Arrived[];
    }
  | { readonly kind: 'refused'; readonly error: FileError }
  | {
      readonly kind: 'not-saved';
      readonly error: StorageError | NotEditable | CountsAhead;
      /** Some of it is here already; doing it again goes on from there. */
      readonly partly: boolean;
    }
  /** What was taken in before stays; doing it again goes on from there. */
  | { readonly kind: 'cancelled'; readonly added: number };

export interface ImportWork {
  readonly stop: AbortSignal;
  /** Bytes while the file is checked, records while they are taken in. */
  readonly onProgress: (done: number, of: number) => void;
}

const chunkBytes = 1_000_000;

/** A file to be read in pieces, with room for the screen in between. */
export function sourceOf(file: Blob, { stop, onProgress }: ImportWork): FileSource {
  const slice = async (from: number, to: number): Promise<Uint8Array<ArrayBuffer>> => {
    if (stop.aborted) throw new Error('stopped');
    onProgress(from, file.size);
    return new Uint8Array(await file.slice(from, to).arrayBuffer());
  };
  return {
    size: file.size,
    slice,
    open: async function* () {
      for (let at = 0; at < file.size; at += chunkBytes) {
        yield await slice(at, at + chunkBytes);
        await new Promise((go) => setTimeout(go));
      }
    },
  };
}

/** Takes in a walk file, bundle, limit sheet, rule set or backup; a walk file whole or not at all. */
export async function importFile(file: Blob, work: ImportWork): Promise<Imported> {
  const opened = await openFile(sourceOf(file, work));
  if (work.stop.aborted) return { kind: 'cancelled', added: 0 };
  if (!opened.ok) return { kind: 'refused', error: opened.error };
  // Pictures go first: the record that names one is never without it. One that nothing comes to name is swept.
  const pictures = await takePictures(opened.value.pictures, work);
  if (!pictures.ok) return { kind: 'not-saved', error: pictures.error, partly: false };
  if (work.stop.aborted) return { kind: 'cancelled', added: 0 };
  return opened.value.kind === 'backup' ? takeBackup(opened.value, work) : takeWalkFile(opened.value);
}

/** Puts the pictures of a bundle on disk, one at a time. */
async function takePictures(
  pictures: Pictures | undefined,
  { stop, onProgress }: ImportWork,
): Promise<Stored<undefined>> {
  const hashes = pictures?.hashes ?? [];
  for (const [at, sha256] of hashes.entries()) {
    if (stop.aborted || !pictures) break;
    const bytes = await pictures.read(sha256);
    const put = await store.photos.put({ sha256, type: 'image/jpeg', bytes });
    if (!put.ok) return put;
    onProgress(at + 1, hashes.length);
  }
  return ok();
}

/** Which of the pictures that these records name are not on this phone. */
async function missingPictures(
  versions: readonly { readonly key: RecordKey; readonly value?: unknown }[],
): Promise<number> {
  let missing = 0;
  for (const { key, value } of versions) {
    const parts = parseKey(key);
    if (parts?.kind !== 'photo' || value === undefined) continue;
    const found = await store.photos.get(parts.hash);
    if (found.ok && found.value === undefined) missing += 1;
  }
  return missing;
}

/** The seals of a file as records, a later version's too; one that was altered says nothing that could be kept. */
async function sealWrites(seals: readonly string[]): Promise<readonly (Unstamped | 'altered')[]> {
  if (seals.length === 0) return [];
  const { readSeal } = await import('../../seal/seals.ts');
  const { claimedWalk } = await import('../../seal/claimed.ts');
  const { sha256Hex } = await import('../../seal/hash.ts');
  return Promise.all(
    seals.map(async (jws) => {
      const seal = await readSeal(jws);
      const said = claimedWalk(jws);
      const walk = typeof said === 'string' ? parseKey(said) : undefined;
      const holds = seal.ok || seal.error.kind === 'unreadable';
      if (!holds || walk?.kind !== 'walk') return 'altered';
      const key = makeKey({ kind: 'seal', walk: walk.id, hash: await sha256Hex(jws) });
      return { key, value: { v: 1, jws } };
    }),
  );
}

const shown = new Set(['machine', 'walk', 'limits', 'rules', 'price', 'rate']);
const isShown = ({ key }: { readonly key: string }): boolean => shown.has(parseKey(key)?.kind ?? '');

/** How many of these the file has otherwise than the app; a plain export brings them along as they are. */
async function changedOf(content: WalkFile, keys: readonly RecordKey[]): Promise<number> {
  const { limits, rules, prices, rates } = await loadBuiltIn();
  const ours: Readonly<Record<string, unknown>> = { ...limits, ...rules, ...prices, ...rates };
  const texts = new Map([...content.versions, ...content.unstamped].map(({ key, value }) => [key, value]));
  return keys.filter((key) => canonicalJson(texts.get(key)) !== canonicalJson(ours[key])).length;
}

/** What a record written by hand would be refused for; asked first, so that nothing is taken in by halves. */
function refusalOf(key: RecordKey, set: readonly Version[]): NotEditable | undefined {
  if (set.some(({ value }) => value && isNewer(value, valueVersion))) return { kind: 'made-by-newer', key };
  return isClash(set) ? { kind: 'clash', key } : undefined;
}

async function takeWalkFile(content: WalkFile): Promise<Imported> {
  const seals = await sealWrites(content.seals);
  const sealed = seals.filter((each) => each !== 'altered');
  const { versions, writes, leftOut } = planImport({
    ...content,
    unstamped: [...content.unstamped, ...sealed],
  });
  const before: (readonly Version[])[] = [];
  for (const { key } of writes) {
    const set = await store.read(key);
    if (!set.ok) return { kind: 'not-saved', error: set.error, partly: false };
    const refusal = refusalOf(key, set.value);
    if (refusal) return { kind: 'not-saved', error: refusal, partly: false };
    before.push(set.value);
  }
  const merged = await store.merge(versions);
  if (!merged.ok) return { kind: 'not-saved', error: merged.error, partly: false };
  const written = await store.write(writes);
  if (!written.ok) return { kind: 'not-saved', error: written.error, partly: versions.length > 0 };
  const fresh = written.value.filter(
    ({ stamp }, at) => before[at]?.some((version) => version.stamp === stamp) !== true,
  );
  return {
    kind: 'done',
    added: fresh.length + merged.value.added,
    known: written.value.length - fresh.length + merged.value.known,
    clashes: merged.value.clashes.length,
    refused: [],
    leftOut: await changedOf(content, leftOut),
    sealsAltered: seals.length - sealed.length,
    picturesMissing: await missingPictures([...versions, ...writes]),
    arrived: [...writes, ...versions].filter(isShown).map(({ key, value }) => ({ key, value })),
  };
}

async function takeBackup(backup: Backup, { stop, onProgress }: ImportWork): Promise<Imported> {
  let taken = 0;
  async function* counted(): AsyncGenerator<readonly Version[]> {
    for await (const batch of backup.batches()) {
      if (stop.aborted) return;
      yield batch;
      taken += batch.length;
      onProgress(taken, backup.count);
    }
  }
  const merged = await store.importAll(counted());
  if (!merged.ok) return { kind: 'not-saved', error: merged.error, partly: taken > 0 };
  const { added, known, clashes } = merged.value;
  if (stop.aborted) return { kind: 'cancelled', added };
  const { refused } = backup;
  return {
    kind: 'done',
    added,
    known,
    clashes: clashes.length,
    refused,
    leftOut: 0,
    sealsAltered: 0,
    picturesMissing: 0,
    arrived: [],
  };
}
