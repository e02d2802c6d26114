import type { CostOpen, Costs } from './costs.ts';
import { holdAllows, type Hold } from './holds.ts';
import type { PartHours } from './hours-left.ts';
import { costedJob, planJobOf, setUpCosts, type CostedJob, type Spell } from './job-costs.ts';
import { jobsOf, type Job } from './jobs.ts';
import type { LifeTables } from './life.ts';
import type { Load } from './limits.ts';
import type { Shape } from './machine.ts';
import { costOf, eachWhenDue, everythingNow, planOf, type Chosen, type PlanInput } from './plan.ts';
import { assert } from './result.ts';
import type { ItemOutcome } from './score.ts';

/** How far ahead the plan looks, and how far apart its visits lie on the meter; 250 h is a common service interval. */
export const planHorizonHours = 2000;
export const visitStepHours = 250;

export interface JobPlanInput {
  readonly shape: Shape;
  readonly outcomes: readonly ItemOutcome[];
  readonly parts: readonly PartHours[];
  readonly costs: Costs;
  readonly life: LifeTables;
  readonly load: Load | undefined;
  readonly holds: ReadonlyMap<string, Hold>;
  /** Running hours of the machine at the walk, and what to take off for the meter's own. */
  readonly nowHours: number;
  readonly meterOffset: number;
  readonly horizonHours?: number;
  /** Visit hours by job id of the plan before, on the running hours. */
  readonly earlier?: ReadonlyMap<string, number | 'never'>;
}

/** A job that cannot be planned, with why. */
export interface OpenJob {
  readonly job: Job;
  readonly why: CostOpen | { readonly kind: 'held-off' | 'no-visit' };
}

export interface Visit {
  /** Running hours; the first visit may be now. */
  readonly hours: number;
  readonly inHours: number;
  readonly jobs: readonly CostedJob[];
  /** What is paid at the visit when all goes as planned: parts, labour, standing still and what is set up, once. */
  readonly outlayMinor: number;
  readonly setUpMinor: number;
}

export interface JobPlan {
  readonly currency: string;
  readonly horizonHours: number;
  readonly visits: readonly Visit[];
  /** Jobs that cost least when left beyond the horizon. */
  readonly later: readonly CostedJob[];
  readonly open: readonly OpenJob[];
  /** Expected costs in minor units over the horizon, credits for what is left taken off. */
  readonly costMinor: number;
  readonly everythingNowMinor: number;
  readonly eachWhenDueMinor: number;
  /** The plan before was kept, since a new one would save 1 % or less. */
  readonly kept: boolean;
  readonly exact: boolean;
  /** Where the optimum above 16 jobs lies at least. */
  readonly boundMinor: number;
  /** Visit hours by job id, to hand to the next plan as the one before. */
  readonly chosen: ReadonlyMap<string, number | 'never'>;
}

/** Visits on a fixed grid of hours, so that a day's hours do not move them; now comes first. */
export function visitHours(nowHours: number, horizonHours: number): readonly number[] {
  const first = Math.floor(nowHours / visitStepHours) + 1;
  const count = Math.floor((nowHours + horizonHours) / visitStepHours) - first + 1;
  return [nowHours, ...Array.from({ length: count }, (_, n) => (first + n) * visitStepHours)];
}

/** The plan of jobs that costs least over the horizon; undefined where no cost is known, with the jobs that are open. */
export function jobPlan(input: JobPlanInput): JobPlan | { readonly open: readonly OpenJob[] } {
  const { costs, nowHours, horizonHours = planHorizonHours, holds, life, load } = input;
  const jobs = jobsOf(input.shape, input.outcomes, input.parts, horizonHours);
  const { rates, prices } = costs;
  const why: CostOpen = costs.open[0] ?? { kind: prices ? 'no-rates' : 'no-prices' };
  if (!rates || costs.open.length > 0) return { open: jobs.map((job) => ({ job, why })) };
  const spell: Spell = { nowHours, horizonHours, visits: visitHours(nowHours, horizonHours), life, load };
  const open: OpenJob[] = [];
  const costed: CostedJob[] = [];
  for (const job of jobs) {
    const made = costedJob(job, costs, rates, spell);
    const hold = holds.get(job.id);
    if (!made.ok) open.push({ job, why: made.error });
    else if (hold?.skip) open.push({ job, why: { kind: 'held-off' } });
    else if (!hasVisit(spell, hold, input.meterOffset)) open.push({ job, why: { kind: 'no-visit' } });
    else costed.push(made.value);
  }
  return planned(costed, open, spell, { ...input, rates });
}

const hasVisit = ({ visits }: Spell, hold: Hold | undefined, offset: number): boolean =>
  hold?.to === undefined || visits.some((hours) => holdAllows(hold, hours - offset));

function planned(
  costed: readonly CostedJob[],
  open: readonly OpenJob[],
  spell: Spell,
  { rates, holds, meterOffset, earlier }: JobPlanInput & { readonly rates: NonNullable<Costs['rates']> },
): JobPlan {
  const setUpCost = setUpCosts(rates);
  const planInput: PlanInput = {
    visits: spell.visits,
    jobs: costed.map((each) => planJobOf(each, spell, holds.get(each.job.id), meterOffset)),
    setUpCost,
    ...(earlier && { earlier }),
  };
  const found = planOf(planInput);
  assert(found.ok, 'every job of the plan may be somewhere');
  const { chosen, kept, exact, bound } = found.value;
  // What is due beyond the horizon is, by itself, not done within it.
  const within = costed.filter(({ dueHours }) => dueHours <= spell.horizonHours);
  const due = new Map(within.map(({ job, dueHours }) => [job.id, spell.nowHours + dueHours]));
  const cost = (places: readonly Chosen[]): number => Math.round(costOf(planInput, places));
  return {
    currency: rates.currency,
    horizonHours: spell.horizonHours,
    visits: spell.visits.flatMap((hours, n) => visitOf(hours, jobsAt(costed, chosen, n), spell, setUpCost)),
    later: jobsAt(costed, chosen, undefined),
    open,
    costMinor: cost(chosen),
    everythingNowMinor: cost(everythingNow(planInput)),
    eachWhenDueMinor: cost(eachWhenDue(planInput, due)),
    kept,
    exact,
    boundMinor: Math.round(bound),
    chosen: new Map(chosen.map(({ id, visit }) => [id, hoursOf(spell, visit)])),
  };
}

const hoursOf = ({ visits }: Spell, visit: number | undefined): number | 'never' =>
  visit === undefined ? 'never' : (visits[visit] ?? 'never');

/** The jobs of a visit, or with none those that are left. */
const jobsAt = (
  costed: readonly CostedJob[],
  chosen: readonly Chosen[],
  visit: number | undefined,
): readonly CostedJob[] =>
  chosen.flatMap((each) =>
    each.visit === visit ? (costed.find(({ job }) => job.id === each.id) ?? []) : [],
  );

function visitOf(
  hours: number,
  jobs: readonly CostedJob[],
  spell: Spell,
  setUpCost: PlanInput['setUpCost'],
): readonly Visit[] {
  if (jobs.length === 0) return [];
  const setUps = [...new Set(jobs.flatMap(({ needs }) => needs))];
  const setUpMinor = setUps.reduce((sum, each) => sum + setUpCost[each], 0);
  const outlayMinor = jobs.reduce((sum, { plannedMinor }) => sum + plannedMinor, setUpMinor);
  return [{ hours, inHours: hours - spell.nowHours, jobs, outlayMinor, setUpMinor }];
}
