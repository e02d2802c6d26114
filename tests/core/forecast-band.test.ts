import { describe, expect, test } from 'vitest';
import { bandOf } from '../../src/core/forecast-band.ts';
import { passageOf } from '../../src/core/passage.ts';
import { assert } from '../../src/core/result.ts';
import { filterWear } from '../../src/core/wear-filter.ts';

const stateOf = (u: number, kappa: number) => {
  const events = [
    { kind: 'fitted', hours: 0, percent: 0, u },
    { kind: 'read', hours: 500, percent: 25, u },
    { kind: 'read', hours: 1000, percent: 50, u },
  ] as const;
  const state = filterWear(events, { prior: { centre: Math.log(0.05), spread: 0.4 }, kappa });
  assert(state, 'readings');
  return state;
};

describe('[N6] the band of a forecast', () => {
  test('[FB1] starts about the last reading, rises and widens, and lies in order', () => {
    const band = bandOf(stateOf(3, 1), [0, 250, 500, 1000]);
    expect(band[0]?.middle).toBeCloseTo(50, 0);
    band.forEach(({ low, middle, high }, at) => {
      expect(low < middle && middle < high).toBe(true);
      const before = band[at - 1];
      if (!before) return;
      expect(middle).toBeGreaterThan(before.middle);
      expect(high - low).toBeGreaterThan(before.high - before.low);
    });
  });

  test('[FB2] without noise it is the line through the readings, and meets the limit where the passage does', () => {
    const state = stateOf(1e-3, 1e-5);
    const [at] = bandOf(state, [1000]);
    expect(at?.low).toBeCloseTo(100, 0);
    expect(at?.middle).toBeCloseTo(100, 1);
    expect(passageOf(state).quantile(0.5)).toBeCloseTo(1000, 0);
  });

  test('[FB3] one in ten ends below it and one in ten above: the chances agree with the mixture summed plainly', () => {
    const state = stateOf(3, 1);
    const [at] = bandOf(state, [700]);
    assert(at, 'a point');
    let below = 0;
    state.rates.forEach((rate, g) => {
      const sd = Math.sqrt((state.variances[g] ?? 0) + state.kappa * rate * 700);
      const mean = (state.means[g] ?? 0) + rate * 700;
      // Plain sum of the normal density up to the low end.
      for (let n = 0; n < 4000; n += 1) {
        const z = -8 + (8 + (at.low - mean) / sd) * ((n + 0.5) / 4000);
        below +=
          ((state.weights[g] ?? 0) * Math.exp((-z * z) / 2) * (8 + (at.low - mean) / sd)) /
          4000 /
          Math.sqrt(2 * Math.PI);
      }
    });
    expect(below).toBeCloseTo(0.1, 3);
  });
});
