import { describe, expect, test } from 'vitest';
import fc from 'fast-check';
import { jobCost } from '../../src/core/costs.ts';
import {
  costedJob,
  costsAtVisits,
  planJobOf,
  setUpCosts,
  setUpsOf,
  type CostedJob,
  type Spell,
} from '../../src/core/job-costs.ts';
import { visitHours } from '../../src/core/job-plan.ts';
import type { Job } from '../../src/core/jobs.ts';
import { assert } from '../../src/core/result.ts';
import { builtIn } from '../../src/reference/built-in.ts';
import { demoMap, mini, outlookAt, plannedOf, steel } from './ahead-made.ts';

const outlook = outlookAt(demoMap(), steel);
const { costs } = outlook;
const { rates } = costs;
assert(rates, 'rates');
const nowHours = 4980;
const spell: Spell = {
  nowHours,
  horizonHours: 2000,
  visits: visitHours(nowHours, 2000),
  life: builtIn.life,
  load: 'average',
};

const costed = (job: Job, others = costs): CostedJob => {
  const made = costedJob(job, others, rates, spell);
  assert(made.ok, 'a cost');
  return made.value;
};

const found = (job: Partial<Job>): Job => {
  const [outcome] = outlookOutcomes();
  return {
    id: 'right.mend-adjuster',
    kind: 'mend-adjuster',
    side: 'right',
    count: 1,
    call: 'repair',
    outcomes: outcome ? [outcome] : [],
    worn: [],
    ...job,
  };
};

function outlookOutcomes() {
  const plan = plannedOf(outlook);
  return plan.visits.flatMap(({ jobs }) => jobs.flatMap(({ job }) => job.outcomes));
}

const wornJob = (): Job => {
  const plan = plannedOf(outlook);
  const all = [...plan.visits.flatMap(({ jobs }) => jobs), ...plan.later];
  const made = all.find(({ job }) => job.id === 'right.renew-chain');
  assert(made, 'a chain');
  return made.job;
};

describe('[N7] visits', () => {
  test('[JC1] lie on a fixed grid of the meter, now first, none beyond the horizon', () => {
    expect(visitHours(1110, 2000)).toEqual([1110, 1250, 1500, 1750, 2000, 2250, 2500, 2750, 3000]);
    expect(visitHours(1250, 500)).toEqual([1250, 1500, 1750]);
    expect(visitHours(0, 0)).toEqual([0]);
  });

  test('[JC2] another day’s hours do not move them', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 30_000, noNaN: true }), (now) => {
        const visits = visitHours(now, 2000);
        expect(
          visits.slice(1).every((hours) => hours % 250 === 0 && hours > now && hours <= now + 2000),
        ).toBe(true);
        expect(visits.length).toBeGreaterThanOrEqual(9);
      }),
    );
  });
});

describe('[N7] what a job needs set up', () => {
  test.each([
    ['adjust-sag', 'left', ['call-out']],
    ['renew-bottom-roller', 'left', ['call-out', 'lift-left']],
    ['renew-track', 'right', ['call-out', 'lift-right', 'track-off-right']],
    ['swap-sides', 'whole', ['call-out', 'lift-left', 'lift-right', 'track-off-left', 'track-off-right']],
  ] as const)('[JC3] %s on %s: %o', (kind, side, needs) => {
    expect(setUpsOf({ kind, side })).toEqual(needs);
  });
});

