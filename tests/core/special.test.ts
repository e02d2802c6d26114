import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  gammaQ,
  lnGamma,
  logNormalCdf,
  normalCdf,
  normalQuantile,
  scaledTail,
  studentCdf,
  studentQuantile,
  upperGammaFraction,
} from '../../src/core/special.ts';
import {
  expectNear,
  gammaQValues,
  lnGammaValues,
  normalQuantiles,
  normalValues,
  studentQuantiles,
  studentValues,
} from './digits.ts';
import { law } from './law.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const share = between(1e-12, 1 - 1e-12);

describe('[N6] the normal distribution', () => {
  test.each(normalValues)('[E10] Φ(%d) is %d, its logarithm %d', (x, cdf, log) => {
    expectNear(normalCdf(x), cdf, 4e-15);
    expectNear(logNormalCdf(x), log, 4e-15);
  });

  test('[E11] the tail without its exponential neither underflows nor overflows', () => {
    expect(scaledTail(0)).toBe(0.5);
    expectNear(scaledTail(1e200), 1e-200 / Math.sqrt(2 * Math.PI), 1e-15);
    law(
      fc.property(between(0, 37), (x) => {
        expectNear(Math.exp((x * x) / -2) * scaledTail(x), normalCdf(-x), 1e-15);
      }),
    );
  });

  test('[E12] both sides add up to 1', () => {
    law(fc.property(between(-9, 9), (x) => expectNear(normalCdf(x) + normalCdf(-x), 1, 4e-16)));
  });

  test('[E13] rises, over the seams of its pieces too', () => {
    const seams = [-5.65685425, -0.67448975, 0, 0.67448975, 5.65685425];
    law(
      fc.property(fc.oneof(between(-37, 8), fc.constantFrom(...seams)), between(1e-9, 1), (x, more) => {
        expect(normalCdf(x + more)).toBeGreaterThanOrEqual(normalCdf(x));
        expect(logNormalCdf(x + more)).toBeGreaterThan(logNormalCdf(x));
      }),
    );
  });

  test('[E14] far below, the logarithm goes on as −x²/2 − ln(−x·√(2π))', () => {
    law(
      fc.property(between(-1e4, -1e3), (x) => {
        expectNear(
          logNormalCdf(x),
          (x * x) / -2 - Math.log(-x * Math.sqrt(2 * Math.PI)) - 1 / (x * x),
          1e-15,
        );
      }),
    );
  });

  test.each(normalQuantiles)('[E15] the quantile of %d is %d', (p, x) =>
    expectNear(normalQuantile(p), x, 4e-15),
  );

  test('[E16] the quantile undoes the distribution, and has its symmetry and its ends', () => {
    expect([normalQuantile(0), normalQuantile(1)]).toEqual([-Infinity, Infinity]);
    expect(normalQuantile(0.5)).toBeCloseTo(0, 15);
    law(
      fc.property(share, (p) => {
        expectNear(normalCdf(normalQuantile(p)), p, 1e-14);
        expect(normalQuantile(1 - p)).toBeCloseTo(-normalQuantile(1 - (1 - p)), 12);
      }),
    );
  });

  test('[E17] the infinite ends are 0 and 1', () => {
    expect([normalCdf(-Infinity), normalCdf(Infinity)]).toEqual([0, 1]);
    expect([logNormalCdf(-Infinity), logNormalCdf(Infinity)]).toEqual([-Infinity, -0]);
  });
});

describe('[N6] the gamma distribution', () => {
  test.each(lnGammaValues)('[E20] ln Γ(%d) is %d', (x, wanted) =>
    expectNear(lnGamma(x), wanted, 2e-15, 8e-15),
  );

  test('[E21] Γ(x + 1) = x·Γ(x)', () => {
    law(
      fc.property(between(1e-6, 300), (x) => {
        expectNear(lnGamma(x + 1), lnGamma(x) + Math.log(x), 4e-15, 2e-14);
      }),
    );
  });

  test.each(gammaQValues)('[E22] Q(%d, %d) is %d', (a, x, q) => expectNear(gammaQ(a, x), q, 1e-13, 1e-14));

  test('[E23] is 1 at 0, falls from there, and never leaves 0 to 1', () => {
    expect(gammaQ(3, 0)).toBe(1);
    law(
      fc.property(between(0.01, 200), between(0, 3), between(0.001, 1), (a, at, more) => {
        const [near, far] = [gammaQ(a, a * at), gammaQ(a, a * (at + more))];
        expect(far).toBeLessThanOrEqual(near);
        expect(near).toBeLessThanOrEqual(1);
        expect(far).toBeGreaterThanOrEqual(0);
      }),
    );
  });

  test('[E24] Q(a + 1, x) is Q(a, x) and one more term', () => {
    law(
      fc.property(between(0.1, 100), between(0.01, 3), (a, at) => {
        const x = a * at;
        const term = Math.exp(a * Math.log(x) - x - lnGamma(a + 1));
        expectNear(gammaQ(a + 1, x), gammaQ(a, x) + term, 0, 4e-13);
      }),
    );
  });

  test('[E25] Q(1, x) is e⁻ˣ, also where series and fraction meet', () => {
    for (const x of [0.1, 1, 1.999999, 2, 2.000001, 30, 600]) expectNear(gammaQ(1, x), Math.exp(-x), 3e-14);
  });

  test('[E26] the fraction is Γ(a, x)·eˣ/xᵃ, and goes on where that underflows', () => {
    expectNear(upperGammaFraction(1, 50), 1 / 50, 1e-15);
    expectNear(upperGammaFraction(2, 1e5), 1.00001e-5, 1e-14);
    expect(upperGammaFraction(2, Infinity)).toBe(0);
  });
});

