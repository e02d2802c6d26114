import { err, ok, type Result } from '../core/result.ts';
import type { Version } from '../core/versions.ts';
import { BrokenEntry } from './broken-entry.ts';
import { beginsAsBackup, headLength, readBackupLines } from './backup-lines.ts';
import { walkFormat } from './document.ts';
import type { FileError, RecordFault } from './file-error.ts';
import { mostDocumentBytes, mostFaultsListed } from './file-limits.ts';
import type { Pictures } from './read-bundle.ts';
import { readInSteps, type FileContent } from './walk-file.ts';

/** A file that somebody chose; it can be read from its start more than once. */
export interface FileSource {
  readonly size: number;
  readonly open: () => AsyncIterable<Uint8Array>;
  /** Reads a part of it; absent where a file comes through a pipe, and such a one is no bundle. */
  readonly slice?: (from: number, to: number) => Promise<Uint8Array<ArrayBuffer>>;
}

/** A backup that was read to its end and is whole. */
export interface Backup {
  readonly kind: 'backup';
  readonly count: number;
  /** Records that cannot be taken; the others can. At most a hundred are listed. */
  readonly refused: readonly RecordFault[];
  /** The versions, to be taken in batch by batch; throws when the file has changed meanwhile. */
  readonly batches: () => AsyncIterable<readonly Version[]>;
  readonly pictures?: Pictures;
}

/** A walk file, alone or in a bundle with its pictures. */
export type WalkFile = { readonly kind: 'walk-file'; readonly pictures?: Pictures } & FileContent;
export type OpenedFile = WalkFile | Backup;

const versionsAtOnce = 200;

/** Reads at most so many bytes from the start, and one chunk more. */
async function readStart(source: FileSource, most: number): Promise<Uint8Array> {
  const chunks: Uint8Array[] = [];
  let length = 0;
  for await (const chunk of source.open()) {
    chunks.push(chunk);
    length += chunk.length;
    if (length >= most) break;
  }
  const whole = new Uint8Array(length);
  let at = 0;
  for (const chunk of chunks) {
    whole.set(chunk, at);
    at += chunk.length;
  }
  return whole;
}

async function* inBatches(source: Pick<FileSource, 'open'>): AsyncGenerator<readonly Version[]> {
  let batch: Version[] = [];
  for await (const entry of readBackupLines(source.open())) {
    if (entry.kind === 'error') throw new Error(`the file has changed: ${entry.error.kind}`);
    if (entry.kind === 'version') batch.push(entry.version);
    if (batch.length < versionsAtOnce) continue;
    yield batch;
    batch = [];
  }
  if (batch.length > 0) yield batch;
}

/** Reads a backup once, to its end, before anything of it is taken. */
async function openBackup(
  source: FileSource,
  batches: Backup['batches'],
): Promise<Result<OpenedFile, FileError>> {
  const refused: RecordFault[] = [];
  let count = 0;
  for await (const entry of readBackupLines(source.open())) {
    if (entry.kind === 'error') return err(entry.error);
    if (entry.kind === 'refused' && refused.length < mostFaultsListed) refused.push(entry.fault);
    if (entry.kind === 'end') count = entry.count;
  }
  if (count === 0) return err({ kind: 'no-records' });
  return ok({ kind: 'backup', count, refused, batches });
}

/** A backup whose lines somebody has laid out anew. */
function fromDocument(content: FileContent): OpenedFile {
  if (content.format === walkFormat) return { kind: 'walk-file', ...content };
  const { count, versions, refused } = content;
  const batches = async function* () {
    for (let at = 0; at < versions.length; at += versionsAtOnce)
      yield versions.slice(at, at + versionsAtOnce);
  };
  return { kind: 'backup', count, refused, batches };
}

const pause = (): Promise<void> => new Promise((resolve) => setTimeout(resolve));

/** Reads a whole document, and lets the screen answer in between. */
async function readDocument(bytes: Uint8Array): Promise<Result<OpenedFile, FileError>> {
  const steps = readInSteps(bytes);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value.ok ? ok(fromDocument(step.value.value)) : step.value;
    await pause();
  }
}

type Sliced = FileSource & Required<Pick<FileSource, 'slice'>>;
const isSliced = (source: FileSource): source is Sliced => source.slice !== undefined;

const zipStart = [0x50, 0x4b, 0x03, 0x04];
const beginsAsZip = (bytes: Uint8Array): boolean => zipStart.every((byte, at) => bytes[at] === byte);

/** A bundle: its document is opened like a file of its own. */
async function openBundle(source: Sliced): Promise<Result<OpenedFile, FileError>> {
  // Most files are none, and the phone need not hold this to open them.
  const { readBundle } = await import('./read-bundle.ts');
  const bundle = await readBundle(source);
  if (!bundle.ok) return bundle;
  const { document, pictures } = bundle.value;
  const inside =
    document.kind === 'walk'
      ? await readDocument(document.bytes)
      : await openBackup({ size: source.size, open: document.open }, () => inBatches(document));
  return inside.ok ? ok({ ...inside.value, pictures }) : inside;
}

async function read(source: FileSource, batches: Backup['batches']): Promise<Result<OpenedFile, FileError>> {
  const start = await readStart(source, headLength);
  if (beginsAsZip(start) && isSliced(source)) return openBundle(source);
  if (beginsAsBackup(start)) return openBackup(source, batches);
  if (source.size > mostDocumentBytes) return err({ kind: 'too-large', mostBytes: mostDocumentBytes });
  return readDocument(await readStart(source, mostDocumentBytes + 1));
}

/**
 * Opens a walk file, bundle, limit sheet, rule set or backup, whichever it is, and checks all of it; nothing is taken yet.
 * A backup may be of any size. A source that fails while it is read is `unreadable`.
 */
export async function openFile(source: FileSource): Promise<Result<OpenedFile, FileError>> {
  let failed = false;
  const { slice } = source;
  const guarded: FileSource = {
    size: source.size,
    ...(slice && {
      slice: (from, to) =>
        slice(from, to).catch(() => {
          failed = true;
          throw new BrokenEntry();
        }),
    }),
    open: async function* () {
      try {
        yield* source.open();
      } catch {
        failed = true;
      }
    },
  };
  const opened = await read(guarded, () => inBatches(source)).catch((error: unknown) => {
    if (error instanceof BrokenEntry) return err<FileError>({ kind: 'damaged' });
    throw error;
  });
  return failed ? err({ kind: 'unreadable' }) : opened;
}
