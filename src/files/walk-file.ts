import { canonicalJson } from '../core/canonical-json.ts';
import { isKind, partsOf } from '../core/keys.ts';
import { err, ok, type Result } from '../core/result.ts';
import type { Version } from '../core/versions.ts';
import { crc32, crcText } from './crc32.ts';
import { readDocument, walkFormat, type BackupDocument, type Format } from './document.ts';
import { isStamped, readRecord, readVersion, type FileRecord, type Unstamped } from './envelope.ts';
import type { FileError, RecordFault } from './file-error.ts';
import {
  mostDocumentBytes,
  mostFaultsListed,
  mostReadings,
  mostRecordBytes,
  mostSides,
} from './file-limits.ts';
import { decode, parseJson } from './text.ts';

/** What a file holds, checked. */
export interface FileContent {
  readonly format: Format;
  /** How many records the file holds, those that are refused and those that say the same among them. */
  readonly count: number;
  readonly versions: readonly Version[];
  /** Written by hand: no stamp yet. Each key once. */
  readonly unstamped: readonly Unstamped[];
  readonly seals: readonly string[];
  /** Records of a backup that cannot be taken; the others can. A walk file is taken whole or not at all. */
  readonly refused: readonly RecordFault[];
}

type Taken = Pick<FileContent, 'versions' | 'unstamped' | 'refused'>;

const recordsAtOnce = 200;
const isPause = (index: number): boolean => index % recordsAtOnce === recordsAtOnce - 1;

const encoder = new TextEncoder();
const bytesOf = (raw: unknown): Uint8Array => encoder.encode(JSON.stringify(raw));

/** Counts what scoring would have to weigh against each other; no walk has nearly as much. */
function crowding(): (record: FileRecord) => FileError | undefined {
  const counts = new Map<string, number>();
  const isOver = (what: string, most: number): boolean => {
    const count = (counts.get(what) ?? 0) + 1;
    counts.set(what, count);
    return count > most;
  };
  return ({ key }) => {
    if (isOver(key, mostSides)) return { kind: 'too-many', most: mostSides };
    const isCrowded = isKind(key, 'reading') && isOver(partsOf(key).walk, mostReadings);
    return isCrowded ? { kind: 'too-many', most: mostReadings } : undefined;
  };
}

/** The same record written twice by hand is one; two values of one key are a fault. */
function takeByHand(
  record: Unstamped,
  index: number,
  byHand: Map<string, Unstamped>,
): RecordFault | undefined {
  const other = byHand.get(record.key);
  byHand.set(record.key, record);
  if (!other || canonicalJson(other.value) === canonicalJson(record.value)) return undefined;
  return { kind: 'duplicate-record', key: record.key, index };
}

/** Reading, with a pause now and then in which others can work. */
type Steps<T> = Generator<undefined, Result<T, FileError>, undefined>;

/** Reads all records of a walk file, or says what is wrong with the first that is not right. */
function* readWalkRecords(records: readonly unknown[]): Steps<Taken> {
  const versions: Version[] = [];
  const byHand = new Map<string, Unstamped>();
  const crowded = crowding();
  for (const [index, raw] of records.entries()) {
    const record = readRecord(raw, index, { bytes: bytesOf(raw).length, mostBytes: mostRecordBytes });
    if (!record.ok) return record;
    const { value } = record;
    if (isStamped(value)) versions.push(value);
    const fault = isStamped(value) ? undefined : takeByHand(value, index, byHand);
    const error = fault ?? crowded(value);
    if (error) return err(error);
    if (isPause(index)) yield;
  }
  return ok({ versions, unstamped: [...byHand.values()], refused: [] });
}

/** Reads the records of a backup whose lines somebody has laid out anew. */
function* readBackupRecords(document: BackupDocument): Steps<Taken> {
  const versions: Version[] = [];
  const refused: RecordFault[] = [];
  let crc = 0;
  for (const [index, raw] of document.records.entries()) {
    const bytes = bytesOf(raw);
    crc = crc32(bytes, crc);
    const version = readVersion(raw, index, bytes.length);
    if (version.ok) versions.push(version.value);
    else if (refused.length < mostFaultsListed) refused.push(version.error);
    if (isPause(index)) yield;
  }
  const isWhole = document.count === document.records.length && document.crc32 === crcText(crc);
  return isWhole ? ok({ versions, unstamped: [], refused }) : err({ kind: 'damaged' });
}

/** Reads a file as `readWalkFile` does, and pauses between every 200 records. */
export function* readInSteps(input: Uint8Array | string): Steps<FileContent> {
  if (input.length > mostDocumentBytes) return err({ kind: 'too-large', mostBytes: mostDocumentBytes });
  const text = typeof input === 'string' ? ok(input.replace(/^\uFEFF/, '')) : decode(input);
  if (!text.ok) return text;
  const raw = parseJson(text.value);
  if (!raw.ok) return raw;
  const read = readDocument(raw.value);
  if (!read.ok) return read;
  const document = read.value;
  const taken = yield* document.format === walkFormat
    ? readWalkRecords(document.records)
    : readBackupRecords(document);
  if (!taken.ok) return taken;
  const { format, records, seals = [] } = document;
  return ok({ format, count: records.length, ...taken.value, seals });
}

/**
 * Reads a walk file, limit sheet, rule set or (up to 25 MB) backup, from its bytes or its text. Never throws,
 * whatever the file holds; time and memory are bounded by its size.
 */
export function readWalkFile(input: Uint8Array | string): Result<FileContent, FileError> {
  const steps = readInSteps(input);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}
