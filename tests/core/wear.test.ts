import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { ItemLimits, Load } from '../../src/core/limits.ts';
import { fromMm, lengthUnits, toMm } from '../../src/core/quantity.ts';
import { assert } from '../../src/core/result.ts';
import { sizeAtPercent, wear, type Size, type Wear } from '../../src/core/wear.ts';
import { law } from './law.ts';
import { entered, entryOf, limitAt } from './made.ts';

const exact = (value: number): Size => ({ mm: value, uMm: 0 });

function worn(entry: ItemLimits, size: Size | number, load?: Load): Wear {
  const found = wear(entry, typeof size === 'number' ? exact(size) : size, load);
  assert(found, 'wear is known');
  return found;
}

const breaks = (...points: readonly (readonly [number, number])[]) =>
  points.map(([at, percent]) => ({ at, percent, source: entered }));

/** New and limit of either direction, some way apart. */
const ends = fc
  .tuple(
    fc.double({ min: 5, max: 300, noNaN: true }),
    fc.double({ min: 1, max: 100, noNaN: true }),
    fc.boolean(),
  )
  .map(([fresh, way, grows]) => [fresh, grows ? fresh + way : fresh - way] as const);

/** An entry with up to four break points that rise from new to limit. */
const curves = fc
  .tuple(
    ends,
    fc.constantFrom(...lengthUnits),
    fc.uniqueArray(fc.integer({ min: 1, max: 99 }), { maxLength: 4 }),
    fc.uniqueArray(fc.integer({ min: 1, max: 99 }), { minLength: 4, maxLength: 4 }),
  )
  .map(([[fresh, limit], unit, ways, percents]) => {
    const [at, percent] = [ways, percents].map((each) => [...each].sort((a, b) => a - b));
    const points = (at ?? []).map(
      (way, i) => [fresh + ((limit - fresh) * way) / 100, percent?.[i] ?? 0] as const,
    );
    return entryOf('lug-depth', fresh, limit, { unit, breaks: breaks(...points) });
  });

