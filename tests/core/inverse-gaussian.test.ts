import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { firstPassage, type Drifting, type FirstPassage } from '../../src/core/inverse-gaussian.ts';
import { assert } from '../../src/core/result.ts';
import { expectNear, passageValues } from './digits.ts';
import { law } from './law.ts';

function known(drifting: Drifting): FirstPassage {
  const passage = firstPassage(drifting);
  assert(passage, 'the numbers are above 0');
  return passage;
}

const above0 = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const drifting = fc.record({
  distance: above0(0.1, 200),
  drift: above0(0.002, 4),
  kappa: above0(0.001, 50),
});

describe('[N6] first passage', () => {
  test.each(passageValues)(
    '[E40] over %d at %d an hour with κ %d, within %d h: %d, density %d',
    (distance, drift, kappa, hours, cdf, pdf) => {
      const passage = known({ distance, drift, kappa });
      expectNear(passage.cdf(hours), cdf, 1e-12);
      expectNear(passage.pdf(hours), pdf, 1e-12);
    },
  );

  test('[E41] mean is distance over drift, variance κ·distance/drift²', () => {
    const { meanHours, variance } = known({ distance: 50, drift: 0.025, kappa: 2 });
    expect([meanHours, variance]).toEqual([2000, 160_000]);
  });

  test('[E42] grows with the hours from 0 to 1', () => {
    law(
      fc.property(drifting, above0(0, 5), above0(0, 1), (given, at, more) => {
        const { cdf, meanHours } = known(given);
        expect(cdf(0)).toBe(0);
        const [early, late] = [cdf(at * meanHours), cdf((at + more) * meanHours)];
        expect(late).toBeGreaterThanOrEqual(early - 1e-15);
        expect(early).toBeGreaterThanOrEqual(0);
        expect(late).toBeLessThanOrEqual(1);
        expect(cdf(1e12 * meanHours)).toBe(1);
      }),
    );
  });

  test('[E43] the density is the slope of the distribution', () => {
    law(
      fc.property(drifting, above0(0.3, 3), (given, at) => {
        const { cdf, pdf, meanHours, variance } = known(given);
        const hours = at * meanHours;
        const step = 1e-4 * Math.min(hours, Math.sqrt(variance));
        const slope = (cdf(hours + step) - cdf(hours - step)) / (2 * step);
        expectNear(slope, pdf(hours), 1e-4, 1e-8 / Math.sqrt(variance));
      }),
    );
  });

  test('[E44] only the way travelled counts: half the drift takes twice the hours', () => {
    law(
      fc.property(drifting, above0(0.1, 4), ({ distance, drift, kappa }, at) => {
        const fast = known({ distance, drift, kappa });
        const slow = known({ distance, drift: drift / 2, kappa });
        const hours = at * fast.meanHours;
        expectNear(slow.cdf(2 * hours), fast.cdf(hours), 1e-12);
        expectNear(2 * slow.pdf(2 * hours), fast.pdf(hours), 1e-12);
      }),
    );
  });

  test('[E45] with a vanishing κ it happens at distance over drift', () => {
    const { cdf } = known({ distance: 50, drift: 0.025, kappa: 1e-9 });
    expect([cdf(1999), cdf(2001)]).toEqual([0, 1]);
  });

  test('[E46] nothing has happened at 0 hours or before, and all in the end', () => {
    const { cdf, pdf } = known({ distance: 50, drift: 0.025, kappa: 1 });
    expect([cdf(0), cdf(-5), pdf(0), pdf(-5), pdf(Infinity)]).toEqual([0, 0, 0, 0, 0]);
    expect([cdf(Number.NaN), cdf(1e300), cdf(Infinity), cdf(5e-324)]).toEqual([0, 1, 1, 0]);
  });

  test.each([
    ['a distance of 0', { distance: 0, drift: 1, kappa: 1 }],
    ['a distance that is passed', { distance: -1, drift: 1, kappa: 1 }],
    ['no drift', { distance: 1, drift: 0, kappa: 1 }],
    ['wear that falls', { distance: 1, drift: -1, kappa: 1 }],
    ['no variance', { distance: 1, drift: 1, kappa: 0 }],
    ['no number', { distance: 1, drift: Number.NaN, kappa: 1 }],
    ['an infinite distance', { distance: Infinity, drift: 1, kappa: 1 }],
  ])('[E47] %s has no first passage', (_, given) => expect(firstPassage(given)).toBeUndefined());
});
