import { describe, expect, test } from 'vitest';
import { items } from '../../src/core/items.ts';
import { limitsFor, type ItemLimits } from '../../src/core/limits.ts';
import { plausibility } from '../../src/core/plausible.ts';
import type { Observed } from '../../src/core/readings.ts';
import { isSized, sample, sizeOf } from '../../src/core/sizes.ts';
import { wear } from '../../src/core/wear.ts';
import { assert } from '../../src/core/result.ts';
import { entryOf, limitAt, sheetOf } from './sizes.ts';

const exact = (mm: number) => ({ mm, uMm: 0 });

function sizeRead(what: Observed): number {
  assert(isSized(what), 'a sized reading');
  return sizeOf({ v: 1, what }, what, {}).mm;
}
const pitch = (totalMm: number, links: number): number =>
  sizeRead({ kind: 'pitch', totalMm, links, typed: String(totalMm), unit: 'mm' });
const tread = (centreMm: number, linkMm: number): number =>
  sizeRead({ kind: 'tread', centreMm, linkMm, typed: [String(centreMm), String(linkMm)], unit: 'mm' });

// New, limit, measured → percent; each with where new and limit are printed.
const worn: readonly (readonly [string, number, number, number, number])[] = [
  ['[CV-03] lug, limit 5 mm (Gehl Z17 Gen 2 p. 151), new as entered', 25, 5, 15, 50],
  ['[CV-04] lug, computed', 20, 5, 11, 60],
  ['[CV-08] link height (service page 56320)', 105.5, 96.5, 101, 50],
  ['[CV-08] link height (service page 56320)', 105.5, 96.5, 103.7, 20],
  ['[CV-09] bushing, light shock (service page 56320)', 60.7, 51.6, 57.4, 36.26],
  ['[CV-09] bushing, average and heavy shock (service page 56320)', 60.7, 54.1, 57.4, 50],
  ['[CV-15] roller (service page 56319)', 175, 144.5, 160, 49.18],
  ['[CV-15] roller (JCB JS200; Case CX240B)', 150, 142, 146, 50],
  ['[CV-15] roller (JCB JS240)', 160, 152, 158, 25],
  ['[CV-16] grouser (Komatsu D61EX/PX-24)', 57.5, 16.5, 37, 50],
  ['[CV-16] grouser (Komatsu D375A-8)', 93, 30, 61.5, 50],
  ['[CV-18] a gap that grows (Case CX240B)', 173, 179, 176, 50],
  ['[CV-18] a width that shrinks (JCB JS200/240)', 173, 170, 171.5, 50],
];

describe('[N3] percent worn of published sizes', () => {
  test.each(worn)('%s: %d → %d, %d mm read, %d %%', (_, fresh, limit, mm, percent) => {
    expect(wear(entryOf('link-height', fresh, limit), exact(mm), undefined)?.percent).toBeCloseTo(percent, 2);
  });
});

const chains: readonly (readonly [string, number, number, number, number])[] = [
  ['[CV-11] Komatsu D39', 692, 171.5, 174.5, 173],
  ['[CV-13] Komatsu D31EX-21', 622.6, 154.3, 157, 155.65],
];

describe('[N3] pitch over four links', () => {
  test.each(chains)('%s: %d mm on %d → %d mm is %d mm and 50 %%', (_, total, fresh, limit, mm) => {
    expect(pitch(total, 4)).toBeCloseTo(mm, 6);
    expect(wear(entryOf('pitch', fresh, limit), exact(pitch(total, 4)), undefined)?.percent).toBeCloseTo(
      50,
      2,
    );
  });

  test('[CV-12] 692.0 mm over five pins divided by five is questioned, by four it is not', () => {
    const item = items.find(({ id }) => id === 'pitch');
    assert(item, 'pitch is an item');
    const entry = entryOf('pitch', 171.5, 174.5);
    expect(pitch(692, 5)).toBeCloseTo(138.4, 6);
    expect(plausibility(item, exact(pitch(692, 5)), entry)?.why).toBe('pitch');
    expect(plausibility(item, exact(pitch(692, 4)), entry)).toBeUndefined();
  });
});

test('[CV-14] a roller in place (Komatsu D61EX/PX-24 p. 273): B 203, C 112 mm is A 182 mm and 50 %', () => {
  expect(tread(203, 112)).toBe(182);
  expect(wear(entryOf('roller-tread', 200, 164), exact(tread(203, 112)), undefined)?.percent).toBeCloseTo(
    50,
    2,
  );
});

// Komatsu D375A-8: rollers 1 and 8 are 280 → 200 mm, rollers 2 to 7 are 270 → 210 mm.
const ends: ItemLimits = { ...entryOf('roller-tread', 280, 200), positions: 'ends' };
const rollers = sheetOf([entryOf('roller-tread', 270, 210), ends]);

test.each([1, 8, 4])(
  '[CV-19] roller %d of 8 at 240 mm is 50 %% by the limit of its place (Komatsu D375A-8)',
  (number) => {
    const entry = limitsFor(rollers, 'roller-tread', { number, of: 8 });
    assert(entry, 'the sheet has the roller');
    expect(wear(entry, exact(240), undefined)?.percent).toBeCloseTo(50, 2);
    expect(entry.new?.at).toBe(number === 4 ? 270 : 280);
  },
);

test('[N3] samples of 12, 11 and 3 mm are judged as 3 mm', () => {
  const spots = [12, 11, 3].map((mm, at) => ({ ...exact(mm), spot: at + 1 }));
  expect(sample(spots, 'smaller')?.worst.mm).toBe(3);
});

test('[N2] limits by load: light, average and heavy shock have their own (service page 56320)', () => {
  const entry: ItemLimits = {
    ...entryOf('bushing-od', 60.7, 51.6),
    limits: [limitAt(51.6, { loads: ['light'] }), limitAt(54.1, { loads: ['average', 'heavy'] })],
  };
  expect(wear(entry, exact(57.4), 'light')?.limitMm).toBe(51.6);
  expect(wear(entry, exact(57.4), 'average')?.limitMm).toBe(54.1);
  expect(wear(entry, exact(57.4), 'heavy')?.limitMm).toBe(54.1);
});
