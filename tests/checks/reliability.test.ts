import { describe, expect, test } from 'vitest';
import { gammaWearWithin } from '../../src/core/gamma-wear.ts';
import { ageCost, bestReplacementAge, renewalsPerPeriod } from '../../src/core/replacement.ts';
import { fitWeibull, weibullMean, weibullSd, weibullSurvival, type Weibull } from '../../src/core/weibull.ts';

const within = (value: number | undefined, expected: number, tolerance: number): void =>
  expect(Math.abs((value ?? Number.NaN) - expected)).toBeLessThanOrEqual(tolerance);

describe('[N6] lives with suspensions', () => {
  test('[CV-43] ten of twenty failed within 500 h: β 1.7208, η 606.528, mean 540.737, SD 323.806, logL −75.135 (NIST/SEMATECH e-Handbook 8.4.1.3)', () => {
    const failures = [54, 187, 216, 240, 244, 335, 361, 373, 375, 386];
    const fit = fitWeibull(
      failures,
      failures.map(() => 500),
    );
    within(fit?.shape, 1.7208, 0.0005);
    within(fit?.scale, 606.528, 0.01);
    within(fit && weibullMean(fit), 540.737, 0.01);
    within(fit && weibullSd(fit), 323.806, 0.01);
    within(fit?.logLikelihood, -75.135, 0.0005);
    // Akaike’s criterion of two parameters, as it is printed there.
    within(fit && 4 - 2 * fit.logLikelihood, 154.27, 0.005);
  });

  test('[CV-45] five failures and two suspensions: β 2.257, η 4,900.1 (Abernethy, The New Weibull Handbook, App. C)', () => {
    const fit = fitWeibull([1500, 2250, 4000, 4300, 7000], [1750, 5000]);
    within(fit?.shape, 2.257, 0.001);
    within(fit?.scale, 4900.1, 0.1);
  });

  test('[N6] fifteen lasers by their extrapolated path: β 6.41, η 5,507.6 (Meeker and Escobar 1998, App. C, from memory)', () => {
    const hours = [3702, 4194, 5847, 6172, 5301, 3592, 6051, 6538, 5110, 3306, 5326, 4995, 4721, 5689, 6102];
    const fit = fitWeibull(hours);
    within(fit?.shape, 6.41, 0.005);
    within(fit?.scale, 5507.6, 0.05);
  });
});

const lasting =
  (weibull: Weibull) =>
  (hours: number): number =>
    weibullSurvival(weibull, hours);

describe('[N7] the age at which to renew', () => {
  test('[CV-46] β 2.5, η 1,000 h, planned 1, failure 5: 493.05 h at 0.0034620, waiting 0.0056353 (public reliability reference 2012, recomputed)', () => {
    const best = bestReplacementAge({
      survival: lasting({ shape: 2.5, scale: 1000 }),
      planned: 1,
      failure: 5,
    });
    within(best?.hours, 493.05, 0.05);
    within(best?.costPerHour, 0.003462, 1e-6);
    within(best?.runToFailure, 0.0056353, 1e-6);
  });

  test('[N7] β 3, η 150 days, planned 2, failure 8: 83.12 days at 0.036850 (inputs from a public article, computed)', () => {
    const best = bestReplacementAge({ survival: lasting({ shape: 3, scale: 150 }), planned: 2, failure: 8 });
    within(best?.hours, 83.12, 0.005);
    within(best?.costPerHour, 0.03685, 1e-6);
  });

  const uniform = { survival: (km: number) => Math.max(0, 1 - km / 40_000), planned: 100, failure: 200 };

  test.each([
    [10_000, 0.0142857],
    [20_000, 0.01],
    [30_000, 0.0093333],
    [40_000, 0.01],
  ])('[CV-48] lives uniform to 40,000 km renewed at %d km: %d (Jardine and Tsang, ch. 2)', (km, cost) => {
    within(ageCost(uniform, km), cost, 1e-6);
  });

  test('[CV-48] the best age of all is 29,282 km at 0.0093301 (computed)', () => {
    const best = bestReplacementAge(uniform);
    within(best?.hours, 29_282, 1);
    within(best?.costPerHour, 0.0093301, 1e-6);
  });

  test('[CV-49] 10,000 units of p 0.03 0.07 0.20 0.40 0.15 0.15: 300, 709, 2,042, 4,171, 2,030, 2,590; mean 4.02, then 2,487.6 (operations research text)', () => {
    const found = renewalsPerPeriod(10_000, [0.03, 0.07, 0.2, 0.4, 0.15, 0.15], 6);
    [300, 709, 2042, 4171, 2030, 2590].forEach((count, i) => within(found?.perPeriod[i], count, 0.5));
    within(found?.meanLife, 4.02, 1e-12);
    within(found?.steady, 2487.6, 0.05);
  });
});

test.each([
  [1800, 0.146],
  [2000, 0.291],
  [2200, 0.4746],
  [2400, 0.6585],
  [2800, 0.9056],
])(
  '[CV-54] 55 %% to go by gamma steps of shape 0.0125 an hour and scale 2 %%, within %d h: %d (computed)',
  (hours, share) => {
    within(gammaWearWithin({ left: 55, shapePerHour: 0.0125, scale: 2 }, hours), share, 0.0002);
  },
);
