import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { minorDigits } from '../../src/core/currency.ts';
import { lengthUnits, toMm, type LengthUnit } from '../../src/core/quantity.ts';
import {
  parseCount,
  parseHours,
  parseLength,
  parseMass,
  parseMoney,
  type Typed,
} from '../../src/core/typed.ts';
import { makeNumbers } from '../../src/words/numbers.ts';

const kindOf = <T>(typed: Typed<T>): string => (typed.ok ? 'ok' : typed.error.kind);
const valueOf = (text: string, unit: LengthUnit): number | string => {
  const typed = parseLength(text, unit);
  return typed.ok ? typed.value.value : typed.error.kind;
};

const english = { locale: 'en', depth: 'mm', length: 'mm', mass: 'kg' } as const;

const nbsp = '\u00a0';
const thin = '\u202f';

const lengths: readonly (readonly [string, LengthUnit, number])[] = [
  ['18', 'mm', 18],
  ['18.5', 'mm', 18.5],
  ['18,5', 'mm', 18.5],
  ['10.05', 'mm', 10.05],
  [',5', 'mm', 0.5],
  ['.5', 'mm', 0.5],
  ['5.', 'mm', 5],
  ['0', 'mm', 0],
  ['-0', 'mm', 0],
  ['+7', 'mm', 7],
  [' 12 ', 'mm', 12],
  ['12 mm', 'mm', 12],
  ['12mm', 'mm', 12],
  ['0,234', 'mm', 0.234],
  ['0012', 'mm', 12],
  ['1234,567', 'mm', 1234.567],
  ['1,234.5', 'mm', 1234.5],
  ['1.234,5', 'mm', 1234.5],
  [`1${nbsp}234`, 'mm', 1234],
  [`1${thin}234,5`, 'mm', 1234.5],
  ['1 234,5', 'mm', 1234.5],
  ['1’234.5', 'mm', 1234.5],
  ["1'234", 'mm', 1234],
  ['123,456', 'mm', 123.456],
  ['١٨٫٥', 'mm', 18.5],
  ['١٬٢٣٤', 'mm', 1234],
  ['۱۸٫۵', 'mm', 18.5],
  ['१८.५', 'mm', 18.5],
  ['１８.５', 'mm', 18.5],
  ['\u200f12', 'mm', 12],
  ['0.723', 'in', 0.723],
  ['1.234', 'in', 1.234],
  ['1 1/2', 'in', 1.5],
  ['7/8"', 'in', 0.875],
  ['2½', 'in', 2.5],
  ['0.72 in', 'in', 0.72],
  ['23', 'in/32', 23],
  ['23/32', 'in/32', 23],
  ['23/32 in', 'in/32', 23],
  ['3/4', 'in/32', 24],
  ['39/32', 'in/32', 39],
  ['1 7/32', 'in/32', 39],
  ['27', 'in/16', 432],
  ['27 1/4', 'in/16', 436],
  ['27 4/16', 'in/16', 436],
  ['27-1/4', 'in/16', 436],
  ['27¼', 'in/16', 436],
  ['27 1⁄4"', 'in/16', 436],
  ['27.25', 'in/16', 436],
  ['27,5', 'in/16', 440],
  ['1/4', 'in/16', 4],
];

const refused: readonly (readonly [string, LengthUnit, string])[] = [
  ['', 'mm', 'empty'],
  ['   ', 'mm', 'empty'],
  [nbsp, 'mm', 'empty'],
  ['abc', 'mm', 'letters'],
  ['1e3', 'mm', 'letters'],
  ['12a', 'mm', 'letters'],
  ['0x10', 'mm', 'letters'],
  ['Infinity', 'mm', 'letters'],
  ['NaN', 'mm', 'letters'],
  ['.', 'mm', 'letters'],
  ['-', 'mm', 'letters'],
  ['1..2', 'mm', 'letters'],
  ['1,2,3', 'mm', 'letters'],
  ['12 34', 'mm', 'letters'],
  ['--5', 'mm', 'letters'],
  ['12 in', 'mm', 'letters'],
  ['1/2x', 'in', 'letters'],
  ['-3', 'mm', 'negative'],
  ['−3,5', 'mm', 'negative'],
  ['-27 1/4', 'in/16', 'negative'],
  ['1,234', 'mm', 'ambiguous'],
  ['1.234', 'mm', 'ambiguous'],
  ['1,234', 'in', 'ambiguous'],
  ['-1,234', 'mm', 'ambiguous'],
  ['1/2', 'mm', 'fraction'],
  ['12½', 'mm', 'fraction'],
  ['23.5', 'in/32', 'fraction'],
  ['1/3', 'in/32', 'fraction'],
  ['1/64', 'in/32', 'fraction'],
  ['27 1/32', 'in/16', 'fraction'],
  ['27.3', 'in/16', 'fraction'],
  ['27 5/4', 'in/16', 'fraction'],
  ['1/0', 'in', 'fraction'],
  ['1/2/3', 'in', 'fraction'],
  ['1'.repeat(41), 'mm', 'too-long'],
  ['100001', 'mm', 'too-large'],
  ['-100001', 'mm', 'too-large'],
  ['3938', 'in', 'too-large'],
  ['9'.repeat(40), 'mm', 'too-large'],
  ['12,345,678', 'mm', 'too-large'],
  ['1.234.567', 'in', 'too-large'],
];

