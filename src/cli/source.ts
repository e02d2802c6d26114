import { createReadStream } from 'node:fs';
import { open, stat } from 'node:fs/promises';
import type { FileSource } from '../files/open-file.ts';

/** A file of any size, to be read in any order. */
export async function sourceOf(path: string): Promise<Required<FileSource>> {
  const { size } = await stat(path);
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
