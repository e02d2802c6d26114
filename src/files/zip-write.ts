import { assert } from '../core/result.ts';
import { crc32 } from './crc32.ts';
import {
  centralLength,
  centralSignature,
  elsewhere32,
  endLength,
  endSignature,
  localLength,
  localSignature,
  methodStored,
  noDate,
  versionNeeded,
} from './zip-format.ts';

/** Takes the next piece of a file. */
export type WriteBytes = (piece: Uint8Array<ArrayBuffer>) => void | Promise<void>;

/** The pieces of an entry; they are gone through twice, first for their length and checksum. */
export type Pieces = () => AsyncIterable<Uint8Array<ArrayBuffer>>;

interface Written {
  readonly name: Uint8Array;
  readonly crc: number;
  readonly size: number;
  readonly offset: number;
}

/** A container that is written entry by entry. */
export interface ZipWriter {
  /** Adds an entry as it is: pictures do not pack, and what holds them is then as large as they are. */
  readonly add: (name: string, pieces: Pieces) => Promise<void>;
  readonly end: () => Promise<void>;
}

const utf8 = new TextEncoder();

/** What the local and the central header of an entry both say. */
function putCommon(view: DataView, at: number, { crc, size, name }: Written): void {
  view.setUint16(at, versionNeeded, true);
  view.setUint16(at + 4, methodStored, true);
  view.setUint16(at + 8, noDate, true);
  view.setUint32(at + 10, crc, true);
  view.setUint32(at + 14, size, true);
  view.setUint32(at + 18, size, true);
  view.setUint16(at + 22, name.length, true);
}

function header(length: number, signature: number, fill: (view: DataView) => void): Uint8Array<ArrayBuffer> {
  const bytes = new Uint8Array(length);
  const view = new DataView(bytes.buffer);
  view.setUint32(0, signature, true);
  fill(view);
  return bytes;
}

function centralHeader(entry: Written): Uint8Array<ArrayBuffer> {
  const bytes = header(centralLength + entry.name.length, centralSignature, (view) => {
    view.setUint16(4, versionNeeded, true);
    putCommon(view, 6, entry);
    view.setUint32(42, entry.offset, true);
  });
  bytes.set(entry.name, centralLength);
  return bytes;
}

function localHeader(entry: Written): Uint8Array<ArrayBuffer> {
  const bytes = header(localLength + entry.name.length, localSignature, (view) => putCommon(view, 4, entry));
  bytes.set(entry.name, localLength);
  return bytes;
}

async function measured(pieces: Pieces): Promise<{ readonly crc: number; readonly size: number }> {
  let [crc, size] = [0, 0];
  for await (const piece of pieces()) [crc, size] = [crc32(piece, crc), size + piece.length];
  return { crc, size };
}

/** Writes a zip container without packing, holding one piece at a time; above 4 GB is a bug. */
export function zipWriter(write: WriteBytes): ZipWriter {
  const entries: Written[] = [];
  let offset = 0;
  const put = async (piece: Uint8Array<ArrayBuffer>): Promise<void> => {
    offset += piece.length;
    assert(offset < elsewhere32, 'a container below 4 GB');
    await write(piece);
  };
  const add = async (name: string, pieces: Pieces): Promise<void> => {
    const entry = { name: utf8.encode(name), ...(await measured(pieces)), offset };
    entries.push(entry);
    await put(localHeader(entry));
    for await (const piece of pieces()) await put(piece);
  };
  const end = async (): Promise<void> => {
    const start = offset;
    for (const entry of entries) await put(centralHeader(entry));
    const size = offset - start;
    await put(
      header(endLength, endSignature, (view) => {
        view.setUint16(8, entries.length, true);
        view.setUint16(10, entries.length, true);
        view.setUint32(12, size, true);
        view.setUint32(16, start, true);
      }),
    );
  };
  return { add, end };
}

/** Bytes that lie in memory, as one piece. */
export const onePiece = (bytes: Uint8Array<ArrayBuffer>): Pieces =>
  async function* () {
    yield bytes;
  };
