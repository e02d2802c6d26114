import { createReadStream } from 'node:fs';
import { stat } from 'node:fs/promises';
import { stdin } from 'node:process';
import { err, ok, type Result } from '../core/result.ts';
import type { FileError } from '../files/file-error.ts';
import { mostDocumentBytes } from '../files/file-limits.ts';
import { cli } from '../words/en/cli.ts';
import { fileErrorLine } from '../words/en/file-errors.ts';

const tooLarge: FileError = { kind: 'too-large', mostBytes: mostDocumentBytes };

/** Reads to the end, or until it is more than we read: a device or a pipe may never end. */
async function readAll(chunks: AsyncIterable<Uint8Array>): Promise<Result<Uint8Array, string>> {
  const parts: Uint8Array[] = [];
  let length = 0;
  for await (const part of chunks) {
    parts.push(part);
    length += part.length;
    if (length > mostDocumentBytes) return err(fileErrorLine(tooLarge));
  }
  return ok(Buffer.concat(parts));
}

const codeOf = (error: unknown): unknown =>
  typeof error === 'object' && error !== null && 'code' in error ? error.code : undefined;

function unreadable(error: unknown): string {
  switch (codeOf(error)) {
    case 'ENOENT':
    case 'ENOTDIR':
      return cli.notFound;
    case 'EISDIR':
      return cli.isFolder;
    case 'EACCES':
    case 'EPERM':
      return cli.notAllowed;
    default:
      return fileErrorLine({ kind: 'unreadable' });
  }
}

/** The bytes of a file, or of standard input for `-`; the sentence of why not otherwise. */
export async function readInput(name: string): Promise<Result<Uint8Array, string>> {
  try {
    if (name === '-') return await readAll(stdin);
    if ((await stat(name)).isDirectory()) return err(cli.isFolder);
    return await readAll(createReadStream(name));
  } catch (error) {
    return err(unreadable(error));
  }
}
