import { isKind, partsOf, type RecordKey } from '../core/keys.ts';
import { sameValue, type Version } from '../core/versions.ts';
import { dropDerived } from './derived.ts';
import { dequeueCovered, enqueue } from './outbox.ts';
import { recordRow } from './record-row.ts';
import type { ClockRow, Transaction } from './schema.ts';
import { together } from './transaction.ts';

/** What every change of records may touch. */
export const recordStores = ['versions', 'meta', 'drafts', 'outbox', 'derived', 'unnamed'] as const;
export type RecordTransaction = Transaction<typeof recordStores, 'readwrite'>;

export type VersionSet = readonly Version[];

/** One record before and after. */
export interface Revision {
  readonly key: RecordKey;
  readonly before: VersionSet;
  readonly after: VersionSet;
}

/** What a transaction answers, and the keys that others have to be told about once it has completed. */
export interface Changed<T> {
  readonly answer: T;
  readonly keys: readonly RecordKey[];
}

export const isIn = (set: VersionSet, version: Version): boolean =>
  set.some((one) => one.stamp === version.stamp && sameValue(one, version));

export async function readSets(
  tx: RecordTransaction,
  keys: readonly RecordKey[],
): Promise<Map<RecordKey, VersionSet>> {
  const wanted = [...new Set(keys)];
  const rows = await together(wanted.map((key) => () => tx.objectStore('versions').get(key)));
  return new Map(wanted.map((key, at) => [key, rows[at]?.versions ?? []]));
}

/** Puts the revised records, with everything that has to change with them. */
export async function commit(
  tx: RecordTransaction,
  clock: ClockRow,
  revisions: readonly Revision[],
): Promise<void> {
  const versions = tx.objectStore('versions');
  const keys = revisions.map(({ key }) => key);
  const queued = clock.joined === true ? revisions : [];
  const next: ClockRow = { ...clock, sequence: (clock.sequence ?? 0) + 1 };
  await together<unknown>([
    ...revisions.map(
      ({ key, after }) =>
        () =>
          versions.put(recordRow(key, after)),
    ),
    ...queued.map((revision) => () => requeue(tx, revision)),
    () => dropDerived(tx, keys),
    ...hashesOf(keys).map((sha256) => () => tx.objectStore('unnamed').delete(sha256)),
    () => tx.objectStore('meta').put(next),
  ]);
}

/** Bytes that a photo record begins or ceases to name: not to be swept in this run of the app. */
const hashesOf = (keys: readonly RecordKey[]): readonly string[] =>
  keys.flatMap((key) => (isKind(key, 'photo') ? [partsOf(key).hash] : []));

async function requeue(tx: RecordTransaction, { before, after }: Revision): Promise<void> {
  await dequeueCovered(tx, before, after);
  await enqueue(
    tx,
    after.filter((version) => !isIn(before, version)),
  );
}

/** The records in which something is new. */
export function revisionsOf(
  before: ReadonlyMap<RecordKey, VersionSet>,
  after: ReadonlyMap<RecordKey, VersionSet>,
): readonly Revision[] {
  const all = [...after].map(([key, set]) => ({ key, before: before.get(key) ?? [], after: set }));
  return all.filter((revision) => revision.after.some((version) => !isIn(revision.before, version)));
}
