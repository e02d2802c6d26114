import * as z from 'zod/mini';
import { canonicalJson } from '../core/canonical-json.ts';
import { problemOf } from '../core/problem.ts';
import { err, ok, type Result } from '../core/result.ts';
import type { Version } from '../core/versions.ts';
import { crc32, crcText } from './crc32.ts';
import { isStamped, readRecord, type FileRecord, type Unstamped } from './envelope.ts';
import type { FileError, RecordFault } from './file-error.ts';
import { mostDocumentBytes, mostFaultsListed, mostRecords, mostSealBytes } from './file-limits.ts';
import { decode, parseJson } from './text.ts';

/** The version of both formats that this build writes and the newest that it reads. */
export const formatVersion = 1;
export const walkFormat = 'sagline-walk';
export const backupFormat = 'sagline-backup';
export const formats = [walkFormat, backupFormat] as const;
export type Format = (typeof formats)[number];

/** What a file holds, checked. */
export interface FileContent {
  readonly format: Format;
  readonly versions: readonly Version[];
  /** Written by hand: no stamp yet. Each key once. */
  readonly unstamped: readonly Unstamped[];
  readonly seals: readonly string[];
  /** Records of a backup that cannot be taken; the others can. A walk file is taken whole or not at all. */
  readonly refused: readonly RecordFault[];
}

const sealsSchema = z.optional(z.array(z.string().check(z.maxLength(mostSealBytes))));

export const walkFileSchema = z.strictObject({
  $schema: z.optional(z.string()),
  format: z.literal(walkFormat),
  version: z.literal(formatVersion),
  records: z.array(z.unknown()),
  seals: sealsSchema,
});

const backupSchema = z.strictObject({
  format: z.literal(backupFormat),
  version: z.literal(formatVersion),
  records: z.array(z.unknown()),
  seals: sealsSchema,
  count: z.int(),
  crc32: z.string(),
});

type Document = z.infer<typeof walkFileSchema> | z.infer<typeof backupSchema>;

const isFormat = (format: unknown): format is Format => formats.some((each) => each === format);

/** The head of a file: whose it is and of which version, before anything else is looked at. */
function readDocument(raw: unknown): Result<Document, FileError> {
  if (typeof raw !== 'object' || raw === null || !('format' in raw) || !isFormat(raw.format))
    return err({ kind: 'wrong-format' });
  if ('version' in raw && Number.isInteger(raw.version) && Number(raw.version) > formatVersion)
    return err({ kind: 'newer-version', version: Number(raw.version) });
  const parsed = (raw.format === walkFormat ? walkFileSchema : backupSchema).safeParse(raw);
  if (!parsed.success) return err({ kind: 'bad-header', ...problemOf(parsed.error.issues, raw) });
  const { records } = parsed.data;
  if (records.length === 0) return err({ kind: 'no-records' });
  if (records.length > mostRecords) return err({ kind: 'too-many', most: mostRecords });
  return ok(parsed.data);
}

interface Sorted {
  readonly versions: Version[];
  readonly byHand: Map<string, Unstamped>;
}

/** Puts a record where it belongs; the same written twice by hand is one, two values of one key are a fault. */
function take(record: FileRecord, index: number, { versions, byHand }: Sorted): RecordFault | undefined {
  if (isStamped(record)) {
    versions.push(record);
    return undefined;
  }
  const other = byHand.get(record.key);
  byHand.set(record.key, record);
  if (!other || canonicalJson(other.value) === canonicalJson(record.value)) return undefined;
  return { kind: 'duplicate-record', key: record.key, index };
}

function readRecords(document: Document): Result<Sorted & { refused: RecordFault[] }, FileError> {
  const sorted = { versions: [], byHand: new Map<string, Unstamped>(), refused: [] as RecordFault[] };
  const encoder = new TextEncoder();
  let crc = 0;
  for (const [index, raw] of document.records.entries()) {
    const bytes = encoder.encode(JSON.stringify(raw));
    crc = crc32(bytes, crc);
    const record = readRecord(raw, index, bytes.length);
    const fault = record.ok ? take(record.value, index, sorted) : record.error;
    if (!fault) continue;
    if (document.format === walkFormat) return err(fault);
    if (sorted.refused.length < mostFaultsListed) sorted.refused.push(fault);
  }
  const isWhole =
    document.format === walkFormat ||
    (document.count === document.records.length && document.crc32 === crcText(crc));
  return isWhole ? ok(sorted) : err({ kind: 'damaged' });
}

/**
 * Reads a walk file, limit sheet, rule set or (up to 25 MB) backup, from its bytes or its text. Never throws,
 * whatever the file holds; time and memory are bounded by its size.
 */
export function readWalkFile(input: Uint8Array | string): Result<FileContent, FileError> {
  if (input.length > mostDocumentBytes) return err({ kind: 'too-large', mostBytes: mostDocumentBytes });
  const text = typeof input === 'string' ? ok(input.replace(/^\uFEFF/, '')) : decode(input);
  if (!text.ok) return text;
  const raw = parseJson(text.value);
  if (!raw.ok) return raw;
  const document = readDocument(raw.value);
  if (!document.ok) return document;
  const records = readRecords(document.value);
  if (!records.ok) return records;
  const { versions, byHand, refused } = records.value;
  const { format, seals = [] } = document.value;
  return ok({ format, versions, unstamped: [...byHand.values()], seals, refused });
}
