import { writeBundle, type BundlePhoto } from '../../files/write-bundle.ts';
import { handover as words } from '../../words/en/handover.ts';
import { store } from '../data/phone.ts';

/** The pictures that are on this phone, one at a time; one that is gone is left out, and said on import. */
async function* photosOf(hashes: readonly string[]): AsyncGenerator<BundlePhoto> {
  for (const sha256 of hashes) {
    const found = await store.photos.get(sha256);
    if (found.ok && found.value) yield { sha256, bytes: new Uint8Array(found.value.bytes) };
  }
}

async function* piecesOf(document: Blob): AsyncGenerator<Uint8Array<ArrayBuffer>> {
  for (let at = 0; at < document.size; at += pieceBytes)
    yield new Uint8Array(await document.slice(at, at + pieceBytes).arrayBuffer());
}

const pieceBytes = 1_000_000;

/** A bundle of a document and pictures, as pieces that the browser may keep outside the memory. */
export async function bundleOf(
  kind: 'walk' | 'backup',
  document: string | Blob,
  photos: readonly string[],
): Promise<readonly Blob[]> {
  const blob = new Blob([document]);
  const pieces: Blob[] = [];
  await writeBundle(
    { kind, document: () => piecesOf(blob), photos: photosOf(photos), readMe: words.readMe },
    (piece) => void pieces.push(new Blob([piece])),
  );
  return pieces;
}
