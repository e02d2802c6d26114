import { err, ok, type Result } from '../core/result.ts';
import type { Version } from '../core/versions.ts';
import { beginsAsBackup, headLength, readBackupLines } from './backup-lines.ts';
import { walkFormat } from './document.ts';
import type { FileError, RecordFault } from './file-error.ts';
import { mostDocumentBytes, mostFaultsListed } from './file-limits.ts';
import { readInSteps, type FileContent } from './walk-file.ts';

/** A file that somebody chose; it can be read from its start more than once. */
export interface FileSource {
  readonly size: number;
  readonly open: () => AsyncIterable<Uint8Array>;
}

/** A backup that was read to its end and is whole. */
export interface Backup {
  readonly kind: 'backup';
  readonly count: number;
  /** Records that cannot be taken; the others can. At most a hundred are listed. */
  readonly refused: readonly RecordFault[];
  /** The versions, to be taken in batch by batch; throws when the file has changed meanwhile. */
  readonly batches: () => AsyncIterable<readonly Version[]>;
}

export type OpenedFile = ({ readonly kind: 'walk-file' } & FileContent) | Backup;

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

async function* inBatches(source: FileSource): AsyncGenerator<readonly Version[]> {
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

async function read(source: FileSource, batches: Backup['batches']): Promise<Result<OpenedFile, FileError>> {
  if (beginsAsBackup(await readStart(source, headLength))) return openBackup(source, batches);
  if (source.size > mostDocumentBytes) return err({ kind: 'too-large', mostBytes: mostDocumentBytes });
  return readDocument(await readStart(source, mostDocumentBytes + 1));
}

/**
 * Opens a walk file, limit sheet, rule set or backup, whichever it is, and checks all of it; nothing is taken yet.
 * A backup may be of any size. A source that fails while it is read is `unreadable`.
 */
export async function openFile(source: FileSource): Promise<Result<OpenedFile, FileError>> {
  let failed = false;
  const guarded: FileSource = {
    size: source.size,
    open: async function* () {
      try {
        yield* source.open();
      } catch {
        failed = true;
      }
    },
  };
  const opened = await read(guarded, () => inBatches(source));
  return failed ? err({ kind: 'unreadable' }) : opened;
}
