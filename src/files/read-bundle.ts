import { err, ok, type Result } from '../core/result.ts';
import { sha256Hex } from '../seal/hash.ts';
import { BrokenEntry } from './broken-entry.ts';
import { backupEntry, isOurs, photoOf, walkEntry } from './bundle-names.ts';
import type { FileError } from './file-error.ts';
import { mostDocumentBytes, mostPhotoBytes, mostPhotoMegapixels } from './file-limits.ts';
import { isJpeg, readJpeg } from './jpeg.ts';
import { entryBytes, entryPieces, readDirectory, type SlicedSource, type ZipEntry } from './zip-read.ts';

/** The pictures of a bundle, each checked. */
export interface Pictures {
  /** Their SHA-256. */
  readonly hashes: readonly string[];
  /** Reads one; throws when the file has changed since it was checked. */
  readonly read: (sha256: string) => Promise<Uint8Array<ArrayBuffer>>;
}

/** What a bundle holds, the document not read yet. */
export interface Bundle {
  readonly document:
    | { readonly kind: 'walk'; readonly bytes: Uint8Array<ArrayBuffer> }
    | { readonly kind: 'backup'; readonly open: () => AsyncIterable<Uint8Array<ArrayBuffer>> };
  readonly pictures: Pictures;
}

/** The bytes of a picture, if they are a JPEG and hash to the name. */
async function pictureOf(
  source: SlicedSource,
  entry: ZipEntry,
  sha256: string,
): Promise<Uint8Array<ArrayBuffer> | undefined> {
  const bytes = await entryBytes(source, entry, mostPhotoBytes);
  return bytes && isJpeg(bytes) && (await sha256Hex(bytes)) === sha256 ? bytes : undefined;
}

type Photos = ReadonlyMap<string, ZipEntry>;

/** Every picture by its hash; one that is there under two names is there once. */
const photosIn = (entries: readonly ZipEntry[]): Photos =>
  new Map(
    entries.flatMap((entry) => {
      const sha256 = photoOf(entry.name);
      return sha256 === undefined ? [] : [[sha256, entry] as const];
    }),
  );

async function checkPhotos(source: SlicedSource, photos: Photos): Promise<FileError | undefined> {
  for (const [sha256, entry] of photos) {
    const { name } = entry;
    const bytes = await pictureOf(source, entry, sha256);
    if (!bytes) return { kind: 'wrong-photo', name };
    // Few bytes can say to be shown as a picture that takes all memory of a phone.
    const { width, height } = readJpeg(bytes);
    if (width * height > mostPhotoMegapixels * 1e6)
      return { kind: 'large-photo', name, mostMegapixels: mostPhotoMegapixels };
  }
  return undefined;
}

const picturesOf = (source: SlicedSource, photos: Photos): Pictures => ({
  hashes: [...photos.keys()],
  read: async (sha256) => {
    const entry = photos.get(sha256);
    const bytes = entry && (await pictureOf(source, entry, sha256));
    if (!bytes) throw new BrokenEntry();
    return bytes;
  },
});

async function documentOf(
  source: SlicedSource,
  entries: readonly ZipEntry[],
): Promise<Result<Bundle['document'], FileError>> {
  const backup = entries.find(({ name }) => name === backupEntry);
  const walk = entries.find(({ name }) => name === walkEntry);
  if (backup && walk) return err({ kind: 'bad-entry', name: walk.name });
  if (backup) return ok({ kind: 'backup', open: () => entryPieces(source, backup) });
  if (!walk) return err({ kind: 'wrong-format' });
  if (walk.size > mostDocumentBytes) return err({ kind: 'too-large', mostBytes: mostDocumentBytes });
  const bytes = await entryBytes(source, walk, mostDocumentBytes);
  return bytes ? ok({ kind: 'walk', bytes }) : err({ kind: 'damaged' });
}

/**
 * Opens a bundle and checks the directory, every name and every picture, one at a time; the document is left to be
 * read as a file of its own. Never throws for what the file holds, only where the source cannot be read.
 */
export async function readBundle(source: SlicedSource): Promise<Result<Bundle, FileError>> {
  const entries = await readDirectory(source);
  if (!entries.ok) return entries;
  const foreign = entries.value.find(({ name }) => !isOurs(name));
  if (foreign) return err({ kind: 'bad-entry', name: foreign.name });
  const document = await documentOf(source, entries.value);
  if (!document.ok) return document;
  const photos = photosIn(entries.value);
  const fault = await checkPhotos(source, photos);
  return fault ? err(fault) : ok({ document: document.value, pictures: picturesOf(source, photos) });
}
