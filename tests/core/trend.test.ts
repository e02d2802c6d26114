import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { assert } from '../../src/core/result.ts';
import { studentQuantile } from '../../src/core/special.ts';
import {
  bandReaches,
  fitLine,
  lineAt,
  lineReaches,
  predictionInterval,
  slopeThroughOrigin,
  type Line,
  type Point,
} from '../../src/core/trend.ts';
import { expectNear } from './digits.ts';
import { law } from './law.ts';

const at = (...pairs: readonly (readonly [number, number])[]): Point[] => pairs.map(([x, y]) => ({ x, y }));

function lineOf(points: readonly Point[]): Line {
  const line = fitLine(points);
  assert(line, 'the points have a line');
  return line;
}

/** Wear at rising hours, more or less on a line. */
const readings = fc
  .record({
    steps: fc.array(fc.integer({ min: 50, max: 900 }), { minLength: 3, maxLength: 12 }),
    rate: fc.double({ min: 0.01, max: 0.1, noNaN: true }),
    noise: fc.array(fc.double({ min: -3, max: 3, noNaN: true }), { minLength: 12, maxLength: 12 }),
  })
  .map(({ steps, rate, noise }) => {
    let x = 0;
    return steps.map((step, i) => ({ x: (x += step), y: rate * x + (noise[i] ?? 0) }));
  });

describe('[N6] the line of least squares', () => {
  test('[E60] goes through points that lie on one', () => {
    const line = lineOf(at([100, 7], [300, 11], [500, 15]));
    expect(line).toMatchObject({ count: 3, meanX: 300, meanY: 11, sxx: 80_000, residuals: 0, rSquared: 1 });
    expect([line.slope, line.intercept]).toEqual([0.02, 5]);
    expect(line.errors).toEqual({ sd: 0, slope: 0, intercept: 0 });
    expect([lineAt(line, 0), lineAt(line, 600)]).toEqual([5, 17]);
  });

  test('[E61] leaves residuals that add up to 0 and know nothing of x; none other is closer', () => {
    law(
      fc.property(readings, fc.double({ min: -1, max: 1, noNaN: true }), (points, off) => {
        const line = lineOf(points);
        const rest = points.map(({ x, y }) => y - lineAt(line, x));
        const sum = (values: number[]): number => values.reduce((total, each) => total + each, 0);
        expectNear(sum(rest), 0, 0, 1e-9);
        expectNear(sum(rest.map((each, i) => each * (points[i]?.x ?? 0))), 0, 0, 1e-5);
        expectNear(sum(rest.map((each) => each * each)), line.residuals, 1e-9, 1e-9);
        const other = points.map(({ x, y }) => (y - lineAt(line, x) - off * (1 + x / 1000)) ** 2);
        expect(sum(other)).toBeGreaterThanOrEqual(line.residuals - 1e-9);
      }),
    );
  });

  test('[E62] keeps its digits where hours are large', () => {
    law(
      fc.property(readings, (points) => {
        const [here, far] = [lineOf(points), lineOf(points.map(({ x, y }) => ({ x: x + 1e7, y })))];
        expectNear(far.slope, here.slope, 1e-7, 1e-9);
        expectNear(far.errors?.sd, here.errors?.sd ?? Number.NaN, 1e-6, 1e-8);
      }),
    );
  });

  test('[E63] of two points has no errors, and no band', () => {
    const line = lineOf(at([0, 1], [10, 2]));
    expect(line.errors).toBeUndefined();
    expect(predictionInterval(line, 5, 0.9)).toBeUndefined();
    expect(bandReaches(line, 50, 0.9)).toBeUndefined();
    expect(lineReaches(line, 50)).toBeCloseTo(490, 9);
  });

  test('[E64] of readings all alike is level and explains nothing', () => {
    const line = lineOf(at([0, 4], [10, 4], [20, 4]));
    expect(line).toMatchObject({ slope: 0, intercept: 4, rSquared: undefined });
    expect(lineReaches(line, 50)).toBeUndefined();
    expect(bandReaches(line, 50, 0.9)).toBeUndefined();
  });

  test.each([
    ['no points', []],
    ['one point', at([5, 5])],
    ['points at one hour', at([5, 5], [5, 6], [5, 7])],
    ['a reading that is no number', at([0, 1], [5, Number.NaN], [9, 3])],
    ['hours that are no number', at([0, 1], [Number.NaN, 2])],
    ['infinite hours', at([0, 1], [Infinity, 2])],
    ['numbers too large to square', at([0, 1], [1e200, 2])],
  ])('[E65] %s has no line', (_, points) => expect(fitLine(points)).toBeUndefined());

  test('[E66] through the origin the slope is Σxy/Σx²', () => {
    expect(slopeThroughOrigin(at([1, 3], [2, 4]))).toBe(11 / 5);
    expect(slopeThroughOrigin(at([0, 3]))).toBeUndefined();
    expect(slopeThroughOrigin([])).toBeUndefined();
    expect(slopeThroughOrigin(at([1, Number.NaN]))).toBeUndefined();
  });
});

