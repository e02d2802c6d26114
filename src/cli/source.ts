import { createReadStream } from 'node:fs';
import { open } from 'node:fs/promises';
import type { FileSource } from '../files/open-file.ts';

export type Source = Required<FileSource>;

/** A file of any size, to be read in any order. */
export function fileSource(path: string, size: number): Source {
  return {
    size,
    open: () => createReadStream(path),
    slice: async (from, to) => {
      const file = await open(path);
      try {
        const bytes = new Uint8Array(Math.max(0, Math.min(to, size) - from));
        const { bytesRead } = await file.read(bytes, 0, bytes.length, from);
        return bytes.subarray(0, bytesRead);
      } finally {
        await file.close();
      }
    },
  };
}

/** What came in by pipe, which can be read but once. */
export const bytesSource = (bytes: Uint8Array<ArrayBuffer>): Source => ({
  size: bytes.length,
  open: async function* () {
    yield bytes;
  },
  slice: async (from, to) => bytes.slice(from, to),
});
