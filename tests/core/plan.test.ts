import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  costOf,
  eachWhenDue,
  everythingNow,
  planOf,
  type Plan,
  type PlanInput,
} from '../../src/core/plan.ts';
import { assert } from '../../src/core/result.ts';
import { randomOf } from '../checks/random.ts';
import { bruteForce, plainCost, randomCase } from './plan-cases.ts';

function planned(input: PlanInput): Plan {
  const plan = planOf(input);
  assert(plan.ok, 'a plan');
  return plan.value;
}

/** Costs are rounded to about a millionth of a minor unit. */
const near = (a: number, b: number): boolean => Math.abs(a - b) <= 1e-4 + 1e-9 * Math.abs(b);

describe('[N7] the plan of jobs', () => {
  test('[P1] costs as little as the cheapest of all choices, tried one by one: 2,000 cases of up to 6 jobs', () => {
    const random = randomOf(1);
    for (let n = 0; n < 2000; n += 1) {
      const input = randomCase(random, 1 + (n % 6), 1 + Math.floor(random.uniform() * (n % 6 < 4 ? 5 : 3)));
      const plan = planned(input);
      const least = bruteForce(input);
      expect(near(plan.cost, least), `case ${n}: ${plan.cost} instead of ${least}`).toBe(true);
      expect(near(plainCost(input, plan.chosen), least)).toBe(true);
      expect([plan.exact, plan.kept, plan.bound]).toEqual([true, false, plan.best]);
    }
  });

  test('[P2] of 16 jobs never costs more than the simple ways under the same holds: 200 cases', () => {
    const random = randomOf(2);
    for (let n = 0; n < 200; n += 1) {
      const input = randomCase(random, 16, 9);
      const plan = planned(input);
      const due = new Map(input.jobs.map(({ id }) => [id, 1000 + 2500 * random.uniform()]));
      for (const simple of [everythingNow(input), eachWhenDue(input, due), eachWhenDue(input, new Map())])
        expect(plan.cost).toBeLessThanOrEqual(costOf(input, simple) + 1e-4);
      expect(plan.exact).toBe(true);
      expect(near(plan.cost, plainCost(input, plan.chosen))).toBe(true);
    }
  });

  test('[P3] of 16 jobs is not improved by moving any one or two jobs: 30 cases', () => {
    const random = randomOf(3);
    for (let n = 0; n < 30; n += 1) {
      const input = randomCase(random, 16, 9);
      const { chosen, cost } = planned(input);
      const options = [...input.visits.keys(), undefined];
      chosen.forEach((one, i) => {
        for (const visit of options) {
          const moved = chosen.map((each, at) => (at === i ? { ...one, visit } : each));
          expect(plainCost(input, moved)).toBeGreaterThanOrEqual(cost - 1e-4);
          const j = (i + 1 + Math.floor(random.uniform() * 15)) % 16;
          const both = moved.map((each, at) => (at === j ? { ...each, visit } : each));
          expect(plainCost(input, both)).toBeGreaterThanOrEqual(cost - 1e-4);
        }
      });
    }
  });

  test('[P4] above 16 jobs tells how far the optimum can lie below, and beats the simple ways', () => {
    const random = randomOf(4);
    for (let n = 0; n < 5; n += 1) {
      const input = randomCase(random, 24, 9);
      const plan = planned(input);
      expect(plan.bound).toBeLessThanOrEqual(plan.best + 1e-6);
      expect(plan.exact).toBe(plan.bound === plan.best);
      expect(plan.cost).toBeLessThanOrEqual(costOf(input, everythingNow(input)) + 1e-4);
    }
  });

  test('[P5] has each job where its holds allow, with the cost that adding up gives', () => {
    const random = randomOf(5);
    for (let n = 0; n < 200; n += 1) {
      const input = randomCase(random, 8, 9);
      const { chosen } = planned(input);
      expect(chosen.map(({ id }) => id)).toEqual(input.jobs.map(({ id }) => id));
      chosen.forEach(({ visit }, at) => {
        const job = input.jobs[at];
        expect(visit === undefined ? job?.never : job?.at[visit]).toBeDefined();
      });
      expect(near(costOf(input, chosen), plainCost(input, chosen))).toBe(true);
    }
  });

  test('[P6] without jobs is empty; a job that may be nowhere is named', () => {
    const empty = { visits: [1, 2], jobs: [], setUpCost: randomCase(randomOf(6), 1, 1).setUpCost };
    expect(planned(empty)).toMatchObject({ chosen: [], cost: 0, best: 0, exact: true });
    const stuck = { id: 'stuck', needs: [], at: [undefined, undefined], never: undefined };
    expect(planOf({ ...empty, jobs: [stuck] })).toEqual({
      ok: false,
      error: { kind: 'no-visit', job: 'stuck' },
    });
  });

  test('[P7] shared work is paid once a visit, however many jobs share it', () => {
    const job = (id: string) => ({
      id,
      needs: ['track-off-left' as const],
      at: [100, 100],
      never: undefined,
    });
    const setUpCost = {
      'call-out': 7,
      'lift-left': 11,
      'lift-right': 1e6,
      'track-off-left': 13,
      'track-off-right': 1e6,
    };
    const plan = planned({ visits: [1, 2], jobs: [job('a'), job('b'), job('c')], setUpCost });
    expect(plan.cost).toBe(300 + 7 + 11 + 13);
    expect(new Set(plan.chosen.map(({ visit }) => visit)).size).toBe(1);
  });
});

