import { valueIn } from '../../core/assemble.ts';
import type { Contract } from '../../core/contract.ts';
import { openedBy } from '../../core/hand-out.ts';
import { isDemo, prefixOf, type RecordKey } from '../../core/keys.ts';
import { compareBytewise } from '../../core/stamp.ts';
import type { Walk } from '../../core/walk.ts';
import { store } from '../data/phone.ts';
import { handedOutIn } from './handed-out.ts';

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

/**
 * What a hand-out or return that starts belongs to: a return to the machine's last finished hand-out, unless another
 * return was already held against it or the contract names another; both to the contract of that hire.
 */
export async function startOf(walk: Walk): Promise<Partial<Walk>> {
  const [walks, contracts] = await Promise.all([rentalWalksOf(walk.machine), contractsOf(walk.machine)]);
  const done = walks.filter(({ value }) => value.finishedAt !== undefined);
  const handOuts = done.filter(({ value }) => value.purpose === 'hand-out');
  const taken = (name: 'contract' | 'handOut', purpose: Walk['purpose']): ReadonlySet<string | undefined> =>
    new Set(done.filter(({ value }) => value.purpose === purpose).map(({ value }) => value[name]));
  const settled = taken('contract', walk.purpose);
  const next = contracts.find(({ key }) => !settled.has(key));
  if (walk.purpose === 'hand-out') return next ? { contract: next.key } : {};
  const returned = taken('handOut', 'rental-return');
  const last = handOuts.find(({ key }) => !returned.has(key));
  const contract = contracts.find(({ key }) => key === last?.value.contract) ?? next;
  const handOut = contract?.value.handOut ?? last?.key;
  return { ...(contract && { contract: contract.key }), ...(await ledFields(walk, handOut)) };
}

/** The fields by which a return is led by a hand-out: its name, and what it measured beyond this depth. */
export async function ledFields(walk: Walk, handOut: string | undefined): Promise<Partial<Walk>> {
  if (handOut === undefined) return {};
  const found = await handedOutIn(handOut);
  const opened = found ? openedBy(found.marked, walk) : [];
  return { handOut, ...(opened.length > 0 && { opened: [...(walk.opened ?? []), ...opened] }) };
}
