import type { Chosen, PlanInput, PlanJob, SetUp } from '../../src/core/plan.ts';
import type { Random } from '../checks/random.ts';

const sides = ['left', 'right'] as const;

const pick = <T>(random: Random, list: readonly T[]): T =>
  list[Math.floor(random.uniform() * list.length)] as T;

function needsOf(random: Random): readonly SetUp[] {
  const side = pick(random, sides);
  return pick(random, [
    ['call-out'],
    [`lift-${side}`],
    [`track-off-${side}`],
    [`track-off-${side}`],
    ['track-off-left', 'track-off-right'],
    [],
  ] as const satisfies readonly (readonly SetUp[])[]);
}

/** Costs that fall while a part is used up and rise with the risk of a breakdown, some forbidden, some alike. */
function jobOf(random: Random, id: string, visits: number): PlanJob {
  const price =
    pick(random, [0, 100, 1000, 50_000, 400_000]) * (random.uniform() < 0.3 ? 1 : random.uniform());
  const best = random.uniform() * visits;
  const curve = Array.from({ length: visits }, (_, v) => price * (1 + 0.1 * (v - best) ** 2));
  const isFlat = random.uniform() < 0.2;
  const at = curve.map((cost) => (random.uniform() < 0.15 ? undefined : isFlat ? price : cost));
  const mayBeNever = random.uniform() < 0.7 || at.every((cost) => cost === undefined);
  const never = mayBeNever
    ? random.uniform() < 0.3
      ? -price / 2
      : price * (1 + random.uniform())
    : undefined;
  return { id, needs: needsOf(random), at, never };
}

/** A case of so many jobs and visits: set-ups free, small, or dearer than all the rest. */
export function randomCase(random: Random, jobs: number, visits: number): PlanInput {
  const dear = pick(random, [0, 1000, 20_000, 1e6]);
  const cost = (): number => Math.round(dear * random.uniform());
  return {
    visits: Array.from({ length: visits }, (_, v) => 1000 + 250 * v),
    jobs: Array.from({ length: jobs }, (_, n) => jobOf(random, `job-${n}`, visits)),
    setUpCost: {
      'call-out': cost(),
      'lift-left': cost(),
      'lift-right': cost(),
      'track-off-left': cost(),
      'track-off-right': cost(),
    },
  };
}

const under: Readonly<Record<SetUp, readonly SetUp[]>> = {
  'call-out': ['call-out'],
  'lift-left': ['call-out', 'lift-left'],
  'lift-right': ['call-out', 'lift-right'],
  'track-off-left': ['call-out', 'lift-left', 'track-off-left'],
  'track-off-right': ['call-out', 'lift-right', 'track-off-right'],
};

/** The cost of a choice by plain adding, written apart from the code that it checks. */
export function plainCost({ jobs, visits, setUpCost }: PlanInput, chosen: readonly Chosen[]): number {
  let sum = 0;
  const opened = visits.map(() => new Set<SetUp>());
  for (const [n, job] of jobs.entries()) {
    const visit = chosen[n]?.visit;
    const cost = visit === undefined ? job.never : job.at[visit];
    if (cost === undefined) return Infinity;
    sum += cost;
    if (visit === undefined) continue;
    opened[visit]?.add('call-out');
    for (const need of job.needs) for (const each of under[need]) opened[visit]?.add(each);
  }
  for (const set of opened) for (const each of set) sum += setUpCost[each];
  return sum;
}

/** The least cost of all choices, tried one by one. */
export function bruteForce(input: PlanInput): number {
  const options = [...input.visits.keys(), undefined];
  const chosen: Chosen[] = [];
  const tried = (n: number): number => {
    const job = input.jobs[n];
    if (job === undefined) return plainCost(input, chosen);
    let least = Infinity;
    for (const visit of options) {
      const cost = visit === undefined ? job.never : job.at[visit];
      if (cost === undefined) continue;
      chosen[n] = { id: job.id, visit };
      least = Math.min(least, tried(n + 1));
    }
    chosen.length = n;
    return least;
  };
  return tried(0);
}