describe('[N3] percent worn', () => {
  test('[W1] p = 100·(N − m)/(N − L), for parts that shrink and parts that grow alike', () => {
    law(
      fc.property(ends, fc.double({ min: -3, max: 4, noNaN: true }), ([fresh, limit], way) => {
        const at = fresh + way * (limit - fresh);
        expect(worn(entryOf('lug-depth', fresh, limit), at).percent).toBeCloseTo(
          (100 * (fresh - at)) / (fresh - limit),
          6,
        );
      }),
    );
  });

  test('[W2] nothing is clamped: better than new is below 0, past the limit above 100', () => {
    const entry = entryOf('lug-depth', 20, 10);
    expect([22, 20, 10, 8].map((each) => worn(entry, each).percent)).toEqual([-20, 0, 100, 120]);
  });

  test.each([
    ['new', { ...entryOf('lug-depth', 20, 5), new: undefined }],
    ['limit', entryOf('lug-depth', 20, [])],
    ['limit at 100 %', entryOf('lug-depth', 20, [limitAt(5, { hundred: false })])],
    ['difference of both', entryOf('lug-depth', 20, 20)],
  ])('[W3] wear is unknown without a %s', (_, { new: fresh, ...entry }) => {
    const given = { ...entry, ...(fresh && { new: fresh }) };
    expect(wear(given, exact(12), undefined)).toBeUndefined();
    expect(sizeAtPercent(given, 50, undefined)).toBeUndefined();
  });

  test.each([
    ['sizes out of order', breaks([12, 60], [8, 50])],
    ['a size beyond new', breaks([21, 20])],
    ['a size beyond the limit', breaks([4, 80])],
    ['a percentage of 0', breaks([12, 0])],
    ['a percentage of 100', breaks([12, 100])],
    ['two sizes alike', breaks([12, 30], [12, 40])],
  ])('[W4] wear is unknown with break points that do not rise: %s', (_, points) => {
    const entry = entryOf('lug-depth', 20, 5, { breaks: points });
    expect(wear(entry, exact(10), undefined)).toBeUndefined();
    expect(sizeAtPercent(entry, 50, undefined)).toBeUndefined();
  });

  test('[W5] straight lines between break points, the outer slopes beyond, in whatever order they stand', () => {
    const entry = entryOf('lug-depth', 20, 5, { breaks: breaks([8, 75], [16, 50]) });
    const table = [
      [22, -25],
      [20, 0],
      [18, 25],
      [16, 50],
      [12, 62.5],
      [8, 75],
      [6.5, 87.5],
      [5, 100],
      [2, 125],
    ] as const;
    for (const [at, percent] of table) {
      expect(worn(entry, at).percent).toBeCloseTo(percent, 9);
      expect(sizeAtPercent(entry, percent, undefined)).toBeCloseTo(at, 9);
    }
  });

  test('[W6] a growing part has break points too', () => {
    const entry = entryOf('pitch', 100, 110, { breaks: breaks([108, 50], [104, 10]) });
    for (const [at, percent] of [
      [100, 0],
      [102, 5],
      [104, 10],
      [106, 30],
      [109, 75],
      [114, 200],
    ] as const)
      expect(worn(entry, at).percent).toBeCloseTo(percent, 9);
  });

  test('[W7] wear rises along the way from new to the limit, with break points or without', () => {
    const way = fc.double({ min: -1, max: 3, noNaN: true });
    law(
      fc.property(curves, way, way, (entry, a, b) => {
        const [fresh, limit] = [entry.new?.at ?? 0, entry.limits[0]?.at ?? 0];
        const sizeAt = (each: number): number => toMm(fresh + each * (limit - fresh), entry.unit);
        const [least, most] = [Math.min(a, b), Math.max(a, b)];
        expect(worn(entry, sizeAt(least)).percent).toBeLessThanOrEqual(
          worn(entry, sizeAt(most)).percent + 1e-9,
        );
      }),
    );
  });

  test('[W8] the size at a percentage has that percentage', () => {
    law(
      fc.property(curves, fc.double({ min: -50, max: 250, noNaN: true }), (entry, percent) => {
        const at = sizeAtPercent(entry, percent, undefined);
        assert(at !== undefined, 'the size is known');
        expect(worn(entry, at).percent).toBeCloseTo(percent, 6);
      }),
    );
  });

  test('[W9] wear is the same in whatever unit the sheet prints its sizes', () => {
    law(
      fc.property(
        ends,
        fc.constantFrom(...lengthUnits),
        fc.double({ min: -1, max: 3, noNaN: true }),
        ([n, l], unit, way) => {
          const inMm = entryOf('lug-depth', n, l);
          const other = entryOf('lug-depth', fromMm(n, unit), fromMm(l, unit), { unit });
          const size = { mm: n + way * (l - n), uMm: 0.3 };
          const [a, b] = [worn(inMm, size), worn(other, size)];
          expect(b.percent).toBeCloseTo(a.percent, 6);
          expect(b.u).toBeCloseTo(a.u, 6);
          expect([b.newMm, b.limitMm].map((each) => each.toFixed(6))).toEqual(
            [n, l].map((each) => each.toFixed(6)),
          );
        },
      ),
    );
  });

  test('[W10] the way to a limit of another meaning is a straight line of its own', () => {
    const limits = [limitAt(10), limitAt(5, { means: 'destruction', hundred: false })];
    const entry = entryOf('lug-depth', 20, limits, { breaks: breaks([16, 80]) });
    expect(wear(entry, exact(8), undefined, 'destruction')).toMatchObject({
      percent: 80,
      means: 'destruction',
      limitMm: 5,
    });
    expect(sizeAtPercent(entry, 80, undefined, 'destruction')).toBe(8);
    expect(wear(entry, exact(16), undefined)).toMatchObject({ percent: 80, means: 'replace', limitMm: 10 });
    expect(wear(entry, exact(8), undefined, 'turn')).toBeUndefined();
  });

  test('[W11] the limit is that of the load', () => {
    const limits = [limitAt(10, { loads: ['light'] }), limitAt(12, { loads: ['average', 'heavy'] })];
    const entry = entryOf('bushing-od', 20, limits);
    expect(worn(entry, 15, 'light').percent).toBe(50);
    expect(worn(entry, 16, 'heavy').percent).toBe(50);
    expect(worn(entry, 16)).toMatchObject({ percent: 50, chosen: { loadAssumed: true } });
    expect(sizeAtPercent(entry, 50, 'light')).toBe(15);
    expect(sizeAtPercent(entry, 50, 'heavy')).toBe(16);
  });

  test.each([
    ['estimate', true],
    ['from-memory', true],
    ['weak', true],
    ['published', false],
    ['derived', false],
    ['common-practice', false],
    ['entered', false],
    ['measured', false],
  ] as const)('[W12] a figure marked %s makes wear soft: %s', (mark, soft) => {
    const source = { mark, text: '' };
    const fresh = entryOf('lug-depth', 20, 5, { new: { at: 20, source } });
    const limit = entryOf('lug-depth', 20, [limitAt(5, { source })]);
    expect([worn(fresh, 10).soft, worn(limit, 10).soft]).toEqual([soft, soft]);
  });
});

