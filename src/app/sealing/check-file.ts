import type { FileError } from '../../files/file-error.ts';
import { checkSeals, type CheckedSeals } from '../../files/check-seals.ts';
import { openFile } from '../../files/open-file.ts';
import { sourceOf, type ImportWork } from '../actions/import.ts';

/** What came of checking a file; nothing of it is kept. */
export type FileChecked =
  | { readonly kind: 'refused'; readonly error: FileError }
  | { readonly kind: 'backup' }
  | ({ readonly kind: 'checked' } & CheckedSeals);

/** Reads a file that somebody chose and checks every seal in it. Never throws, whatever the file is. */
export async function checkFile(file: Blob, work: ImportWork): Promise<FileChecked> {
  try {
    const opened = await openFile(sourceOf(file, work));
    if (!opened.ok) return { kind: 'refused', error: opened.error };
    if (opened.value.kind === 'backup') return { kind: 'backup' };
    return { kind: 'checked', ...(await checkSeals(opened.value)) };
  } catch {
    return { kind: 'refused', error: { kind: 'unreadable' } };
  }
}
