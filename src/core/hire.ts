import type { Contract } from './contract.ts';
import { compareBytewise } from './stamp.ts';
import type { Walk } from './walk.ts';

/** A walk or contract with its key. */
interface Keyed<T> {
  readonly key: string;
  readonly value: T;
}

/** A return; its key is undefined while it is not saved yet. */
interface Back {
  readonly key: string | undefined;
  readonly walk: Walk;
}

const newest = <T extends { readonly key: string }>(
  all: readonly T[],
  on: (each: T) => string,
): readonly T[] => [...all].sort((a, b) => compareBytewise(on(b), on(a)) || compareBytewise(b.key, a.key));

/** Contracts, the one that begins last first. */
export const newestContracts = <C extends Keyed<Contract>>(all: readonly C[]): readonly C[] =>
  newest(all, ({ value }) => value.from ?? '');

/** Walks, the last finished first. */
export const newestWalks = <W extends Keyed<Walk>>(all: readonly W[]): readonly W[] =>
  newest(all, ({ value }) => value.finishedAt?.utc ?? '');

/** Whether a machine went out with a walk: a hand-out that was finished. */
export const isHandedOut = ({ purpose, finishedAt }: Walk): boolean =>
  purpose === 'hand-out' && finishedAt !== undefined;

/** Of a return that names no contract: the machine's last one that had begun when it started. */
export function lastContract<C extends Keyed<Contract>>(
  { machine, startedAt }: Walk,
  contracts: readonly C[],
): C | undefined {
  const day = startedAt?.utc.slice(0, 10) ?? '';
  return newestContracts(contracts).find(
    ({ value }) => value.machine === machine && ((value.from ?? '') <= day || day === ''),
  );
}

/** Of a return that names no hand-out: the machine's last finished one before it that no other return has. */
export function lastHandOut<W extends Keyed<Walk>>({ key, walk }: Back, walks: readonly W[]): W | undefined {
  const others = walks.filter((each) => each.key !== key && each.value.finishedAt !== undefined);
  const taken = new Set(others.map(({ value }) => value.handOut));
  const isBefore = ({ startedAt }: Walk): boolean =>
    walk.startedAt === undefined || (startedAt?.utc ?? '') <= walk.startedAt.utc;
  return newestWalks(others).find(
    (each) =>
      each.value.machine === walk.machine &&
      isHandedOut(each.value) &&
      isBefore(each.value) &&
      !taken.has(each.key),
  );
}

/** The hand-out that a return names, or the contract that it names; an empty name says that there is none. */
export const namedHandOut = ({ handOut }: Walk, named: Contract | undefined): string | undefined =>
  handOut ?? named?.handOut;
