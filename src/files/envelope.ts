import * as z from 'zod/mini';
import { isDemo, kindOf, parseKey, type Id, type RecordKey } from '../core/keys.ts';
import { problemOf } from '../core/problem.ts';
import { recordFault } from '../core/records.ts';
import { err, ok, type Result } from '../core/result.ts';
import { deviceOf, stampSchema } from '../core/stamp.ts';
import { versionSchema, type RecordValue, type Version } from '../core/versions.ts';
import type { RecordFault } from './file-error.ts';
import { mostSealBytes } from '../core/seal.ts';
import { mostBackupRecordBytes } from './file-limits.ts';

/** A record that somebody wrote by hand: it gets its stamp where it is imported. */
export interface Unstamped {
  readonly key: RecordKey;
  readonly value: RecordValue;
}

export type FileRecord = Version | Unstamped;

export const isStamped = (record: FileRecord): record is Version => 'stamp' in record;

const value = z.record(z.string(), z.unknown());

/** The envelope is strict; what is in the value is for its own schema. */
export const envelopeSchema = z.strictObject({
  key: z.string(),
  value: z.optional(value),
  stamp: z.optional(stampSchema),
  seen: z.optional(versionSchema.shape.seen),
  by: z.optional(versionSchema.shape.by),
});
type Envelope = z.infer<typeof envelopeSchema>;

const stampFields = new Set<unknown>(['stamp', 'seen', 'by']);

/** What a record calls itself; one without a key goes by its number, from 1. */
const nameOf = (raw: unknown, index: number): string =>
  typeof raw === 'object' && raw !== null && 'key' in raw && typeof raw.key === 'string'
    ? raw.key
    : `#${index + 1}`;

/** What a record takes as text, and what it may take; a seal, which holds a whole walk, may take more. */
export interface RecordSize {
  readonly bytes: number;
  readonly mostBytes: number;
}

/** Checks one record of a file: envelope, key, stamp and value. `index` counts from 0. */
export function readRecord(raw: unknown, index: number, size: RecordSize): Result<FileRecord, RecordFault> {
  const at = { key: nameOf(raw, index), index };
  const parsed = envelopeSchema.safeParse(raw);
  if (!parsed.success) {
    const fault = problemOf(parsed.error.issues, raw);
    return err(
      stampFields.has(fault.path[0]) ? { kind: 'bad-stamp', ...at } : { kind: 'bad-record', ...at, ...fault },
    );
  }
  const key = parseKey(at.key) && !isDemo(at.key) ? (at.key as RecordKey) : undefined;
  if (key === undefined) return err({ kind: 'bad-key', ...at });
  const mostBytes = kindOf(key) === 'seal' ? mostSealBytes : size.mostBytes;
  if (size.bytes > mostBytes) return err({ kind: 'record-too-large', ...at, mostBytes });
  const fault = parsed.data.value && recordFault(key, parsed.data.value);
  if (fault) return err({ kind: 'bad-record', ...at, ...fault, path: ['value', ...fault.path] });
  return stamped(key, parsed.data, at);
}

function stamped(
  key: RecordKey,
  { value, stamp, seen, by }: Envelope,
  at: { readonly key: string; readonly index: number },
): Result<FileRecord, RecordFault> {
  if (stamp === undefined) {
    if (seen !== undefined || by !== undefined) return err({ kind: 'bad-stamp', ...at });
    if (value !== undefined) return ok({ key, value });
    return err({ kind: 'bad-record', ...at, path: ['value'], problem: { kind: 'missing' } });
  }
  // A version without an author's name is its device's.
  const rest = { stamp, seen: seen ?? {}, by: by ?? (deviceOf(stamp) as string as Id) };
  if (!versionSchema.safeParse({ key, ...rest }).success) return err({ kind: 'bad-stamp', ...at });
  return ok({ key, ...(value && { value }), ...rest });
}

/** A record of a backup: a phone stamps whatever it makes. */
export function readVersion(raw: unknown, index: number, bytes: number): Result<Version, RecordFault> {
  const record = readRecord(raw, index, { bytes, mostBytes: mostBackupRecordBytes });
  if (!record.ok) return record;
  if (isStamped(record.value)) return ok(record.value);
  return err({ kind: 'bad-stamp', key: record.value.key, index });
}
