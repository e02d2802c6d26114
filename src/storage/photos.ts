import { ok } from '../core/result.ts';
import type { Database } from './database.ts';
import type { Presence } from './presence.ts';
import type { PhotoRow, StoreName, ThumbnailRow, Transaction } from './schema.ts';
import type { Photos, Thumbnails } from './store.ts';
import { together } from './transaction.ts';
import { caches, photoBytes } from './worth.ts';

export type ByteTransaction = Transaction<readonly StoreName[], 'readwrite'>;

/** Puts what is not here yet, and takes it from the list of what may be swept. */
async function putPhoto(tx: ByteTransaction, photo: PhotoRow): Promise<void> {
  const photos = tx.objectStore('photos');
  const [here] = await together<string | undefined | void>([
    () => photos.getKey(photo.sha256),
    () => tx.objectStore('unnamed').delete(photo.sha256),
  ]);
  // Never rewritten: an engine that rewrites large bytes may lose them.
  if (here === undefined) await photos.put(photo);
}

/** Bytes and thumbnails in a transaction of the caller's. */
export async function putBytes(
  tx: ByteTransaction,
  photos: readonly PhotoRow[],
  thumbnails: readonly ThumbnailRow[],
): Promise<void> {
  await together<unknown>([
    ...photos.map((photo) => () => putPhoto(tx, photo)),
    ...thumbnails.map((thumbnail) => () => tx.objectStore('thumbnails').put(thumbnail)),
  ]);
}

export const photosOf = (database: Database, presence: Presence): Photos => ({
  put: (photo) =>
    database.write(['photos', 'unnamed'], photoBytes, (tx) =>
      putPhoto(tx as unknown as ByteTransaction, photo).then(() => undefined),
    ),
  get: (sha256) => database.read(['photos'], (tx) => tx.objectStore('photos').get(sha256)),
  // Loaded when first wanted: no walk waits for it. Without its file there is another time.
  sweep: () =>
    import('./sweep.ts').then(
      ({ sweep }) => sweep(database, presence),
      () => ok(0),
    ),
});

export const thumbnailsOf = (database: Database): Thumbnails => ({
  put: (thumbnail) =>
    database.write(['thumbnails'], caches, (tx) =>
      tx
        .objectStore('thumbnails')
        .put(thumbnail)
        .then(() => undefined),
    ),
  get: (sha256) => database.read(['thumbnails'], (tx) => tx.objectStore('thumbnails').get(sha256)),
});
