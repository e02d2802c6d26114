import { kgPerLb, toMm, type LengthUnit } from './quantity.ts';
import { err, ok, type Result } from './result.ts';

/** A length as typed: `value` counts the unit (`in/32`: 32nds, `in/16`: 16ths of an inch). */
export interface TypedLength {
  readonly value: number;
  readonly mm: number;
}

/** Why a text is no number yet; `negative` and `ambiguous` hold what it would be, to ask about it. */
export type TypedError<T> =
  | { readonly kind: 'empty' | 'letters' | 'fraction' | 'too-long' | 'too-large' }
  | { readonly kind: 'negative'; readonly reading: T }
  | { readonly kind: 'ambiguous'; readonly readings: readonly [T, T] };

export type Typed<T> = Result<T, TypedError<T>>;

const longest = 40;
const largestMm = 100_000;
const largestHours = 1_000_000;
const largestKg = 2_000_000;
const largestCount = 10_000;
const largestMoney = 1_000_000_000;

// Code points of zero in the scripts whose digits a phone keyboard types: Arabic, Persian, Devanagari,
// Bengali, Myanmar, full width.
const zeros = [0x660, 0x6f0, 0x966, 0x9e6, 0x1040, 0xff10];

function latinDigit(digit: string): string {
  const code = digit.codePointAt(0) ?? 0;
  const zero = zeros.find((each) => code >= each && code < each + 10);
  return zero === undefined ? digit : String(code - zero);
}

/** One spelling of digits, signs, spaces and fractions; marks of writing direction go. */
function plainText(typed: string): string {
  return typed
    .replace(/[\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]/g, '')
    .replace(/[¼-¾⅐-⅞]/g, (fraction) => ` ${fraction.normalize('NFKC')}`)
    .replace(/\p{Nd}/gu, latinDigit)
    .replace(/[\u2044\u2215]/g, '/')
    .replace(/[\u2010-\u2014\u2212\ufe63\uff0d]/g, '-')
    .replace(/\u2019/g, "'")
    .replace(/\s+/g, ' ')
    .trim();
}