describe('[N7] expected cost at a visit', () => {
  test('[JC4] of a found fault is by its chance of stopping the machine before: exponential', () => {
    const { at, never } = costsAtVisits(costed(found({})), spell);
    const each = costed(found({}));
    const mean = builtIn.life.faultHours.repair.value;
    spell.visits.forEach((visit, n) => {
      const chance = 1 - Math.exp(-(visit - nowHours) / mean);
      // Between two points of the sum the chance goes straight, which is off by no more than this.
      const expected = chance * each.breakdownMinor + (1 - chance) * each.plannedMinor;
      expect(Math.abs((at[n] ?? 0) - expected)).toBeLessThan(0.002 * each.breakdownMinor);
    });
    expect(never).toBeCloseTo((1 - Math.exp(-2000 / mean)) * each.breakdownMinor, -1);
  });

  test('[JC5] now is the planned cost with nothing broken, less what the new part has left at the horizon', () => {
    const each = costed(wornJob());
    assert(each.newLifeHours, 'a life');
    const credit = each.plannedMinor * (1 - spell.horizonHours / each.newLifeHours);
    expect(costsAtVisits(each, spell).at[0]).toBeCloseTo(each.plannedMinor - credit, 6);
  });

  test('[JC6] of wear agrees with a fine sum over its first passage', () => {
    const each = costed(wornJob());
    const life = each.newLifeHours ?? NaN;
    const credit = (at: number): number => each.plannedMinor * (1 - (spell.horizonHours - at) / life);
    const { at } = costsAtVisits(each, spell);
    spell.visits.forEach((visit, n) => {
      const until = visit - nowHours;
      let sum = 0;
      for (let h = 0; h < until; h += 1) {
        const end = Math.min(until, h + 1);
        sum += (each.within(end) - each.within(h)) * (each.breakdownMinor - credit((h + end) / 2));
      }
      sum += (1 - each.within(until)) * (each.plannedMinor - credit(until));
      expect(Math.abs((at[n] ?? 0) - sum)).toBeLessThan(0.005 * each.breakdownMinor);
    });
  });

  test('[JC7] prices and rates twice as high cost twice as much everywhere', () => {
    const twice = <T extends object>(value: T): T =>
      JSON.parse(JSON.stringify(value), (name, each: unknown) =>
        name === 'minor' ? Number(each) * 2 : each,
      ) as T;
    const { prices } = costs;
    assert(prices, 'prices');
    const dear = { ...costs, prices: twice(prices), rates: twice(rates) };
    const made = costedJob(wornJob(), dear, dear.rates, spell);
    assert(made.ok, 'a cost');
    const [one, two] = [costsAtVisits(costed(wornJob()), spell), costsAtVisits(made.value, spell)];
    one.at.forEach((minor, n) => expect(two.at[n]).toBeCloseTo(2 * minor, 4));
    expect(two.never).toBeCloseTo(2 * one.never, 4);
    expect(setUpCosts(dear.rates)['call-out']).toBe(2 * setUpCosts(rates)['call-out']);
  });

  test('[JC8] is Lipschitz in the price: no visit changes by more than (2 + H / life) times the change', () => {
    const each = costed(wornJob());
    const most = 2 + spell.horizonHours / (each.newLifeHours ?? NaN);
    const before = costsAtVisits(each, spell);
    fc.assert(
      fc.property(fc.integer({ min: -50_000, max: 500_000 }), (by) => {
        const changed = {
          ...each,
          plannedMinor: each.plannedMinor + by,
          breakdownMinor: each.breakdownMinor + by,
        };
        const after = costsAtVisits(changed, spell);
        const bound = most * Math.abs(by) + 1e-6;
        after.at.forEach((minor, n) =>
          expect(Math.abs(minor - (before.at[n] ?? 0))).toBeLessThanOrEqual(bound),
        );
        expect(Math.abs(after.never - before.never)).toBeLessThanOrEqual(bound);
      }),
    );
  });

  test('[JC9] is Lipschitz in the hours left: a shift of the passage costs at most its chance times the difference', () => {
    const each = costed(wornJob());
    const credit = Math.abs(each.plannedMinor / (each.newLifeHours ?? NaN));
    for (const shift of [1, 10, 100]) {
      const later = { ...each, within: (hours: number) => each.within(Math.max(0, hours - shift)) };
      const [a, b] = [costsAtVisits(each, spell), costsAtVisits(later, spell)];
      const hours = Array.from({ length: 201 }, (_, n) => n * 10);
      const chance = Math.max(...hours.map((at) => each.within(at) - later.within(at)));
      const most = each.breakdownMinor + each.plannedMinor + credit * spell.horizonHours;
      a.at.forEach((minor, n) =>
        expect(Math.abs(minor - (b.at[n] ?? 0))).toBeLessThanOrEqual(chance * most + 1),
      );
    }
  });
});

describe('[N7] a job in the plan', () => {
  test('[JC10] that parks the machine is done now and nowhere else', () => {
    const job = planJobOf(costed(found({ call: 'park' })), spell, undefined, 0);
    expect(job.never).toBeUndefined();
    expect(job.at[0]).toBeDefined();
    expect(job.at.slice(1).every((minor) => minor === undefined)).toBe(true);
  });

  test('[JC11] with a hold has the visits between, by the meter, and must be done where the hold ends', () => {
    const job = planJobOf(costed(found({})), spell, { v: 1, from: 5100, to: 5600 }, 0);
    expect(spell.visits.filter((_, n) => job.at[n] !== undefined)).toEqual([5250, 5500]);
    expect(job.never).toBeUndefined();
    const offset = planJobOf(costed(found({})), spell, { v: 1, from: 100, to: 600 }, 5000);
    expect(spell.visits.filter((_, n) => offset.at[n] !== undefined)).toEqual([5250, 5500]);
    const open = planJobOf(costed(found({})), spell, { v: 1, from: 6000 }, 0);
    expect(open.never).toBeDefined();
  });

  test('[JC12] costs what its list says, for as many parts as it has', () => {
    const one = jobCost(costs, 'renew-bottom-roller', 1);
    const three = costed(found({ kind: 'renew-bottom-roller', count: 3 }));
    assert(one.ok, 'a price');
    expect(three.cost.partsMinor).toBe(3 * one.value.partsMinor);
    expect(three.breakdownMinor - three.plannedMinor).toBe(
      rates.callOut.minor + rates.liftSide.minor + rates.breakdown.minor,
    );
  });

  test('[JC13] what ran until now has not broken down before now', () => {
    for (const walk of [mini, steel]) {
      const plan = plannedOf(outlookAt(demoMap(), walk));
      for (const each of [...plan.visits.flatMap(({ jobs }) => jobs), ...plan.later]) {
        const chances = [0, 100, 500, 1000, 2000].map((hours) => each.within(hours));
        expect(chances[0]).toBeCloseTo(0, 9);
        expect([...chances].sort((a, b) => a - b)).toEqual(chances);
        expect(chances.every((chance) => chance >= 0 && chance <= 1)).toBe(true);
      }
    }
  });
});
