import * as z from 'zod/mini';
import { problemOf } from '../core/problem.ts';
import { err, ok, type Result } from '../core/result.ts';
import type { FileError } from './file-error.ts';
import { mostSealBytes } from '../core/seal.ts';
import { mostRecords, mostSeals } from './file-limits.ts';

/** The version of both formats that this build writes and the newest that it reads. */
export const formatVersion = 1;
export const walkFormat = 'sagline-walk';
export const backupFormat = 'sagline-backup';
const formats = [walkFormat, backupFormat] as const;
export type Format = (typeof formats)[number];

const sealsSchema = z.optional(
  z.array(z.string().check(z.maxLength(mostSealBytes))).check(z.maxLength(mostSeals)),
);

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

export type BackupDocument = z.infer<typeof backupSchema>;
export type Document = z.infer<typeof walkFileSchema> | BackupDocument;

const isFormat = (format: unknown): format is Format => formats.some((each) => each === format);

/** The head of a file: whose it is and of which version, before any of its records is looked at. */
export function readDocument(raw: unknown): Result<Document, FileError> {
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
