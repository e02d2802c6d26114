import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { figureNames } from '../../../src/core/option-tables.ts';
import { grounds, turnings, useSchema, type Use } from '../../../src/core/use.ts';
import {
  changedDraft,
  controlTexts,
  massIn,
  massText,
  onlyGround,
  partsOf,
  unitsOf,
  wantedOf,
} from '../../../src/app/options/controls.ts';

const units = { length: 'mm', mass: 'kg' } as const;

const optional = <T>(from: fc.Arbitrary<T>) => fc.option(from, { nil: undefined });
const uses = fc
  .record({
    ground: optional(
      fc.dictionary(fc.constantFrom(...grounds), fc.integer({ min: 1, max: 10 }), { minKeys: 1 }),
    ),
    turning: optional(fc.constantFrom(...turnings)),
    hoursAYear: optional(fc.integer({ min: 1, max: 8784 })),
    sharp: optional(fc.boolean()),
    noMarks: optional(fc.boolean()),
    takesSteel: optional(fc.boolean()),
    mostMassKg: optional(fc.integer({ min: 1, max: 50_000 })),
    own: optional(
      fc.dictionary(fc.constantFrom(...figureNames), fc.integer({ min: 0, max: 900 }), { minKeys: 1 }),
    ),
  })
  .map((use) => Object.fromEntries(Object.entries(use).filter(([, value]) => value !== undefined)) as Use);

describe('what the comparison is asked for', () => {
  test('[OS10] shown and read back it is the same, and one that a file may hold', () => {
    fc.assert(
      fc.property(uses, (use) => {
        const read = wantedOf(controlTexts(use, units), {});
        expect(read).toEqual(use);
        expect(useSchema.safeParse(read).success).toBe(true);
      }),
    );
  });

  test.each([
    ['hours that a year does not have', { hours: '9000' }],
    ['hours in words', { hours: 'many' }],
    ['a trailer that carries nothing', { trailer: '0' }],
    ['parts in words', { 'ground-rock': 'some' }],
  ])('[OS11] %s count as not said', (_name, texts) => {
    expect(wantedOf(texts, {})).toEqual({});
  });

  test('[OS12] one ground takes the place of all others', () => {
    const mixed = controlTexts({ ground: { rock: 3, paving: 7 } }, units);
    expect(partsOf({ ...mixed, ...onlyGround('gravel') })).toEqual([['gravel', 10]]);
  });

  test('[OS13] what a record holds besides stays', () => {
    expect(wantedOf({ turning: 'much' }, { later: 1, turning: 'little' } as Use)).toEqual({
      later: 1,
      turning: 'much',
    });
  });

  test('[OS14] a draft keeps the units that it was typed in when other ones are preferred later', () => {
    const pounds = { length: 'in', mass: 'lb' } as const;
    const draft = changedDraft(controlTexts({}, units), {}, { trailer: '2000' });
    const later = { ...controlTexts({}, unitsOf(draft, pounds)), ...draft };
    expect(wantedOf(later, {})).toEqual({ mostMassKg: 2000 });
    const more = changedDraft(later, draft, { mass: '1700' });
    expect(massIn(more, 'mass')).toBe(1700);
    expect(unitsOf({}, pounds)).toEqual(pounds);
    // What the records say is read in the same units as what stands over it.
    const sized = changedDraft({}, {}, { mass: '1700' });
    const record = { ...controlTexts({ mostMassKg: 3000 }, unitsOf(sized, pounds)), ...sized };
    expect(wantedOf(record, {})).toEqual({ mostMassKg: 3000 });
  });

  test.each([
    [1700, 'kg', '1700'],
    [1700, 'lb', '3748'],
    [23_000, 'lb', '50706'],
  ] as const)('[OS15] a size that is tapped is typed as its number: %d kg in %s', (kg, mass, text) => {
    expect(massText(kg, mass)).toBe(text);
    const texts = { mass: text, massUnit: mass };
    expect(Math.abs((massIn(texts, 'mass') ?? 0) - kg)).toBeLessThan(1);
  });
});
