import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { gammaWearWithin } from '../../src/core/gamma-wear.ts';
import { law } from './law.ts';

const above0 = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const wear = fc.record({ left: above0(1, 200), shapePerHour: above0(0.001, 0.2), scale: above0(0.1, 10) });

describe('[N6] wear by gamma steps', () => {
  test('[E50] reaches the limit with more certainty the more hours pass, and the less is left', () => {
    law(
      fc.property(wear, above0(0, 8000), above0(0, 1000), above0(0, 50), (given, hours, more, worn) => {
        const within = gammaWearWithin(given, hours) ?? Number.NaN;
        expect(gammaWearWithin(given, hours + more)).toBeGreaterThanOrEqual(within - 1e-13);
        expect(gammaWearWithin({ ...given, left: given.left + worn }, hours)).toBeLessThanOrEqual(
          within + 1e-13,
        );
        expect(within).toBeGreaterThanOrEqual(0);
        expect(within).toBeLessThanOrEqual(1);
      }),
    );
  });

  test('[E51] one step of shape 1 is exponential', () => {
    expect(gammaWearWithin({ left: 3, shapePerHour: 0.01, scale: 2 }, 100)).toBeCloseTo(Math.exp(-1.5), 14);
  });

  test('[E52] nothing is reached at 0 hours or before', () => {
    const given = { left: 3, shapePerHour: 0.01, scale: 2 };
    expect([gammaWearWithin(given, 0), gammaWearWithin(given, -10)]).toEqual([0, 0]);
  });

  test.each([
    ['nothing left', { left: 0 }],
    ['no shape', { shapePerHour: 0 }],
    ['no scale', { scale: 0 }],
    ['no number', { left: Number.NaN }],
    ['an infinite scale', { scale: Infinity }],
  ])('[E53] %s is not known', (_, odd) => {
    expect(gammaWearWithin({ left: 3, shapePerHour: 0.01, scale: 2, ...odd }, 100)).toBeUndefined();
  });

  test('[E54] hours that are no number are not known', () => {
    expect(gammaWearWithin({ left: 3, shapePerHour: 0.01, scale: 2 }, Number.NaN)).toBeUndefined();
    expect(gammaWearWithin({ left: 3, shapePerHour: 0.01, scale: 2 }, Infinity)).toBeUndefined();
  });
});
