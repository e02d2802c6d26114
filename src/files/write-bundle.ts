import { backupEntry, photoEntry, readMeEntry, reportEntry, walkEntry } from './bundle-names.ts';
import { onePiece, zipWriter, type Pieces, type WriteBytes } from './zip-write.ts';

/** A picture and the SHA-256 of its bytes. */
export interface BundlePhoto {
  readonly sha256: string;
  readonly bytes: Uint8Array<ArrayBuffer>;
}

/** What goes into a bundle: one walk file or one backup, and what belongs to it. */
export interface BundleParts {
  readonly kind: 'walk' | 'backup';
  readonly document: Pieces;
  /** One at a time, each once. */
  readonly photos: AsyncIterable<BundlePhoto>;
  readonly report?: Uint8Array<ArrayBuffer>;
  /** A few lines for whoever opens it without the app. */
  readonly readMe: string;
}

/** Writes a bundle, a zip container; holds one picture at a time. */
export async function writeBundle(parts: BundleParts, write: WriteBytes): Promise<void> {
  const zip = zipWriter(write);
  await zip.add(readMeEntry, onePiece(new TextEncoder().encode(parts.readMe)));
  await zip.add(parts.kind === 'walk' ? walkEntry : backupEntry, parts.document);
  if (parts.report) await zip.add(reportEntry, onePiece(parts.report));
  for await (const { sha256, bytes } of parts.photos) await zip.add(photoEntry(sha256), onePiece(bytes));
  await zip.end();
}
