import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { lengthUnits, toMm, type LengthUnit } from '../../src/core/quantity.ts';
import { parseLength } from '../../src/core/typed.ts';
import { makeFormatter } from '../../src/words/formatter.ts';
import { makeNumbers } from '../../src/words/numbers.ts';
import type { Preferences } from '../../src/words/format.ts';

const preferences: Preferences = { locale: 'en', depth: 'mm', length: 'mm', mass: 'kg' };
const numbers = makeNumbers(preferences);

/** No-break spaces are shown here as plain ones. */
const seen = (text: string): string => text.replaceAll('\u00a0', ' ').replaceAll('\u202f', ' ');

describe('lengths on screen', () => {
  test.each<[number, LengthUnit, string]>([
    [18.3, 'mm', '18.3 mm'],
    [18, 'mm', '18 mm'],
    [18.26, 'mm', '18.3 mm'],
    [0, 'mm', '0 mm'],
    [-0.01, 'mm', '0 mm'],
    [-3.5, 'mm', '-3.5 mm'],
    [1410, 'mm', '1,410 mm'],
    [25.4, 'in', '1.00 in'],
    [18.288, 'in', '0.72 in'],
    [18.3642, 'in', '0.723 in'],
    [toMm(23, 'in/32'), 'in/32', '23/32 in'],
    [toMm(32, 'in/32'), 'in/32', '32/32 in'],
    [5, 'in/32', '6.3/32 in'],
    [toMm(436, 'in/16'), 'in/16', '27 1/4 in'],
    [toMm(432, 'in/16'), 'in/16', '27 in'],
    [toMm(8, 'in/16'), 'in/16', '1/2 in'],
    [toMm(3, 'in/16'), 'in/16', '3/16 in'],
    [toMm(-4, 'in/16'), 'in/16', '-1/4 in'],
    [0, 'in/16', '0 in'],
    [350, 'in/16', '13.78 in'],
  ])('[U1] %d mm in %s is shown as %s', (mm, unit, text) => {
    expect(seen(numbers.inUnit(mm, unit))).toBe(text);
  });

  test.each<[number, LengthUnit, number, string]>([
    [60.7, 'mm', 0.01, '60.70 mm'],
    [144.5, 'mm', 0.5, '144.5 mm'],
    [105, 'mm', 1, '105 mm'],
    [toMm(8.3, 'in'), 'in', 0.1, '8.3 in'],
    [toMm(9, 'in'), 'in', 0.1, '9.0 in'],
  ])('[U2] a print of %d mm in %s keeps its step of %d: %s', (mm, unit, step, text) => {
    expect(seen(numbers.inUnit(mm, unit, step))).toBe(text);
  });

  test('[U3] what a person typed in a unit is shown and read back as the same stored length', () => {
    const count = fc.integer({ min: 0, max: 6000 });
    const steps: Record<LengthUnit, number> = { mm: 10, in: 1000, 'in/32': 1, 'in/16': 1 };
    for (const unit of lengthUnits) {
      fc.assert(
        fc.property(count, (n) => {
          const stored = toMm(n / steps[unit], unit);
          const again = parseLength(numbers.field(stored, unit), unit);
          expect(again.ok && again.value.mm).toBeCloseTo(stored, 9);
          const shown = parseLength(seen(numbers.inUnit(stored, unit)).replace(/,/g, ''), unit);
          expect(shown.ok && shown.value.mm).toBeCloseTo(stored, 9);
        }),
      );
    }
  });

  test('[U4] showing never moves a length by more than half of the step that is shown', () => {
    const halfStep: Record<LengthUnit, number> = {
      mm: 0.05,
      in: toMm(0.0005, 'in'),
      'in/32': toMm(0.05, 'in/32'),
      'in/16': toMm(0.0005, 'in'),
    };
    const shownMm = (mm: number, unit: LengthUnit): number => {
      const text = numbers.field(mm, unit);
      if (unit === 'mm' || unit === 'in/32') return toMm(Number(text), unit);
      const typed = parseLength(text, 'in');
      return typed.ok ? typed.value.mm : Number.NaN;
    };
    const length = fc.double({ min: 0, max: 2000, noNaN: true });
    fc.assert(
      fc.property(length, fc.constantFrom(...lengthUnits), (mm, unit) => {
        expect(Math.abs(shownMm(mm, unit) - mm)).toBeLessThanOrEqual(halfStep[unit] + 1e-9);
      }),
      { numRuns: 2000 },
    );
  });

  test('[U5] depth and length follow the person’s choice, each its own', () => {
    const mixed = makeNumbers({ locale: 'en', depth: 'in/32', length: 'in/16', mass: 'lb' });
    expect(seen(mixed.depth(toMm(23, 'in/32')))).toBe('23/32 in');
    expect(seen(mixed.length(toMm(436, 'in/16')))).toBe('27 1/4 in');
    expect(seen(mixed.mass(4535.9237))).toBe('10,000 lb');
    expect(seen(numbers.mass(8450))).toBe('8,450 kg');
  });

  test.each([
    ['de', '18,3 mm'],
    ['fr', '18,3 mm'],
    ['no such locale', '18.3 mm'],
    ['', '18.3 mm'],
  ])('[U6] the locale %j writes 18.3 mm as %s', (locale, text) => {
    expect(seen(makeNumbers({ ...preferences, locale }).depth(18.3))).toBe(text);
  });
});

