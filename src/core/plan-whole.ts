import { rounded, type Branch, type Task } from './plan-branch.ts';
import type { PlanInput, PlanJob, SetUp } from './plan.ts';
import { assert } from './result.ts';

/** A search doubles with each visit. */
const mostVisits = 17;

const setUps: readonly SetUp[] = ['call-out', 'lift-left', 'lift-right', 'track-off-left', 'track-off-right'];

/** What each set-up cannot be done without; the call-out rests on itself. */
const restsOn: Readonly<Record<SetUp, SetUp>> = {
  'call-out': 'call-out',
  'lift-left': 'call-out',
  'lift-right': 'call-out',
  'track-off-left': 'lift-left',
  'track-off-right': 'lift-right',
};

/** All that a job needs, with what that rests on, in the order of `setUps`. */
function neededBy({ needs }: PlanJob): readonly SetUp[] {
  const all = new Set<SetUp>(['call-out']);
  for (let each of needs) for (; !all.has(each); each = restsOn[each]) all.add(each);
  return setUps.filter((each) => all.has(each));
}

const isCost = (cost: number | undefined): boolean => cost === undefined || Number.isFinite(cost);

/** Throws on an input that only a bug can make: a cost that is no number, a list of another length, a job twice. */
function assertInput({ visits, jobs, setUpCost }: PlanInput): void {
  assert(visits.length <= mostVisits, 'no more visits than can be searched');
  assert(new Set(jobs.map(({ id }) => id)).size === jobs.length, 'each job once');
  for (const { id, at, never } of jobs)
    assert(at.length === visits.length && [...at, never].every(isCost), `a cost for each visit of ${id}`);
  for (const each of setUps) assert(setUpCost[each] >= 0 && isCost(setUpCost[each]), `a price of ${each}`);
}

/**
 * The unit to which costs are rounded: about a millionth, or more where they are huge. As a power of two it makes all
 * sums exact, so that neither the order of adding nor an engine's last bit decides between plans.
 */
function grainOf({ visits, jobs, setUpCost }: PlanInput): number {
  let most = 0;
  for (const { at, never } of jobs) most += Math.max(...[...at, never].map((cost = 0) => Math.abs(cost)));
  for (const each of setUps) most += visits.length * setUpCost[each];
  let grain = 2 ** -20;
  while (most > grain * 2 ** 48) grain *= 2;
  return grain;
}

/** A job with its costs halved between its sides, where it needs both. */
function taskOf(job: PlanJob, grain: number): Task {
  const costs = [...job.at, job.never].map((cost = Infinity) => rounded(cost, grain));
  const all = neededBy(job);
  const tops = all.filter((each) => !all.some((other) => other !== each && restsOn[other] === each));
  const half = costs.map((cost) => rounded(cost / 2, grain));
  const rest = costs.map((cost, v) => (cost === Infinity ? cost : cost - (half[v] ?? 0)));
  const parts = tops.length === 1 ? [costs] : [half, rest];
  return {
    id: job.id,
    costs,
    needs: all.map((each) => setUps.indexOf(each)),
    shares: tops.map((each, i) => ({ setUp: setUps.indexOf(each), costs: parts[i] ?? [] })),
  };
}

/** All plans there are. The jobs stand by their ids, so that the order in which they came decides nothing. */
export function wholeOf(input: PlanInput): Branch {
  assertInput(input);
  const { visits, jobs, setUpCost } = input;
  const grain = grainOf(input);
  return {
    grain,
    tasks: [...jobs].sort((a, b) => (a.id < b.id ? -1 : 1)).map((job) => taskOf(job, grain)),
    setUps: setUps.map((each) => ({
      restsOn: setUps.indexOf(restsOn[each]),
      prices: visits.map(() => rounded(setUpCost[each], grain)),
    })),
    visits: [...visits.keys()],
    placed: new Map(),
    spent: 0,
  };
}
