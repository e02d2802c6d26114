import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { assert } from '../../src/core/result.ts';
import {
  fitWeibull,
  weibullMean,
  weibullMeanResidual,
  weibullSd,
  weibullSurvival,
  type WeibullFit,
} from '../../src/core/weibull.ts';
import { expectNear } from './digits.ts';
import { law } from './law.ts';

const hours = fc.double({ min: 10, max: 20_000, noNaN: true });
const lives = fc.record({
  failures: fc.array(hours, { minLength: 2, maxLength: 15 }),
  suspensions: fc.array(hours, { maxLength: 10 }),
});
const weibull = fc.record({
  shape: fc.double({ min: 0.3, max: 12, noNaN: true }),
  scale: fc.double({ min: 1, max: 20_000, noNaN: true }),
});

function fitOf(failures: readonly number[], suspensions: readonly number[] = []): WeibullFit {
  const fit = fitWeibull(failures, suspensions);
  assert(fit, 'the lives have a fit');
  return fit;
}

/** Logarithm of the likelihood, as its definition has it. */
function likelihood(shape: number, scale: number, failures: number[], suspensions: number[]): number {
  const failed = failures.map(
    (t) => Math.log((shape / scale) * (t / scale) ** (shape - 1)) - (t / scale) ** shape,
  );
  const kept = suspensions.map((t) => -((t / scale) ** shape));
  return [...failed, ...kept].reduce((sum, each) => sum + each, 0);
}

describe('[N6] lives with suspensions', () => {
  test('[E80] no other shape or scale is likelier', () => {
    law(
      fc.property(lives, ({ failures, suspensions }) => {
        const fit = fitWeibull(failures, suspensions);
        fc.pre(fit !== undefined && fit.shape < 50);
        const best = likelihood(fit.shape, fit.scale, failures, suspensions);
        expectNear(fit.logLikelihood, best, 1e-10);
        for (const [a, b] of [
          [1.01, 1],
          [0.99, 1],
          [1, 1.01],
          [1, 0.99],
          [1.01, 1.01],
          [0.99, 1.01],
        ] as const) {
          expect(likelihood(fit.shape * a, fit.scale * b, failures, suspensions)).toBeLessThan(best);
        }
      }),
    );
  });

  test('[E81] the hours’ unit changes the scale alone', () => {
    law(
      fc.property(
        lives,
        fc.double({ min: 1e-3, max: 1e3, noNaN: true }),
        ({ failures, suspensions }, unit) => {
          const fit = fitWeibull(failures, suspensions);
          fc.pre(fit !== undefined && fit.shape < 50);
          const other = fitOf(
            failures.map((each) => each * unit),
            suspensions.map((each) => each * unit),
          );
          expectNear(other.shape, fit.shape, 1e-9);
          expectNear(other.scale, fit.scale * unit, 1e-9);
        },
      ),
    );
  });

  test('[E82] a unit that outlasted its peers lengthens the life', () => {
    const without = fitOf([300, 500, 800]);
    const beside = fitOf([300, 500, 800], [1500, 1500]);
    expect(weibullMean(beside)).toBeGreaterThan(weibullMean(without));
  });

  test('[E83] one failure among longer lives has a fit', () => {
    const { shape, scale } = fitOf([300], [500, 900]);
    expect(shape).toBeGreaterThan(0);
    expect(scale).toBeGreaterThan(300);
  });

  test.each([
    ['no lives', [], []],
    ['suspensions alone', [], [100, 200]],
    ['one failure', [100], []],
    ['failures all alike', [100, 100, 100], []],
    ['failures all but alike', [100, 100.000001], []],
    ['failures all alike, and nothing that outlasted them', [100, 100], [100, 50]],
    ['a failure at 0 hours', [0, 100], []],
    ['hours below 0', [50, 100], [-1]],
    ['hours that are no number', [50, Number.NaN], []],
    ['infinite hours', [50, 60], [Infinity]],
  ])('[E84] %s: no fit', (_, failures, suspensions) => {
    expect(fitWeibull(failures, suspensions)).toBeUndefined();
  });

  test('[E85] the largest and smallest hours do not overflow', () => {
    expectNear(fitOf([1e300, 2e300]).shape, fitOf([1e-300, 2e-300]).shape, 1e-9);
    expect(fitOf([1e-300, 1e300]).shape).toBeGreaterThan(0);
    const many = (each: number): number[] => Array.from({ length: 99 }, () => each);
    expect(fitWeibull([1e-300], many(1e300))).toBeUndefined();
    expect(fitWeibull([1e300, ...many(1e-300)])).toBeUndefined();
  });
});

