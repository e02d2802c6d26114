import { describe, expect, test } from 'vitest';
import { capitalRecovery, costPerHour, equivalentCost, presentWorth } from '../../src/core/money.ts';

const within = (value: number | undefined, expected: number, tolerance: number): void =>
  expect(Math.abs((value ?? Number.NaN) - expected)).toBeLessThanOrEqual(tolerance);

describe('[N8] time value of money', () => {
  test('[CV-55] 4,500 9,000 11,800 13,500 22,500 at 7 %: worth 48,040.15, a year 11,716.54 (licence exercise; by its tables 48,040.29, 11,717.03)', () => {
    const upkeep = [4500, 9000, 11_800, 13_500, 22_500];
    within(presentWorth(0.07, upkeep), 48_040.15, 0.01);
    within(equivalentCost(0.07, upkeep), 11_716.54, 0.01);
    within(presentWorth(0.07, upkeep), 48_040.29, 0.5);
    within(equivalentCost(0.07, upkeep), 11_717.03, 0.5);
  });

  test('[CV-56] 100,000 over 10 years at 7 % are 14,237.75 a year (licence exercise, printed 14,200)', () => {
    within(100_000 * (capitalRecovery(0.07, 10) ?? Number.NaN), 14_237.75, 0.01);
  });

  test('[CV-62] two tracks at 1,400 and 300 of labour over 1,300 h: 2.385 an hour (computed)', () => {
    within(costPerHour(2 * 1400 + 300, 1300), 2.385, 0.001);
  });
});
