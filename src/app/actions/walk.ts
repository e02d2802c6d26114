import { readingKey, valueIn } from '../../core/assemble.ts';
import type { Item } from '../../core/items.ts';
import { isDemo, makeKey, partsOf, prefixOf, type Place, type RecordKey } from '../../core/keys.ts';
import type { Machine } from '../../core/machine.ts';
import type { Reading, UnseenReason } from '../../core/readings.ts';
import { ok, type Result } from '../../core/result.ts';
import type { PlacedReading } from '../../core/states.ts';
import type { Step } from '../../core/steps.ts';
import { displayed, type RecordValue } from '../../core/versions.ts';
import type { Caution, Walk } from '../../core/walk.ts';
import type { StorageError } from '../../storage/errors.ts';
import type { NotEditable, Write } from '../../storage/store.ts';
import { newId, observedNow } from '../data/moment.ts';
import { store } from '../data/phone.ts';
import { save, type Saved } from './saved.ts';

const asValue = (value: object): RecordValue => value as RecordValue;

/** The draft that says at which step a walk stands; kept apart from the record, which only findings change. */
export const hereKey = (walk: string): string => `here/${walk}`;

/** The draft of what is half typed at a step. */
export const padKey = (walk: string, step: string): string => `pad/${walk}/${step}`;

/** Starts a walk with its sheet and rule set pinned; answers its key once it is on disk. */
export async function startWalk(walk: Walk): Promise<Result<RecordKey<'walk'>, StorageError>> {
  const key = makeKey({ kind: 'walk', id: newId(), demo: isDemo(walk.machine) });
  const pins = await Promise.all([pinned(walk.sheet?.key), pinned(walk.rules?.key)]);
  const [sheet, rules] = pins;
  const value = {
    ...walk,
    ...(sheet && { sheet }),
    ...(rules && { rules }),
    startedAt: observedNow(),
  };
  const meter = await meterWrite(walk);
  const written = await store.write([{ key, value: asValue(value) }, ...meter]);
  if (!written.ok) return { ok: false, error: written.error as StorageError };
  return ok(key);
}

/** The machine with the meter as read at the start of a walk, where that is further than what was known. */
async function meterWrite({ machine: machineKey, meterHours }: Walk): Promise<readonly Write[]> {
  const found = await store.read(machineKey as RecordKey);
  const machine = found.ok ? valueIn<Machine>(found.value) : undefined;
  if (!machine || meterHours === undefined || meterHours <= (machine.meterHours ?? -1)) return [];
  return [{ key: machineKey as RecordKey, value: asValue({ ...machine, meterHours }) }];
}

async function pinned(key: string | undefined): Promise<{ key: string; stamp?: string } | undefined> {
  if (key === undefined) return undefined;
  const found = await store.read(key as RecordKey);
  const stamp = found.ok ? displayed(found.value)?.stamp : undefined;
  return { key, ...(stamp !== undefined && { stamp }) };
}

/** Changes fields of a walk as it is on disk now, so that two tabs do not undo each other. */
export async function changeWalk(
  key: RecordKey<'walk'>,
  change: (walk: Walk) => Partial<Walk>,
  dropDrafts: readonly string[] = [],
): Promise<Saved> {
  const found = await store.read(key);
  if (!found.ok) return found;
  const walk = valueIn<Walk>(found.value);
  if (!walk) return ok(undefined);
  const edit = (now: RecordValue = asValue(walk)): RecordValue =>
    asValue({ ...now, ...change(now as unknown as Walk) });
  return save([{ key, edit }], dropDrafts);
}

/** The same, but a sealed walk stays as it was sealed; answers whether it was changed. */
export async function changeUnsealed(
  key: RecordKey<'walk'>,
  change: (walk: Walk) => Partial<Walk>,
  dropDrafts: readonly string[] = [],
): Promise<Result<'changed' | 'sealed', StorageError | NotEditable>> {
  const prefix = prefixOf('seal', { owner: partsOf(key).id, demo: isDemo(key) });
  const seals = await store.list({ prefix, limit: 1 });
  if (!seals.ok) return seals;
  if (seals.value.length > 0) return ok('sealed');
  const saved = await changeWalk(key, change, dropDrafts);
  return saved.ok ? ok('changed') : saved;
}

