import { err, ok, type Result } from '../core/result.ts';
import { BrokenEntry } from './broken-entry.ts';
import { crc32 } from './crc32.ts';
import type { FileError } from './file-error.ts';
import { mostBundleBytes, mostBundleEntries, mostRatio } from './file-limits.ts';
import {
  centralLength,
  centralSignature,
  elsewhere16,
  elsewhere32,
  endLength,
  endSignature,
  flagEncrypted,
  localLength,
  localSignature,
  methodDeflated,
  methodStored,
} from './zip-format.ts';

/** A file whose parts can be read in any order; a part beyond its end comes shorter. */
export interface SlicedSource {
  readonly size: number;
  readonly slice: (from: number, to: number) => Promise<Uint8Array<ArrayBuffer>>;
}

/** One entry as the directory tells of it; none of it has been believed yet but where it lies. */
export interface ZipEntry {
  readonly name: string;
  readonly method: number;
  readonly crc: number;
  readonly packed: number;
  readonly size: number;
  readonly offset: number;
  /** Where the next entry begins, or the directory: what belongs to this one ends before. */
  readonly until: number;
}

const damaged = err<FileError>({ kind: 'damaged' });

const viewOf = (bytes: Uint8Array): DataView =>
  new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);

/** Names of ours are ASCII; others are shown, never used as a path. */
const nameOf = (bytes: Uint8Array): string => new TextDecoder('utf-8').decode(bytes);

interface End {
  readonly count: number;
  readonly start: number;
  readonly length: number;
}

/** The end record is the last thing in the file: a comment behind it is nothing that we or common tools write. */
async function readEnd(source: SlicedSource): Promise<Result<End, FileError>> {
  const bytes = await source.slice(Math.max(0, source.size - endLength), source.size);
  const view = viewOf(bytes);
  if (bytes.length < endLength || view.getUint32(0, true) !== endSignature) return err({ kind: 'truncated' });
  const count = view.getUint16(10, true);
  const [length, start] = [view.getUint32(12, true), view.getUint32(16, true)];
  if (count > mostBundleEntries) return err({ kind: 'too-many', most: mostBundleEntries });
  if (count === elsewhere16 || start === elsewhere32)
    return err({ kind: 'too-large', mostBytes: mostBundleBytes });
  // One disk, and nothing between the directory and its end.
  const isWhole = view.getUint32(4, true) === 0 && start + length === source.size - endLength;
  return isWhole ? ok({ count, start, length }) : damaged;
}

type Listed = Omit<ZipEntry, 'until'>;

function readEntry(bytes: Uint8Array): { readonly entry: Listed; readonly length: number } | undefined {
  if (bytes.length < centralLength || viewOf(bytes).getUint32(0, true) !== centralSignature) return undefined;
  const view = viewOf(bytes);
  const nameLength = view.getUint16(28, true);
  const length = centralLength + nameLength + view.getUint16(30, true) + view.getUint16(32, true);
  if (bytes.length < length || (view.getUint16(8, true) & flagEncrypted) !== 0) return undefined;
  const entry = {
    name: nameOf(bytes.subarray(centralLength, centralLength + nameLength)),
    method: view.getUint16(10, true),
    crc: view.getUint32(16, true),
    packed: view.getUint32(20, true),
    size: view.getUint32(24, true),
    offset: view.getUint32(42, true),
  };
  return { entry, length };
}

/** Longest entry of a directory that we read: a name and what else some tool may say of it. */
const mostEntryBytes = 1000;

/**
 * The entries of a zip container, from its directory. Only what could be one of ours is let through: no entry lies
 * over another, none twice under one name, none swells to more than a hundredfold.
 */
export async function readDirectory(source: SlicedSource): Promise<Result<readonly ZipEntry[], FileError>> {
  const end = await readEnd(source);
  if (!end.ok) return end;
  const { count, start, length } = end.value;
  if (length > count * mostEntryBytes) return damaged;
  let bytes = await source.slice(start, start + length);
  const entries: Listed[] = [];
  for (let at = 0; at < count; at += 1) {
    const read = readEntry(bytes);
    if (!read) return damaged;
    entries.push(read.entry);
    bytes = bytes.subarray(read.length);
  }
  const fault = bytes.length > 0 ? damaged.error : faultOf(entries, start);
  return fault ? err(fault) : ok(withRoom(entries, start));
}