describe('other numbers', () => {
  test.each([
    [50, '50 %'],
    [49.6, '50 %'],
    [99.6, '99 %'],
    [99.99999999, '100 %'],
    [100, '100 %'],
    [100.2, '100 %'],
    [-0.3, '0 %'],
    [-12.4, '-12 %'],
    [131.5, '132 %'],
  ])('[U7] %d percent worn is shown as %s, and 100 only when it is reached', (value, text) => {
    expect(seen(numbers.percent(value))).toBe(text);
  });

  test('[U8] hours keep the tenth that a meter shows', () => {
    expect(seen(numbers.hours(1234.5))).toBe('1,234.5 h');
    expect(seen(numbers.hours(1200))).toBe('1,200 h');
  });

  test.each([
    [0, '0 links'],
    [1, '1 link'],
    [2, '2 links'],
    [1.5, '1.5 links'],
  ])('[U9] %d comes with its word: %s', (count, text) => {
    expect(seen(numbers.plural(count, 'link', 'links'))).toBe(text);
  });

  test('[U10] a formatter names items and findings, and leaves an unknown one recognisable', () => {
    const format = makeFormatter(preferences);
    expect(format.item('lug-depth')).toBe('lug depth');
    expect(format.finding('cord', 'half-cut')).toBe('half band cut');
    expect(format.item('of-tomorrow')).toContain('of-tomorrow');
    expect(format.finding('cord', 'of-tomorrow')).toBe('of-tomorrow');
  });

  test.each([
    [140_000, 'EUR', '€1,400'],
    [140_050, 'EUR', '€1,400.50'],
    [5, 'EUR', '€0.05'],
    [0, 'EUR', '€0'],
    [1400, 'JPY', '¥1,400'],
    [12_345, 'KWD', 'KWD 12.345'],
    [140_049.6, 'EUR', '€1,400.50'],
    [-0.2, 'EUR', '€0'],
  ])('[U11] %d minor units of %s are shown as %s', (minor, currency, text) => {
    expect(seen(numbers.money(minor, currency))).toBe(text);
  });

  test('[U12] money is shown as the reader’s country writes it', () => {
    const german = makeNumbers({ ...preferences, locale: 'de-DE' });
    expect(seen(german.money(140_050, 'EUR'))).toBe('1.400,50 €');
  });

  test.each([
    [140_000, 'EUR', '1400'],
    [140_050, 'EUR', '1400.50'],
    [5, 'EUR', '0.05'],
    [1400, 'JPY', '1400'],
    [12_040, 'KWD', '12.040'],
  ])('[U13] %d minor units of %s would be typed as %s', (minor, currency, text) => {
    expect(numbers.moneyField(minor, currency)).toBe(text);
  });
});
