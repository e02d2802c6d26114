import { valueIn } from '../../core/assemble.ts';
import type { Contract } from '../../core/contract.ts';
import { isDemo, prefixOf, type RecordKey } from '../../core/keys.ts';
import { compareBytewise } from '../../core/stamp.ts';
import type { Walk } from '../../core/walk.ts';
import { store } from '../data/phone.ts';

/** A record of one machine with its key. */
export interface Owned<T, K extends 'walk' | 'contract'> {
  readonly key: RecordKey<K>;
  readonly value: T;
}

const pageSize = 200;

/** All records of a kind that name a machine, the newest key first. */
async function ofMachine<T extends { readonly machine: string }, K extends 'walk' | 'contract'>(
  kind: K,
  machine: string,
): Promise<readonly Owned<T, K>[]> {
  const prefix = prefixOf(kind, { demo: isDemo(machine) });
  const found: Owned<T, K>[] = [];
  let after: string | undefined;
  do {
    const page = { prefix, limit: pageSize, reverse: true, ...(after !== undefined && { after }) };
    const rows = await store.list(page);
    if (!rows.ok) return found;
    for (const { key, versions } of rows.value) {
      const value = valueIn<T>(versions);
      if (value?.machine === machine) found.push({ key: key as RecordKey<K>, value });
    }
    after = rows.value.length < pageSize ? undefined : rows.value.at(-1)?.key;
  } while (after !== undefined);
  return found;
}

const newest = <T>(all: readonly T[], on: (each: T) => string): readonly T[] =>
  [...all].sort((a, b) => compareBytewise(on(b), on(a)));

/** The contracts of a machine, the one that begins last first. */
export const contractsOf = async (machine: string): Promise<readonly Owned<Contract, 'contract'>[]> =>
  newest(await ofMachine<Contract, 'contract'>('contract', machine), ({ value }) => value.from ?? '');

/** The hand-out and return walks of a machine, the last finished first. */
export const rentalWalksOf = async (machine: string): Promise<readonly Owned<Walk, 'walk'>[]> =>
  newest(await ofMachine<Walk, 'walk'>('walk', machine), ({ value }) => value.finishedAt?.utc ?? '');

/** The finished hand-outs of a machine, the last first. */
export const handOutsOf = async (machine: string): Promise<readonly Owned<Walk, 'walk'>[]> =>
  (await rentalWalksOf(machine)).filter(
    ({ value }) => value.purpose === 'hand-out' && value.finishedAt !== undefined,
  );
