import type { Id, RecordKey } from '../core/keys.ts';
import { err, ok, type Result } from '../core/result.ts';
import { counterOf } from '../core/stamp.ts';
import {
  displayed,
  isClash,
  isNewer,
  mergeVersions,
  nextVersion,
  sameValue,
  valueVersion,
  type Change,
  type Version,
} from '../core/versions.ts';
import { readClock, type Random } from './clock.ts';
import type { Database } from './database.ts';
import type { StorageError } from './errors.ts';
import { putBytes } from './photos.ts';
import {
  commit,
  readSets,
  recordStores,
  revisionsOf,
  type Changed,
  type RecordTransaction,
  type Revision,
  type VersionSet,
} from './revision.ts';
import type { ClockRow, StoreName } from './schema.ts';
import type { NotEditable, Write, WriteOptions } from './store.ts';
import { together } from './transaction.ts';
import { photoBytes, records } from './worth.ts';

const withBytes = [...recordStores, 'photos', 'thumbnails'] as const;

/**
 * Makes the versions of these writes, puts the bytes that they name and drops the drafts that they came from, in one
 * transaction. Run twice (its first commit went unheard) it makes nothing new: what is there already is answered
 * with what is there.
 */
export async function writeRecords(
  database: Database,
  random: Random,
  writes: readonly Write[],
  { dropDrafts = [], by, photos = [], thumbnails = [] }: WriteOptions,
): Promise<Result<Changed<readonly Version[]>, StorageError | NotEditable>> {
  const hasBytes = photos.length + thumbnails.length > 0;
  const stores: readonly StoreName[] = hasBytes ? withBytes : recordStores;
  const done = await database.write(stores, hasBytes ? photoBytes : records, async (opened) => {
    const tx = opened as unknown as RecordTransaction;
    const before = await readSets(
      tx,
      writes.map(({ key }) => key),
    );
    const clock = await readClock(tx, random);
    const plan = planWrites(before, clock, writes, by);
    if (!plan.ok) return plan;
    const { made, revisions, counter } = plan.value;
    await together(dropDrafts.map((key) => () => tx.objectStore('drafts').delete(key)));
    await putBytes(opened, photos, thumbnails);
    if (revisions.length > 0) await commit(tx, { ...clock, counter }, revisions);
    return ok({ answer: made, keys: revisions.map(({ key }) => key) });
  });
  return done.ok ? done.value : done;
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
  by = clock.device as string as Id,
): Result<Plan, NotEditable> {
  const after = new Map(before);
  const made: Version[] = [];
  let { counter } = clock;
  for (const write of writes) {
    const set = after.get(write.key) ?? [];
    const refusal = refusalOf(set, write);
    if (refusal !== undefined) return err(refusal);
    const shown = displayed(set);
    const version = nextVersion(set, changeOf(write, shown), { device: clock.device, counter, by });
    const isNews = shown === undefined || isClash(set) || !sameValue(shown, version);
    made.push(isNews ? version : shown);
    if (!isNews) continue;
    counter = counterOf(version.stamp);
    after.set(write.key, mergeVersions(set, [version]));
  }
  return ok({ made, revisions: revisionsOf(before, after), counter });
}

const changeOf = (write: Write, shown: Version | undefined): Change =>
  'edit' in write ? { key: write.key, value: write.edit(shown?.value) } : write;

function refusalOf(set: VersionSet, { key, decides }: Write): NotEditable | undefined {
  if (set.some(({ value }) => value !== undefined && isNewer(value, valueVersion)))
    return { kind: 'made-by-newer', key };
  return isClash(set) && decides !== true ? { kind: 'clash', key } : undefined;
}
