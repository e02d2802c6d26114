import { costedJob, planJobOf, setUpCosts, type CostedJob, type Spell } from './job-costs.ts';
import type { Costs, Rates } from './costs.ts';
import type { PartHours } from './hours-left.ts';
import type { SetUp } from './plan.ts';
import type { WearState } from './wear-filter.ts';

/** What it costs when a call turns out wrong. */
export interface WrongCall {
  readonly id: string;
  /** `late`: it is left and breaks before the next visit; `early`: it is renewed with life left. */
  readonly if: 'late' | 'early';
  readonly chance: number;
  /** Minor units lost when it is so. */
  readonly minor: number;
}

/**
 * For each job what being wrong about it costs: done now, the life thrown away; left, the breakdown.
 * @param nextVisitHours hours from now until the next visit
 */
export function wrongCalls(
  costed: readonly CostedJob[],
  nowIds: ReadonlySet<string>,
  nextVisitHours: number,
): readonly WrongCall[] {
  return costed.map((each): WrongCall => {
    const { job, within, breakdownMinor, plannedMinor, cost, newLifeHours, dueHours } = each;
    const chance = within(nextVisitHours);
    if (!nowIds.has(job.id)) return { id: job.id, if: 'late', chance, minor: breakdownMinor - plannedMinor };
    const share = newLifeHours === undefined ? 0 : Math.min(1, dueHours / newLifeHours);
    return { id: job.id, if: 'early', chance: 1 - chance, minor: Math.round(cost.partsMinor * share) };
  });
}

/** A part of which one more reading is expected to save so much, in minor units. */
export interface WorthReading {
  readonly part: PartHours;
  readonly minor: number;
}

/** Nodes and weights for the mean over a standard normal distribution (Abramowitz and Stegun, table 25.10, n = 5). */
const nodes: readonly (readonly [number, number])[] = [
  [-2.8569700138728056, 0.011257411327720691],
  [-1.355626179974266, 0.22207592200561266],
  [0, 0.5333333333333333],
  [1.355626179974266, 0.22207592200561266],
  [2.8569700138728056, 0.011257411327720691],
];

/** The state after one more reading at the same hours. */
function readAgain(state: WearState, percent: number, u: number): WearState {
  const noise = u * u;
  const logs = state.weights.map((weight, g) => {
    const sum = (state.variances[g] ?? 0) + noise;
    const off = percent - (state.means[g] ?? 0);
    return Math.log(weight) - 0.5 * (Math.log(sum) + (off * off) / sum);
  });
  const most = logs.reduce((a, b) => Math.max(a, b), -Infinity);
  const raw = logs.map((each) => Math.exp(each - most));
  const total = raw.reduce((sum, each) => sum + each, 0);
  return {
    ...state,
    weights: raw.map((each) => each / total),
    means: state.means.map((mean, g) => {
      const variance = state.variances[g] ?? 0;
      return mean + (variance / (variance + noise)) * (percent - mean);
    }),
    variances: state.variances.map((variance) => (variance * noise) / (variance + noise)),
  };
}

/** Mean and standard deviation of the wear of a part over all rates. */
function wearOf({ weights, means, variances }: WearState): { readonly mean: number; readonly sd: number } {
  let [mean, square] = [0, 0];
  weights.forEach((weight, g) => {
    const each = means[g] ?? 0;
    mean += weight * each;
    square += weight * (each * each + (variances[g] ?? 0));
  });
  return { mean, sd: Math.sqrt(Math.max(0, square - mean * mean)) };
}

/** What a visit's set-ups cost on top of those that the other jobs of the plan have there already. */
function extraAt(
  costed: CostedJob,
  others: readonly { readonly needs: readonly SetUp[]; readonly hours: number }[],
  spell: Spell,
  rates: Rates,
): readonly number[] {
  const price = setUpCosts(rates);
  return spell.visits.map((hours) => {
    const there = new Set(others.filter((each) => each.hours === hours).flatMap(({ needs }) => needs));
    return costed.needs.reduce((sum, each) => sum + (there.has(each) ? 0 : price[each]), 0);
  });
}

function least(costed: CostedJob, spell: Spell, extra: readonly number[]): number {
  const { at, never } = planJobOf(costed, spell, undefined, 0);
  const visits = at.map((minor, n) => (minor === undefined ? Infinity : minor + (extra[n] ?? 0)));
  return Math.min(...visits, never ?? Infinity);
}

/**
 * What reading the worn part of a job once more, as exactly as the last time, is expected to save: the cost of the
 * best visit as things are, less the mean over what could be read of the cost of the best visit then.
 */
export function worthReading(
  costed: CostedJob,
  others: readonly { readonly needs: readonly SetUp[]; readonly hours: number }[],
  spell: Spell,
  costs: Costs,
  rates: Rates,
): WorthReading | undefined {
  const [lead, ...rest] = costed.job.worn;
  const u = lead?.history.points.at(-1)?.u;
  if (!lead?.state || u === undefined) return undefined;
  const extra = extraAt(costed, others, spell, rates);
  const { mean, sd } = wearOf(lead.state);
  const spread = Math.sqrt(sd * sd + u * u);
  const state = lead.state;
  let after = 0;
  const means = spell.visits.map(() => 0);
  let never = 0;
  for (const [node, weight] of nodes) {
    const part: PartHours = { ...lead, state: readAgain(state, mean + node * spread, u) };
    const made = costedJob({ ...costed.job, worn: [part, ...rest] }, costs, rates, spell);
    if (!made.ok) return undefined;
    after += weight * least(made.value, spell, extra);
    const then = planJobOf(made.value, spell, undefined, 0);
    then.at.forEach((minor, n) => {
      means[n] = (means[n] ?? 0) + weight * (minor ?? Infinity);
    });
    never += weight * (then.never ?? Infinity);
  }
  // The same nodes for both sides, so that the difference is what deciding later is worth and nothing else.
  const before = Math.min(...means.map((minor, n) => minor + (extra[n] ?? 0)), never);
  return { part: lead, minor: Math.max(0, Math.round(before - after)) };
}
