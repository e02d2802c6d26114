import type { Call } from './calls.ts';
import type { Facts } from './conditions.ts';
import { addTo } from './lists.ts';
import { plausibility } from './plausible.ts';
import { toMm } from './quantity.ts';
import type { Condition, RuleSet } from './rules.ts';
import { stateIn } from './sag.ts';
import type { AllFacts, Scored } from './score.ts';
import type { ItemState } from './states.ts';
import { shownCall, type MachineCall } from './verdict.ts';
import { sizeAtPercent, wear } from './wear.ts';
import { whatIf } from './what-if.ts';

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

const sagEdges: readonly Edge[] = [
  { item: 'sag', at: ({ sag }) => sag?.lowMm },
  { item: 'sag', at: ({ sag }) => sag?.highMm },
  { item: 'sag', at: ({ sag }) => sag?.derailMm },
];

const valueOf = (state: ItemState): number | undefined => state.sag?.valueMm ?? state.sampled?.worst.mm;

/** The state as it would be had the reading been another; the next worst sample still counts. */
function withValue(state: ItemState, mm: number, facts: Facts): ItemState {
  const { sag, sampled, limits } = state;
  if (sag) {
    const band = { low: sag.lowMm, high: sag.highMm, derail: sag.derailMm };
    return { ...state, sag: { ...sag, valueMm: mm, state: stateIn(band, mm) } };
  }
  if (!sampled) return state;
  const { nextMm = mm } = sampled;
  const worst = {
    ...sampled.worst,
    mm: sampled.worseIs === 'smaller' ? Math.min(mm, nextMm) : Math.max(mm, nextMm),
  };
  const worn = limits && wear(limits, worst, facts.load);
  return { ...state, sampled: { ...sampled, worst }, ...(worn && { wear: worn }) };
}

const uncertaintyMm = (state: ItemState): number => 2 * (state.sampled?.worst.uMm ?? 0);

function edgesByItem(rules: RuleSet): ReadonlyMap<string, readonly Edge[]> {
  const edges = new Map<string, Edge[]>();
  for (const edge of rules.rules.flatMap(({ when }) => edgesIn(when))) addTo(edges, edge.item, edge);
  return edges;
}

/** The values to try, nearest first: just to either side of each threshold, and none that would be questioned. */
function candidates(state: ItemState, now: number, edges: readonly Edge[], facts: Facts): readonly number[] {
  const values = new Set(edges.flatMap(({ at }) => at(state, facts) ?? []));
  return [...values]
    .flatMap((at) => [at - nudgeMm, at + nudgeMm])
    .filter((mm) => !plausibility(state.item, { mm, uMm: 0 }, state.limits, facts.load))
    .sort((a, b) => Math.abs(a - now) - Math.abs(b - now));
}

/** How far a flip is in units of the reading's own uncertainty, or in shares of the reading where it has none. */
function distance(flip: Flip): number {
  const scale = uncertaintyMm(flip.state) || Math.max(1, Math.abs(flip.toMm) * 0.05);
  return Math.abs(flip.byMm) / scale;
}

const isSame = (a: MachineCall, b: MachineCall): boolean =>
  shownCall(a) === shownCall(b) && a.meanwhile === b.meanwhile;

/**
 * The single re-measurements that could flip the verdict, nearest first: for each measured item the smallest
 * change that gives the machine another call or another *meanwhile*. Empty when no single reading could, as
 * while a clash decides.
 */
export function flipsOf(
  facts: AllFacts,
  rules: RuleSet,
  { verdict }: Pick<Scored, 'verdict'>,
): readonly Flip[] {
  const callWith = whatIf(facts, rules);
  if (!isSame(callWith(), verdict)) return [];
  const edges = edgesByItem(rules);
  const flips = [...facts.states.values()].flatMap((state): readonly Flip[] => {
    const now = valueOf(state);
    const near = now === undefined ? [] : candidates(state, now, edges.get(state.item.id) ?? [], facts);
    for (const mm of near) {
      const other = callWith(withValue(state, mm, facts));
      const byMm = mm - (now ?? mm);
      const within = Math.abs(byMm) <= uncertaintyMm(state);
      if (!isSame(other, verdict)) return [{ state, byMm, toMm: mm, call: shownCall(other), within }];
    }
    return [];
  });
  return flips.sort((a, b) => distance(a) - distance(b));
}
