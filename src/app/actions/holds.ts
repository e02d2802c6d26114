import type { Hold } from '../../core/holds.ts';
import { isDemo, makeKey, parseKey, type RecordKey } from '../../core/keys.ts';
import { put, save, type Saved } from './saved.ts';

function holdKey(machine: RecordKey<'machine'>, job: string): RecordKey<'hold'> | undefined {
  const parts = parseKey(machine);
  if (parts?.kind !== 'machine') return undefined;
  return makeKey({ kind: 'hold', machine: parts.id, job, ...(isDemo(machine) && { demo: true }) });
}

/** Fixes a job of the plan: left out, or done between two meter readings. */
export async function setHold(machine: RecordKey<'machine'>, job: string, hold: Hold): Promise<Saved> {
  const key = holdKey(machine, job);
  return save(key === undefined ? [] : [put(key, hold)]);
}

/** Leaves a job to the plan again. */
export async function clearHold(machine: RecordKey<'machine'>, job: string): Promise<Saved> {
  const key = holdKey(machine, job);
  return save(key === undefined ? [] : [{ key, removed: true }]);
}
