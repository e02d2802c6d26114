import { createReadStream } from 'node:fs';
import { stat } from 'node:fs/promises';
import { stdin } from 'node:process';
import { err, ok, type Result } from '../core/result.ts';
import type { FileError } from '../files/file-error.ts';
import { mostDocumentBytes } from '../files/file-limits.ts';
import { readBundle } from '../files/read-bundle.ts';
import { cli } from '../words/en/cli.ts';
import { fileErrorLine } from '../words/en/file-errors.ts';
import { bytesSource, fileSource, type Source } from './source.ts';

const tooLarge: FileError = { kind: 'too-large', mostBytes: mostDocumentBytes };

/** Reads to the end, or until it is more than we read: a device or a pipe may never end. */
async function readAll(chunks: AsyncIterable<Uint8Array>): Promise<Result<Uint8Array<ArrayBuffer>, string>> {
  const parts: Uint8Array[] = [];
  let length = 0;
  for await (const part of chunks) {
    parts.push(part);
    length += part.length;
    if (length > mostDocumentBytes) return err(fileErrorLine(tooLarge));
  }
  return ok(new Uint8Array(Buffer.concat(parts)));
}

async function pipeSource(pipe: AsyncIterable<Uint8Array>): Promise<Result<Source, string>> {
  const bytes = await readAll(pipe);
  return bytes.ok ? ok(bytesSource(bytes.value)) : bytes;
}

const codeOf = (error: unknown): unknown =>
  typeof error === 'object' && error !== null && 'code' in error ? error.code : undefined;

/** Why a file cannot be read at all. */
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

/** A file, or standard input for `-`; the sentence of why not otherwise. */
export async function inputSource(name: string): Promise<Result<Source, string>> {
  try {
    if (name === '-') return await pipeSource(stdin);
    const found = await stat(name);
    if (found.isDirectory()) return err(cli.isFolder);
    return found.isFile() ? ok(fileSource(name, found.size)) : await pipeSource(createReadStream(name));
  } catch (error) {
    return err(unreadable(error));
  }
}

const isBundle = (bytes: Uint8Array): boolean => bytes[0] === 0x50 && bytes[1] === 0x4b;

/** The walk file in a bundle. */
async function fromBundle(source: Source): Promise<Result<Uint8Array, string>> {
  const bundle = await readBundle(source);
  if (!bundle.ok) return err(fileErrorLine(bundle.error));
  const { document } = bundle.value;
  return document.kind === 'walk' ? ok(document.bytes) : err(fileErrorLine({ kind: 'wrong-format' }));
}

/** The bytes of a file, or of the walk file in a bundle, or of standard input for `-`; why not otherwise. */
export async function readInput(name: string): Promise<Result<Uint8Array, string>> {
  const source = await inputSource(name);
  if (!source.ok) return source;
  try {
    if (isBundle(await source.value.slice(0, 2))) return await fromBundle(source.value);
    return await readAll(source.value.open());
  } catch (error) {
    return err(unreadable(error));
  }
}
