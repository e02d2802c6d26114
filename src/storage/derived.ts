import { ownersOf, type RecordKey } from '../core/keys.ts';
import { ok } from '../core/result.ts';
import type { Database } from './database.ts';
import type { ClockRow, StoreName, Transaction } from './schema.ts';
import type { Derivation, Stored } from './store.ts';
import { together } from './transaction.ts';
import { caches } from './worth.ts';

/**
 * The kept result, or a new one that is kept. It is kept only if no record has changed since before it was
 * worked out: what was computed from the state before a change must not outlive that change.
 */
export async function derive<T>(database: Database, wanted: Derivation<T>): Promise<Stored<T>> {
  const { name, core, from } = wanted;
  const found = await database.read(['derived', 'meta'], async (tx) => {
    const row = await tx.objectStore('derived').get(name);
    const sequence = sequenceOf(await tx.objectStore('meta').get('clock'));
    return { row: row?.core === core ? row : undefined, sequence };
  });
  if (!found.ok) return found;
  if (found.value.row !== undefined) return ok(found.value.row.value as T);
  const computed = await wanted.compute();
  if (!computed.ok) return computed;
  const { value } = computed;
  await database.write(['derived', 'meta'], caches, async (tx) => {
    if (sequenceOf(await tx.objectStore('meta').get('clock')) !== found.value.sequence) return;
    await tx.objectStore('derived').put({ name, core, from, value });
  });
  return computed;
}

const sequenceOf = (row: { readonly name: string } | undefined): number =>
  (row as ClockRow | undefined)?.sequence ?? 0;

/** Drops what was worked out from these records, in the transaction that changes them. */
export async function dropDerived(
  tx: Transaction<readonly StoreName[], 'readwrite'>,
  keys: readonly RecordKey[],
): Promise<void> {
  const derived = tx.objectStore('derived');
  const owners = new Set(keys.flatMap(ownersOf));
  const found = await together([...owners].map((owner) => () => derived.index('from').getAllKeys(owner)));
  await together([...new Set(found.flat())].map((name) => () => derived.delete(name)));
}
