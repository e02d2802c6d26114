import type { AppraisalSettings } from './appraisal-settings.ts';
import { callRank, worseCall } from './calls.ts';
import { jobCost, type CostOpen, type Costs, type JobCost, type Rates } from './costs.ts';
import type { PartHours } from './hours-left.ts';
import { setUpCosts, setUpsOf } from './job-costs.ts';
import { jobId, jobKindsFor, jobTraits } from './job-kinds.ts';
import { jobsOf, notTurned, type Job } from './jobs.ts';
import { sides, type Shape } from './machine.ts';
import type { Result } from './result.ts';
import type { Source } from './source.ts';
import type { ItemOutcome } from './score.ts';
import { countOf } from './appraisal-parts.ts';

/** What a machine was found to be, and what work on it costs. */
export interface Found {
  readonly shape: Shape;
  readonly outcomes: readonly ItemOutcome[];
  readonly parts: readonly PartHours[];
  readonly costs: Costs;
}

/** One job of those that bring a machine to a condition. */
export interface WorkLine {
  readonly job: Job;
  /** What asks for it as it was found: calls, and parts with too little left. */
  readonly because: readonly ItemOutcome[];
  /** Those of them with less left than is wanted. */
  readonly short: readonly ItemOutcome[];
  /** The whole row goes, since one of it is worn. */
  readonly isRow: boolean;
  /** Renewing costs less than all that would have to be mended. */
  readonly isInstead: boolean;
  readonly cost: Result<JobCost, CostOpen>;
  /** Parts and labour in minor units; undefined where no price is known. */
  readonly minor: number | undefined;
}

/** All work that brings a machine to a condition, in minor units of the currency. */
export interface Work {
  readonly lines: readonly WorkLine[];
  /** Call-out, lifting and taking tracks off, each once. */
  readonly setUpMinor: number;
  readonly setUpSources: readonly Source[];
  /** What is known of the sum; undefined where nothing was read, or no price of anything is known. */
  readonly minor: number | undefined;
  /** False while a line has no price: the sum is then the least that it costs. */
  readonly isWhole: boolean;
}

type IsShort = (outcome: ItemOutcome) => boolean;

/** What has too little left asks to be renewed, or to be turned where that is enough and open. */
function raised({ outcomes, parts }: Found, isShort: IsShort): readonly ItemOutcome[] {
  return outcomes.map((outcome) => {
    if (!isShort(outcome)) return outcome;
    const { side, item } = outcome.state;
    const isTurned =
      jobTraits['turn-bushings'].mends.includes(item.id) && notTurned(side, outcomes, parts) === undefined;
    return { ...outcome, atLeast: worseCall(outcome.atLeast, isTurned ? 'repair' : 'replace') };
  });
}

function lineOf(
  found: Found,
  { sets }: Pick<AppraisalSettings, 'sets'>,
  isShort: IsShort,
  job: Job,
  isInstead = false,
): WorkLine {
  const asFound = new Map(found.outcomes.map((outcome) => [outcome.state, outcome]));
  const because = job.outcomes.map((each) => asFound.get(each.state) ?? each);
  const short = because.filter(isShort);
  const row = countOf(job.kind, found.shape);
  const isRow = sets === 'worst' && short.length > 0 && job.count < row;
  const count = isRow ? row : job.count;
  const cost = jobCost(found.costs, job.kind, count);
  const minor = cost.ok ? cost.value.partsMinor + cost.value.labourMinor : undefined;
  return { job: { ...job, count }, because, short, isRow, isInstead, cost, minor };
}

const setUpOf = (lines: readonly WorkLine[], rates: Rates): number => {
  const priced = lines.filter(({ minor }) => minor !== undefined);
  const setUps = new Set(priced.flatMap(({ job }) => setUpsOf(job)));
  return [...setUps].reduce((sum, each) => sum + setUpCosts(rates)[each], 0);
};

