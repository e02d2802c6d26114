import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { figureNames } from '../../../src/core/option-tables.ts';
import { grounds, turnings, useSchema, type Use } from '../../../src/core/use.ts';
import { controlTexts, onlyGround, partsOf, wantedOf } from '../../../src/app/options/controls.ts';

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
});
