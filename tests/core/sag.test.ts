import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { sagMethods, sagReads, type SagSpec } from '../../src/core/limits.ts';
import { lengthUnits, fromMm } from '../../src/core/quantity.ts';
import { assert } from '../../src/core/result.ts';
import { judgeSag, meanSagMm, sagBand, stateIn } from '../../src/core/sag.ts';
import { law } from './law.ts';
import { bandOf, sag, sheetOf } from './made.ts';

const judged = (spec: SagSpec | SagSpec[], reading = sag(15)) =>
  judgeSag(sheetOf([], [spec].flat()), reading);

function compared(spec: SagSpec | SagSpec[], reading = sag(15)) {
  const found = judged(spec, reading);
  assert(found.kind === 'compared', 'the reading can be compared');
  return found;
}

function openBy(spec: SagSpec | SagSpec[], reading = sag(15)) {
  const found = judged(spec, reading);
  assert(found.kind === 'open', 'the reading cannot be compared');
  return found.open;
}

describe('[N5] sag against its band', () => {
  const band = bandOf(10, 20, { derailAbove: 40 });

  test.each([
    [9.9, 'tight', 0.1],
    [10, 'right', 0],
    [15, 'right', 0],
    [20, 'right', 0],
    [20.1, 'loose', 0.1],
    [40, 'loose', 20],
    [40.1, 'derailing', 20.1],
  ])('[G10] %d mm on 10 to 20 mm, off above 40 mm, is %s by %d mm', (value, state, by) => {
    const found = compared(band, sag(value));
    expect(found).toMatchObject({ state, lowMm: 10, highMm: 20, derailMm: 40, valueMm: value });
    expect(found.byMm).toBeCloseTo(by, 9);
  });

  test('[G11] without a derailing value nothing derails', () => {
    expect(compared(bandOf(10, 20), sag(600))).toMatchObject({ state: 'loose', derailMm: undefined });
  });

  test('[G12] the spans of one side are taken by their mean', () => {
    expect(meanSagMm(sag([34, 40]))).toBe(37);
    expect(compared(bandOf(29, 41), sag([42, 44])).state).toBe('loose');
    expect(compared(bandOf(29, 41), sag([27, 29])).state).toBe('tight');
  });

  test('[G13] the state is the same in whatever unit the sheet prints', () => {
    const value = fc.double({ min: 0, max: 80, noNaN: true });
    law(
      fc.property(value, fc.constantFrom(...lengthUnits), (reading, unit) => {
        const inMm = compared(band, sag(reading));
        const printed = { low: fromMm(10, unit), high: fromMm(20, unit), derailAbove: fromMm(40, unit) };
        const other = compared(bandOf(0, 0, { unit, ...printed }), sag(reading));
        fc.pre([10, 20, 40].every((edge) => Math.abs(reading - edge) > 1e-4));
        expect(other.state).toBe(inMm.state);
        expect(other.byMm).toBeCloseTo(inMm.byMm, 6);
        expect(other.derailMm).toBeCloseTo(40, 6);
      }),
    );
  });

  test('[G14] away from the band the state only grows more severe', () => {
    const order = ['right', 'loose', 'derailing'];
    const share = fc.double({ min: 0, max: 100, noNaN: true });
    law(
      fc.property(share, share, (a, b) => {
        const states = [a, b]
          .sort((x, y) => x - y)
          .map((each) => stateIn({ low: 10, high: 20, derail: 40 }, 15 + each));
        const [near, far] = states.map((each) => order.indexOf(each));
        expect(near).toBeLessThanOrEqual(far ?? -1);
      }),
    );
  });
});