describe('[N6] the band of prediction', () => {
  test('[E67] is t·s·√(1 + 1/n + (x − x̄)²/Sxx) to both sides', () => {
    const line = lineOf(at([0, 0], [500, 12], [1000, 26], [1500, 37]));
    const half = studentQuantile(0.95, 2) * Math.sqrt(0.75) * Math.sqrt(1 + 1 / 4 + 1250 ** 2 / 1_250_000);
    const band = predictionInterval(line, 2000, 0.9);
    expectNear(band?.low, 50 - half, 1e-14);
    expectNear(band?.high, 50 + half, 1e-14);
  });

  test('[E68] reaches a value where its edges have that value', () => {
    law(
      fc.property(readings, fc.double({ min: 0.5, max: 0.99, noNaN: true }), (points, probability) => {
        const line = lineOf(points);
        const reached = bandReaches(line, 100, probability);
        if (reached === undefined) return;
        const low = predictionInterval(line, reached.low, probability);
        expectNear(low?.high, 100, 1e-7);
        expect(reached.low).toBeLessThanOrEqual((lineReaches(line, 100) ?? Number.NaN) + 1e-6);
        if (reached.high === undefined) return;
        expectNear(predictionInterval(line, reached.high, probability)?.low, 100, 1e-7);
        expect(reached.high).toBeGreaterThanOrEqual((lineReaches(line, 100) ?? Number.NaN) - 1e-6);
      }),
    );
  });

  test('[E69] asked for more certainty, is reached sooner at the earliest and later at the latest', () => {
    law(
      fc.property(readings, (points) => {
        const line = lineOf(points);
        const [narrow, wide] = [bandReaches(line, 100, 0.8), bandReaches(line, 100, 0.95)];
        if (narrow === undefined || wide === undefined) return;
        expect(wide.low).toBeLessThanOrEqual(narrow.low);
        expect(wide.high ?? Infinity).toBeGreaterThanOrEqual(narrow.high ?? Infinity);
      }),
    );
  });

  test('[E70] where the slope is not clear of 0 the latest is open', () => {
    const line = lineOf(at([0, 10], [100, 14], [200, 11], [300, 16]));
    const reached = bandReaches(line, 100, 0.95);
    expect(reached?.high).toBeUndefined();
    expectNear(predictionInterval(line, reached?.low ?? Number.NaN, 0.95)?.high, 100, 1e-9);
    expect(reached?.low).toBeGreaterThan(300);
  });

  test('[E71] and nothing is said of a value that lies behind, or within the band already', () => {
    const line = lineOf(at([0, 10], [100, 14], [200, 11], [300, 16]));
    expect(bandReaches(line, -100, 0.95)).toBeUndefined();
    expect(bandReaches(line, 14, 0.95)).toBeUndefined();
    // Just inside the band at the middle, whose edges do have that value somewhere.
    const edge = predictionInterval(line, 150, 0.95)?.high ?? Number.NaN;
    expect(bandReaches(line, edge - 1e-3, 0.95)).toBeUndefined();
    expect(bandReaches(line, edge + 1e-3, 0.95)).toMatchObject({ high: undefined });
  });

  test('[E72] of parts that shrink is reached the same way', () => {
    const points = at([0, 0], [500, 12], [1000, 26], [1500, 37]);
    const mirrored = lineOf(points.map(({ x, y }) => ({ x, y: -y })));
    expect(bandReaches(mirrored, -100, 0.9)).toEqual(bandReaches(lineOf(points), 100, 0.9));
  });

  test('[E73] of points on a line is the line', () => {
    const line = lineOf(at([0, 0], [100, 2], [200, 4]));
    expect(bandReaches(line, 8, 0.9)).toEqual({ low: 400, high: 400 });
    expect(bandReaches(line, 2, 0.9)).toEqual({ low: 100, high: 100 });
    expect(predictionInterval(line, 400, 0.9)).toEqual({ low: 8, high: 8 });
  });

  test.each([0, 1, -1, 2, Number.NaN])('[E74] with a probability of %d is not known', (probability) => {
    const line = lineOf(at([0, 0], [100, 2], [200, 5]));
    expect(predictionInterval(line, 5, probability)).toBeUndefined();
    expect(bandReaches(line, 5, probability)).toBeUndefined();
  });

  test('[E75] at hours or for a value that is no number is not known', () => {
    const line = lineOf(at([0, 0], [100, 2], [200, 5]));
    expect(predictionInterval(line, Number.NaN, 0.9)).toBeUndefined();
    expect(bandReaches(line, Number.NaN, 0.9)).toBeUndefined();
    expect(bandReaches(line, 1e200, 0.9)).toBeUndefined();
    expect(lineReaches(line, Number.NaN)).toBeUndefined();
  });
});