/** Makes readings in one go; the drafts that they came from leave with them. */
export function saveReadings(
  walk: string,
  readings: readonly PlacedReading[],
  dropDrafts: readonly string[] = [],
): Promise<Saved> {
  const at = observedNow();
  const writes = readings.flatMap(({ reading, ...place }) => {
    const key = readingKey(walk, place);
    return key ? [{ key, value: asValue({ ...reading, at }) }] : [];
  });
  return save(writes, dropDrafts);
}

/** Takes readings back: their places are open until they are read again. */
export function takeBack(walk: string, readings: readonly Omit<PlacedReading, 'reading'>[]): Promise<Saved> {
  const writes = readings.flatMap(({ place, item, n }): Write[] => {
    const key = readingKey(walk, { place, item, n });
    return key ? [{ key, removed: true }] : [];
  });
  return save(writes);
}

/** Nothing found, as a reading of its own. */
function fine({ ask }: Item): Reading | undefined {
  const nothing = { lengthMm: 0, depthMm: 0, cordVisible: false, typed: ['', ''], unit: 'mm' as const };
  if (ask.kind === 'crack') return { v: 1, what: { kind: 'crack', ...nothing } };
  const [finding] = ask.kind === 'finding' ? ask.findings : [];
  return finding === undefined ? undefined : { v: 1, what: { kind: 'finding', finding } };
}

/**
 * Passes all items of a look in one tap. What was taken back there is read again with it: a pass alone does not
 * speak for a place whose reading is gone.
 */
export function passStep(
  walk: string,
  step: Step,
  seen: 'whole' | 'half',
  takenBack: readonly Omit<PlacedReading, 'reading'>[],
): Promise<Saved> {
  const what = { kind: 'pass' as const, items: step.items.map(({ id }) => id), except: [], seen };
  const again = takenBack.flatMap((at): PlacedReading[] => {
    const item = step.items.find(({ id }) => id === at.item);
    const reading = item && fine(item);
    return reading ? [{ ...at, reading }] : [];
  });
  const pass = { place: step.place, item: step.pass, n: 1, reading: { v: 1 as const, what } };
  return saveReadings(walk, [pass, ...again]);
}

/** Marks items of a step as not seen, with the reason. */
export function markUnseen(
  walk: string,
  place: Place,
  items: readonly string[],
  spot: number,
  why: UnseenReason,
): Promise<Saved> {
  const reading: Reading = { v: 1, what: { kind: 'unseen', why }, spot };
  return saveReadings(
    walk,
    items.map((item) => ({ place, item, n: spot, reading })),
  );
}

const united = <T>(list: readonly T[] | undefined, more: readonly T[]): T[] => [
  ...new Set([...(list ?? []), ...more]),
];

/** Notes that cautions were read and ticked by hand. */
export const tickCautions = (key: RecordKey<'walk'>, cautions: readonly Caution[]): Promise<Saved> =>
  changeWalk(key, (walk) => ({ cautions: united(walk.cautions, cautions) }));

/** Adds an item that this depth does not ask for. */
export const openItem = (key: RecordKey<'walk'>, item: string): Promise<Saved> =>
  changeWalk(key, (walk) => ({ opened: united(walk.opened, [item]) }));

/** Ends the walk; what is open stays open and is listed. */
export const finishWalk = (key: RecordKey<'walk'>): Promise<Saved> =>
  changeWalk(key, () => ({ finishedAt: observedNow() }));

/** Goes on with a walk that was finished and is not sealed. */
export async function reopenWalk(key: RecordKey<'walk'>): Promise<Saved> {
  const found = await store.read(key);
  if (!found.ok) return found;
  const walk = valueIn<Walk>(found.value);
  if (!walk) return ok(undefined);
  const { finishedAt: _finished, ...rest } = walk;
  return save([{ key, value: asValue(rest) }]);
}
