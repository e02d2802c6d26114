import { damageOf, isSound, ownerSide, unclearOf } from './findings.ts';
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
  /** It may be wear as well as damage; a crack among such ones shows no cord. */
  readonly unclear?: true;
  /** Versions of it clash in one of the walks. */
  readonly clash?: true;
}

export const isClashing = ({ open }: Pick<ItemState, 'open'>): boolean =>
  open.some(({ kind }) => kind === 'clash');

const severity = ({ item: { ask } }: ItemState, finding: string | undefined): number =>
  ask.kind === 'finding' ? ask.findings.indexOf(finding ?? '') : 0;

/** What the hand-out walk found there, which was not sound. */
function faultBefore(was: ItemOutcome, is: ItemState): FoundBefore {
  const { finding, count } = was.state;
  const isMore = (is.count ?? 1) > (count ?? 1);
  const isWorse = severity(is, is.finding) > severity(was.state, finding);
  if (damageOf([was]).length > 0 && !isMore && !isWorse) return { kind: 'was-there' };
  return {
    kind: 'got-worse',
    ...(finding !== undefined && { finding }),
    ...(count !== undefined && { count }),
  };
}

/** The outcome of the same item at the same place. */
export function sameIn(
  outcomes: readonly ItemOutcome[],
  { place, item }: ItemState,
): ItemOutcome | undefined {
  const key = stateKey(place, item.id);
  return outcomes.find(({ state }) => stateKey(state.place, state.item.id) === key);
}

function before(handOut: readonly ItemOutcome[] | undefined, is: ItemState): FoundBefore {
  if (!handOut) return { kind: 'no-hand-out' };
  const was = sameIn(handOut, is);
  // It may have been on the half that nobody saw.
  if (!was?.state.known || was.state.halfSeen) return { kind: 'not-looked-at' };
  return isSound(was.state) ? { kind: 'sound' } : faultBefore(was, is);
}

function found(state: ItemState, handOut: readonly ItemOutcome[] | undefined): Damage {
  const was = handOut && sameIn(handOut, state);
  const isClash = isClashing(state) || (was !== undefined && isClashing(was.state));
  return {
    place: state.place,
    side: state.side,
    number: state.number,
    item: state.item.id,
    finding: state.finding ?? 'crack',
    ...(state.count !== undefined && { count: state.count }),
    before: before(handOut, state),
    ...(isClash && { clash: true }),
  };
}

/** Everything at the return that looks like damage and not like wear, each held against the hand-out walk. */
export const damagesOf = (
  returned: readonly ItemOutcome[],
  handOut: readonly ItemOutcome[] | undefined,
): readonly Damage[] => damageOf(returned).map(({ state }) => found(state, handOut));

/**
 * What was sound at hand-out and is not at return, and may be wear as well as damage. Faults on the owner's side
 * are told of as such.
 */
export const unclearDamages = (
  returned: readonly ItemOutcome[],
  handOut: readonly ItemOutcome[] | undefined,
): readonly Damage[] =>
  unclearOf(returned)
    .filter((outcome) => !faultOf(outcome))
    .map(({ state }): Damage => ({ ...found(state, handOut), unclear: true }))
    .filter(({ before: { kind } }) => kind === 'sound');

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

// Tension is the renter's to keep while the machine is out.
const tension: ReadonlySet<string> = new Set(['sag', 'sag-by-eye']);

/**
 * Faults on the owner's side: those of the hand-out walk, and those that the return found beside them. A part of the
 * machine that failed during the hire is among them too: whether it did harm is for people to settle.
 */
export function ownerFaults(
  returned: readonly ItemOutcome[],
  handOut: readonly ItemOutcome[] | undefined,
): readonly OwnerFault[] {
  const faults = (outcomes: readonly ItemOutcome[], foundAt: OwnerFault['foundAt']) =>
    outcomes.flatMap((outcome): readonly OwnerFault[] => {
      const fault = faultOf(outcome);
      const { place, side, item } = outcome.state;
      return fault ? [{ place, side, item: item.id, ...fault, foundAt }] : [];
    });
  const early = faults(handOut ?? [], 'hand-out');
  const known = new Set(early.map(({ place, item }) => stateKey(place, item)));
  const late = faults(returned, 'return').filter(
    ({ place, item }) => !tension.has(item) && !known.has(stateKey(place, item)),
  );
  return [...early, ...late];
}