describe('[N6] Student’s distribution', () => {
  test.each(studentValues)('[E30] P(T ≤ %d) with %d degrees of freedom is %d', (t, df, wanted) => {
    expectNear(studentCdf(t, df), wanted, 1e-13);
  });

  test.each(studentQuantiles)('[E31] the quantile of %d with %d degrees of freedom is %d', (p, df, t) => {
    expectNear(studentQuantile(p, df), t, 1e-13);
    expectNear(studentQuantile(1 - p, df), -t, 1e-6);
  });

  test('[E32] with one degree of freedom it is Cauchy’s, with two it has a closed form', () => {
    law(
      fc.property(between(-1e9, 1e9), (t) => {
        expectNear(studentCdf(t, 1), 0.5 + Math.atan(t) / Math.PI, 0, 1e-15);
        expectNear(studentCdf(t, 2), 0.5 + t / (2 * Math.sqrt(2 + t * t)), 0, 1e-15);
      }),
    );
  });

  test('[E33] the quantile undoes the distribution, far out too', () => {
    expect([studentQuantile(0, 3), studentQuantile(1, 3), studentQuantile(0.5, 3)]).toEqual([
      -Infinity,
      Infinity,
      0,
    ]);
    expectNear(studentQuantile(1e-200, 1), -1e200 / Math.PI, 1e-13);
    expect([studentCdf(-Infinity, 3), studentCdf(Infinity, 3)]).toEqual([0, 1]);
    law(
      fc.property(share, between(0.5, 400), (p, df) => {
        expectNear(studentCdf(studentQuantile(p, df), df), p, 1e-13);
      }),
    );
  });

  test('[E34] with ever more degrees of freedom it becomes the normal one', () => {
    law(fc.property(share, (p) => expectNear(studentQuantile(p, 1e9), normalQuantile(p), 1e-6, 1e-9)));
  });
});

test.each([
  ['a distribution of no number', 'a number', () => normalCdf(Number.NaN)],
  ['a logarithm of no number', 'a number', () => logNormalCdf(Number.NaN)],
  ['a tail below the middle', 'the upper half', () => scaledTail(-1)],
  ['a quantile of more than 1', 'a probability', () => normalQuantile(1.1)],
  ['a quantile of less than 0', 'a probability', () => normalQuantile(-0.1)],
  ['a quantile of no number', 'a probability', () => normalQuantile(Number.NaN)],
  ['the gamma function at 0', 'gamma function', () => lnGamma(0)],
  ['the gamma function without end', 'gamma function', () => lnGamma(Infinity)],
  ['a shape of 0', 'gamma distribution', () => gammaQ(0, 1)],
  ['a shape of 0 at 0', 'gamma distribution', () => gammaQ(0, 0)],
  ['an infinite shape', 'gamma distribution', () => gammaQ(Infinity, 1)],
  ['an argument below 0', 'gamma distribution', () => gammaQ(1, -1)],
  ['an infinite argument', 'gamma distribution', () => gammaQ(1, Infinity)],
  ['a fraction too near', 'the fraction', () => upperGammaFraction(3, 3.5)],
  ['a fraction of shape 0', 'the fraction', () => upperGammaFraction(0, 3.5)],
  ['no degrees of freedom', 'degrees of freedom', () => studentCdf(1, 0)],
  ['infinite degrees of freedom', 'degrees of freedom', () => studentCdf(1, Infinity)],
  ['Student’s of no number', 'degrees of freedom', () => studentCdf(Number.NaN, 3)],
  ['a quantile without degrees of freedom', 'a probability', () => studentQuantile(0.9, 0)],
  ['a quantile of infinite degrees of freedom', 'a probability', () => studentQuantile(0.9, Infinity)],
  ['Student’s quantile of less than 0', 'a probability', () => studentQuantile(-0.1, 3)],
  ['Student’s quantile of more than 1', 'a probability', () => studentQuantile(1.1, 3)],
])('[E35] %s is a bug', (_, why, asked) => expect(asked).toThrow(why));
