import { meanwhileRank, type Call } from './calls.ts';
import type { Facts } from './conditions.ts';
import type { ItemLimits } from './limits.ts';
import { toMm } from './quantity.ts';
import type { Condition, RuleSet } from './rules.ts';
import { outcomesOf, type Scored } from './score.ts';
import { sagBand } from './sag.ts';
import { stateKey, type ItemState } from './states.ts';
import { shownCall, verdictOf } from './verdict.ts';
import { sizeAtPercent, wear } from './wear.ts';

/** A re-measurement that could turn the verdict. */
export interface Flip {
  readonly state: ItemState;
  /** Change of the reading, in mm with its sign, at which the verdict turns. */
  readonly byMm: number;
  readonly toMm: number;
  /** The call that the machine would then have. */
  readonly call: Call | 'open';
  /** True when the change lies within the reading's expanded uncertainty (k = 2). */
  readonly within: boolean;
}

/** The step past a threshold at which a comparison is surely on its other side. */
const nudgeMm = 1e-4;

interface Edge {
  readonly item: string;
  readonly at: (state: ItemState, facts: Facts) => number | undefined;
}

/** The reading values at which the conditions of a rule change their answer. */
function edgesIn(condition: Condition): readonly Edge[] {
  if ('all' in condition) return condition.all.flatMap(edgesIn);
  if ('any' in condition) return condition.any.flatMap(edgesIn);
  if ('not' in condition) return edgesIn(condition.not);
  if ('reading' in condition) {
    const at = toMm(condition.value, condition.unit);
    return [{ item: condition.reading, at: () => at }];
  }
  if ('worn' in condition) {
    const { percent, of } = condition;
    const at = (state: ItemState, facts: Facts): number | undefined =>
      state.limits && sizeAtPercent(state.limits, percent, facts.load, of);
    return [{ item: condition.worn, at }];
  }
  if ('sag' in condition) return sagEdges;
  return [];
}

const sagEdges: readonly Edge[] = (['low', 'high', 'derail'] as const).map((edge) => ({
  item: 'sag',
  at: ({ sag }: ItemState): number | undefined => {
    if (!sag) return undefined;
    if (edge === 'derail') return sag.derailMm;
    return toMm(sagBand(sag.spec)[edge], sag.spec.unit);
  },
}));

const valueOf = (state: ItemState): number | undefined => state.sag?.valueMm ?? state.sampled?.worst.mm;

const rewear = (limits: ItemLimits | undefined, mm: number, facts: Facts) =>
  limits && wear(limits, { mm, uMm: 0 }, facts.load);

/** The state as it would be had the reading been another. */
function withValue(state: ItemState, mm: number, facts: Facts): ItemState {
  if (state.sag) {
    const { lowMm, highMm, derailMm } = state.sag;
    const beyond = derailMm !== undefined && mm > derailMm ? 'derailing' : 'loose';
    const sagState = mm > highMm ? beyond : mm < lowMm ? 'tight' : 'right';
    return { ...state, sag: { ...state.sag, valueMm: mm, state: sagState } };
  }
  if (!state.sampled) return state;
  const worn = rewear(state.limits, mm, facts);
  const worst = { ...state.sampled.worst, mm };
  return { ...state, sampled: { ...state.sampled, worst }, ...(worn && { wear: worn }) };
}

const uncertaintyMm = (state: ItemState): number => 2 * (state.sampled?.worst.uMm ?? 0);

function replaced(facts: Facts, state: ItemState): Facts {
  const { id } = state.item;
  const states = new Map(facts.states).set(stateKey(state.place, id), state);
  const peers = (facts.byItem.get(id) ?? []).map((each) => (each.place === state.place ? state : each));
  return { ...facts, states, byItem: new Map(facts.byItem).set(id, peers) };
}

function flipAt(
  state: ItemState,
  mm: number,
  facts: Facts,
  rules: RuleSet,
  scored: Scored,
): Flip | undefined {
  const other = withValue(state, mm, facts);
  const outcomes = outcomesOf(replaced(facts, other), rules);
  const verdict = verdictOf(outcomes);
  const same =
    shownCall(verdict) === shownCall(scored.verdict) &&
    meanwhileRank(verdict.meanwhile) === meanwhileRank(scored.verdict.meanwhile);
  if (same) return undefined;
  const byMm = mm - (valueOf(state) ?? mm);
  return { state, byMm, toMm: mm, call: shownCall(verdict), within: Math.abs(byMm) <= uncertaintyMm(state) };
}

function candidates(state: ItemState, rules: RuleSet, facts: Facts): readonly number[] {
  const edges = rules.rules.flatMap(({ when }) => edgesIn(when)).filter(({ item }) => item === state.item.id);
  const values = edges.flatMap(({ at }) => at(state, facts) ?? []);
  return [...new Set(values)].flatMap((at) => [at - nudgeMm, at + nudgeMm]).filter((at) => at >= 0);
}

/** How far a flip is in units of the reading's own uncertainty, or in shares of the reading where it has none. */
function distance(flip: Flip): number {
  const scale = uncertaintyMm(flip.state) || Math.max(1, Math.abs(flip.toMm) * 0.05);
  return Math.abs(flip.byMm) / scale;
}

/**
 * The single re-measurements that could flip the verdict, nearest first: for each measured item the smallest
 * change that gives the machine another call or another *meanwhile*. Empty when no single reading could.
 */
export function flipsOf(facts: Facts, rules: RuleSet, scored: Scored): readonly Flip[] {
  const sized = scored.outcomes.map(({ state }) => state).filter((state) => valueOf(state) !== undefined);
  const nearest = sized.flatMap((state) => {
    const now = valueOf(state) ?? 0;
    const near = [...candidates(state, rules, facts)].sort((a, b) => Math.abs(a - now) - Math.abs(b - now));
    for (const mm of near) {
      const flip = flipAt(state, mm, facts, rules, scored);
      if (flip) return [flip];
    }
    return [];
  });
  return nearest.sort((a, b) => distance(a) - distance(b));
}
