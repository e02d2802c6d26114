import type { Chosen, PlanInput, PlanJob, SetUp } from '../../src/core/plan.ts';
import type { Random } from '../checks/random.ts';

/** Prices at which grouping decides all, some or nothing, and costs of which many are alike. */
export const hardKinds = ['dear', 'middling', 'cheap', 'free', 'alike', 'alike and dear', 'bowls'] as const;
export type HardKind = (typeof hardKinds)[number];

const prices: Readonly<Record<HardKind, number>> = {
  dear: 2000,
  middling: 300,
  cheap: 20,
  free: 0,
  alike: 300,
  'alike and dear': 2000,
  bowls: 500,
};

const levels: readonly (readonly SetUp[])[] = [
  [],
  ['lift-left'],
  ['lift-right'],
  ['track-off-left'],
  ['track-off-right'],
];

const bothSides: readonly (readonly SetUp[])[] = [
  ['lift-left', 'lift-right'],
  ['lift-left', 'track-off-right'],
  ['track-off-left', 'lift-right'],
  ['track-off-left', 'track-off-right'],
];

const from = <T>(random: Random, list: readonly T[]): T =>
  list[Math.floor(random.uniform() * list.length)] as T;

function costsOf(random: Random, kind: HardKind, visits: number): readonly number[] {
  const [lowest, steep] = [random.uniform() * visits, 20 + 200 * random.uniform()];
  return Array.from({ length: visits + 1 }, (_, v) => {
    if (kind === 'bowls') return 500 + steep * Math.abs(v - lowest) ** 1.3;
    return kind.startsWith('alike') ? 100 * Math.floor(3 * random.uniform()) : 1000 * random.uniform();
  });
}

/** Jobs of which the first `both` need both sides, which is what makes a plan hard to find; a few may not be left. */
export function hardCase(
  random: Random,
  kind: HardKind,
  { jobs, visits, both }: { readonly jobs: number; readonly visits: number; readonly both: number },
): PlanInput {
  const isAlike = kind.startsWith('alike');
  const price = (): number => Math.round(prices[kind] * (isAlike ? 0.5 : random.uniform()));
  return {
    visits: Array.from({ length: visits }, (_, v) => 250 * v),
    jobs: Array.from({ length: jobs }, (_, n): PlanJob => {
      const costs = costsOf(random, kind, visits);
      const needs = from(random, n < both ? bothSides : levels);
      const never = random.uniform() < 0.8 ? costs[visits] : undefined;
      return { id: `job-${n}`, needs, at: costs.slice(0, visits), never };
    }),
    setUpCost: {
      'call-out': price(),
      'lift-left': price(),
      'lift-right': price(),
      'track-off-left': price(),
      'track-off-right': price(),
    },
  };
}

/** How far each side is opened at a visit: 0 not at all, 1 lifted, 2 with its track off. */
type Opened = readonly [left: number, right: number];

const opened: readonly Opened[] = [0, 1, 2].flatMap((left) =>
  [0, 1, 2].map((right) => [left, right] as const),
);

const levelOf = ({ needs }: PlanJob, side: 'left' | 'right'): number =>
  needs.includes(`track-off-${side}`) ? 2 : needs.includes(`lift-${side}`) ? 1 : 0;

function priceOf({ setUpCost }: PlanInput, [left, right]: Opened): number {
  const side = (level: number, name: 'left' | 'right'): number =>
    (level > 0 ? setUpCost[`lift-${name}`] : 0) + (level > 1 ? setUpCost[`track-off-${name}`] : 0);
  return setUpCost['call-out'] + side(left, 'left') + side(right, 'right');
}

/**
 * The least cost over every way of opening the machine at each visit, each job then taking the cheapest visit that is
 * opened for it: ten ways a visit, however many jobs. Shares nothing with the search.
 */
export function leastByVisits(input: PlanInput): number {
  const { jobs, visits } = input;
  const fits = opened.map(([left, right]) =>
    jobs.map((job) => levelOf(job, 'left') <= left && levelOf(job, 'right') <= right),
  );
  const tried = (v: number, spent: number, least: readonly number[]): number => {
    if (v === visits.length) return least.reduce((sum, cost) => sum + cost, spent);
    const ways = opened.map((way, w) => {
      const after = least.map((cost, n) => {
        const here = fits[w]?.[n] ? jobs[n]?.at[v] : undefined;
        return here === undefined ? cost : Math.min(cost, here);
      });
      return tried(v + 1, spent + priceOf(input, way), after);
    });
    return Math.min(tried(v + 1, spent, least), ...ways);
  };
  return tried(
    0,
    0,
    jobs.map(({ never = Infinity }) => never),
  );
}

/** A plan to which moving one job at a time has led from a random start. */
export function descended(
  random: Random,
  input: PlanInput,
  cost: (input: PlanInput, chosen: readonly Chosen[]) => number,
): number {
  const options = [...input.visits.keys(), undefined];
  let chosen: readonly Chosen[] = input.jobs.map(({ id }) => ({
    id,
    visit: Math.floor(random.uniform() * input.visits.length),
  }));
  let least = cost(input, chosen);
  for (let isBetter = true; isBetter;) {
    isBetter = false;
    for (const n of input.jobs.keys())
      for (const visit of options) {
        const moved = chosen.map((each, at) => (at === n ? { ...each, visit } : each));
        const now = cost(input, moved);
        if (now < least - 1e-6) [chosen, least, isBetter] = [moved, now, true];
      }
  }
  return least;
}