// Locales whose separators, groups or digits differ.
const locales = [
  'en',
  'en-IN',
  'en-ZA',
  'de',
  'de-CH',
  'de-AT',
  'fr',
  'fr-CH',
  'es',
  'es-MX',
  'pt',
  'pt-PT',
  'it',
  'it-CH',
  'nl',
  'sv',
  'nb',
  'da',
  'fi',
  'is',
  'pl',
  'cs',
  'sk',
  'hu',
  'ro',
  'bg',
  'ru',
  'uk',
  'el',
  'tr',
  'ar-EG',
  'ar-MA',
  'fa',
  'he',
  'hi',
  'mr',
  'bn',
  'ja',
  'zh',
  'ko',
  'th',
  'vi',
  'my',
  'lt',
  'lv',
  'et',
  'sl',
];

/** What a locale's spelling is read as: the number, or both meanings of it. */
function readings(typed: Typed<{ value: number }>): readonly number[] {
  if (typed.ok) return [typed.value.value];
  return typed.error.kind === 'ambiguous' ? typed.error.readings.map(({ value }) => value) : [];
}

describe('typed lengths', () => {
  test.each(lengths)('[TY1] %j in %s is read as %d', (text, unit, value) => {
    expect(parseLength(text, unit)).toEqual({ ok: true, value: { value, mm: toMm(value, unit) } });
  });

  test.each(refused)('[TY2] %j in %s is answered with %s', (text, unit, kind) => {
    expect(valueOf(text, unit)).toBe(kind);
  });

  test('[TY3] one mark before three digits is asked about with both meanings, the decimal one first', () => {
    for (const text of ['1,234', '1.234']) {
      const typed = parseLength(text, 'mm');
      expect(typed.ok ? undefined : typed.error).toEqual({
        kind: 'ambiguous',
        readings: [
          { value: 1.234, mm: 1.234 },
          { value: 1234, mm: 1234 },
        ],
      });
    }
  });

  test('[TY4] a negative length keeps its value to ask about', () => {
    const typed = parseLength('-3,5', 'mm');
    expect(typed.ok ? undefined : typed.error).toEqual({
      kind: 'negative',
      reading: { value: -3.5, mm: -3.5 },
    });
  });

  test.each(locales)('[TY5] what Intl writes in %s is read back or asked about', (locale) => {
    const format = new Intl.NumberFormat(locale, { maximumFractionDigits: 2 });
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 9_999_999 }), (hundredths) => {
        const value = hundredths / 100;
        expect(readings(parseLength(format.format(value), 'mm'))).toContain(value);
      }),
      { numRuns: 300 },
    );
  });

  test('[TY6] any text has an outcome, and what is read is a finite number of millimetres', () => {
    const marks = fc.string({ unit: fc.constantFrom(...'0123456789.,/ -\u00a0٣½imn"'), maxLength: 12 });
    fc.assert(
      fc.property(fc.oneof(fc.string(), marks), fc.constantFrom(...lengthUnits), (text, unit) => {
        const typed = parseLength(text, unit);
        if (!typed.ok) return;
        expect(Number.isFinite(typed.value.value)).toBe(true);
        expect(typed.value.value).toBeGreaterThanOrEqual(0);
        expect(typed.value.mm).toBe(toMm(typed.value.value, unit));
      }),
      { numRuns: 2000 },
    );
  });

  test('[TY7] parts of an inch are whole steps of their unit, in every spelling', () => {
    fc.assert(
      fc.property(fc.nat(60), fc.nat(31), (whole, over) => {
        expect(valueOf(`${whole} ${over}/32`, 'in/32')).toBe(whole * 32 + over);
        expect(valueOf(`${whole}-${over % 16}/16`, 'in/16')).toBe(whole * 16 + (over % 16));
        expect(valueOf(String(whole), 'in/16')).toBe(whole * 16);
        expect(valueOf(String(whole), 'in/32')).toBe(whole);
      }),
    );
  });

  test.each([
    ['1', 'in', 25.4],
    ['32', 'in/32', 25.4],
    ['1', 'in/16', 25.4],
    ['16/32', 'in/32', 12.7],
  ] as const)('[TY8] %s in %s is exactly %d mm', (text, unit, mm) => {
    const typed = parseLength(text, unit);
    expect(typed.ok && typed.value.mm).toBe(mm);
  });
});