const grouped = /^[1-9]\d{0,2}([.,٬' ])(?:\d{2,3}\1)*\d{3}(?:(?!\1)[.,٫](\d*))?$/;
const plain = /^(\d*)(?:[.,٫](\d*))?$/;

/** Every number that the text can mean: none, one, or (as decimal, then as thousands) two. */
function meanings(text: string, mostDecimals = Infinity): readonly number[] {
  const found: number[] = [];
  const isFine = (fraction = ''): boolean => fraction.length <= mostDecimals;
  const decimal = plain.exec(text);
  if (decimal && /\d/.test(text) && isFine(decimal[2]))
    found.push(Number(`${decimal[1] || 0}.${decimal[2] || 0}`));
  const thousands = grouped.exec(text);
  if (thousands && isFine(thousands[2])) {
    const fraction = thousands[2];
    const whole = fraction === undefined ? text : text.slice(0, text.length - fraction.length - 1);
    found.push(Number(`${whole.replace(/\D/g, '')}.${fraction || 0}`));
  }
  return found;
}

interface Signed {
  readonly text: string;
  readonly sign: 1 | -1;
}

function signed(typed: string, suffix: RegExp): Result<Signed, { kind: 'empty' | 'too-long' }> {
  const text = plainText(typed);
  if (text === '') return err({ kind: 'empty' });
  if (typed.length > longest) return err({ kind: 'too-long' });
  const bare = text.replace(suffix, '').trim();
  return ok({ text: bare.replace(/^[-+] ?/, ''), sign: bare.startsWith('-') ? -1 : 1 });
}

function settle<T>(
  found: readonly number[],
  sign: 1 | -1,
  most: number,
  make: (value: number) => T,
): Typed<T> {
  const [first, second] = found;
  if (first === undefined) return err({ kind: 'letters' });
  if (first > most) return err({ kind: 'too-large' });
  if (second !== undefined && second <= most) {
    return err({ kind: 'ambiguous', readings: [make(sign * first), make(sign * second)] });
  }
  if (sign < 0 && first > 0) return err({ kind: 'negative', reading: make(-first) });
  return ok(make(first));
}

const inchSuffix = /(?:in|inch|inches|["″”]|'')$/i;
const suffixes: Record<LengthUnit, RegExp> = {
  mm: /mm$/i,
  in: inchSuffix,
  'in/32': inchSuffix,
  'in/16': inchSuffix,
};

/** Units of `unit` in an inch. */
const perInch: Record<Exclude<LengthUnit, 'mm'>, number> = { in: 1, 'in/32': 32, 'in/16': 16 };

/** The finest part of an inch that the unit takes. */
const finest: Record<Exclude<LengthUnit, 'mm'>, number> = { in: 64, 'in/32': 32, 'in/16': 16 };

/** Inches of `27 1/4`, `27-1/4` or `23/32`; undefined where it is no fraction of the unit. */
function fractionInches(text: string, unit: Exclude<LengthUnit, 'mm'>): number | undefined {
  const match = /^(?:(\d+)[ -])?(\d+) ?\/ ?(\d+)$/.exec(text);
  if (!match) return undefined;
  const [whole, over, under] = [match[1], Number(match[2]), Number(match[3])];
  const fits = under > 1 && finest[unit] % under === 0;
  if (!fits || (whole !== undefined && over >= under)) return undefined;
  return Number(whole ?? 0) + over / under;
}

/** What a text without a stroke means in the unit, or `fraction` where only whole steps are read. */
function unitMeanings(text: string, unit: LengthUnit): readonly number[] | 'fraction' {
  const found = meanings(text);
  if (unit === 'mm' || found.length === 0) return found;
  // A thousand inches is longer than any track, so `1.234` can only be what a caliper shows.
  if (unit === 'in') return text.includes('.') ? found.slice(0, 1) : found;
  if (unit === 'in/32') return /^\d+$/.test(text) ? found : 'fraction';
  const steps = found.map((inches) => inches * perInch[unit]);
  return steps.every(Number.isInteger) ? steps : 'fraction';
}

/**
 * Reads a length as a person typed it: comma or point, digits of other scripts, fractions of an inch.
 * `1,234` is asked about, never guessed. For `in/32` a bare number counts 32nds, for `in/16` whole inches.
 */
export function parseLength(typed: string, unit: LengthUnit): Typed<TypedLength> {
  const given = signed(typed, suffixes[unit]);
  if (!given.ok) return given;
  const { text, sign } = given.value;
  const make = (value: number): TypedLength => ({ value, mm: toMm(value, unit) });
  const most = largestMm / toMm(1, unit);
  if (text.includes('/')) {
    if (/[^\d /-]/.test(text)) return err({ kind: 'letters' });
    const inches = unit === 'mm' ? undefined : fractionInches(text, unit);
    if (unit === 'mm' || inches === undefined) return err({ kind: 'fraction' });
    return settle([inches * perInch[unit]], sign, most, make);
  }
  const found = unitMeanings(text, unit);
  return found === 'fraction' ? err({ kind: 'fraction' }) : settle(found, sign, most, make);
}

function parseDecimal<T>(typed: string, suffix: RegExp, most: number, make: (value: number) => T): Typed<T> {
  const given = signed(typed, suffix);
  if (!given.ok) return given;
  return settle(meanings(given.value.text), given.value.sign, most, make);
}

/** Reads hours of a meter; `1,234` is asked about. */
export const parseHours = (typed: string): Typed<number> =>
  parseDecimal(typed, /h$/i, largestHours, (hours) => hours);

/** Reads a mass; `1,234` is asked about. */
export const parseMass = (typed: string, unit: 'kg' | 'lb'): Typed<{ value: number; kg: number }> =>
  parseDecimal(typed, unit === 'kg' ? /kg$/i : /lbs?$/i, largestKg, (value) => ({
    value,
    kg: unit === 'kg' ? value : value * kgPerLb,
  }));

/** Reads a whole number; a comma, point or stroke in it is `fraction`. */
export function parseCount(typed: string): Typed<number> {
  const given = signed(typed, /$^/);
  if (!given.ok) return given;
  const { text, sign } = given.value;
  if (/^\d*[.,٫/]?\d*$/.test(text) && !/^\d+$/.test(text) && /\d/.test(text))
    return err({ kind: 'fraction' });
  return settle(/^\d+$/.test(text) ? [Number(text)] : [], sign, largestCount, (count) => count);
}

/**
 * Reads an amount of money into minor units.
 * @param digits decimals of the currency; `1,400` has more than two, so that it can only be fourteen hundred
 */
export function parseMoney(typed: string, digits: number): Typed<number> {
  const given = signed(typed.replace(/\p{Sc}/gu, ''), /$^/);
  if (!given.ok) return given;
  const { text, sign } = given.value;
  const found = meanings(text, digits);
  if (found.length === 0 && meanings(text).length > 0) return err({ kind: 'fraction' });
  // The nearest whole number to a decimal of so few digits is exact.
  return settle(found, sign, largestMoney, (amount) => Math.round(amount * 10 ** digits));
}
