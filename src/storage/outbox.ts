import { isDemo } from '../core/keys.ts';
import type { Version } from '../core/versions.ts';
import { readClock, type Random } from './clock.ts';
import type { Database } from './database.ts';
import type { StoreName, Transaction } from './schema.ts';
import type { Stored } from './store.ts';
import { together } from './transaction.ts';
import { records } from './worth.ts';

/** Queues versions for the office; the demo's never leave the phone. */
export async function enqueue(
  tx: Transaction<readonly StoreName[], 'readwrite'>,
  versions: readonly Version[],
): Promise<void> {
  const outbox = tx.objectStore('outbox');
  const real = versions.filter(({ key }) => !isDemo(key));
  await together(
    real.map(
      ({ key, stamp }) =>
        () =>
          outbox.put({ key, stamp }),
    ),
  );
}

/** Takes back what need not be sent any more because something newer here covers it. */
export async function dequeueCovered(
  tx: Transaction<readonly StoreName[], 'readwrite'>,
  before: readonly Version[],
  after: readonly Version[],
): Promise<void> {
  const outbox = tx.objectStore('outbox');
  const kept = new Set(after.map(({ stamp }) => stamp));
  const covered = before.filter(({ stamp }) => !kept.has(stamp));
  await together(
    covered.map(
      ({ key, stamp }) =>
        () =>
          outbox.delete([key, stamp]),
    ),
  );
}

/** From now on what is written is queued in the same transaction; what is here already is queued by this one. */
export const join = (database: Database, random: Random): Promise<Stored<undefined>> =>
  database.write(['versions', 'meta', 'outbox'], records, async (tx) => {
    const clock = await readClock(tx, random);
    await tx.objectStore('meta').put({ ...clock, joined: true });
    let cursor = await tx.objectStore('versions').openCursor();
    while (cursor !== null) {
      await enqueue(tx, cursor.value.versions);
      cursor = await cursor.continue();
    }
    return undefined;
  });
