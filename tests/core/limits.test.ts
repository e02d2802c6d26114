import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  chooseLimit,
  grows,
  itemLimitsSchema,
  limitsFor,
  limitSheetSchema,
  limitSchema,
  loads,
  postures,
  printsDisagree,
  sagMethods,
  sagReads,
  sagSpecSchema,
} from '../../src/core/limits.ts';
import { lengthUnits, toMm } from '../../src/core/quantity.ts';
import { law } from './law.ts';
import { bandOf, entryOf, limitAt, sheetOf } from './made.ts';

const at = (number: number, of = 8) => ({ number, of });

describe('[N2] the entry for a part', () => {
  const all = entryOf('roller-tread', 200, 160);
  const sheet = sheetOf([
    all,
    entryOf('roller-tread', 210, 170, { positions: 'ends' }),
    entryOf('roller-tread', 220, 180, { positions: [4, 5] }),
    entryOf('idler-tread', 20, 30, { positions: 'inner' }),
  ]);

  test.each([
    [1, 210],
    [8, 210],
    [4, 220],
    [5, 220],
    [2, 200],
    [7, 200],
  ])('[L30] roller %d of 8 has the entry of its position: new %d mm', (number, fresh) => {
    expect(limitsFor(sheet, 'roller-tread', at(number))?.new?.at).toBe(fresh);
  });

  test('[L31] the only roller is an end, and inner ones are what lies between', () => {
    expect(limitsFor(sheet, 'roller-tread', at(1, 1))?.new?.at).toBe(210);
    expect([1, 2, 3].map((number) => limitsFor(sheet, 'idler-tread', at(number, 3))?.new?.at)).toEqual([
      undefined,
      20,
      undefined,
    ]);
  });

  test('[L32] a part without a number has only entries made for all', () => {
    expect(limitsFor(sheet, 'roller-tread')).toBe(all);
    expect(limitsFor(sheet, 'idler-tread')).toBeUndefined();
    expect(limitsFor(sheet, 'pitch')).toBeUndefined();
  });

  test('[L33] an entry for the position goes before one for all, however they stand', () => {
    const turned = sheetOf([...sheet.items].reverse());
    expect(limitsFor(turned, 'roller-tread', at(1))?.new?.at).toBe(210);
  });
});

describe('[N2] direction', () => {
  test.each([
    ['new below the limit', entryOf('pitch', 100, 110), true],
    ['new above the limit', entryOf('lug-depth', 20, 5), false],
    ['new at the limit', entryOf('lug-depth', 20, 20), false],
    ['no limit', entryOf('pitch', 100, []), false],
    [
      'the limit at 100 % counts, not the first',
      entryOf('pitch', 100, [limitAt(90, { hundred: false }), limitAt(110)]),
      true,
    ],
    ['the first where none is at 100 %', entryOf('pitch', 100, [limitAt(110, { hundred: false })]), true],
  ])('[L34] %s: grows %s', (_, entry, growing) => {
    expect(grows(entry)).toBe(growing);
  });

  test('[L35] without a new size nothing says that it grows', () => {
    const { new: _, ...bare } = entryOf('pitch', 100, 110);
    expect(grows(bare)).toBe(false);
  });
});

