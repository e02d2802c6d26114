import { callRank } from './calls.ts';
import { jobCost, type CostOpen, type Costs, type JobCost, type Rates } from './costs.ts';
import { holdAllows, type Hold } from './holds.ts';
import { jobTraits } from './job-kinds.ts';
import type { Job } from './jobs.ts';
import type { LifeTables } from './life.ts';
import { passageOf } from './passage.ts';
import type { PartHours } from './hours-left.ts';
import type { PlanJob, SetUp } from './plan.ts';
import { ok, type Result } from './result.ts';
import { normalCdf } from './special.ts';
import { toMm } from './quantity.ts';
import { wear } from './wear.ts';
import { chooseLimit, type Load } from './limits.ts';

/** What the cost of a job is reckoned from, besides its prices. */
export interface Spell {
  /** Running hours now, and how far ahead is looked. */
  readonly nowHours: number;
  readonly horizonHours: number;
  /** Hours of each visit. */
  readonly visits: readonly number[];
  readonly life: LifeTables;
  readonly load: Load | undefined;
}

/** A job with the figures that its place in the plan follows from. */
export interface CostedJob {
  readonly job: Job;
  readonly cost: JobCost;
  readonly needs: readonly SetUp[];
  /** Chance that it breaks down within so many hours from now. */
  readonly within: (hours: number) => number;
  /** Middle of the hours from now until it is due; 0 where it is due now, Infinity beyond any. */
  readonly dueHours: number;
  /** Life of a new one in hours; undefined for what does not wear, which has no value left at the end. */
  readonly newLifeHours: number | undefined;
  /** A breakdown's cost: the job, all that it needs set up for itself alone, and what a stop costs besides. */
  readonly breakdownMinor: number;
  /** Planned, without what is shared. */
  readonly plannedMinor: number;
}

/** What has to be set up for a job on a side. */
export function setUpsOf({ kind, side }: Pick<Job, 'kind' | 'side'>): readonly SetUp[] {
  const { needs } = jobTraits[kind];
  const sides = side === 'whole' ? (['left', 'right'] as const) : [side];
  if (needs === 'nothing') return ['call-out'];
  const lifts = sides.map((each): SetUp => `lift-${each}`);
  const offs = needs === 'track-off' ? sides.map((each): SetUp => `track-off-${each}`) : [];
  return ['call-out', ...lifts, ...offs];
}

/** Cost of each set-up by the rates, in minor units. */
export const setUpCosts = (rates: Rates): Readonly<Record<SetUp, number>> => ({
  'call-out': rates.callOut.minor,
  'lift-left': rates.liftSide.minor,
  'lift-right': rates.liftSide.minor,
  'track-off-left': rates.trackOffSide.minor,
  'track-off-right': rates.trackOffSide.minor,
});

/** Percent at which a part is destroyed, 100 where its sheet names no destruction limit. */
function destroyedAt({ history }: PartHours, load: Load | undefined): number {
  const chosen = chooseLimit(history.limits, 'destruction', load);
  if (!chosen) return 100;
  const worn = wear(history.limits, { mm: toMm(chosen.at, history.limits.unit), uMm: 0 }, load);
  return Math.max(100, worn?.percent ?? 100);
}

/** What a found fault does to the hours before it stops the machine, by its call: exponential, an estimate. */
function faultWithin(job: Job, { life }: Spell): (hours: number) => number {
  const { call } = job;
  if (call === 'run' || call === 'recheck' || call === 'park') return () => 0;
  const mean = life.faultHours[call].value;
  return (hours) => 1 - Math.exp(-hours / mean);
}

/** A job by its id cannot be paid or has no hours: why it is left out. */
export type JobOpen = CostOpen;

