import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { root } from '../../src/core/root.ts';
import { law } from './law.ts';

const value = fc.double({ min: -1e6, max: 1e6, noNaN: true });

describe('[N6] where a function crosses 0', () => {
  test('[E1] is found to the last bits, wherever it lies and whichever end is named first', () => {
    law(
      fc.property(value, fc.boolean(), fc.constantFrom(1, 3, 9), (at, turned, power) => {
        const f = (x: number): number => (x - at) ** power;
        const [from, to] = turned ? [2e6, -1e6] : [-1e6, 2e6];
        const off = Math.abs(root(f, from, to) - at);
        expect(off).toBeLessThanOrEqual(4 * Number.EPSILON * Math.abs(at) + 1e-30);
      }),
    );
  });

  test('[E2] takes few steps where the function is smooth', () => {
    let asked = 0;
    const found = root((x) => ((asked += 1), Math.exp(x) - 7), 0, 10);
    expect(found).toBeCloseTo(Math.log(7), 15);
    expect(asked).toBeLessThan(16);
  });

  test('[E3] is an end that is 0 itself', () => {
    expect([root((x) => x, 0, 1), root((x) => x, -1, 0), root((x) => x - 1, 0, 1)]).toEqual([0, 0, 1]);
  });

  test('[E4] is a jump from one sign to the other, too', () => {
    expect(root((x) => (x < 0.3 ? -5 : 1), 0, 1)).toBeCloseTo(0.3, 15);
  });

  test('[E5] without two signs is a bug', () => {
    expect(() => root((x) => x * x + 1, -1, 1)).toThrow('sign');
    expect(() => root(() => Number.NaN, -1, 1)).toThrow('sign');
  });
});