describe('[N2] the limit that counts', () => {
  const light = limitAt(51.6, { loads: ['light'] });
  const heavy = limitAt(54.1, { loads: ['average', 'heavy'] });
  const last = limitAt(45, { means: 'destruction', hundred: false });
  const entry = entryOf('bushing-od', 60.7, [light, heavy, last]);

  test.each([
    ['light', 51.6],
    ['average', 54.1],
    ['heavy', 54.1],
  ] as const)('[L36] of a %s load it is %d mm, and nothing is assumed', (load, limit) => {
    expect(chooseLimit(entry, 'hundred', load)).toMatchObject({ at: limit, loadAssumed: false });
  });

  test('[L37] of an unknown load it is the strictest, and that is said', () => {
    expect(chooseLimit(entry, 'hundred', undefined)).toMatchObject({ at: 54.1, loadAssumed: true });
    const growing = entryOf('pitch', 100, [
      limitAt(110, { loads: ['light'] }),
      limitAt(108, { loads: ['heavy'] }),
    ]);
    expect(chooseLimit(growing, 'hundred', undefined)).toMatchObject({ at: 108, loadAssumed: true });
  });

  test('[L38] a limit for some loads only is assumed, also where it is the only one', () => {
    const only = entryOf('bushing-od', 60.7, [light]);
    expect(chooseLimit(only, 'hundred', undefined)).toMatchObject({ at: 51.6, loadAssumed: true });
    expect(chooseLimit(only, 'hundred', 'heavy')).toBeUndefined();
  });

  test('[L39] a limit for every load is not assumed, and goes before a milder one for some', () => {
    const both = entryOf('bushing-od', 60.7, [light, limitAt(53)]);
    expect(chooseLimit(both, 'hundred', undefined)).toMatchObject({ at: 53, loadAssumed: false });
    expect(chooseLimit(both, 'hundred', 'light')).toMatchObject({ at: 53, loadAssumed: false });
  });

  test('[L40] by meaning, or the one at 100 %; a sheet without it has none', () => {
    expect(chooseLimit(entry, 'destruction', 'light')?.limit).toBe(last);
    expect(chooseLimit(entry, 'turn', 'light')).toBeUndefined();
    expect(chooseLimit(entryOf('pitch', 100, []), 'hundred', undefined)).toBeUndefined();
  });
});

describe('[N2] one print in two units', () => {
  test.each([
    [245, 'mm', 1, 9, 'in', undefined, true],
    [229, 'mm', 1, 9, 'in', undefined, false],
    [231, 'mm', 1, 9, 'in', 0.1, true],
    [12, 'mm', undefined, 13, 'mm', undefined, false],
    [12, 'mm', undefined, 13.1, 'mm', undefined, true],
    [12, 'mm', 0.1, 12.2, 'mm', 0.1, true],
    [12, 'mm', 0.1, 12.1, 'mm', 0.1, false],
    [9, 'in', undefined, 245, 'mm', 1, true],
    [1, 'in/32', undefined, 1.5, 'mm', 0.1, true],
    [1, 'in/32', undefined, 1.2, 'mm', 0.1, false],
  ] as const)(
    '[L41] %d %s (to %s) and %d %s (to %s): disagree %s',
    (value, unit, resolution, other, otherUnit, otherResolution, disagree) => {
      const [a, b] = [
        { at: value, unit, resolution },
        { at: other, unit: otherUnit, resolution: otherResolution },
      ];
      expect([printsDisagree(a, b), printsDisagree(b, a)]).toEqual([disagree, disagree]);
    },
  );

  test('[L42] what is rounded to a step agrees with what it was rounded from', () => {
    const units = fc.constantFrom(...lengthUnits);
    law(
      fc.property(
        fc.double({ min: 0, max: 500, noNaN: true }),
        units,
        fc.constantFrom(1, 0.5, 0.1),
        (value, unit, step) => {
          const rounded = Math.round(value / step) * step;
          const exact = { at: toMm(value, unit), unit: 'mm' as const, resolution: 1e-6 };
          expect(printsDisagree({ at: rounded, unit, resolution: step }, exact)).toBe(false);
        },
      ),
    );
  });

  test('[L43] where they contradict each other the stricter side counts and says so', () => {
    const also = (value: number) => [limitAt(10, { also: { at: value, unit: 'in' } })];
    const shrinking = (value: number) =>
      chooseLimit(entryOf('lug-depth', 20, also(value)), 'hundred', undefined);
    const growing = (value: number) => chooseLimit(entryOf('pitch', 5, also(value)), 'hundred', undefined);
    expect(shrinking(0.6)?.at).toBeCloseTo(15.24, 9);
    expect(shrinking(0.6)?.contradicts).toBe(true);
    expect(shrinking(0.2)).toMatchObject({ at: 10, contradicts: true });
    expect(growing(0.3)?.at).toBeCloseTo(7.62, 9);
    expect(growing(0.6)).toMatchObject({ at: 10, contradicts: true });
    expect(shrinking(0.4)).toMatchObject({ at: 10, contradicts: false });
    expect(chooseLimit(entryOf('lug-depth', 20, 10), 'hundred', undefined)?.contradicts).toBe(false);
  });

  test('[L44] a print to tenths contradicts what a print to whole millimetres does not', () => {
    const entry = (resolution: number) =>
      entryOf('lug-depth', 20, [limitAt(10, { also: { at: 10.5, unit: 'mm', resolution: 0.1 } })], {
        resolution,
      });
    expect(chooseLimit(entry(1), 'hundred', undefined)?.contradicts).toBe(false);
    expect(chooseLimit(entry(0.1), 'hundred', undefined)).toMatchObject({ at: 10.5, contradicts: true });
  });
});