const cases = fc.record({
  seed: fc.nat(1e6),
  jobs: fc.integer({ min: 1, max: 9 }),
  visits: fc.integer({ min: 1, max: 9 }),
});
const caseOf = ({ seed, jobs, visits }: { seed: number; jobs: number; visits: number }): PlanInput =>
  randomCase(randomOf(seed), jobs, visits);

const setUps = ['call-out', 'lift-left', 'lift-right', 'track-off-left', 'track-off-right'] as const;

/** The same jobs and visits with every cost moved a little. */
function nudged(input: PlanInput, seed: number, by: number): PlanInput {
  const random = randomOf(seed);
  const move = (cost: number): number => cost + by * (2 * random.uniform() - 1);
  return {
    ...input,
    jobs: input.jobs.map((job) => ({
      ...job,
      at: job.at.map((cost) => (cost === undefined ? undefined : move(cost))),
      never: job.never === undefined ? undefined : move(job.never),
    })),
    setUpCost: Object.fromEntries(
      setUps.map((each) => [each, Math.max(0, move(input.setUpCost[each]))]),
    ) as PlanInput['setUpCost'],
  };
}

/** Sum over jobs of the largest change of a cost, and over set-ups of their change at every visit. */
function distance(a: PlanInput, b: PlanInput): number {
  let sum = 0;
  a.jobs.forEach((job, n) => {
    const other = b.jobs[n];
    const changes = [...job.at, job.never].map((cost, at) => {
      const then = [...(other?.at ?? []), other?.never][at];
      return cost === undefined || then === undefined ? 0 : Math.abs(cost - then);
    });
    sum += Math.max(...changes);
  });
  for (const each of setUps) sum += a.visits.length * Math.abs(a.setUpCost[each] - b.setUpCost[each]);
  return sum;
}

