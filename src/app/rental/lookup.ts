import { valueIn } from '../../core/assemble.ts';
import type { Contract } from '../../core/contract.ts';
import { noHandOut, openedBy } from '../../core/hand-out.ts';
import { isHandedOut, lastHandOut, namedHandOut, newestContracts, newestWalks } from '../../core/hire.ts';
import { isDemo, parseKey, prefixOf, type RecordKey } from '../../core/keys.ts';
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

/** The contracts of a machine, the one that begins last first. */
export const contractsOf = async (machine: string): Promise<readonly Owned<Contract, 'contract'>[]> =>
  newestContracts(await ofMachine<Contract, 'contract'>('contract', machine));

/** The walks of a machine, the last finished first. */
const walksOf = async (machine: string): Promise<readonly Owned<Walk, 'walk'>[]> =>
  newestWalks(await ofMachine<Walk, 'walk'>('walk', machine));

/** The finished hand-outs of a machine, the last first. */
export const handOutsOf = async (machine: string): Promise<readonly Owned<Walk, 'walk'>[]> =>
  (await walksOf(machine)).filter(({ value }) => isHandedOut(value));

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
  const contract = walk.handOut === undefined ? await contractAt(walk.contract) : undefined;
  const named = namedHandOut(walk, contract);
  if (named !== undefined) return named === noHandOut ? undefined : named;
  return lastHandOut({ key, walk }, await walksOf(walk.machine))?.key;
}

/** The contract of a hire that starts or ends: the hand-out's, else the last one that no walk of this kind has. */
async function contractKeyFor(walk: Walk): Promise<RecordKey<'contract'> | undefined> {
  const [walks, contracts] = await Promise.all([walksOf(walk.machine), contractsOf(walk.machine)]);
  const done = walks.filter(({ value }) => value.finishedAt !== undefined && value.purpose === walk.purpose);
  const taken = new Set(done.map(({ value }) => value.contract));
  const last = walk.purpose === 'rental-return' ? lastHandOut({ key: undefined, walk }, walks) : undefined;
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
