import { place, type Branch } from './plan-branch.ts';
import { cheapestPlan } from './plan-search.ts';
import { wholeOf } from './plan-whole.ts';
import { err, ok, type Result } from './result.ts';

/** Work that is done once per visit, however many jobs need it. */
export type SetUp = 'call-out' | 'lift-left' | 'lift-right' | 'track-off-left' | 'track-off-right';

/** A job with its expected costs before what it shares with others, in minor units and not always whole. */
export interface PlanJob {
  readonly id: string;
  /** Shared work needed at the visit; the call-out is implied, and so is lifting the side whose track comes off. */
  readonly needs: readonly SetUp[];
  /** Expected cost at each of the visits, in their order; undefined where a hold or the call forbids it. */
  readonly at: readonly (number | undefined)[];
  /** Expected cost when it is not done within the horizon; undefined where it must be done. */
  readonly never: number | undefined;
}

/** What a plan is made of; without jobs the plan is empty. */
export interface PlanInput {
  /** Meter hours of each visit, ascending, at most `mostVisits`; the first may be now. */
  readonly visits: readonly number[];
  readonly jobs: readonly PlanJob[];
  /** Minor units for each time that it is done, 0 or more. */
  readonly setUpCost: Readonly<Record<SetUp, number>>;
  /** Earlier plan: visit hours by job id, 'never' where not planned; jobs that it does not name are free. */
  readonly earlier?: ReadonlyMap<string, number | 'never'>;
}

/** A job with the number of its visit; undefined when it is not done within the horizon. */
export interface Chosen {
  readonly id: string;
  readonly visit: number | undefined;
}

/** Where each job is done, in the order of the jobs; costs in minor units. */
export interface Plan {
  readonly chosen: readonly Chosen[];
  readonly cost: number;
  /** Cost of the cheapest plan found; `cost` is more only where the earlier plan was kept. */
  readonly best: number;
  /** True where the earlier plan was kept: the best saves too little for a change. */
  readonly kept: boolean;
  /** True when surely no plan costs less than `best`: always up to 16 jobs, and mostly above. */
  readonly exact: boolean;
  /** No plan costs less; equals `best` when exact. */
  readonly bound: number;
}

/** No plan: nothing is allowed for a job, neither a visit nor leaving it. */
export interface NoPlan {
  readonly kind: 'no-visit';
  readonly job: string;
}

/** An earlier plan is kept unless that costs more than this share of what the best plan costs or, below 0, earns. */
const worthChanging = 0.01;

/** Up to so many jobs the search always comes to its end. */
const alwaysExact = 16;

/** Sets of visits looked at for more jobs: about a tenth of a second on a desk machine. */
const longSearch = 2 ** 20;

/** Cost of any assignment in minor units, each set-up once per visit; Infinity where a job may not be. */
export function costOf(input: PlanInput, chosen: readonly Chosen[]): number {
  const whole = wholeOf(input);
  const visitOf = new Map(chosen.map(({ id, visit = whole.visits.length }) => [id, visit]));
  return place(
    whole,
    whole.tasks.map(({ id }) => visitOf.get(id)),
  ).spent;
}

/** Everything as soon as its holds allow; what no visit is allowed for is not done. */
export const everythingNow = ({ jobs }: PlanInput): readonly Chosen[] =>
  jobs.map(({ id, at }) => {
    const visit = at.findIndex((cost) => cost !== undefined);
    return { id, visit: visit < 0 ? undefined : visit };
  });

/**
 * Each job by itself at the last visit that its holds allow before it is due, else at the first one after; meter
 * hours by job id. A job without hours is not due within the horizon: it is not done, or as late as can be.
 */
export const eachWhenDue = (
  { visits, jobs }: PlanInput,
  due: ReadonlyMap<string, number>,
): readonly Chosen[] =>
  jobs.map(({ id, at, never }) => {
    const hours = due.get(id);
    if (hours === undefined && never !== undefined) return { id, visit: undefined };
    const allowed = [...at.keys()].filter((v) => at[v] !== undefined);
    const before = allowed.filter((v) => (visits[v] ?? 0) <= (hours ?? Infinity));
    return { id, visit: before.at(-1) ?? allowed[0] };
  });

const isStuck = ({ at, never }: PlanJob): boolean => [...at, never].every((cost) => cost === undefined);

/** The whole with the jobs of the earlier plan where that had them; undefined where it had none, or one cannot be there. */
function earlierIn(whole: Branch, { visits, earlier }: PlanInput): Branch | undefined {
  const options = whole.tasks.map(({ id }) => {
    const hours = earlier?.get(id);
    return hours === 'never' ? visits.length : hours === undefined ? undefined : visits.indexOf(hours);
  });
  if (options.every((option) => option === undefined)) return undefined;
  const branch = place(whole, options);
  return branch.spent < Infinity ? branch : undefined;
}

/**
 * Cheapest plan, exact up to 16 jobs. Among equals no visit is made that saves nothing, and visits are as early as
 * can be; the order of the jobs decides nothing.
 */
export function planOf(input: PlanInput): Result<Plan, NoPlan> {
  const stuck = input.jobs.find(isStuck);
  if (stuck) return err({ kind: 'no-visit', job: stuck.id });
  const whole = wholeOf(input);
  const effort = whole.tasks.length > alwaysExact ? longSearch : Infinity;
  const found = cheapestPlan(whole, effort);
  const earlier = earlierIn(whole, input);
  const held = earlier && cheapestPlan(earlier, effort);
  const best = Math.min(found.cost, held?.cost ?? Infinity);
  const kept = held !== undefined && held.cost - best <= worthChanging * Math.abs(best);
  const { placed, cost } = kept ? held : found;
  return ok({
    chosen: input.jobs.map(({ id }) => ({ id, visit: placed.get(id) })),
    cost,
    best,
    kept,
    exact: found.bound === best,
    bound: found.bound,
  });
}
