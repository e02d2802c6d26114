import { expect, test } from 'vitest';
import { assemble } from '../../src/core/assemble.ts';
import { hoursLeft } from '../../src/core/hours-left.ts';
import type { HistoryInput, WalkReadings } from '../../src/core/history.ts';
import { historyInput } from '../../src/core/outlook.ts';
import { planOf, type PlanInput } from '../../src/core/plan.ts';
import { assert } from '../../src/core/result.ts';
import { score } from '../../src/core/score.ts';
import { builtIn } from '../../src/reference/built-in.ts';
import { randomOf } from '../checks/random.ts';
import { demoMap, shelfWith, steel } from '../core/ahead-made.ts';
import { randomCase } from '../core/plan-cases.ts';

/** The least of many runs: what the machine can do when nothing else runs on it. */
function leastMs(run: () => unknown, runs = 40): number {
  const times = Array.from({ length: runs }, () => {
    const start = performance.now();
    run();
    return performance.now() - start;
  });
  return Math.min(...times);
}

const shelf = shelfWith(demoMap());
const made = assemble(shelf, builtIn, steel);
assert(made.ok, 'the steel demo');
const { input } = made.value;

/** The largest demo machine with so many walks, its wear growing from the first to the last. */
function walked(count: number): HistoryInput {
  const three = historyInput(shelf, builtIn, steel, made.ok ? made.value : ({} as never));
  const walks = Array.from({ length: count }, (_, n): WalkReadings => {
    const like = three.walks[Math.floor((3 * n) / count)];
    assert(like, 'a walk');
    const day = String(1 + (n % 28)).padStart(2, '0');
    const month = String(1 + (Math.floor(n / 28) % 12)).padStart(2, '0');
    const utc = `${2030 + Math.floor(n / 336)}-${month}-${day}T08:00:00Z`;
    const meterHours = 3000 + (2000 * n) / count;
    return {
      ...like,
      key: `walk/${n}`,
      walk: { ...like.walk, meterHours, startedAt: { utc, offsetMinutes: 0 } },
    };
  });
  return { ...three, walks };
}

test('[BE4] score and hours left of a machine with 10 walks take a few copies of its readings', () => {
  const ten = walked(10);
  // Parts about which something is open are not reckoned: all must have their hours.
  expect(hoursLeft(ten).parts.flatMap(({ open }) => open)).toEqual([]);
  const both = (): void => {
    score(input);
    hoursLeft(ten);
  };
  const copied = ten.walks.map(({ readings }) => readings);
  const [floor, worked] = [leastMs(() => structuredClone(copied)), leastMs(both)];
  const ratio = worked / floor;
  console.log(
    `score and hours left, 10 walks: ${ratio.toFixed(2)} × a copy of their readings (${worked.toFixed(2)} ms)`,
  );
  expect(ratio).toBeLessThan(20);
});

test('[BE5] hours left grow with the number of walks, and no faster', () => {
  const each = [10, 100, 1000].map((count) => {
    const walks = walked(count);
    return leastMs(() => hoursLeft(walks), count > 500 ? 10 : 40) / count;
  });
  console.log(
    `hours left for each walk of 10, 100, 1,000: ${each.map((ms) => `${(1000 * ms).toFixed(0)} µs`).join(', ')}`,
  );
  const [few = 0, , many = 0] = each;
  expect(many / few).toBeLessThan(2);
});

/** The longest of several cases, each at its best. */
function worstMs(jobs: number, visits: number): { readonly ms: number; readonly input: PlanInput } {
  const random = randomOf(9);
  const cases = Array.from({ length: 25 }, () => randomCase(random, jobs, visits));
  const timed = cases.map((each) => ({ input: each, ms: leastMs(() => planOf(each), 6) }));
  return timed.reduce((a, b) => (b.ms > a.ms ? b : a));
}

test('[BE6] a plan of 8 and of 16 jobs takes some copies of ten walks', () => {
  const floor = leastMs(() => structuredClone(walked(10).walks));
  const [small, large] = [worstMs(8, 9), worstMs(16, 9)];
  console.log(
    `plan, worst of 25: 8 jobs ${(small.ms / floor).toFixed(2)} ×, 16 jobs ${(large.ms / floor).toFixed(2)} × a copy of ten walks (${small.ms.toFixed(2)} ms, ${large.ms.toFixed(2)} ms)`,
  );
  expect(small.ms / floor).toBeLessThan(30);
  expect(large.ms / floor).toBeLessThan(120);
});
