import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  compare,
  fromMm,
  kgPerLb,
  lengthUnits,
  round6,
  standardGravity,
  toMm,
  type Comparison,
} from '../../src/core/quantity.ts';
import { law } from './law.ts';

// NIST SP 811: the inch is 25.4 mm exactly, the pound 0.453 592 37 kg, standard gravity 9.806 65 m/s².
const exact = [
  ['mm', 1],
  ['in', 25.4],
  ['in/32', 0.79375],
  ['in/16', 1.5875],
] as const;

const comparisons: readonly (readonly [Comparison, boolean, boolean, boolean])[] = [
  ['<', true, false, false],
  ['<=', true, true, false],
  ['=', false, true, false],
  ['>=', false, true, true],
  ['>', false, false, true],
];

describe('[N1] quantities', () => {
  test.each(exact)('[Q1] one %s is %d mm', (unit, mm) => {
    expect(toMm(1, unit)).toBe(mm);
    expect(fromMm(mm, unit)).toBe(1);
    expect(toMm(3, unit)).toBe(3 * mm);
  });

  test('[Q2] every unit has its definition', () => {
    expect(exact.map(([unit]) => unit)).toEqual(lengthUnits);
    expect([kgPerLb, standardGravity]).toEqual([0.45359237, 9.80665]);
  });

  test('[Q3] a length that goes through a unit and back stays on the same side of every limit', () => {
    law(
      fc.property(
        fc.double({ min: -10_000, max: 10_000, noNaN: true }),
        fc.constantFrom(...lengthUnits),
        (mm, unit) => {
          const back = toMm(fromMm(mm, unit), unit);
          expect(Math.abs(back - mm)).toBeLessThanOrEqual(Math.abs(mm) * 2 ** -51 + 1e-300);
          expect(compare(back, '=', mm)).toBe(true);
        },
      ),
    );
  });

  test.each(comparisons)('[Q4] 1 %s 2, 2 and 2, 3 and 2: %s, %s, %s', (op, less, equal, more) => {
    expect([compare(1, op, 2), compare(2, op, 2), compare(3, op, 2)]).toEqual([less, equal, more]);
  });

  test.each(comparisons)(
    '[Q5] %s takes values within half a millionth for equal: %s, %s, %s',
    (op, less, equal, more) => {
      expect([compare(2 + 4e-7, op, 2), compare(2 - 4e-7, op, 2)]).toEqual([equal, equal]);
      expect([compare(2 - 6e-7, op, 2), compare(2 + 6e-7, op, 2)]).toEqual([less, more]);
    },
  );

  test('[Q6] exactly one of <, = and > holds, and <= and >= are what they say', () => {
    const values = fc.double({ min: -1000, max: 1000, noNaN: true });
    law(
      fc.property(values, values, (a, b) => {
        const [less, equal, more] = [compare(a, '<', b), compare(a, '=', b), compare(a, '>', b)];
        expect([less, equal, more].filter(Boolean)).toHaveLength(1);
        expect([compare(a, '<=', b), compare(a, '>=', b)]).toEqual([less || equal, more || equal]);
        expect(compare(b, '>', a)).toBe(less);
      }),
    );
  });

  test('[Q7] the grid is a millionth', () => {
    expect([round6(1.23456749), round6(1.2345675), round6(-0.4e-6)]).toEqual([1.234567, 1.234568, -0]);
  });
});
