import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ageCost, bestReplacementAge, renewalsPerPeriod } from '../../src/core/replacement.ts';
import { weibullMean, weibullSurvival } from '../../src/core/weibull.ts';
import { expectNear } from './digits.ts';
import { law } from './law.ts';

const wearing = fc.record({
  shape: fc.double({ min: 1.3, max: 8, noNaN: true }),
  scale: fc.double({ min: 1, max: 20_000, noNaN: true }),
  planned: fc.double({ min: 1, max: 1000, noNaN: true }),
  worse: fc.double({ min: 1.5, max: 20, noNaN: true }),
});

const policyOf = ({
  shape,
  scale,
  planned,
  worse,
}: typeof wearing extends fc.Arbitrary<infer T> ? T : never) => ({
  survival: (hours: number) => weibullSurvival({ shape, scale }, hours),
  planned,
  failure: planned * worse,
});

describe('[N7] the age at which to renew', () => {
  test('[E100] no other age costs less', () => {
    law(
      fc.property(wearing, fc.double({ min: 0.02, max: 3, noNaN: true }), (given, at) => {
        const best = bestReplacementAge(policyOf(given));
        const other = ageCost(policyOf(given), at * given.scale) ?? Number.NaN;
        expect(best?.costPerHour).toBeLessThanOrEqual(other * (1 + 1e-6));
        if (best?.hours === undefined) return;
        expectNear(ageCost(policyOf(given), best.hours), best.costPerHour, 1e-6);
      }),
    );
  });

  test('[E101] waiting for the failure costs a failure each mean life', () => {
    law(
      fc.property(wearing, (given) => {
        const best = bestReplacementAge(policyOf(given));
        expectNear(best?.runToFailure, (given.planned * given.worse) / weibullMean(given), 1e-6);
        expect(best?.costPerHour).toBeLessThanOrEqual(best?.runToFailure ?? Number.NaN);
      }),
    );
  });

  test('[E102] at the best age the hazard has the price: h·∫R + R = failure/(failure − planned)', () => {
    law(
      fc.property(wearing, (given) => {
        const { shape, scale, worse } = given;
        const best = bestReplacementAge(policyOf(given));
        fc.pre(best?.hours !== undefined && best.hours < 1.2 * scale);
        const { hours, costPerHour } = best;
        const alive = weibullSurvival(given, hours);
        const lived = (given.planned * (alive + worse * (1 - alive))) / costPerHour;
        const hazard = (shape / scale) * (hours / scale) ** (shape - 1);
        expectNear(hazard * lived + alive, worse / (worse - 1), 1e-5);
      }),
    );
  });

  test('[E103] dearer failures call for an earlier age, dearer renewals for a later one', () => {
    const survival = (hours: number): number => weibullSurvival({ shape: 3, scale: 1000 }, hours);
    const age = (planned: number, failure: number): number =>
      bestReplacementAge({ survival, planned, failure })?.hours ?? Number.NaN;
    expect(age(1, 10)).toBeLessThan(age(1, 5));
    expect(age(2, 10)).toBeGreaterThan(age(1, 10));
  });

  test.each([
    ['lives without wear', (hours: number) => Math.exp(-hours / 500), 1, 5],
    ['lives that start badly', (hours: number) => Math.exp(-Math.sqrt(hours / 500)), 1, 5],
    ['a failure as cheap as a renewal', (hours: number) => Math.exp(-((hours / 500) ** 3)), 5, 5],
    ['a failure that is cheaper', (hours: number) => Math.exp(-((hours / 500) ** 3)), 5, 1],
  ])('[E104] %s: no age is cheaper than to wait', (_, survival, planned, failure) => {
    const best = bestReplacementAge({ survival, planned, failure });
    expect(best?.hours).toBeUndefined();
    expect(best?.costPerHour).toBe(best?.runToFailure);
  });

  test('[E105] a life of one length is renewed just before its end', () => {
    const best = bestReplacementAge({ survival: (hours) => (hours < 700 ? 1 : 0), planned: 1, failure: 5 });
    expectNear(best?.hours, 700, 1e-6);
    expectNear(best?.costPerHour, 1 / 700, 1e-6);
    expectNear(best?.runToFailure, 5 / 700, 1e-9);
  });

  test.each([
    ['planned renewals for nothing', { planned: 0 }],
    ['failures for nothing', { failure: 0 }],
    ['a cost below 0', { planned: -1 }],
    ['a cost that is no number', { failure: Number.NaN }],
    ['an infinite cost', { failure: Infinity }],
    ['a life that does not end', { survival: () => 0.5 }],
    ['a life of 0 hours', { survival: () => 0 }],
  ])('[E106] %s: not known', (_, odd) => {
    const policy = {
      survival: (hours: number) => Math.exp(-((hours / 500) ** 3)),
      planned: 1,
      failure: 5,
      ...odd,
    };
    expect(bestReplacementAge(policy)).toBeUndefined();
  });

  test.each([
    [{ planned: 0 }, 100],
    [{ failure: Number.NaN }, 100],
    [{}, 0],
    [{}, -1],
    [{}, Infinity],
    [{}, Number.NaN],
  ])('[E107] the cost with %o at %d h is not known', (odd, hours) => {
    const survival = (each: number): number => Math.exp(-((each / 500) ** 3));
    expect(ageCost({ survival, planned: 1, failure: 5, ...odd }, hours)).toBeUndefined();
  });

  test('[E108] a survival that is no share is a bug', () => {
    expect(() => bestReplacementAge({ survival: () => 1.5, planned: 1, failure: 5 })).toThrow('a share');
    expect(() => bestReplacementAge({ survival: () => -0.1, planned: 1, failure: 5 })).toThrow('a share');
    expect(() => bestReplacementAge({ survival: () => Number.NaN, planned: 1, failure: 5 })).toThrow(
      'a share',
    );
  });
});

