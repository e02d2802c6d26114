import { planOf } from '../../src/core/plan.ts';
import { randomOf } from '../checks/random.ts';
import { randomCase } from '../core/plan-cases.ts';

const least = (run: () => unknown): number => {
  const times = Array.from({ length: 5 }, () => {
    const start = performance.now();
    run();
    return performance.now() - start;
  });
  return Math.min(...times);
};

/** The worst of 25 plans of 16 jobs, and what a copy of its input takes, in milliseconds. */
function planTimes(): { readonly planMs: number; readonly copyMs: number } {
  const random = randomOf(9);
  const cases = Array.from({ length: 25 }, () => randomCase(random, 16, 9));
  const planMs = Math.max(...cases.map((each) => least(() => planOf(each))));
  const copyMs = least(() => cases.map((each) => structuredClone(each.jobs)));
  return { planMs, copyMs };
}

Object.assign(globalThis, { planTimes });
