import type { RecordKey } from '../core/keys.ts';
import { err, ok, type Result } from '../core/result.ts';
import { counterOf, deviceOf, observeStamps, type DeviceId, type Stamp } from '../core/stamp.ts';
import {
  covers,
  decision,
  displayed,
  isClash,
  isNewer,
  mergeVersions,
  nextVersion,
  sameValue,
  valueVersion,
  type Version,
} from '../core/versions.ts';
import { readClock, newDevice, type Random } from './clock.ts';
import type { Database } from './database.ts';
import { dropDerived } from './derived.ts';
import type { StorageError } from './errors.ts';
import { dequeueCovered, enqueue } from './outbox.ts';
import { recordRow } from './record-row.ts';
import type { ClockRow, Transaction } from './schema.ts';
import type { CountsAhead, MadeByNewer, Merged, Write, WriteOptions } from './store.ts';
import { restampUnsent } from './twin.ts';
import { records } from './worth.ts';

/** What every change of records may touch. */
export const recordStores = ['versions', 'meta', 'drafts', 'outbox', 'derived'] as const;
export type RecordTransaction = Transaction<typeof recordStores, 'readwrite'>;

type VersionSet = readonly Version[];

/** One record before and after. */
interface Revision {
  readonly key: RecordKey;
  readonly before: VersionSet;
  readonly after: VersionSet;
}

/** What a transaction answers, and the keys that others have to be told about once it has completed. */
export interface Changed<T> {
  readonly answer: T;
  readonly keys: readonly RecordKey[];
}

const isIn = (set: VersionSet, version: Version): boolean =>
  set.some((one) => one.stamp === version.stamp && sameValue(one, version));

async function readSets(
  tx: RecordTransaction,
  keys: readonly RecordKey[],
): Promise<Map<RecordKey, VersionSet>> {
  const wanted = [...new Set(keys)];
  const rows = await Promise.all(wanted.map((key) => tx.objectStore('versions').get(key)));
  return new Map(wanted.map((key, at) => [key, rows[at]?.versions ?? []]));
}

/** Puts the revised records, with everything that has to change with them. */
async function commit(tx: RecordTransaction, clock: ClockRow, revisions: readonly Revision[]): Promise<void> {
  const versions = tx.objectStore('versions');
  const keys = revisions.map(({ key }) => key);
  const puts = revisions.map(({ key, after }) => versions.put(recordRow(key, after)));
  const queued = clock.joined === true ? revisions.map((revision) => requeue(tx, revision)) : [];
  const next: ClockRow = { ...clock, sequence: (clock.sequence ?? 0) + 1 };
  await Promise.all([...puts, ...queued, dropDerived(tx, keys), tx.objectStore('meta').put(next)]);
}

async function requeue(tx: RecordTransaction, { before, after }: Revision): Promise<void> {
  await dequeueCovered(tx, before, after);
  await enqueue(
    tx,
    after.filter((version) => !isIn(before, version)),
  );
}

interface Plan {
  readonly made: readonly Version[];
  readonly revisions: readonly Revision[];
  readonly counter: number;
}

/** The versions that these writes make on top of what is there, one after the other. */
function planWrites(
  before: ReadonlyMap<RecordKey, VersionSet>,
  clock: ClockRow,
  writes: readonly Write[],
  by: WriteOptions['by'],
): Plan {
  const after = new Map(before);
  let { counter } = clock;
  const made = writes.map((write) => {
    const set = after.get(write.key) ?? [];
    const author = {
      device: clock.device,
      counter,
      by: by ?? (clock.device as string as NonNullable<typeof by>),
    };
    const version = write.decides ? decision(set, write, author) : nextVersion(set, write, author);
    const shown = displayed(set);
    const settles = write.decides === true && isClash(set);
    if (shown !== undefined && sameValue(shown, version) && !settles) return shown;
    counter = counterOf(version.stamp);
    after.set(write.key, mergeVersions(set, [version]));
    return version;
  });
  return { made, revisions: revisionsOf(before, after), counter };
}

function revisionsOf(
  before: ReadonlyMap<RecordKey, VersionSet>,
  after: ReadonlyMap<RecordKey, VersionSet>,
): readonly Revision[] {
  const all = [...after].map(([key, set]) => ({ key, before: before.get(key) ?? [], after: set }));
  return all.filter((revision) => revision.after.some((version) => !isIn(revision.before, version)));
}