describe('[N6] a Weibull life', () => {
  test('[E86] of shape 1 is exponential: its mean, its spread and what is still to come are the scale', () => {
    const given = { shape: 1, scale: 400 };
    expectNear(weibullMean(given), 400, 1e-14);
    expectNear(weibullSd(given), 400, 1e-13);
    for (const age of [0, 1, 300, 799, 801, 30_000, 1e200])
      expectNear(weibullMeanResidual(given, age), 400, 1e-13);
  });

  test('[E87] survival is 1 at 0 hours, 1/e at the scale, and falls', () => {
    law(
      fc.property(weibull, fc.double({ min: 0, max: 4, noNaN: true }), (given, at) => {
        expect([weibullSurvival(given, 0), weibullSurvival(given, -1)]).toEqual([1, 1]);
        expectNear(weibullSurvival(given, given.scale), Math.exp(-1), 1e-15);
        const here = weibullSurvival(given, at * given.scale);
        expect(weibullSurvival(given, (at + 0.1) * given.scale)).toBeLessThanOrEqual(here);
      }),
    );
  });

  test('[E88] what is still to come is the mean at 0 hours and continues over the seam of its two ways', () => {
    law(
      fc.property(weibull, ({ shape, scale }) => {
        expectNear(weibullMeanResidual({ shape, scale }, 0), weibullMean({ shape, scale }), 1e-13);
        const seam = scale * (1 + 1 / shape) ** (1 / shape);
        const [below, above] = [seam * (1 - 1e-9), seam * (1 + 1e-9)];
        expectNear(
          weibullMeanResidual({ shape, scale }, below),
          weibullMeanResidual({ shape, scale }, above),
          1e-7,
        );
      }),
    );
  });

  test('[E89] what is still to come is the integral of survival over survival', () => {
    law(
      fc.property(weibull, fc.double({ min: 0.05, max: 1.5, noNaN: true }), (given, at) => {
        const age = at * given.scale;
        const later = age + 0.01 * given.scale;
        const [now, then] = [age, later].map(
          (each) => weibullMeanResidual(given, each) * weibullSurvival(given, each),
        );
        const middle = weibullSurvival(given, (age + later) / 2);
        const between =
          ((weibullSurvival(given, age) + 4 * middle + weibullSurvival(given, later)) * (later - age)) / 6;
        expectNear((now ?? 0) - (then ?? 0), between, 1e-4, 1e-9 * given.scale);
      }),
    );
  });

  test('[E90] a wearing part has less to come the older it is, and in the end next to nothing', () => {
    const given = { shape: 3, scale: 1000 };
    const left = [0, 500, 1000, 1500, 3000].map((age) => weibullMeanResidual(given, age));
    expect(left).toEqual(left.toSorted((a, b) => b - a));
    expect(weibullMeanResidual(given, 1e200)).toBe(0);
  });

  test('[E91] lives that hardly differ have hardly a spread', () => {
    expectNear(weibullSd({ shape: 1e6, scale: 1000 }), (Math.PI / Math.sqrt(6)) * 1e-3, 1e-2);
  });

  test.each([
    { shape: 0, scale: 1 },
    { shape: 1, scale: 0 },
    { shape: Number.NaN, scale: 1 },
    { shape: 1, scale: Infinity },
  ])('[E92] %o is a bug', (odd) => {
    expect(() => weibullMean(odd)).toThrow('shape and scale');
    expect(() => weibullSd(odd)).toThrow('shape and scale');
    expect(() => weibullSurvival(odd, 5)).toThrow('shape and scale');
    expect(() => weibullMeanResidual(odd, 5)).toThrow('shape and scale');
  });

  test.each([-1, Number.NaN, Infinity])('[E93] what is still to come at an age of %d h is a bug', (age) => {
    expect(() => weibullMeanResidual({ shape: 2, scale: 5 }, age)).toThrow('an age');
  });
});
