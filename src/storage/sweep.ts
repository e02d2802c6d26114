import { prefixOf } from '../core/keys.ts';
import { ok } from '../core/result.ts';
import { isRemoval } from '../core/versions.ts';
import type { Database } from './database.ts';
import type { ByteTransaction } from './photos.ts';
import type { Presence } from './presence.ts';
import { rangeOf } from './range.ts';
import type { Stored } from './store.ts';
import { together } from './transaction.ts';
import { caches } from './worth.ts';

/**
 * Bytes may be without a record for two good reasons: an import puts them first, and a removal can still be undone
 * in the page that made it. Both end with their page. So what is unnamed is only noted, with the run that saw it;
 * it goes when a later run finds it noted and still unnamed, and no other page is open: whatever could have brought
 * it back is gone then. Putting bytes, and any change of their record, takes the note away in the same transaction,
 * so that an import that begins beside a sweep finds its bytes either noted no more or put anew.
 */
export async function sweep(database: Database, presence: Presence): Promise<Stored<number>> {
  if (!(await presence.isAlone())) return ok(0);
  return database.write(['versions', 'photos', 'thumbnails', 'unnamed'], caches, async (tx) => {
    const unnamed = await unnamedIn(tx);
    const notes = await tx.objectStore('unnamed').getAll();
    const due = notes.filter(({ sha256, run }) => run !== presence.run && unnamed.has(sha256));
    const noted = new Set(notes.map(({ sha256 }) => sha256));
    await together<unknown>([
      ...due.flatMap(({ sha256 }) => [
        () => tx.objectStore('photos').delete(sha256),
        () => tx.objectStore('thumbnails').delete(sha256),
      ]),
      ...[...due, ...notes.filter(({ sha256 }) => !unnamed.has(sha256))].map(
        ({ sha256 }) =>
          () =>
            tx.objectStore('unnamed').delete(sha256),
      ),
      ...[...unnamed]
        .filter((sha256) => !noted.has(sha256))
        .map((sha256) => () => tx.objectStore('unnamed').put({ sha256, run: presence.run })),
    ]);
    return due.length;
  });
}

/** The hashes of bytes and thumbnails that no photo record with a value names; of a clash either side does. */
async function unnamedIn(tx: ByteTransaction): Promise<ReadonlySet<string>> {
  const prefixes = [prefixOf('photo'), prefixOf('photo', { demo: true })];
  const rows = await together(
    prefixes.map((prefix) => () => tx.objectStore('versions').getAll(rangeOf({ prefix }))),
  );
  const hashes = await together(
    (['photos', 'thumbnails'] as const).map((name) => () => tx.objectStore(name).getAllKeys()),
  );
  const unnamed = new Set(hashes.flat().map(String));
  for (const { key, versions } of rows.flat())
    if (!versions.every(isRemoval)) unnamed.delete(key.slice(key.lastIndexOf('/') + 1));
  return unnamed;
}