const shares = fc
  .array(fc.integer({ min: 1, max: 100 }), { minLength: 1, maxLength: 8 })
  .map((parts) => parts.map((each) => each / parts.reduce((sum, part) => sum + part, 0)));

describe('[N7] renewals of a set fitted new at once', () => {
  test('[E109] every unit that is fitted is renewed once, at the end of its life', () => {
    law(
      fc.property(shares, fc.integer({ min: 1, max: 500 }), (given, units) => {
        const found = renewalsPerPeriod(units, given, 400);
        const meanLife = given.reduce((sum, each, i) => sum + each * (i + 1), 0);
        expectNear(found?.meanLife, meanLife, 1e-12);
        expectNear(found?.steady, units / meanLife, 1e-12);
        expect(found?.perPeriod).toHaveLength(400);
        const first = (given[0] ?? 0) * units;
        expectNear(found?.perPeriod[0], first, 1e-12);
        expectNear(found?.perPeriod[1], (given[1] ?? 0) * units + (given[0] ?? 0) * first, 1e-12);
        expectNear(found?.perPeriod.at(-1), units / meanLife, 1e-3);
      }),
    );
  });

  test('[E110] lives of two periods renew everything in every second one', () => {
    expect(renewalsPerPeriod(10, [0, 1], 5)).toEqual({
      perPeriod: [0, 10, 0, 10, 0],
      meanLife: 2,
      steady: 5,
    });
    expect(renewalsPerPeriod(0, [1], 2)).toEqual({ perPeriod: [0, 0], meanLife: 1, steady: 0 });
    expect(renewalsPerPeriod(10, [1], 0)?.perPeriod).toEqual([]);
  });

  test.each([
    ['no shares', 10, [], 3],
    ['shares that add up to less', 10, [0.5, 0.4], 3],
    ['shares that add up to more', 10, [0.5, 0.6], 3],
    ['a share below 0', 10, [-0.5, 1.5], 3],
    ['a share that is no number', 10, [Number.NaN, 1], 3],
    ['units below 0', -1, [1], 3],
    ['infinite units', Infinity, [1], 3],
    ['half a period', 10, [1], 2.5],
    ['periods below 0', 10, [1], -1],
  ])('[E111] %s: not known', (_, units, given, periods) => {
    expect(renewalsPerPeriod(units, given, periods)).toBeUndefined();
  });
});
