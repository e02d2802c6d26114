import * as z from 'zod/mini';
import type { Result } from '../core/result.ts';
import type { Version } from '../core/versions.ts';
import { crc32, crcText } from './crc32.ts';
import { backupFormat } from './document.ts';
import { readVersion } from './envelope.ts';
import type { FileError, RecordFault } from './file-error.ts';
import { mostBackupRecordBytes } from './file-limits.ts';
import { linesOf } from './lines.ts';
import { decode, parseJson } from './text.ts';
import { headLine } from './write-walk-file.ts';

/** What a line of a backup holds: a version, one that cannot be taken, or the end of reading. */
export type Entry =
  | { readonly kind: 'version'; readonly version: Version }
  | { readonly kind: 'refused'; readonly fault: RecordFault }
  | { readonly kind: 'error'; readonly error: FileError }
  | { readonly kind: 'end'; readonly count: number };

const head = new TextEncoder().encode(headLine(backupFormat));
/** A record with its comma. */
const longestLine = mostBackupRecordBytes + 1;
const comma = 0x2c;
const closingBracket = 0x5d;

const tailSchema = z.strictObject({
  records: z.array(z.never()),
  seals: z.array(z.string()),
  count: z.int(),
  crc32: z.string(),
});

interface Progress {
  count: number;
  crc: number;
}

const failed = (kind: 'damaged' | 'truncated'): Entry => ({ kind: 'error', error: { kind } });

const parseLine = (text: Result<string, FileError>, before = ''): Result<unknown, FileError> =>
  text.ok ? parseJson(before + text.value) : text;

/** A record's line without the comma that parts it from the next. */
const recordBytes = (line: Uint8Array): Uint8Array => (line.at(-1) === comma ? line.subarray(0, -1) : line);

function readRecordLine(line: Uint8Array, progress: Progress): Entry {
  const bytes = recordBytes(line);
  const raw = parseLine(decode(bytes));
  if (!raw.ok) return failed('truncated');
  const index = progress.count;
  progress.count += 1;
  progress.crc = crc32(bytes, progress.crc);
  const version = readVersion(raw.value, index, bytes.length);
  return version.ok ? { kind: 'version', version: version.value } : { kind: 'refused', fault: version.error };
}

/** The last line closes the list, counts and sums up; the list is opened again to make it JSON. */
function readTail(line: Uint8Array, { count, crc }: Progress): Entry {
  const raw = parseLine(decode(line), '{"records":[');
  if (!raw.ok) return failed('truncated');
  const tail = tailSchema.safeParse(raw.value);
  const isWhole = tail.success && tail.data.count === count && tail.data.crc32 === crcText(crc);
  return isWhole ? { kind: 'end', count } : failed('damaged');
}

const readLine = (line: Uint8Array, progress: Progress): Entry =>
  line[0] === closingBracket ? readTail(line, progress) : readRecordLine(line, progress);

/** True for bytes that begin exactly as our backups do, so that they can be read line by line. */
export const beginsAsBackup = (bytes: Uint8Array): boolean => head.every((byte, i) => bytes[i] === byte);

/** How many bytes beginsAsBackup looks at. */
export const headLength = head.length;

/**
 * Reads a file that begins as a backup line by line, holding one line at a time. The last entry is `end` or
 * `error`. A line that does not read is truncation when nothing follows, and damage when something does.
 */
export async function* readBackupLines(chunks: AsyncIterable<Uint8Array>): AsyncGenerator<Entry> {
  const progress: Progress = { count: 0, crc: 0 };
  let isHead = true;
  // The tail, or a line that does not read: nothing may come after it.
  let last: Entry | undefined;
  for await (const line of linesOf(chunks, longestLine)) {
    if (isHead || line.length === 0) {
      isHead = false;
      continue;
    }
    if (line === 'too-long' || last) {
      yield failed('damaged');
      return;
    }
    const entry = readLine(line, progress);
    if (entry.kind === 'version' || entry.kind === 'refused') yield entry;
    else last = entry;
  }
  yield last ?? failed('truncated');
}
