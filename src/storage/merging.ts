import type { RecordKey } from '../core/keys.ts';
import { err, ok, type Result } from '../core/result.ts';
import { counterOf, deviceOf, observeStamps } from '../core/stamp.ts';
import { covers, isClash, mergeVersions, type Version } from '../core/versions.ts';
import { newDevice, readClock, type Random } from './clock.ts';
import type { Database } from './database.ts';
import type { StorageError } from './errors.ts';
import {
  commit,
  isIn,
  readSets,
  recordStores,
  revisionsOf,
  type Changed,
  type RecordTransaction,
  type Revision,
  type VersionSet,
} from './revision.ts';
import type { ClockRow } from './schema.ts';
import type { CountsAhead, Merged } from './store.ts';
import { restampUnsent } from './twin.ts';
import { records } from './worth.ts';

/** Merges versions made elsewhere into the sets that are here, in one transaction. */
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
  const strange = incoming.filter((version) => deviceOf(version.stamp) === clock.device && !known(version));
  if (strange.length === 0) return { clock, before };
  const sentThrough = Math.min(...strange.map(({ stamp }) => counterOf(stamp))) - 1;
  const to = newDevice(random);
  await restampUnsent(tx, { from: clock.device, to, sentThrough }, clock.joined === true);
  return { clock: { ...clock, device: to }, before: await readSets(tx, keys) };
}
