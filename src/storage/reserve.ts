import { ok } from '../core/result.ts';
import type { Random } from './clock.ts';
import type { Database } from './database.ts';
import type { Connection } from './schema.ts';
import type { Stored } from './store.ts';
import { inTransaction } from './transaction.ts';
import { caches } from './worth.ts';

/** Set aside so that a full phone can still keep the last readings. */
export const reserveBytes = 5 * 1024 * 1024;

const chunk = 65_536; // what getRandomValues fills at once

/** Bytes that no engine can compress: 60 MB of zeros took 2.8 MB in Chromium. */
function filling(random: Random): Uint8Array {
  const bytes = new Uint8Array(reserveBytes);
  for (let at = 0; at < bytes.length; at += chunk) random(bytes.subarray(at, at + chunk));
  return bytes;
}

/**
 * Gives the room back, and tells whether there was a reserve; a connection that cannot even do that leaves the
 * failure to the caller's next try.
 */
export const freeReserve = (db: Connection): Promise<boolean> =>
  inTransaction(db, {
    stores: ['reserve'],
    mode: 'readwrite',
    durability: 'strict',
    work: async (tx) => {
      const held = await tx.objectStore('reserve').getKey('reserve');
      await tx.objectStore('reserve').clear();
      return held !== undefined;
    },
  });

/** Sets the reserve aside if it is not there; that it cannot be is the sign that a long walk may not fit. */
export async function ensureReserve(database: Database, random: Random): Promise<Stored<undefined>> {
  const found = await database.read(['reserve'], (tx) => tx.objectStore('reserve').getKey('reserve'));
  if (!found.ok) return found;
  if (found.value === undefined) {
    const bytes = filling(random);
    const put = await database.write(['reserve'], caches, (tx) =>
      tx.objectStore('reserve').put({ name: 'reserve', bytes }),
    );
    if (!put.ok) return put;
  }
  database.hasRoom();
  return ok();
}
