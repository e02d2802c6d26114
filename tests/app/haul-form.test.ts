import { describe, expect, test } from 'vitest';
import { kgPerLb } from '../../src/core/quantity.ts';
import {
  emptyLoad,
  emptyRig,
  haulOf,
  kgOf,
  shownLength,
  shownMass,
  tiesOf,
} from '../../src/app/options/haul-form.ts';
import { countOf, emptyGround, meanAnswer, peakAnswer, sizesMm } from '../../src/app/options/ground-form.ts';
import type { Machine } from '../../src/core/machine.ts';
import { demoRecords } from '../../src/reference/demo.ts';

const machineAt = (name: string): Machine =>
  demoRecords().find(({ key }) => key === `demo/machine/${name}`)?.value as unknown as Machine;

describe('the form of a haul', () => {
  test('[HL20] another unit shows another text and changes no value', () => {
    const typed = { text: '26001', unit: 'lb' } as const;
    expect(kgOf(typed)).toBe(26_001 * kgPerLb);
    expect([shownMass(typed, 'lb'), shownMass(typed, 'kg')]).toEqual(['26001', '11793.9']);
    expect(shownLength({ text: '190', unit: 'in' }, 'mm')).toBe('4826');
    expect(shownMass({ text: '12x', unit: 'lb' }, 'kg')).toBe('12x');
  });

  test('[HL21] the record’s mass counts until something is typed over it, and an emptied field is open', () => {
    const load = (text: string) => ({ ...emptyLoad, masses: { machine: { text, unit: 'kg' as const } } });
    expect(haulOf(emptyRig, emptyLoad, 2625).kg).toEqual({ machine: 2625 });
    expect(haulOf(emptyRig, load('3000'), 2625).kg).toEqual({ machine: 3000 });
    expect(haulOf(emptyRig, load(''), 2625).kg).toEqual({});
    expect(haulOf(emptyRig, load('-5'), 2625).kg).toEqual({});
    expect(haulOf(emptyRig, load('1,234'), 2625).kg).toEqual({});
  });

  test('[HL22] nothing typed: a trailer, a driver of 75 kg, no ties known', () => {
    expect(haulOf(emptyRig, emptyLoad, undefined)).toEqual({
      on: 'trailer',
      operatorKg: 75,
      noCombination: false,
      kg: {},
    });
    const none = { count: undefined, wllKg: undefined };
    expect(tiesOf(emptyRig, emptyLoad)).toEqual({
      direct: none,
      over: none,
      lengthMm: undefined,
      blocked: false,
    });
    expect(haulOf(emptyRig, { ...emptyLoad, noOperator: true }, 2625).operatorKg).toBe(0);
  });

  test('[HL23] half a tie is no tie, and 0 is none', () => {
    expect(tiesOf({ ...emptyRig, direct: '3.5', over: '0' }, emptyLoad)).toMatchObject({
      direct: { count: undefined },
      over: { count: 0 },
    });
  });
});

describe('the form of ground pressure', () => {
  test('[GP4] width and rollers come from the machine’s record until typed', () => {
    const mini = machineAt('mini');
    expect(sizesMm(emptyGround, mini).width).toBeGreaterThan(100);
    expect(countOf(emptyGround, mini)).toBe(mini.shape.bottomRollers);
    const typed = { sizes: { width: { text: '', unit: 'mm' as const } }, count: '' };
    expect(sizesMm(typed, mini).width).toBeUndefined();
    expect(countOf(typed, mini)).toBeUndefined();
  });

  test('[GP5] what is missing is named, by the way in which the length is taken', () => {
    expect(meanAnswer('centres-sinkage', {}, undefined)).toEqual({
      kind: 'open',
      open: ['mass', 'width', 'centres', 'height'],
    });
    expect(meanAnswer('measured', { width: 600 }, 20_000)).toEqual({ kind: 'open', open: ['length'] });
    expect(meanAnswer('measured', { width: 600, length: 3400 }, 20_000)).toMatchObject({ kind: 'mean' });
  });

  test('[GP6] of a rubber belt no peak is worked out; of a chain it waits for its sizes', () => {
    const mm = { width: 600, pitch: 190, diameter: 150 };
    expect(peakAnswer(mm, 20_000, 7, true)).toEqual({ kind: 'rubber' });
    expect(peakAnswer(mm, 20_000, undefined, false)).toEqual({ kind: 'open', open: ['count'] });
    const peak = peakAnswer(mm, 20_000, 7, false);
    expect(peak.kind === 'peak' && Math.round(peak.kpa)).toBe(174);
  });
});