/** Entries in the order in which they lie, each with its end. */
function withRoom(entries: readonly Listed[], end: number): readonly ZipEntry[] {
  const inOrder = [...entries].sort((a, b) => a.offset - b.offset);
  return inOrder.map((entry, at) => ({ ...entry, until: inOrder[at + 1]?.offset ?? end }));
}

function faultOf(entries: readonly Listed[], end: number): FileError | undefined {
  const names = new Set<string>();
  let [at, sum] = [0, 0];
  for (const entry of [...entries].sort((a, b) => a.offset - b.offset)) {
    if (entry.offset < at) return { kind: 'damaged' };
    at = entry.offset + localLength + entry.packed;
    sum += entry.size;
    if (names.has(entry.name)) return { kind: 'bad-entry', name: entry.name };
    names.add(entry.name);
    const isKnown =
      entry.method === methodStored ? entry.packed === entry.size : entry.method === methodDeflated;
    if (!isKnown || entry.size > entry.packed * mostRatio) return { kind: 'bad-entry', name: entry.name };
  }
  if (at > end) return { kind: 'damaged' };
  return sum > mostBundleBytes ? { kind: 'too-large', mostBytes: mostBundleBytes } : undefined;
}

/**
 * How much of an entry is read at a time. Chromium unpacks a whole piece before it hands on any of it (measured: all
 * 500 MB of half a megabyte), and deflate swells to at most 1,032 times (zlib's technical details): 16 MB here.
 */
const storedPiece = 1_000_000;
const deflatedPiece = 16_000;

async function* packedPieces(
  source: SlicedSource,
  { offset, packed, name, method, until }: ZipEntry,
): AsyncGenerator<Uint8Array<ArrayBuffer>> {
  const head = await source.slice(offset, offset + localLength);
  const view = viewOf(head);
  if (head.length < localLength || view.getUint32(0, true) !== localSignature) throw new BrokenEntry();
  const nameLength = view.getUint16(26, true);
  const from = offset + localLength + nameLength + view.getUint16(28, true);
  if (nameOf(await source.slice(offset + localLength, offset + localLength + nameLength)) !== name)
    throw new BrokenEntry();
  if (from + packed > until) throw new BrokenEntry();
  const most = method === methodStored ? storedPiece : deflatedPiece;
  for (let at = from; at < from + packed; at += most) {
    const piece = await source.slice(at, Math.min(at + most, from + packed));
    if (piece.length === 0) throw new BrokenEntry();
    yield piece;
  }
}

async function* inflated(
  pieces: AsyncGenerator<Uint8Array<ArrayBuffer>>,
): AsyncGenerator<Uint8Array<ArrayBuffer>> {
  const stream = new ReadableStream<Uint8Array<ArrayBuffer>>({
    pull: async (controller) => {
      const next = await pieces.next();
      if (next.done) controller.close();
      else controller.enqueue(next.value);
    },
  });
  const reader = stream.pipeThrough(new DecompressionStream('deflate-raw')).getReader();
  try {
    for (;;) {
      const { done, value } = await reader.read();
      if (done) return;
      yield value;
    }
  } finally {
    await reader.cancel().catch(() => undefined);
  }
}

/**
 * The bytes of an entry, piece by piece; no more come than the directory says, whatever the packed ones unpack to.
 * Throws a BrokenEntry when length or checksum are others.
 */
export async function* entryPieces(
  source: SlicedSource,
  entry: ZipEntry,
): AsyncGenerator<Uint8Array<ArrayBuffer>> {
  const packed = packedPieces(source, entry);
  let [size, crc] = [0, 0];
  try {
    for await (const piece of entry.method === methodStored ? packed : inflated(packed)) {
      [size, crc] = [size + piece.length, crc32(piece, crc)];
      if (size > entry.size) throw new BrokenEntry();
      yield piece;
    }
  } catch (error) {
    // What does not inflate is a TypeError of the engine's.
    throw error instanceof TypeError ? new BrokenEntry() : error;
  }
  if (size !== entry.size || crc !== entry.crc) throw new BrokenEntry();
}

/** The bytes of a whole entry; undefined when it is larger than `most` or not what the directory says. */
export async function entryBytes(
  source: SlicedSource,
  entry: ZipEntry,
  most: number,
): Promise<Uint8Array<ArrayBuffer> | undefined> {
  if (entry.size > most) return undefined;
  const whole = new Uint8Array(entry.size);
  let at = 0;
  try {
    for await (const piece of entryPieces(source, entry)) {
      whole.set(piece, at);
      at += piece.length;
    }
  } catch (error) {
    if (error instanceof BrokenEntry) return undefined;
    throw error;
  }
  return whole;
}