/** Puts prices and chances to a job. */
export function costedJob(job: Job, costs: Costs, rates: Rates, spell: Spell): Result<CostedJob, JobOpen> {
  const cost = jobCost(costs, job.kind, job.count);
  if (!cost.ok) return cost;
  const needs = setUpsOf(job);
  const planned = cost.value.partsMinor + cost.value.labourMinor + cost.value.downtimeMinor;
  const alone = needs.reduce((sum, each) => sum + setUpCosts(rates)[each], 0);
  const worn = job.worn.flatMap((part) => {
    if (!part.state) return [];
    const since = Math.max(0, spell.nowHours - part.state.hours);
    const passage = passageOf(part.state, destroyedAt(part, spell.load));
    return [{ part, since, passage, already: passage.within(since) }];
  });
  const fault = job.outcomes.some(({ state }) => !state.wear) ? faultWithin(job, spell) : () => 0;
  // What was seen to run at the last reading had not broken down before now.
  const within = (hours: number): number => {
    const wearing = worn.map(({ since, passage, already }) =>
      already >= 1 ? 1 : (passage.within(since + hours) - already) / (1 - already),
    );
    return Math.max(fault(hours), ...wearing, 0);
  };
  const middle = Math.min(Infinity, ...worn.map(({ part }) => part.left?.middle ?? Infinity));
  const isDue = callRank(job.call) >= callRank('repair') || job.call === 'adjust';
  const [lead] = job.worn;
  return ok({
    job,
    cost: cost.value,
    needs,
    within,
    dueHours: isDue ? 0 : middle,
    newLifeHours: lead?.history.prior && 100 / Math.exp(lead.history.prior.centre),
    breakdownMinor: planned + alone + rates.breakdown.minor,
    plannedMinor: planned,
  });
}

/** Expected share of the life that a worn part still has after so many hours, its breakdowns counted as none. */
function shareLeft({ job }: CostedJob, spell: Spell, hours: number): number {
  const [lead] = job.worn;
  if (!lead?.state) return 0;
  const { rates, weights, means, variances, kappa } = lead.state;
  const passed = Math.max(0, spell.nowHours - lead.state.hours) + hours;
  let sum = 0;
  rates.forEach((rate, g) => {
    const left = 100 - (means[g] ?? 0) - rate * passed;
    const sd = Math.sqrt((variances[g] ?? 0) + kappa * rate * passed);
    const z = left / sd;
    const positive = left * normalCdf(z) + (sd * Math.exp((-z * z) / 2)) / Math.sqrt(2 * Math.PI);
    sum += (weights[g] ?? 0) * positive;
  });
  return Math.min(1, sum / 100);
}

/** Pieces of the horizon over which the chance of a breakdown is summed. */
const pieces = 40;

/**
 * Expected cost of a job at each visit and of leaving it, in minor units: until the visit a breakdown costs its own
 * price, at the visit the planned one falls due, and what is left of a part at the horizon is credited at what renewing it costs.
 */
export function costsAtVisits(
  costed: CostedJob,
  spell: Spell,
): { readonly at: readonly number[]; readonly never: number } {
  const { horizonHours } = spell;
  const { newLifeHours, plannedMinor, breakdownMinor } = costed;
  // Below 0 for a part that would be worn out again before the horizon: then the next one has been begun on.
  const creditFrom = (renewedAt: number): number =>
    newLifeHours === undefined ? 0 : plannedMinor * (1 - (horizonHours - renewedAt) / newLifeHours);
  const step = horizonHours / pieces;
  const chance = Array.from({ length: pieces + 1 }, (_, n) => (n === 0 ? 0 : costed.within(n * step)));
  const until = (hours: number): { readonly broken: number; readonly sum: number } => {
    let sum = 0;
    let before = 0;
    for (let n = 1; n <= pieces && (n - 1) * step < hours; n += 1) {
      const end = Math.min(hours, n * step);
      const share = (end - (n - 1) * step) / step;
      const now = before + ((chance[n] ?? 0) - (chance[n - 1] ?? 0)) * share;
      sum += (now - before) * (breakdownMinor - creditFrom((end + (n - 1) * step) / 2));
      before = now;
    }
    return { broken: before, sum };
  };
  const at = spell.visits.map((visit) => {
    const hours = visit - spell.nowHours;
    const { broken, sum } = until(hours);
    return sum + (1 - broken) * (plannedMinor - creditFrom(hours));
  });
  const end = until(horizonHours);
  return { at, never: end.sum - plannedMinor * shareLeft(costed, spell, horizonHours) };
}

/** A costed job as the plan takes it: forbidden where a hold or its call says so. */
export function planJobOf(costed: CostedJob, spell: Spell, hold: Hold | undefined, offset: number): PlanJob {
  const { at, never } = costsAtVisits(costed, spell);
  const { id, call } = costed.job;
  const isNow = call === 'park' && hold === undefined;
  return {
    id,
    needs: costed.needs,
    at: at.map((minor, n) => {
      const hours = (spell.visits[n] ?? 0) - offset;
      return (isNow && n > 0) || !holdAllows(hold, hours) ? undefined : minor;
    }),
    never: isNow || hold?.to !== undefined ? undefined : never,
  };
}