const sumOf = (lines: readonly WorkLine[], rates: Rates): number =>
  lines.reduce((sum, { minor }) => sum + (minor ?? 0), setUpOf(lines, rates));

/** Whether renewing does all that a job does, at a price that is known. */
const coveredBy =
  ({ kind, side }: Pick<Job, 'kind' | 'side'>) =>
  ({ job, minor }: WorkLine): boolean =>
    minor !== undefined &&
    job.side === side &&
    job.outcomes.every(({ state }) => jobTraits[kind].mends.includes(state.item.id));

/** Renewals that could stand in for smaller work on the same track. */
function standIns({ shape }: Found, lines: readonly WorkLine[]): readonly Pick<Job, 'kind' | 'side'>[] {
  const kinds = jobKindsFor(shape).filter(
    (kind) => kind.startsWith('renew-') && jobTraits[kind].component === 'track',
  );
  const all = sides.flatMap((side) => kinds.map((kind) => ({ kind, side })));
  return all.filter(
    (each) => lines.some(coveredBy(each)) && !lines.some(({ job }) => job.id === jobId(each.side, each.kind)),
  );
}

function standIn(
  found: Found,
  settings: Pick<AppraisalSettings, 'sets'>,
  isShort: IsShort,
  lines: readonly WorkLine[],
  { kind, side }: Pick<Job, 'kind' | 'side'>,
): readonly WorkLine[] {
  const covered = lines.filter(coveredBy({ kind, side }));
  const outcomes = covered.flatMap(({ job }) => job.outcomes);
  const call = outcomes.reduce((worst, each) => worseCall(worst, each.atLeast), 'run' as Job['call']);
  const job: Job = { id: jobId(side, kind), kind, side, count: 1, call, outcomes, worn: [] };
  const line = lineOf(found, settings, isShort, job, true);
  return line.minor === undefined || covered.length === 0
    ? lines
    : [...lines.filter((each) => !covered.includes(each)), line];
}

/** The cheapest of mending in pieces and renewing, over all sides and parts of the tracks. */
function cheapest(
  found: Found,
  settings: Pick<AppraisalSettings, 'sets'>,
  isShort: IsShort,
  lines: readonly WorkLine[],
): readonly WorkLine[] {
  const { rates } = found.costs;
  if (!rates) return lines;
  return standIns(found, lines)
    .reduce<readonly (readonly WorkLine[])[]>(
      (all, each) => [...all, ...all.map((some) => standIn(found, settings, isShort, some, each))],
      [lines],
    )
    .reduce((best, each) => (sumOf(each, rates) < sumOf(best, rates) ? each : best));
}

/**
 * The work that brings a machine to a condition: all that is called for, and a part of everything that has too little
 * left, at installed cost. The machine stands for sale, so that standing still costs nothing.
 * @param isShort tells which measured parts have less left than is wanted
 */
export function workTo(
  found: Found,
  settings: Pick<AppraisalSettings, 'sets'>,
  isShort: (outcome: ItemOutcome) => boolean,
): Work {
  const jobs = jobsOf(found.shape, raised(found, isShort), [], 0);
  const lines = cheapest(
    found,
    settings,
    isShort,
    jobs.map((job) => lineOf(found, settings, isShort, job)),
  );
  const { rates } = found.costs;
  const isKnown =
    rates !== undefined && found.costs.open.length === 0 && found.outcomes.some(({ state }) => state.known);
  const sorted = [...lines].sort(
    (a, b) => (b.minor ?? Infinity) - (a.minor ?? Infinity) || callRank(b.job.call) - callRank(a.job.call),
  );
  return {
    lines: sorted,
    setUpMinor: isKnown ? setUpOf(lines, rates) : 0,
    setUpSources: rates ? [rates.callOut.source, rates.liftSide.source, rates.trackOffSide.source] : [],
    minor: isKnown ? sumOf(lines, rates) : undefined,
    isWhole: lines.every(({ minor }) => minor !== undefined),
  };
}
