import { valueIn } from '../../core/assemble.ts';
import type { Contract } from '../../core/contract.ts';
import { noHandOut, openedBy } from '../../core/hand-out.ts';
import { isDemo, parseKey, prefixOf, type RecordKey } from '../../core/keys.ts';
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
  (await rentalWalksOf(machine)).filter(isHandedOut);

const isHandedOut = ({ value }: Owned<Walk, 'walk'>): boolean =>
  value.purpose === 'hand-out' && value.finishedAt !== undefined;

const startedAt = ({ startedAt }: Walk): string => startedAt?.utc ?? '';

/** The machine's last finished hand-out before a return that no other finished return was held against. */
async function lastHandOut(key: string | undefined, walk: Walk): Promise<Owned<Walk, 'walk'> | undefined> {
  const walks = await rentalWalksOf(walk.machine);
  const others = walks.filter(({ key: other, value }) => other !== key && value.finishedAt !== undefined);
  const taken = new Set(others.map(({ value }) => value.handOut));
  const isBefore = ({ value }: Owned<Walk, 'walk'>): boolean =>
    walk.startedAt === undefined || startedAt(value) <= startedAt(walk);
  return walks.find((each) => isHandedOut(each) && isBefore(each) && !taken.has(each.key));
}

/** The contract of that key. */
export async function contractAt(key: string | undefined): Promise<Contract | undefined> {
  if (key === undefined || parseKey(key)?.kind !== 'contract') return undefined;
  const found = await store.read(key as RecordKey);
  return found.ok ? valueIn<Contract>(found.value) : undefined;
}

/**
 * The hand-out that a return is held against: the one that the walk names, where an empty name says that there is
 * none; else the one that its contract names; else the machine's last one.
 */
export async function handOutKeyOf(key: string | undefined, walk: Walk): Promise<string | undefined> {
  if (walk.handOut !== undefined) return walk.handOut === noHandOut ? undefined : walk.handOut;
  return (await contractAt(walk.contract))?.handOut ?? (await lastHandOut(key, walk))?.key;
}

/** The contract of a hire that starts or ends: the hand-out's, else the last one that no walk of this kind has. */
async function contractKeyFor(walk: Walk): Promise<RecordKey<'contract'> | undefined> {
  const [walks, contracts] = await Promise.all([rentalWalksOf(walk.machine), contractsOf(walk.machine)]);
  const done = walks.filter(({ value }) => value.finishedAt !== undefined && value.purpose === walk.purpose);
  const taken = new Set(done.map(({ value }) => value.contract));
  const last = walk.purpose === 'rental-return' ? await lastHandOut(undefined, walk) : undefined;
  const ofHandOut = contracts.find(({ key }) => key === last?.value.contract);
  return (ofHandOut ?? contracts.find(({ key }) => !taken.has(key)))?.key;
}

/** What a hand-out or return that starts belongs to: its contract and, of a return, the hand-out that leads it. */
export async function startOf(walk: Walk): Promise<Partial<Walk>> {
  const contract = await contractKeyFor(walk);
  const belongs = { ...walk, ...(contract && { contract }) };
  if (walk.purpose === 'hand-out') return contract ? { contract } : {};
  const handOut = await handOutKeyOf(undefined, belongs);
  return { ...(contract && { contract }), ...(handOut !== undefined && (await ledFields(walk, handOut))) };
}

/** The fields by which a return is led by a hand-out: its name, and what it measured beyond this depth. */
export async function ledFields(walk: Walk, handOut: string): Promise<Partial<Walk>> {
  const found = await handedOutIn(handOut, { key: undefined, machine: walk.machine });
  const opened = found ? openedBy(found.marked, walk) : [];
  return { handOut, ...(opened.length > 0 && { opened: [...(walk.opened ?? []), ...opened] }) };
}