describe('[N5] like is compared with like', () => {
  test('[G15] a sheet without sag has no value', () => {
    expect(judgeSag(sheetOf([]), sag(15))).toEqual({
      kind: 'open',
      open: { kind: 'no-sag-value', params: { sheet: 'made up' } },
    });
  });

  test('[G16] another method or posture is not comparable, and the sheet’s is named', () => {
    const params = {
      method: 'straightedge-shoe',
      posture: 'ground',
      wanted: 'string',
      wantedPosture: 'raised',
    };
    const raised = bandOf(10, 20, { method: 'string', posture: 'raised' });
    expect(openBy(raised)).toEqual({ kind: 'not-comparable', params });
    expect(openBy(bandOf(10, 20, { method: 'string' })).kind).toBe('not-comparable');
    expect(openBy(bandOf(10, 20, { posture: 'raised' })).kind).toBe('not-comparable');
  });

  test('[G17] of several bands the one that is read in the same way counts', () => {
    const specs = [
      bandOf(300, 335, { method: 'frame-to-shoe' }),
      bandOf(10, 20),
      bandOf(1, 2, { posture: 'raised' }),
    ];
    expect(compared(specs).highMm).toBe(20);
    expect(compared(specs, sag(15, { posture: 'raised' })).highMm).toBe(2);
  });

  test.each([
    [undefined, undefined, true],
    [undefined, 200, true],
    [200, undefined, false],
    [200, 200, true],
    [200, 190, true],
    [200, 210, true],
    [200, 189.9, false],
    [200, 210.1, false],
  ])('[G18] a print under %d N and a reading under %d N compare: %s', (print, reading, like) => {
    const spec = bandOf(10, 20, { method: 'deflection', ...(print !== undefined && { loadN: print }) });
    const taken = sag(15, { method: 'deflection', ...(reading !== undefined && { loadN: reading }) });
    expect(judged(spec, taken).kind === 'compared').toBe(like);
  });

  test.each([
    ['clean', undefined, 'compared'],
    ['clean', 'clean', 'compared'],
    ['clean', 'working-dirt', 'not-comparable'],
    ['working-dirt', undefined, 'compared'],
    ['working-dirt', 'clean', 'clean-first'],
    ['working-dirt', 'working-dirt', 'compared'],
    ['packed', undefined, 'clean-first'],
    ['packed', 'clean', 'clean-first'],
    ['packed', 'working-dirt', 'compared'],
  ] as const)('[G19] a %s track and a print for %s: %s', (clean, wanted, expected) => {
    const found = judged(bandOf(10, 20, wanted && { clean: wanted }), sag(15, { clean }));
    expect(found.kind === 'open' ? found.open.kind : found.kind).toBe(expected);
  });

  test('[G20] what is open by its dirt says by which method, and what the print wants', () => {
    const dirty = bandOf(10, 20, { clean: 'working-dirt' });
    expect(openBy(bandOf(10, 20), sag(15, { clean: 'packed' })).params).toEqual({
      method: 'straightedge-shoe',
    });
    expect(openBy(bandOf(10, 20, { clean: 'clean' }), sag(15, { clean: 'working-dirt' })).params).toEqual({
      method: 'straightedge-shoe',
    });
    expect(openBy(dirty).params).toEqual({
      method: 'straightedge-shoe',
      wanted: 'straightedge-shoe',
      clean: 'working-dirt',
    });
  });

  test('[G21] of two bands read alike the one for this cleanliness counts', () => {
    const specs = [bandOf(10, 20, { clean: 'clean' }), bandOf(30, 40, { clean: 'working-dirt' })];
    expect(compared(specs).highMm).toBe(20);
    expect(compared(specs, sag(35, { clean: 'working-dirt' })).highMm).toBe(40);
    expect(compared(specs, sag(35, { clean: 'packed' })).highMm).toBe(40);
    expect(compared([...specs].reverse()).highMm).toBe(20);
  });
});

describe('[N5] a band printed twice', () => {
  const also = (low: number, high: number, resolution?: number): Partial<SagSpec> => ({
    also: { low, high, unit: 'in', ...(resolution !== undefined && { resolution }) },
  });

  test('[G22] one print stands as it is', () => {
    expect(sagBand(bandOf(210, 245))).toEqual({ low: 210, high: 245, contradicts: false });
  });

  test('[G23] prints that differ by their rounding agree', () => {
    expect(sagBand(bandOf(210, 245, also(8.3, 9.6)))).toEqual({ low: 210, high: 245, contradicts: false });
  });

  test('[G24] where they contradict each other the stricter edge counts: CV-80, 245 mm and 9.0 in', () => {
    const { low, high, contradicts } = sagBand(bandOf(210, 245, also(8.3, 9)));
    expect([low, contradicts]).toEqual([210, true]);
    expect(high).toBeCloseTo(228.6, 9);
    expect(compared(bandOf(210, 245, also(8.3, 9)), sag(240))).toMatchObject({
      state: 'loose',
      contradicts: true,
    });
  });

  test('[G25] the low edge too', () => {
    const { low, high, contradicts } = sagBand(bandOf(200, 245, also(9, 9.6)));
    expect(low).toBeCloseTo(228.6, 9);
    expect([high, contradicts]).toEqual([245, true]);
  });

  test('[G26] an edge that is stricter already says nothing of the other print', () => {
    expect(sagBand(bandOf(230, 240, also(8, 10)))).toEqual({ low: 230, high: 240, contradicts: false });
  });

  test('[G27] steps of either print widen what agrees', () => {
    const print = { ...bandOf(210, 240, also(8.3, 9.5)), resolution: 0.1 };
    expect(sagBand(print).contradicts).toBe(false);
    expect(
      sagBand({ ...print, also: { low: 8.3, high: 9.4, unit: 'in', resolution: 0.01 } }).contradicts,
    ).toBe(true);
  });
});

describe('[N5] true sag', () => {
  test.each(sagMethods)('[G28] of %s', (method) => {
    const reading = sag(50, { method });
    const bare = compared(bandOf(10, 20, { method }), reading).trueMm;
    const taut = compared(bandOf(10, 20, { method, taut: 30 }), reading).trueMm;
    const expected = {
      sag: [50, 50],
      distance: [undefined, 20],
      deflection: [undefined, undefined],
      retreat: [undefined, undefined],
    };
    expect([bare, taut]).toEqual(expected[sagReads[method]]);
  });

  test('[G29] the taut distance is in the unit of the print', () => {
    const spec = bandOf(1, 2, { method: 'roller-gap', unit: 'in', taut: 1 });
    expect(compared(spec, sag(50, { method: 'roller-gap' })).trueMm).toBeCloseTo(24.6, 9);
  });
});
