import { describe, expect, test } from 'vitest';
import type { Reading } from '../../src/core/readings.ts';
import { assert } from '../../src/core/result.ts';
import { fromResolution, isSized, resolutionMm, sizeOf } from '../../src/core/sizes.ts';
import { wear } from '../../src/core/wear.ts';
import { entryOf } from './sizes.ts';

/**
 * Two standard uncertainties put together by the law of propagation of core: at 200 % of a part of 100 mm the
 * reading and the new size each weigh one percent a millimetre.
 */
function together(first: number, second: number): number {
  const entry = entryOf('link-height', 100, 0, second * Math.sqrt(3));
  return wear(entry, { mm: -100, uMm: first }, undefined)?.u ?? Number.NaN;
}

// End-gauge calibration, components in nm (NIST TN 1297 App. D.2; GUM H.1).
const nine = [25, 5.8, 3.9, 6.7, 1.7, 5.8, 10.2, 2.9, 16.6];
const firstOrder = [25, 5.8, 3.9, 6.7, 2.9, 16.6];

describe('[N3] the law of propagation', () => {
  test('[CV-63] all nine terms of GUM H.1 come to 33.81 nm, printed 34 (NIST TN 1297)', () => {
    expect(nine.reduce(together)).toBeCloseTo(33.81, 2);
  });

  test('[CV-63] the six first-order terms of GUM H.1 come to 31.67 nm, printed 32 (NIST TN 1297)', () => {
    expect(firstOrder.reduce(together)).toBeCloseTo(31.67, 2);
  });

  test('[CV-64] new 105.5 mm (u 0.2), 101.0 mm read (u 0.3), limit 96.5 mm exact: u 3.514 %, U 7.03 %', () => {
    const worn = wear(
      entryOf('link-height', 105.5, 96.5, 0.2 * Math.sqrt(3)),
      { mm: 101, uMm: 0.3 },
      undefined,
    );
    expect(worn?.u).toBeCloseTo(3.514, 2);
    expect(worn?.expanded).toBeCloseTo(7.03, 2);
  });
});

const measured = (links: number, totalMm: number): number => {
  const what: Reading['what'] = { kind: 'pitch', totalMm, links, typed: String(totalMm), unit: 'mm' };
  assert(isSized(what), 'a pitch is a size');
  const size = sizeOf({ v: 1, what, uMm: 1 }, what, {});
  return wear(entryOf('pitch', 171.5, 174.5), size, undefined)?.u ?? Number.NaN;
};

describe('[N3] a millimetre on a chain of 171.5 → 174.5 mm (Komatsu D39)', () => {
  test('[CV-65] is 8.33 % of its life over four links', () => {
    expect(measured(4, 692)).toBeCloseTo(8.33, 2);
  });

  test('[CV-65] is 33.3 % of its life over one link', () => {
    expect(measured(1, 173)).toBeCloseTo(33.33, 2);
  });
});

test('[CV-66] a tape read to 1 mm brings 0.2887 mm (JCGM 100:2008, F.2.2.1)', () => {
  expect(fromResolution(resolutionMm('692', 'mm'))).toBeCloseTo(0.2887, 4);
});
