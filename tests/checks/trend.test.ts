import { describe, expect, test } from 'vitest';
import { assert } from '../../src/core/result.ts';
import {
  bandReaches,
  fitLine,
  lineReaches,
  predictionInterval,
  slopeThroughOrigin,
  type Line,
  type Point,
} from '../../src/core/trend.ts';

function lineOf(pairs: readonly (readonly [x: number, y: number])[]): Line {
  const line = fitLine(pairs.map(([x, y]): Point => ({ x, y })));
  assert(line, 'the pairs have a line');
  return line;
}

const within = (value: number | undefined, expected: number, tolerance: number): void =>
  expect(Math.abs((value ?? Number.NaN) - expected)).toBeLessThanOrEqual(tolerance);

describe('[CV-22] hours 0, 500, 1,000, 1,500 with 0, 12, 26, 37 % worn (computed)', () => {
  const line = lineOf([
    [0, 0],
    [500, 12],
    [1000, 26],
    [1500, 37],
  ]);

  test('[CV-22] slope 0.025 %/h, intercept 0, s 0.8660', () => {
    within(line.slope, 0.025, 1e-12);
    within(line.intercept, 0, 1e-12);
    within(line.errors?.sd, 0.866, 5e-5);
  });

  test('[CV-22] 100 % at 4,000 h; the band reaches it at 3,587 to 4,531 h, with 90 % at 3,709 to 4,344 h', () => {
    within(lineReaches(line, 100), 4000, 1);
    const [wide, narrow] = [bandReaches(line, 100, 0.95), bandReaches(line, 100, 0.9)];
    within(wide?.low, 3587, 1);
    within(wide?.high, 4531, 1);
    within(narrow?.low, 3709, 1);
    within(narrow?.high, 4344, 1);
  });
});

// Ozone monitors, their reading against the reference’s: NIST StRD, linear regression, Norris (J. Norris, NIST).
const norris = [
  [0.2, 0.1],
  [337.4, 338.8],
  [118.2, 118.1],
  [884.6, 888],
  [10.1, 9.2],
  [226.5, 228.1],
  [666.3, 668.5],
  [996.3, 998.5],
  [448.6, 449.1],
  [777, 778.9],
  [558.2, 559.2],
  [0.4, 0.3],
  [0.6, 0.1],
  [775.5, 778.1],
  [666.9, 668.8],
  [338, 339.3],
  [447.5, 448.9],
  [11.6, 10.8],
  [556, 557.7],
  [228.1, 228.3],
  [995.8, 998],
  [887.6, 888.8],
  [120.2, 119.6],
  [0.3, 0.3],
  [0.3, 0.6],
  [556.8, 557.6],
  [339.1, 339.3],
  [887.2, 888],
  [999, 998.5],
  [779, 778.9],
  [11.1, 10.2],
  [118.3, 117.6],
  [229.2, 228.9],
  [669.1, 668.4],
  [448.9, 449.2],
  [0.5, 0.2],
] as const;

test('[CV-50] the certified values of Norris (NIST StRD)', () => {
  const line = lineOf(norris);
  expect(line.count).toBe(36);
  within(line.slope, 1.00211681802045, 1e-10);
  within(line.intercept, -0.262323073774029, 1e-10);
  within(line.errors?.slope, 0.000429796848199937, 1e-10);
  within(line.errors?.intercept, 0.232818234301152, 1e-10);
  within(line.rSquared, 0.999993745883712, 1e-10);
  within(line.residuals, 26.6173985294224, 1e-9);
});

// Shear strength of propellant in psi against its age in weeks: Montgomery, Peck and Vining, Introduction to Linear
// Regression Analysis, example 2.1.
const propellant = [
  [15.5, 2158.7],
  [23.75, 1678.15],
  [8, 2316],
  [17, 2061.3],
  [5.5, 2207.5],
  [19, 1708.3],
  [24, 1784.7],
  [2.5, 2575],
  [7.5, 2357.9],
  [11, 2256.7],
  [13, 2165.2],
  [3.75, 2399.55],
  [25, 1779.8],
  [9.75, 2336.75],
  [22, 1765.3],
  [18, 2053.5],
  [6, 2414.4],
  [12.5, 2200.5],
  [2, 2654.2],
  [21.5, 1753.7],
] as const;

test('[CV-51] propellant at 10 weeks: 2,256.29, 95 % 2,048.38 to 2,464.19 (book, rounded by hand: 2,048.32 to 2,464.32)', () => {
  const line = lineOf(propellant);
  within(line.intercept, 2627.82, 0.005);
  within(line.slope, -37.15, 0.005);
  within((line.errors?.sd ?? 0) ** 2, 9236.38, 0.005);
  const band = predictionInterval(line, 10, 0.95);
  within(((band?.low ?? 0) + (band?.high ?? 0)) / 2, 2256.29, 0.2);
  within(band?.low, 2048.38, 0.2);
  within(band?.high, 2464.19, 0.2);
});

// Percent drift at 200, 500 and 1,000 h of five units that fail at 30 %: the method of NIST/SEMATECH e-Handbook
// 8.4.2.3, its data from memory.
const drifts = [
  [241.8, [24.58, 62.02, 124.1]],
  [623.8, [9.73, 24.07, 48.06]],
  [1271.6, [4.74, 11.53, 23.72]],
  [256.2, [23.61, 58.21, 117.2]],
  [544.5, [10.9, 27.85, 54.97]],
] as const;

test.each(drifts)('[CV-53] straight through the origin the drift is 30 %% at %d h', (hours, percents) => {
  const points = percents.map((y, i): Point => ({ x: [200, 500, 1000][i] ?? Number.NaN, y }));
  within(30 / (slopeThroughOrigin(points) ?? Number.NaN), hours, 0.1);
});
