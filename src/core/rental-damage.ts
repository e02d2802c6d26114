import { damageOf, ownerSide } from './findings.ts';
import type { Place, PlaceSide } from './keys.ts';
import type { ItemOutcome } from './score.ts';
import { stateKey, type ItemState } from './states.ts';

/** What a finding was when the machine went out. */
export type FoundBefore =
  /** Sound: it happened during the hire. */
  | { readonly kind: 'sound' }
  /** The same fault, as bad and as often, was there. */
  | { readonly kind: 'was-there' }
  /** It was damaged, and is worse or at more places now. */
  | { readonly kind: 'got-worse'; readonly finding?: string; readonly count?: number }
  | { readonly kind: 'not-looked-at' }
  | { readonly kind: 'no-hand-out' };

/** Damage at one item of one place at the return, and what was there before. */
export interface Damage {
  readonly place: Place;
  readonly side: PlaceSide;
  readonly number: number | undefined;
  readonly item: string;
  /** `crack` for one that shows the cord. */
  readonly finding: string;
  readonly count?: number;
  readonly before: FoundBefore;
}

const isCracked = ({ cracks }: ItemState): boolean => cracks.some(({ cordVisible }) => cordVisible);

const severity = ({ item: { ask } }: ItemState, finding: string | undefined): number =>
  ask.kind === 'finding' ? ask.findings.indexOf(finding ?? '') : -1;

/** The fault that the hand-out walk found there, if it found one. */
function faultBefore(was: ItemState, is: ItemState): FoundBefore {
  if (is.item.ask.kind === 'crack') return { kind: isCracked(was) ? 'was-there' : 'sound' };
  const isMore = (is.count ?? 1) > (was.count ?? 1);
  const isSame = severity(was, was.finding) >= severity(is, is.finding) && !isMore;
  if (isSame) return { kind: 'was-there' };
  const { finding, count } = was;
  return {
    kind: 'got-worse',
    ...(finding !== undefined && { finding }),
    ...(count !== undefined && { count }),
  };
}

function before(handOut: readonly ItemOutcome[] | undefined, is: ItemState): FoundBefore {
  if (!handOut) return { kind: 'no-hand-out' };
  const key = stateKey(is.place, is.item.id);
  const was = handOut.find(({ state }) => stateKey(state.place, state.item.id) === key);
  if (!was?.state.known) return { kind: 'not-looked-at' };
  return damageOf([was]).length === 0 ? { kind: 'sound' } : faultBefore(was.state, is);
}

/** Everything at the return that looks like damage and not like wear, each held against the hand-out walk. */
export const damagesOf = (
  returned: readonly ItemOutcome[],
  handOut: readonly ItemOutcome[] | undefined,
): readonly Damage[] =>
  damageOf(returned).map(({ state }) => ({
    place: state.place,
    side: state.side,
    number: state.number,
    item: state.item.id,
    finding: state.finding ?? 'crack',
    ...(state.count !== undefined && { count: state.count }),
    before: before(handOut, state),
  }));

/** A fault on the owner's side that may have made wear or damage, and which walk found it. */
export interface OwnerFault {
  readonly place: Place;
  readonly side: PlaceSide;
  readonly item: string;
  readonly finding: string;
  /** Items of the same side that it may have harmed. */
  readonly harms: readonly string[];
  readonly foundAt: 'hand-out' | 'return';
}

function faultOf({ state }: ItemOutcome): { finding: string; harms: readonly string[] } | undefined {
  const { id } = state.item;
  const finding = id === 'sag' ? sagFault(state) : state.finding;
  const known = ownerSide[id];
  return finding !== undefined && known?.findings.includes(finding)
    ? { finding, harms: known.harms }
    : undefined;
}

function sagFault({ sag }: ItemState): string | undefined {
  return sag?.state === 'right' ? undefined : sag?.state;
}

/**
 * Faults on the owner's side: those of the hand-out walk, and those of the return that nobody had looked for before.
 * What was good when the machine went out is not the owner's.
 */
export function ownerFaults(
  returned: readonly ItemOutcome[],
  handOut: readonly ItemOutcome[] | undefined,
): readonly OwnerFault[] {
  const seen = new Set(
    handOut?.flatMap(({ state }) => (state.known ? [stateKey(state.place, state.item.id)] : [])),
  );
  // Tension is the renter's to keep while the machine is out.
  const late = returned.filter(
    ({ state }) => state.item.component !== 'track' && !seen.has(stateKey(state.place, state.item.id)),
  );
  const faults = (outcomes: readonly ItemOutcome[], foundAt: OwnerFault['foundAt']) =>
    outcomes.flatMap((outcome): readonly OwnerFault[] => {
      const fault = faultOf(outcome);
      const { place, side, item } = outcome.state;
      return fault ? [{ place, side, item: item.id, ...fault, foundAt }] : [];
    });
  return [...faults(handOut ?? [], 'hand-out'), ...faults(late, 'return')];
}
