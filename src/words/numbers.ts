import { minorDigits } from '../core/currency.ts';
import { fromMm, kgPerLb, round6, type LengthUnit } from '../core/quantity.ts';
import { unreachable } from '../core/result.ts';
import type { Numbers, Preferences } from './format.ts';
import { safeLocale } from './locale.ts';

const space = '\u00a0';

type Show = (value: number, least: number, most: number) => string;

/** Shows a number of the locale; each kind of it is made once, since making one costs a millisecond on a phone. */
function makeShow(locale: string, grouping: boolean): Show {
  const made = new Map<string, Intl.NumberFormat>();
  return (value, least, most) => {
    const key = `${least}-${most}`;
    const known = made.get(key);
    const format =
      known ??
      new Intl.NumberFormat(locale, {
        minimumFractionDigits: least,
        maximumFractionDigits: most,
        useGrouping: grouping,
      });
    if (!known) made.set(key, format);
    // + 0 turns what rounds to -0 into 0, which has no sign.
    return format.format(Number(value.toFixed(most)) + 0);
  };
}

type ShowMoney = (minor: number, currency: string) => string;

/** Shows money of the locale; how many decimals a currency has is ours to say, since engines disagree. */
function makeShowMoney(locale: string): ShowMoney {
  const made = new Map<string, Intl.NumberFormat>();
  return (minor, currency) => {
    const digits = minorDigits(currency);
    const whole = Math.round(minor) + 0;
    const shown = whole % 10 ** digits === 0 ? 0 : digits;
    const key = `${currency} ${shown}`;
    const format =
      made.get(key) ??
      new Intl.NumberFormat(locale, {
        style: 'currency',
        currency,
        minimumFractionDigits: shown,
        maximumFractionDigits: shown,
      });
    made.set(key, format);
    return format.format(whole / 10 ** digits);
  };
}

/** `1400`, `12.50`: decimals only where there are any, and then all of them. */
function moneyField(minor: number, currency: string): string {
  const digits = minorDigits(currency);
  const unit = 10 ** digits;
  const [whole, rest] = [Math.floor(minor / unit), minor % unit];
  return rest === 0 ? `${whole}` : `${whole}.${String(rest).padStart(digits, '0')}`;
}

const greatestDivisor = (a: number, b: number): number => (b === 0 ? a : greatestDivisor(b, a % b));

/** Within a two-hundredth of a step it is that step: what millimetres and back leave of a whole number. */
const isStep = (steps: number): boolean => Math.abs(steps - Math.round(steps)) < 0.005;

/** `27 1/4`, `1/2`, `3`: sixteenths of an inch as a tape says them. */
function tape(sixteenths: number): string {
  const total = Math.abs(sixteenths);
  const whole = Math.floor(total / 16);
  const rest = total % 16;
  const by = greatestDivisor(rest, 16);
  const parts = [
    ...(whole > 0 || rest === 0 ? [whole] : []),
    ...(rest > 0 ? [`${rest / by}/${16 / by}`] : []),
  ];
  return `${sixteenths < 0 ? '-' : ''}${parts.join(space)}`;
}

/** Digits after the point that show a step of this size. */
function digitsOf(resolution: number): number {
  const digits = [0, 1, 2, 3, 4].find((each) => isStep(resolution * 10 ** each));
  return digits ?? 4;
}

function inches(valueMm: number, show: Show, resolution?: number): string {
  const digits = resolution === undefined ? undefined : digitsOf(resolution);
  return show(fromMm(valueMm, 'in'), digits ?? 2, digits ?? 3);
}

/** A length without its unit; sixteenths that fall between two marks are shown as decimal inches. */
function bare(valueMm: number, unit: LengthUnit, show: Show, resolution?: number): string {
  const steps = fromMm(valueMm, unit);
  switch (unit) {
    case 'mm': {
      const digits = resolution === undefined ? undefined : digitsOf(resolution);
      return show(steps, digits ?? 0, digits ?? 1);
    }
    case 'in':
      return inches(valueMm, show, resolution);
    case 'in/32':
      return isStep(steps) ? show(Math.round(steps), 0, 0) : show(steps, 0, 1);
    case 'in/16':
      return isStep(steps) ? tape(Math.round(steps)) : inches(valueMm, show);
    default:
      return unreachable(unit);
  }
}

const withUnit: Readonly<Record<LengthUnit, (text: string) => string>> = {
  mm: (text) => `${text}${space}mm`,
  in: (text) => `${text}${space}in`,
  'in/32': (text) => `${text}/32${space}in`,
  'in/16': (text) => `${text}${space}in`,
};

/** Just short of the limit is never shown as 100 %, since 100 % means that it is reached. */
const shownPercent = (value: number): number => (round6(value) < 100 && value > 99 ? 99 : value);

/** Numbers and units for one person. */
export function makeNumbers(preferences: Preferences): Numbers {
  const show = makeShow(safeLocale(preferences.locale), true);
  const showField = makeShow('en', false);
  const plurals = new Intl.PluralRules('en');
  const inUnit = (valueMm: number, unit: LengthUnit, resolution?: number) =>
    withUnit[unit](bare(valueMm, unit, show, resolution));
  return {
    inUnit,
    length: (valueMm) => inUnit(valueMm, preferences.length),
    depth: (valueMm) => inUnit(valueMm, preferences.depth),
    field: (valueMm, unit) => bare(valueMm, unit, showField).replace(space, ' '),
    percent: (value) => `${show(shownPercent(value), 0, 0)}${space}%`,
    hours: (value) => `${show(value, 0, 1)}${space}h`,
    mass: (valueKg) =>
      preferences.mass === 'kg'
        ? `${show(valueKg, 0, 0)}${space}kg`
        : `${show(valueKg / kgPerLb, 0, 0)}${space}lb`,
    number: (value) => show(value, 0, 3),
    money: makeShowMoney(safeLocale(preferences.locale)),
    moneyField,
    plural: (count, one, other) =>
      `${show(count, 0, 3)}${space}${plurals.select(count) === 'one' ? one : other}`,
  };
}