describe('[N2] what a sheet looks like', () => {
  const limit = limitAt(10);
  const entry = entryOf('lug-depth', 20, 10);
  const band = bandOf(10, 20);
  const refused: readonly (readonly [
    string,
    { safeParse: (value: unknown) => { success: boolean } },
    object,
  ])[] = [
    ['a limit of 10 001', limitSchema, { ...limit, at: 10_001 }],
    ['a limit of −10 001', limitSchema, { ...limit, at: -10_001 }],
    ['a limit with a negative tolerance', limitSchema, { ...limit, tolerance: -0.1 }],
    ['a limit for no load', limitSchema, { ...limit, loads: [] }],
    ['a limit that means something else', limitSchema, { ...limit, means: 'sell' }],
    ['a step of nothing', itemLimitsSchema, { ...entry, resolution: 0 }],
    ['positions of nothing', itemLimitsSchema, { ...entry, positions: [] }],
    ['thirteen limits', itemLimitsSchema, { ...entry, limits: Array(13).fill(limit) }],
    [
      'thirteen break points',
      itemLimitsSchema,
      { ...entry, breaks: Array(13).fill({ at: 1, percent: 1, source: limit.source }) },
    ],
    [
      'a new size with a negative tolerance',
      itemLimitsSchema,
      { ...entry, new: { ...entry.new, tolerance: -1 } },
    ],
    ['an item named in 61 letters', itemLimitsSchema, { ...entry, item: 'a'.repeat(61) }],
    ['a sag print in working order', sagSpecSchema, { ...band, clean: 'packed' }],
    ['a load of nothing', sagSpecSchema, { ...band, loadN: 0 }],
    ['201 items', limitSheetSchema, sheetOf(Array(201).fill(entry))],
    ['21 bands', limitSheetSchema, sheetOf([], Array(21).fill(band))],
    ['a later version', limitSheetSchema, { ...sheetOf([]), v: 2 }],
  ];

  test.each(refused)('[L45] %s is refused', (_, schema, value) => {
    expect(schema.safeParse(value).success).toBe(false);
  });

  test('[L46] what is within bounds is read as it is, unknown fields too', () => {
    const whole = sheetOf(
      [
        { ...entry, resolution: 0.5, positions: [1, 2], tomorrow: 1, new: { ...limit, tolerance: 0 } },
        entryOf('pitch', 10_000, [limitAt(-10_000, { tolerance: 0, loads: ['light'] })], {
          positions: 'ends',
        }),
        entryOf('idler-tread', 1, Array(12).fill(limit), { positions: 'inner' }),
      ],
      [{ ...band, clean: 'working-dirt', loadN: 200, taut: 5, derailAbove: 40 }],
    );
    expect(limitSheetSchema.parse(whole)).toEqual(whole);
  });

  test('[L47] every way of reading sag is told apart by what it reads', () => {
    expect(sagMethods.map((method) => sagReads[method])).toEqual([
      'sag',
      'sag',
      'sag',
      'sag',
      'distance',
      'distance',
      'distance',
      'deflection',
      'retreat',
    ]);
    expect([postures, loads]).toEqual([
      ['ground', 'raised'],
      ['light', 'average', 'heavy'],
    ]);
  });
});