describe('typed hours, masses and counts', () => {
  test.each([
    ['1234', 1234],
    ['1234.5', 1234.5],
    ['1234,5 h', 1234.5],
    ['1,234.5', 1234.5],
    ['12 345', 12345],
  ])('[TY9] hours %j are read as %d', (text, hours) => {
    expect(parseHours(text)).toEqual({ ok: true, value: hours });
  });

  test.each([
    ['1,234', 'ambiguous'],
    ['', 'empty'],
    ['12:30', 'letters'],
    ['-5', 'negative'],
    ['1000001', 'too-large'],
  ])('[TY10] hours %j are answered with %s', (text, kind) => {
    expect(kindOf(parseHours(text))).toBe(kind);
  });

  test('[TY11] a mass in pounds is kept as typed and in kilograms', () => {
    expect(parseMass('10000 lb', 'lb')).toEqual({ ok: true, value: { value: 10000, kg: 4535.9237 } });
    expect(parseMass('8450', 'kg')).toEqual({ ok: true, value: { value: 8450, kg: 8450 } });
    expect(kindOf(parseMass('8,450', 'kg'))).toBe('ambiguous');
  });

  test.each([
    ['4', 'ok'],
    ['٤', 'ok'],
    ['0', 'ok'],
    ['4.5', 'fraction'],
    ['1,000', 'fraction'],
    ['1/2', 'fraction'],
    ['four', 'letters'],
    ['-1', 'negative'],
    ['10001', 'too-large'],
    ['', 'empty'],
  ])('[TY12] a count of %j is answered with %s', (text, kind) => {
    expect(kindOf(parseCount(text))).toBe(kind);
  });
});

describe('money', () => {
  test.each<[string, number, number]>([
    ['1400', 2, 140_000],
    ['12.5', 2, 1250],
    ['12,05', 2, 1205],
    ['€ 12,05', 2, 1205],
    ['$1,400.50', 2, 140_050],
    ['1.400,50 €', 2, 140_050],
    ['1 400', 2, 140_000],
    ['1’400', 2, 140_000],
    ['0', 2, 0],
    ['0.29', 2, 29],
    ['1.15', 2, 115],
    ['١٤٫٥', 2, 1450],
    ['1400', 0, 1400],
    ['999999999.99', 2, 99_999_999_999],
    // More decimals than the currency has can only be thousands.
    ['1,400', 2, 140_000],
    ['1.400', 0, 1400],
    ['1.400.000', 2, 140_000_000],
  ])('[TY13] %s with %d decimals is %d minor units', (typed, digits, minor) => {
    const read = parseMoney(typed, digits);
    expect(read.ok && read.value).toBe(minor);
  });

  test.each<[string, number, string]>([
    ['', 2, 'empty'],
    ['free', 2, 'letters'],
    ['12.3456', 2, 'fraction'],
    ['12.5', 0, 'fraction'],
    ['1,400.505', 2, 'fraction'],
    ['-5', 2, 'negative'],
    ['1000000001', 2, 'too-large'],
    ['12.345', 3, 'ambiguous'],
  ])('[TY14] %j with %d decimals is answered with %s', (typed, digits, kind) => {
    expect(kindOf(parseMoney(typed, digits))).toBe(kind);
  });

  test('[TY15] an amount reads back as it is written, to the last minor unit', () => {
    fc.assert(
      fc.property(fc.nat(1e11), fc.constantFrom('EUR', 'JPY', 'UYW', 'KWD'), (minor, currency) => {
        const digits = minorDigits(currency);
        fc.pre(minor <= 1e9 * 10 ** digits);
        const read = parseMoney(makeNumbers(english).moneyField(minor, currency), digits);
        const found = read.ok ? [read.value] : read.error.kind === 'ambiguous' ? read.error.readings : [];
        // 12.345 of three decimals is asked about, with this one first.
        expect(found[0]).toBe(minor);
      }),
    );
  });
});
