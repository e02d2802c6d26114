import { describe, expect, test } from 'vitest';
import { printsDisagree, type LimitSheet, type SagSpec } from '../../src/core/limits.ts';
import type { ObservedOf } from '../../src/core/readings.ts';
import { judgeSag, sagBand, type SagOutcome } from '../../src/core/sag.ts';
import { builtIn } from '../../src/reference/built-in.ts';
import { sagByPitch } from '../../src/reference/sag-by-pitch.ts';
import { sheetOf } from './sizes.ts';

const source = { mark: 'published', text: 'see the title' } as const;
const spec = (
  method: SagSpec['method'],
  posture: SagSpec['posture'],
  low: number,
  high: number,
  extra: Partial<SagSpec> = {},
): SagSpec => ({ method, posture, unit: 'mm', low, high, source, ...extra });

type Way = Pick<ObservedOf<'sag'>, 'method' | 'posture'>;

const read = (way: Way, ...mm: number[]): ObservedOf<'sag'> => ({
  kind: 'sag',
  mm,
  typed: mm.map(String),
  unit: 'mm',
  clean: 'clean',
  ...way,
});

const judged = (sheet: LimitSheet, way: Way, ...mm: number[]): SagOutcome | string => {
  const result = judgeSag(sheet, read(way, ...mm));
  return result.kind === 'open' ? result.open.kind : result;
};
const stateOf = (sheet: LimitSheet, way: Way, ...mm: number[]): string => {
  const result = judged(sheet, way, ...mm);
  return typeof result === 'string' ? result : result.state;
};

const grouser: Way = { method: 'straightedge-grouser', posture: 'ground' };
const slide: Way = { method: 'straightedge-slide', posture: 'ground' };
const gap: Way = { method: 'roller-gap', posture: 'raised' };
const frame: Way = { method: 'frame-to-shoe', posture: 'raised' };

// US Army TM 5-2410-240-10 WP 0018: the mean of two spans is to be 29–41 mm.
const army = sheetOf([], [spec('straightedge-grouser', 'ground', 29, 41)]);
const spans: readonly (readonly [number, number, number, string])[] = [
  [34, 40, 37, 'right'],
  [27, 29, 28, 'tight'],
  [42, 44, 43, 'loose'],
];

describe('[N5] sag by its method', () => {
  test.each(spans)(
    '[CV-23] spans of %d and %d mm, mean %d mm, are %s (TM 5-2410-240-10)',
    (a, b, mean, state) => {
      expect(judged(army, grouser, a, b)).toMatchObject({ valueMm: mean, state });
    },
  );

  test('[CV-24] 350 mm from frame to shoe is loose on 300–335 mm (Hitachi ZX200-3, in the starting sheet)', () => {
    const sheet = builtIn.limits['limits/starting-steel-23t'];
    expect(sheet && judged(sheet, frame, 350)).toMatchObject({
      lowMm: 300,
      highMm: 335,
      state: 'loose',
      byMm: 15,
    });
  });

  test('[CV-25] a roller gap of 22 mm on 10–15 mm warns of derailing above 20 mm (Komatsu PC15MRX-1 p. 174)', () => {
    const sheet = builtIn.limits['limits/starting-rubber-mini'];
    expect(sheet && judged(sheet, gap, 22)).toMatchObject({ highMm: 15, derailMm: 20, state: 'derailing' });
  });

  test('[CV-26] 12 mm is loose by straightedge on 1–3 mm and right as roller gap on 10–15 mm', () => {
    // Komatsu PC18MR-3 p. 224 and Hitachi EX27U p. 162: the same number, two methods.
    const both = sheetOf(
      [],
      [spec('straightedge-slide', 'ground', 1, 3), spec('roller-gap', 'raised', 10, 15)],
    );
    expect(stateOf(both, slide, 12)).toBe('loose');
    expect(stateOf(both, gap, 12)).toBe('right');
  });

  test('[CV-26] and cannot be compared with a print of the other method', () => {
    expect(stateOf(sheetOf([], [spec('straightedge-slide', 'ground', 1, 3)]), gap, 12)).toBe(
      'not-comparable',
    );
  });

  const pitches: readonly (readonly [number, number | undefined])[] = [
    [140, 20],
    [175, 35],
    [215, 50],
    [124, undefined],
    [261, undefined],
  ];
  test.each(pitches)('[CV-27] a pitch of %d mm goes with a sag of %s mm (sottocarri.it)', (pitch, sag) => {
    expect(sagByPitch(pitch)).toBe(sag);
  });
});

describe('[N2] a print that contradicts itself', () => {
  // Hitachi Zaxis 70/80/85US p. 223 prints 210–245 mm and 8.3–9.0 in.
  const zaxis = spec('frame-to-shoe', 'raised', 210, 245, {
    also: { low: 8.3, high: 9, unit: 'in', resolution: 0.1 },
  });

  test('[CV-80] 9.0 in is 228.6 mm and not 245 mm; 8.3 in is 210 mm within its rounding', () => {
    expect(printsDisagree({ at: 245, unit: 'mm' }, { at: 9, unit: 'in', resolution: 0.1 })).toBe(true);
    expect(printsDisagree({ at: 210, unit: 'mm' }, { at: 8.3, unit: 'in', resolution: 0.1 })).toBe(false);
  });

  test('[CV-80] the stricter side counts and it says so', () => {
    const band = sagBand(zaxis);
    expect(band).toMatchObject({ low: 210, contradicts: true });
    expect(band.high).toBeCloseTo(228.6, 6);
  });

  test('[CV-80] the starting sheet carries both prints', () => {
    const sheet = builtIn.limits['limits/starting-steel-8t'];
    expect(sheet && judged(sheet, frame, 235)).toMatchObject({ state: 'loose', contradicts: true });
  });
});
