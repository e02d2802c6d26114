import type { FileError } from '../../files/file-error.ts';
import { openFile } from '../../files/open-file.ts';
import type { Pictures } from '../../files/read-bundle.ts';
import { sourceOf, type ImportWork } from '../actions/import.ts';
import { forksOf, type Beside } from '../../seal/check-seal.ts';
import { readSeal, type ReadSeal } from '../../seal/seals.ts';
import { viewSeal, type SealView } from '../../files/seal-view.ts';

/** What came of checking a file; nothing of it is kept. */
export type FileChecked =
  | { readonly kind: 'refused'; readonly error: FileError }
  | { readonly kind: 'backup' }
  | { readonly kind: 'checked'; readonly seals: readonly SealView[]; readonly fork: boolean };

/** The pictures of a bundle; a file without any is checked without them. */
function photosOf(pictures: Pictures | undefined): Pick<Beside, 'photo'> {
  if (!pictures) return {};
  return { photo: async (sha256) => (pictures.hashes.includes(sha256) ? pictures.read(sha256) : undefined) };
}

async function checkSeals(texts: readonly string[], beside: Beside): Promise<FileChecked> {
  const seals: SealView[] = [];
  const holding: ReadSeal[] = [];
  for (const text of texts) {
    seals.push(await viewSeal(text, beside));
    const read = await readSeal(text);
    if (read.ok) holding.push(read.value);
  }
  return { kind: 'checked', seals, fork: forksOf(holding).length > 0 };
}

/** Reads a file that somebody chose and checks every seal in it. Never throws, whatever the file is. */
export async function checkFile(file: Blob, work: ImportWork): Promise<FileChecked> {
  try {
    const opened = await openFile(sourceOf(file, work));
    if (!opened.ok) return { kind: 'refused', error: opened.error };
    if (opened.value.kind === 'backup') return { kind: 'backup' };
    const { seals, versions, unstamped, pictures } = opened.value;
    return await checkSeals(seals, { records: [...versions, ...unstamped], ...photosOf(pictures) });
  } catch {
    return { kind: 'refused', error: { kind: 'unreadable' } };
  }
}
