import type { ClearRecord } from '../../core/seal-payload.ts';
import type { FileError } from '../../files/file-error.ts';
import { openFile, type FileSource } from '../../files/open-file.ts';
import { forksOf } from '../../seal/check-seal.ts';
import { readSeal, type ReadSeal } from '../../seal/seals.ts';
import { viewSeal, type SealView } from './seal-view.ts';

/** What came of checking a file; nothing of it is kept. */
export type FileChecked =
  | { readonly kind: 'refused'; readonly error: FileError }
  | { readonly kind: 'backup' }
  | { readonly kind: 'checked'; readonly seals: readonly SealView[]; readonly fork: boolean };

async function sourceOf(file: File): Promise<FileSource> {
  const bytes = new Uint8Array(await file.arrayBuffer());
  return {
    size: bytes.length,
    open: async function* () {
      yield bytes;
    },
  };
}

/** Checks seals against the records of the file that they stand in. */
export async function checkSeals(
  texts: readonly string[],
  records: readonly ClearRecord[],
): Promise<FileChecked> {
  const seals: SealView[] = [];
  const holding: ReadSeal[] = [];
  for (const text of texts) {
    seals.push(await viewSeal(text, { records }));
    const read = await readSeal(text);
    if (read.ok) holding.push(read.value);
  }
  return { kind: 'checked', seals, fork: forksOf(holding).length > 0 };
}

/** Reads a file that somebody chose and checks every seal in it. Never throws, whatever the file is. */
export async function checkFile(file: File): Promise<FileChecked> {
  try {
    const opened = await openFile(await sourceOf(file));
    if (!opened.ok) return { kind: 'refused', error: opened.error };
    if (opened.value.kind === 'backup') return { kind: 'backup' };
    const { seals, versions, unstamped } = opened.value;
    return await checkSeals(seals, [...versions, ...unstamped]);
  } catch {
    return { kind: 'refused', error: { kind: 'unreadable' } };
  }
}