/** Standard uncertainty by moving each input a little: the law of propagation with numeric slopes. */
function byMoving(entry: ItemLimits, { mm, uMm }: Size): number {
  const [fresh, limit] = [entry.new, entry.limits[0]];
  assert(fresh && limit, 'the entry is whole');
  const percentOf = (n: number, m: number, l: number): number =>
    worn({ ...entry, new: { ...fresh, at: n }, limits: [{ ...limit, at: l }] }, toMm(m, entry.unit)).percent;
  const [n, m, l, h] = [fresh.at, fromMm(mm, entry.unit), limit.at, 1e-5];
  const slopes = [
    (percentOf(n, m + h, l) - percentOf(n, m - h, l)) / (2 * h),
    (percentOf(n + h, m, l) - percentOf(n - h, m, l)) / (2 * h),
    (percentOf(n, m, l + h) - percentOf(n, m, l - h)) / (2 * h),
  ];
  const us = [
    fromMm(uMm, entry.unit),
    (fresh.tolerance ?? 0) / Math.sqrt(3),
    (limit.tolerance ?? 0) / Math.sqrt(3),
  ];
  return Math.sqrt(slopes.reduce((sum, slope, i) => sum + (slope * (us[i] ?? 0)) ** 2, 0));
}

describe('[N3] uncertainty of wear', () => {
  test('[W13] it follows the reading, the new value and the limit by the law of propagation', () => {
    const u = fc.double({ min: 0, max: 2, noNaN: true });
    // Slopes are taken inside a piece: at a break point there is none.
    const way = fc.double({ min: -0.5, max: 2, noNaN: true });
    law(
      fc.property(curves, way, u, u, u, (curve, at, uMm, newTolerance, limitTolerance) => {
        const [fresh, limit] = [curve.new, curve.limits[0]];
        assert(fresh && limit, 'the curve is whole');
        const entry = {
          ...curve,
          new: { ...fresh, tolerance: newTolerance },
          limits: [{ ...limit, tolerance: limitTolerance }],
        };
        const printed = fresh.at + at * (limit.at - fresh.at);
        const knots = [fresh.at, limit.at, ...(curve.breaks ?? []).map((each) => each.at)];
        fc.pre(knots.every((each) => Math.abs(each - printed) > 1e-3));
        const size = { mm: toMm(printed, curve.unit), uMm };
        const { u: found, expanded } = worn(entry, size);
        const wanted = byMoving(entry, size);
        expect(Math.abs(found - wanted)).toBeLessThanOrEqual(1e-4 * Math.max(1, wanted));
        expect(expanded).toBe(2 * found);
      }),
    );
  });

  test.each([
    ['reading', {}, {}, 0.3, 3],
    ['new value', { tolerance: 0.3 * Math.sqrt(3) }, {}, 0, 1.2],
    ['limit', {}, { tolerance: 0.3 * Math.sqrt(3) }, 0, 1.8],
  ])('[W14] the %s alone brings its share', (_, newMore, limitMore, uMm, u) => {
    // New 20, limit 10, read 14: 60 % worn, one millimetre is 10 %, and new and limit count by 40 and 60 %.
    const entry = entryOf('lug-depth', 20, [limitAt(10, limitMore)], {
      new: { at: 20, source: entered, ...newMore },
    });
    expect(worn(entry, { mm: 14, uMm }).u).toBeCloseTo(u, 9);
  });

  test('[W15] between break points only the slope of the piece counts', () => {
    const entry = entryOf('lug-depth', 20, [limitAt(5, { tolerance: 1 })], {
      new: { at: 20, tolerance: 1, source: entered },
      breaks: breaks([16, 20], [8, 60]),
    });
    expect(worn(entry, { mm: 12, uMm: 0.5 }).u).toBeCloseTo(2.5, 9);
    // At a break point the piece before it counts: here 5 % a millimetre, with the tolerance of new.
    expect(worn(entry, { mm: 16, uMm: 0.5 }).u).toBeCloseTo(2.5, 9);
    expect(worn(entry, { mm: 8, uMm: 0.5 }).u).toBeCloseTo(2.5, 9);
  });
});
