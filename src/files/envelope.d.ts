import * as z from 'zod/mini';
import { type RecordKey } from '../core/keys.ts';
import { type Result } from '../core/result.ts';
import { type RecordValue, type Version } from '../core/versions.ts';
import type { RecordFault } from './file-error.ts';
/** A record that somebody wrote by hand: it gets its stamp where it is imported. */
export interface Unstamped {
    readonly key: RecordKey;
    readonly value: RecordValue;
}
export type FileRecord = Version | Unstamped;
export declare const isStamped: (record: FileRecord) => record is Version;
/** The envelope is strict; what is in the value is for its own schema. */
export declare const envelopeSchema: z.ZodMiniObject<{
    key: z.ZodMiniString<string>;
    value: z.ZodMiniOptional<z.ZodMiniRecord<z.ZodMiniString<string>, z.ZodMiniUnknown>>;
    stamp: z.ZodMiniOptional<z.core.$ZodBranded<z.ZodMiniString<string>, "Stamp", "out">>;
    seen: z.ZodMiniOptional<z.ZodMiniRecord<z.core.$ZodBranded<z.ZodMiniString<string>, "DeviceId", "out">, z.ZodMiniInt>>;
    by: z.ZodMiniOptional<z.core.$ZodBranded<z.ZodMiniString<string>, "Id", "out">>;
}, z.core.$strict>;
/** What a record takes as text, and what it may take; a seal, which holds a whole walk, may take more. */
export interface RecordSize {
    readonly bytes: number;
    readonly mostBytes: number;
}
/** Checks one record of a file: envelope, key, stamp and value. `index` counts from 0. */
export declare function readRecord(raw: unknown, index: number, size: RecordSize): Result<FileRecord, RecordFault>;
/** A record of a backup: a phone stamps whatever it makes. */
export declare function readVersion(raw: unknown, index: number, bytes: number): Result<Version, RecordFault>;
