import * as z from 'zod/mini';
import { type Result } from '../core/result.ts';
import type { FileError } from './file-error.ts';
/** The version of both formats that this build writes and the newest that it reads. */
export declare const formatVersion = 1;
export declare const walkFormat = "sagline-walk";
export declare const backupFormat = "sagline-backup";
declare const formats: readonly ["sagline-walk", "sagline-backup"];
export type Format = (typeof formats)[number];
export declare const walkFileSchema: z.ZodMiniObject<{
    $schema: z.ZodMiniOptional<z.ZodMiniString<string>>;
    format: z.ZodMiniLiteral<"sagline-walk">;
    version: z.ZodMiniLiteral<1>;
    records: z.ZodMiniArray<z.ZodMiniUnknown>;
    seals: z.ZodMiniOptional<z.ZodMiniArray<z.ZodMiniString<string>>>;
}, z.core.$strict>;
declare const backupSchema: z.ZodMiniObject<{
    format: z.ZodMiniLiteral<"sagline-backup">;
    version: z.ZodMiniLiteral<1>;
    records: z.ZodMiniArray<z.ZodMiniUnknown>;
    seals: z.ZodMiniOptional<z.ZodMiniArray<z.ZodMiniString<string>>>;
    count: z.ZodMiniInt;
    crc32: z.ZodMiniString<string>;
}, z.core.$strict>;
export type BackupDocument = z.infer<typeof backupSchema>;
export type Document = z.infer<typeof walkFileSchema> | BackupDocument;
/** The head of a file: whose it is and of which version, before any of its records is looked at. */
export declare function readDocument(raw: unknown): Result<Document, FileError>;
export {};
