import { setUpCosts, setUpsOf, type CostedJob } from './job-costs.ts';
import { jobCost, type Costs, type Rates } from './costs.ts';
import { jobId, jobKindsFor, jobTraits, type JobKind } from './job-kinds.ts';
import { newLifeHours, notTurned, type Job, type NotTurned } from './jobs.ts';
import type { PartHours } from './hours-left.ts';
import type { PlaceSide } from './keys.ts';
import type { LifeTables } from './life.ts';
import { costPerHour } from './money.ts';
import type { ItemOutcome } from './score.ts';
import { momentsOf } from './wear-filter.ts';
import type { Shape } from './machine.ts';

/** Why a way of mending is not open. */
export type NotFeasible = NotTurned | 'several-links' | 'no-price' | 'buys-nothing';

/** What a way of mending does to its neighbours, or they to it. */
export type NeighbourEffect =
  | 'worn-sprocket-eats-track'
  | 'tread-runs-backwards'
  | 'one-roller-carries-all'
  | 'links-limit-turning'
  | 'press-needed'
  | 'chain-limits-shoes';

/** One way to go on with a worn or broken part. */
export interface Way {
  readonly kind: JobKind;
  readonly side: PlaceSide;
  readonly count: number;
  /** Hours it buys over leaving the part as it is. */
  readonly hoursGained: number;
  /** Parts, labour and standing still, and its share of what the visit sets up, in minor units. */
  readonly minor: number;
  /** Minor units per hour gained. */
  readonly perHour: number;
  readonly effects: readonly NeighbourEffect[];
}

export interface ClosedWay {
  readonly kind: JobKind;
  readonly why: NotFeasible;
}

/** The ways for one planned job, cheapest per hour first, and those that are not open. */
export interface Choice {
  readonly job: Job;
  readonly ways: readonly Way[];
  readonly closed: readonly ClosedWay[];
}

export interface MendInput {
  readonly shape: Shape;
  readonly outcomes: readonly ItemOutcome[];
  readonly parts: readonly PartHours[];
  readonly costs: Costs;
  readonly rates: Rates;
  readonly life: LifeTables;
  /** Ids of the jobs that have a visit in the plan. */
  readonly planned: ReadonlySet<string>;
}

/** What is compared with renewing: kinds of job that stand in for each other. */
const rivals: Readonly<Partial<Record<JobKind, readonly JobKind[]>>> = {
  'renew-chain': ['renew-chain', 'turn-bushings', 'change-link', 'swap-sides'],
  'turn-bushings': ['turn-bushings', 'renew-chain'],
  'change-link': ['change-link', 'renew-chain'],
  'renew-shoes': ['renew-shoes', 'regrouser'],
  'renew-track': ['renew-track', 'swap-sides'],
  'mend-other': [],
  'renew-bottom-roller': ['renew-bottom-roller'],
};

const middleOf = (part: PartHours | undefined): number | undefined =>
  part?.left && Number.isFinite(part.left.middle) ? part.left.middle : undefined;

const newLife = (part: PartHours | undefined): number | undefined => part && newLifeHours(part);

const partOf = (input: MendInput, side: PlaceSide, item: string): PartHours | undefined =>
  input.parts.find(({ history }) => history.side === side && history.item.id === item);

const findingOf = (input: MendInput, side: PlaceSide, item: string): string | undefined =>
  input.outcomes.find(({ state }) => state.side === side && state.item.id === item)?.state.finding;

function closedOf(input: MendInput, { side }: Job, kind: JobKind): NotFeasible | undefined {
  if (kind === 'turn-bushings') return notTurned(side, input.outcomes, input.parts);
  if (kind === 'change-link' && findingOf(input, side, 'links-cracked') === 'several') return 'several-links';
  return undefined;
}

interface Gain {
  readonly hours: number;
  readonly effects: readonly NeighbourEffect[];
}

const isHooked = (input: MendInput, side: PlaceSide): boolean =>
  ['worn', 'hooked', 'broken'].includes(findingOf(input, side, 'sprocket-teeth') ?? '');