export async function writeRecords(
  database: Database,
  random: Random,
  writes: readonly Write[],
  { dropDrafts = [], by }: WriteOptions,
): Promise<Result<Changed<readonly Version[]>, StorageError | MadeByNewer>> {
  const done = await database.write(recordStores, records, async (tx) => {
    const sets = await readSets(
      tx,
      writes.map(({ key }) => key),
    );
    for (const [key, set] of sets) {
      const newer = set.some(({ value }) => value !== undefined && isNewer(value, valueVersion));
      if (newer) return err<MadeByNewer>({ kind: 'made-by-newer', key });
    }
    const clock = await readClock(tx, random);
    const { made, revisions, counter } = planWrites(sets, clock, writes, by);
    await Promise.all(dropDrafts.map((key) => tx.objectStore('drafts').delete(key)));
    if (revisions.length > 0) await commit(tx, { ...clock, counter }, revisions);
    return ok({ answer: made, keys: revisions.map(({ key }) => key) });
  });
  return done.ok ? done.value : done;
}

export async function mergeRecords(
  database: Database,
  random: Random,
  incoming: readonly Version[],
  furthest: number,
): Promise<Result<Changed<Merged>, StorageError | CountsAhead>> {
  const done = await database.write(recordStores, records, async (tx) => {
    const found = await readClock(tx, random);
    const counter = observeStamps(
      found.counter,
      incoming.map(({ stamp }) => stamp),
      furthest,
    );
    if (!counter.ok) return err<CountsAhead>({ kind: 'counts-ahead', stamp: counter.error });
    const { clock, before } = await withoutTwin(tx, found, random, incoming);
    const after = mergedSets(before, incoming);
    const revisions = revisionsOf(before, after);
    if (revisions.length > 0) await commit(tx, { ...clock, counter: counter.value }, revisions);
    return ok({ answer: summary(revisions, incoming), keys: revisions.map(({ key }) => key) });
  });
  return done.ok ? done.value : done;
}

function mergedSets(
  before: ReadonlyMap<RecordKey, VersionSet>,
  incoming: readonly Version[],
): ReadonlyMap<RecordKey, VersionSet> {
  const groups = new Map<RecordKey, Version[]>();
  for (const version of incoming) {
    const group = groups.get(version.key);
    if (group === undefined) groups.set(version.key, [version]);
    else group.push(version);
  }
  return new Map([...groups].map(([key, group]) => [key, mergeVersions(before.get(key) ?? [], group)]));
}

function summary(revisions: readonly Revision[], incoming: readonly Version[]): Merged {
  const fresh = revisions.map(
    ({ before, after }) => after.filter((version) => !isIn(before, version)).length,
  );
  const added = fresh.reduce((sum, count) => sum + count, 0);
  const clashes = revisions.filter(({ before, after }) => isClash(after) && !isClash(before));
  return { added, known: incoming.length - added, clashes: clashes.map(({ key }) => key) };
}

/**
 * The sets before a merge. When versions come in under our own id that we never made, another device lives
 * under it (a cloned profile, a restored phone): we take a new id, and so does what only we have.
 */
async function withoutTwin(
  tx: RecordTransaction,
  clock: ClockRow,
  random: Random,
  incoming: readonly Version[],
): Promise<{ readonly clock: ClockRow; readonly before: Map<RecordKey, VersionSet> }> {
  const keys = incoming.map(({ key }) => key);
  const before = await readSets(tx, keys);
  const known = (version: Version): boolean => {
    const set = before.get(version.key) ?? [];
    return isIn(set, version) || set.some((one) => covers(one, version));
  };
  const strange = incoming.filter((version) => isBy(clock.device, version.stamp) && !known(version));
  if (strange.length === 0) return { clock, before };
  const sentThrough = Math.min(...strange.map(({ stamp }) => counterOf(stamp))) - 1;
  const to = newDevice(random);
  await restampUnsent(tx, { from: clock.device, to, sentThrough }, clock.joined === true);
  return { clock: { ...clock, device: to }, before: await readSets(tx, keys) };
}

const isBy = (device: DeviceId, stamp: Stamp): boolean => deviceOf(stamp) === device;
