import { describe, expect, test } from 'vitest';
import { standardGravity } from '../../src/core/quantity.ts';
import {
  catenarySag,
  endAngleDegrees,
  endTension,
  extraLength,
  idlerTravel,
  parabolaSag,
  parabolaTension,
  slackOfLinks,
  tensionRatio,
} from '../../src/core/tension.ts';

const within = (value: number, expected: number, percent: number): void =>
  expect(Math.abs(value - expected)).toBeLessThanOrEqual((Math.abs(expected) * percent) / 100);

describe('[N5] the hanging span', () => {
  test('[CV-28] 10 kip/ft, 3,800 ft, sag 400 ft: 45,125 and 48,962 kip (college statics notes 6.6, printed 49,000)', () => {
    const horizontal = parabolaTension(10, 3800, 400);
    within(horizontal, 45_125, 0.1);
    within(endTension(10, 3800, horizontal), 48_962, 0.1);
  });

  test('[CV-29] 0.75 kg/m, 40 m, sag 0.5 m, g 9.81: 2,943.0 and 2,946.7 N, 2.86°, 40.0167 m (from memory: Beer & Johnston)', () => {
    const weight = 0.75 * 9.81;
    const horizontal = parabolaTension(weight, 40, 0.5);
    within(horizontal, 2943, 0.05);
    within(endTension(weight, 40, horizontal), 2946.7, 0.05);
    expect(endAngleDegrees(weight, 40, horizontal)).toBeCloseTo(2.86, 2);
    expect(40 + extraLength(40, 0.5)).toBeCloseTo(40.0167, 4);
  });

  test('[CV-30] 0.1 lb/in, 100 in, 50 lb: sag 2.5 in (computed)', () => {
    expect(parabolaSag(0.1, 100, 50)).toBe(2.5);
  });

  test('[CV-31] half the sag is 2.000 times the tension (computed)', () => {
    expect(tensionRatio(30, 15)).toBeCloseTo(2, 3);
    expect(parabolaTension(1, 1200, 15) / parabolaTension(1, 1200, 30)).toBeCloseTo(2, 3);
  });

  test('[CV-32] +3,000 lb from 1 in to ½ in means 3,000 lb at 1 in and 6,000 lb at ½ in (Columbus Equipment)', () => {
    const atOneInch = 3000 / (tensionRatio(1, 0.5) - 1);
    within(atOneInch, 3000, 1);
    within(atOneInch * tensionRatio(1, 0.5), 6000, 1);
  });

  const tensions: readonly (readonly [number, number])[] = [
    [10, 21_182],
    [20, 10_591],
    [30, 7061],
    [40, 5296],
  ];
  test.each(tensions)(
    '[CV-34] 120 kg/m over 1.2 m with a sag of %d mm: %d N (computed)',
    (sagMm, newtons) => {
      expect(
        Math.abs(parabolaTension(120 * standardGravity, 1.2, sagMm / 1000) - newtons),
      ).toBeLessThanOrEqual(1);
    },
  );

  // Span, sag in metres, percent, half of the last printed digit.
  const bends: readonly (readonly [number, number, number, number])[] = [
    [1.2, 0.03, 0.08, 0.005],
    [1.2, 0.06, 0.33, 0.005],
    [1.5, 0.3, 4.9, 0.05],
  ];
  test.each(bends)(
    '[N5] over %d m with %d m of sag the exact tension is %d %% above the parabola’s (computed)',
    (span, sag, percent, half) => {
      const hangs = (above: number): number =>
        catenarySag(1, span, parabolaTension(1, span, sag) * (1 + above / 100));
      expect(hangs(percent - half)).toBeGreaterThan(sag);
      expect(hangs(percent + half)).toBeLessThan(sag);
    },
  );

  test('[CV-35] 45 links grown by 0.25 mm: 11.25 mm of slack, 5.625 mm of idler travel (computed)', () => {
    expect(slackOfLinks(45, 0.25)).toBeCloseTo(11.25, 2);
    expect(idlerTravel(slackOfLinks(45, 0.25))).toBeCloseTo(5.625, 2);
  });
});
