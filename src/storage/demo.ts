import type { RecordKey } from '../core/keys.ts';
import { readClock, type Random } from './clock.ts';
import type { Database } from './database.ts';
import { rangeOf } from './range.ts';
import { recordStores, type Changed } from './revision.ts';
import type { Stored } from './store.ts';
import { together } from './transaction.ts';
import { records } from './worth.ts';

const demo = { prefix: 'demo/' };

/** Deletes the demo for good, without a trace that would have to be kept: it has never left the phone. */
export const wipeDemo = (database: Database, random: Random): Promise<Stored<Changed<undefined>>> =>
  database.write(recordStores, records, async (tx) => {
    const range = rangeOf(demo);
    const keys = (await tx.objectStore('versions').getAllKeys(range)) as RecordKey[];
    const derived = tx.objectStore('derived');
    const names = new Set(await derived.index('from').getAllKeys(range));
    const clock = await readClock(tx, random);
    const sequence = (clock.sequence ?? 0) + Math.min(1, keys.length);
    await together<unknown>([
      () => tx.objectStore('versions').delete(range),
      () => tx.objectStore('drafts').delete(range),
      ...[...names].map((name) => () => derived.delete(name)),
      () => tx.objectStore('meta').put({ ...clock, sequence }),
    ]);
    return { answer: undefined, keys };
  });
