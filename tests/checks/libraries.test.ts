// Own functions against general-purpose libraries, over a grid. The product uses none of these libraries.
import { npv, pmt, pv } from 'financial';
import jStat from 'jstat';
import { describe, expect, test } from 'vitest';
import { gammaWearWithin } from '../../src/core/gamma-wear.ts';
import { firstPassage } from '../../src/core/inverse-gaussian.ts';
import { capitalRecovery, equivalentCost, presentWorth } from '../../src/core/money.ts';
import { lnGamma, normalCdf, normalQuantile, studentCdf, studentQuantile } from '../../src/core/special.ts';
import { weibullMean, weibullSd, weibullSurvival } from '../../src/core/weibull.ts';

// Node takes its CommonJS build, which has a default export, unlike the one that linters look at.
const { default: ran } = await import('ranjs');

/** All pairs of some values. */
function grid(first: readonly number[], second: readonly number[]): [number, number][] {
  return first.flatMap((a) => second.map((b): [number, number] => [a, b]));
}

function within(found: number | undefined, wanted: number, share: number, absolute: number): void {
  const off = Math.abs((found ?? Number.NaN) - wanted);
  expect(off).toBeLessThanOrEqual(Math.max(share * Math.abs(wanted), absolute));
}

/** As multiples of the mean. */
const times = [0.02, 0.1, 0.3, 0.6, 0.9, 1, 1.1, 1.5, 2.5, 5, 20];

describe('[N6] against ranjs', () => {
  // Its e^(2λ/μ) overflows where distance is 350 times kappa.
  test.each(grid([5, 30, 100], [0.4, 2, 15]))(
    '[N6] first passage over %d %% with κ %d is its inverse Gaussian distribution',
    (distance, kappa) => {
      for (const drift of [0.005, 0.03, 0.4]) {
        const mean = distance / drift;
        const shape = distance ** 2 / (kappa * drift);
        const theirs = new ran.dist.InverseGaussian(mean, shape);
        const ours = firstPassage({ distance, drift, kappa });
        for (const hours of times.map((each) => each * mean)) {
          within(ours?.cdf(hours), theirs.cdf(hours), 1e-9, 1e-12);
          within(ours?.pdf(hours), theirs.pdf(hours), 1e-11, 0);
        }
        expect(ours?.meanHours).toBeCloseTo(mean, 9);
        within(ours?.variance, mean ** 3 / shape, 1e-13, 0);
      }
    },
  );

  test.each(grid([0.5, 1, 1.7, 4, 12], [1, 600, 12_000]))(
    '[N6] survival of shape %d and scale %d is that of its Weibull distribution',
    (shape, scale) => {
      const theirs = new ran.dist.Weibull(scale, shape);
      for (const hours of times.map((each) => each * scale)) {
        within(weibullSurvival({ shape, scale }, hours), 1 - theirs.cdf(hours), 0, 1e-14);
      }
    },
  );
});

// Its gamma function is good to eight digits, and so is what is made of it; ours are held to fifty in tests/core.
describe('[N6] against jstat', () => {
  test.each(grid([0.5, 1, 1.7, 4, 12], [1, 600, 12_000]))(
    '[N6] survival, mean and spread of shape %d and scale %d are those of its Weibull distribution',
    (shape, scale) => {
      for (const hours of times.map((each) => each * scale)) {
        within(
          weibullSurvival({ shape, scale }, hours),
          1 - jStat.weibull.cdf(hours, scale, shape),
          0,
          1e-14,
        );
      }
      within(weibullMean({ shape, scale }), jStat.weibull.mean(scale, shape), 5e-8, 0);
      within(weibullSd({ shape, scale }), Math.sqrt(jStat.weibull.variance(scale, shape)), 1e-6, 0);
    },
  );

  test.each(grid([5, 30, 100], [0.3, 2, 10]))(
    '[N6] wear by gamma steps over %d %% of scale %d is its gamma distribution',
    (left, scale) => {
      for (const shapePerHour of [0.001, 0.0125, 0.2]) {
        for (const hours of times.map((each) => (each * left) / (scale * shapePerHour))) {
          const theirs = 1 - jStat.gamma.cdf(left, shapePerHour * hours, scale);
          within(gammaWearWithin({ left, shapePerHour, scale }, hours), theirs, 0, 1e-8);
        }
      }
    },
  );

  test('[N6] ln Γ is its own', () => {
    for (const x of [0.01, 0.3, 1, 1.5, 2, 3.7, 9.9, 10, 55, 1200])
      within(lnGamma(x), jStat.gammaln(x), 1e-11, 1e-10);
  });

  test('[N6] the normal distribution and its quantile are its own', () => {
    for (let x = -8; x <= 8; x += 0.25) within(normalCdf(x), jStat.normal.cdf(x, 0, 1), 0, 1e-14);
    for (const p of [1e-6, 0.01, 0.1, 0.5, 0.8, 0.999])
      within(normalQuantile(p), jStat.normal.inv(p, 0, 1), 0, 1e-9);
  });

  test.each([1, 2, 3, 7, 18, 60])('[N6] Student’s t with %d degrees of freedom is its own', (df) => {
    for (let t = -6; t <= 6; t += 0.5) within(studentCdf(t, df), jStat.studentt.cdf(t, df), 0, 2e-8);
    for (const p of [0.005, 0.1, 0.6, 0.9, 0.975]) {
      within(studentQuantile(p, df), jStat.studentt.inv(p, df), 1e-6, 1e-6);
    }
  });
});

describe('[N8] against financial', () => {
  test.each(grid([-0.02, 0, 0.005, 0.07, 0.3], [1, 2, 10, 60]))(
    '[N8] at a rate of %d the recovery over %d periods is its payment, and the worth its present value',
    (rate, periods) => {
      within(capitalRecovery(rate, periods), -pmt(rate, periods, 1), 1e-11, 0);
      const even = Array.from({ length: periods }, () => 250);
      within(presentWorth(rate, even), -pv(rate, periods, 250), 1e-11, 0);
      within(equivalentCost(rate, even), 250, 1e-12, 0);
    },
  );

  test.each([-0.02, 0, 0.005, 0.07, 0.3])(
    '[N8] at a rate of %d the worth of uneven amounts is its net present value, the first one period ahead',
    (rate) => {
      const amounts = [4500, 9000, -11_800, 0, 22_500, 1];
      const worth = npv(rate, [0, ...amounts]);
      within(presentWorth(rate, amounts), worth, 1e-12, 0);
      within(equivalentCost(rate, amounts), -pmt(rate, amounts.length, worth), 1e-11, 0);
    },
  );
});