/** What the part lasts once the job is done, from now, with what its neighbours do to that. */
function lifeAfter(input: MendInput, job: Job, kind: JobKind): Gain | undefined {
  const { side } = job;
  const lead =
    job.worn[0] ??
    input.parts.find(
      ({ history }) => history.side === side && jobTraits[kind].mends.includes(history.item.id),
    );
  const whole = newLife(lead);
  const isRenewed = input.planned.has(jobId(side, 'renew-chain'));
  const links = isRenewed ? undefined : middleOf(partOf(input, side, 'link-height'));
  if (kind === 'turn-bushings') {
    const bushing = newLife(partOf(input, side, 'bushing-od') ?? partOf(input, side, 'pitch'));
    if (bushing === undefined) return undefined;
    const hours = bushing * input.life.turnedShare.value;
    const isShort = links !== undefined && links < hours;
    return { hours: isShort ? links : hours, effects: isShort ? ['links-limit-turning'] : [] };
  }
  if (kind === 'swap-sides') return afterSwap(input, job);
  if (kind === 'change-link')
    return links === undefined ? undefined : { hours: links, effects: ['press-needed'] };
  if (kind === 'regrouser' || kind === 'renew-shoes') {
    if (whole === undefined) return undefined;
    const hours = kind === 'regrouser' ? whole * input.life.builtUpShare.value : whole;
    const isShort = links !== undefined && links < hours;
    return { hours: isShort ? links : hours, effects: isShort ? ['chain-limits-shoes'] : [] };
  }
  if (whole === undefined) return undefined;
  if (kind === 'renew-track' || kind === 'renew-chain') {
    return isHooked(input, side)
      ? { hours: whole * input.life.wornSprocketShare.value, effects: ['worn-sprocket-eats-track'] }
      : { hours: whole, effects: [] };
  }
  if (kind === 'renew-bottom-roller' && isOneAmongWorn(input, job)) {
    return { hours: whole, effects: ['one-roller-carries-all'] };
  }
  return { hours: whole, effects: [] };
}

/** Percent of wear now and percent an hour, in the middle of what is believed. */
function paceOf(
  part: PartHours | undefined,
): { readonly percent: number; readonly perHour: number } | undefined {
  if (!part?.state) return undefined;
  const percent = part.state.means.reduce((sum, mean, g) => sum + mean * (part.state?.weights[g] ?? 0), 0);
  return { percent, perHour: Math.exp(momentsOf(part.state).mean) };
}

/** Hours until the first of both sides is worn out, each worn side then wearing at the other's pace. */
function afterSwap(input: MendInput, { side, worn }: Job): Gain | undefined {
  const item = worn[0]?.history.item.id;
  if (item === undefined || side === 'whole') return undefined;
  const mine = paceOf(worn[0]);
  const theirs = paceOf(partOf(input, side === 'left' ? 'right' : 'left', item));
  if (!mine || !theirs) return undefined;
  const hours = Math.min((100 - mine.percent) / theirs.perHour, (100 - theirs.percent) / mine.perHour);
  return { hours, effects: ['tread-runs-backwards'] };
}

/** Rollers as low as this beside a new one leave it the whole load (percent worn; common practice, no source). */
const muchLower = 50;

function isOneAmongWorn(input: MendInput, job: Job): boolean {
  const places = new Set([
    ...job.outcomes.map(({ state }) => state.place),
    ...job.worn.map(({ history }) => history.place),
  ]);
  return input.parts.some(
    ({ history }) =>
      history.side === job.side &&
      history.item.id === 'roller-tread' &&
      !places.has(history.place) &&
      (history.points.at(-1)?.percent ?? 0) > muchLower,
  );
}

/** The ways to go on for a planned job: what each costs for each hour that it buys. */
export function choiceOf(input: MendInput, { job }: CostedJob, sharing = 1): Choice {
  const fitting = jobKindsFor(input.shape);
  const isCracked = ['one', 'several'].includes(findingOf(input, job.side, 'links-cracked') ?? '');
  const kinds = (rivals[job.kind] ?? [job.kind]).filter(
    (kind) => fitting.includes(kind) && (kind !== 'change-link' || isCracked),
  );
  const left = job.call === 'run' || job.worn.length > 0 ? (middleOf(job.worn[0]) ?? 0) : 0;
  const ways: Way[] = [];
  const closed: ClosedWay[] = [];
  for (const kind of kinds) {
    const why = closedOf(input, job, kind);
    const count = kind === job.kind ? job.count : 1;
    const side = jobTraits[kind].per === 'both-sides' ? 'whole' : job.side;
    const cost = jobCost(input.costs, kind, count);
    const after = lifeAfter(input, job, kind);
    if (why !== undefined) closed.push({ kind, why });
    else if (!cost.ok) closed.push({ kind, why: 'no-price' });
    else if (after !== undefined) {
      const shared = setUpsOf({ kind, side }).reduce((sum, each) => sum + setUpCosts(input.rates)[each], 0);
      const { partsMinor, labourMinor, downtimeMinor } = cost.value;
      const minor = Math.round(partsMinor + labourMinor + downtimeMinor + shared / sharing);
      const hoursGained = after.hours - left;
      const perHour = hoursGained > 0 ? costPerHour(minor, hoursGained) : undefined;
      if (perHour === undefined) closed.push({ kind, why: 'buys-nothing' });
      else ways.push({ kind, side, count, hoursGained, minor, perHour, effects: after.effects });
    }
  }
  ways.sort((a, b) => a.perHour - b.perHour);
  return { job, ways, closed };
}