describe('[N7] laws of the plan', () => {
  test('[P8] Lipschitz: the least cost moves no more than the costs did, and so does that of any fixed choice', () => {
    fc.assert(
      fc.property(cases, fc.nat(1e6), fc.double({ min: 0, max: 5000, noNaN: true }), (made, seed, by) => {
        const input = caseOf(made);
        const other = nudged(input, seed, by);
        const [one, two] = [planned(input), planned(other)];
        const most = distance(input, other) + 1e-3;
        expect(Math.abs(one.cost - two.cost)).toBeLessThanOrEqual(most);
        expect(Math.abs(costOf(input, one.chosen) - costOf(other, one.chosen))).toBeLessThanOrEqual(most);
      }),
    );
  });

  test('[P9] the earlier plan is kept unless another saves more than 1 %, and then it is not', () => {
    fc.assert(
      fc.property(cases, fc.nat(1e6), fc.constantFrom(0, 10, 1000, 50_000), (made, seed, by) => {
        const before = caseOf(made);
        const input = nudged(before, seed, by);
        const first = planned(before).chosen;
        const earlier = new Map(
          first.map(({ id, visit }) => [
            id,
            visit === undefined ? ('never' as const) : (input.visits[visit] ?? 'never'),
          ]),
        );
        const plan = planned({ ...input, earlier });
        const [best, held] = [planned(input).cost, costOf(input, first)];
        expect(near(plan.best, best)).toBe(true);
        const isWorthKeeping = held - best <= 0.01 * Math.abs(best) - 1e-3;
        const isWorthChanging = held - best > 0.01 * Math.abs(best) + 1e-3;
        if (isWorthKeeping) expect(plan.chosen).toEqual(first);
        if (isWorthKeeping) expect(plan.kept).toBe(true);
        if (isWorthChanging) expect(near(plan.cost, best)).toBe(true);
        expect(plan.cost - best).toBeLessThanOrEqual(0.01 * Math.abs(best) + 1e-3);
      }),
    );
  });

  test('[P10] an earlier plan that a hold now forbids is not kept', () => {
    const input: PlanInput = {
      visits: [1000, 1250],
      jobs: [{ id: 'a', needs: [], at: [undefined, 100], never: undefined }],
      setUpCost: {
        'call-out': 1,
        'lift-left': 0,
        'lift-right': 0,
        'track-off-left': 0,
        'track-off-right': 0,
      },
      earlier: new Map([['a', 1000]]),
    };
    expect(planned(input)).toMatchObject({ kept: false, chosen: [{ id: 'a', visit: 1 }] });
  });

  test('[P11] the order of the jobs changes neither the cost nor where each is done', () => {
    fc.assert(
      fc.property(cases, (made) => {
        const input = caseOf(made);
        const backwards = { ...input, jobs: [...input.jobs].reverse() };
        const [one, other] = [planned(input), planned(backwards)];
        expect(other.cost).toBe(one.cost);
        expect([...other.chosen].reverse()).toEqual(one.chosen);
      }),
    );
  });

  test('[P12] a hold is kept and never makes the plan cheaper', () => {
    fc.assert(
      fc.property(cases, fc.nat(8), fc.nat(8), (made, which, where) => {
        const input = caseOf(made);
        const job = input.jobs[which % input.jobs.length];
        const visit = where % input.visits.length;
        fc.pre(job?.at[visit] !== undefined);
        const held = {
          ...input,
          jobs: input.jobs.map((each) =>
            each === job
              ? { ...each, at: each.at.map((cost, v) => (v === visit ? cost : undefined)), never: undefined }
              : each,
          ),
        };
        const plan = planned(held);
        expect(plan.chosen.find(({ id }) => id === job?.id)?.visit).toBe(visit);
        expect(plan.cost).toBeGreaterThanOrEqual(planned(input).cost - 1e-4);
      }),
    );
  });

  test('[P13] each when due: the last visit not after it, else the next one, without hours none', () => {
    const job = (id: string, at: readonly (number | undefined)[], never?: number) => ({
      id,
      needs: [],
      at,
      never,
    });
    const input: PlanInput = {
      visits: [1000, 1250, 1500],
      jobs: [
        job('a', [1, 1, 1], 1),
        job('b', [1, undefined, 1], 1),
        job('c', [undefined, undefined, 1], 1),
        job('d', [1, 1, 1], 1),
        job('e', [1, 1, 1]),
      ],
      setUpCost: randomCase(randomOf(1), 1, 1).setUpCost,
    };
    const due = new Map([
      ['a', 1499],
      ['b', 1499],
      ['c', 900],
    ]);
    expect(eachWhenDue(input, due).map(({ visit }) => visit)).toEqual([1, 0, 2, undefined, 2]);
    expect(everythingNow(input).map(({ visit }) => visit)).toEqual([0, 0, 2, 0, 0]);
  });
});
