import {
  mostLabourHours,
  mostNameLength,
  rateNames,
  type PriceLine,
  type PriceList,
  type Rates,
  type RateName,
} from '../../core/costs.ts';
import { minorDigits } from '../../core/currency.ts';
import { jobKinds } from '../../core/job-kinds.ts';
import { round6 } from '../../core/quantity.ts';
import { err, ok, type Result } from '../../core/result.ts';
import { parseHours, parseMoney, type Typed } from '../../core/typed.ts';
import { formatter } from './format.ts';

/** A price list or rates as typed: amounts and hours by the job or rate that they are for. */
export interface CostsForm {
  readonly name: string;
  readonly currency: string;
  readonly amounts: Readonly<Record<string, string>>;
  readonly hours: Readonly<Record<string, string>>;
  readonly base: string | undefined;
}

/** Names of the fields that cannot be saved: `name`, `currency`, or an amount or hours by its name. */
export type CostsFaults = readonly string[];

const shown = (minor: number, currency: string): string => formatter.value.moneyField(minor, currency);

export const pricesForm = ({ name, currency, lines }: PriceList, base: string | undefined): CostsForm => ({
  name,
  currency,
  amounts: Object.fromEntries(lines.map(({ job, minor }) => [job, shown(minor, currency)])),
  hours: Object.fromEntries(lines.map(({ job, labourHours }) => [job, String(round6(labourHours))])),
  base,
});

export const ratesForm = (rates: Rates, base: string | undefined): CostsForm => ({
  name: rates.name,
  currency: rates.currency,
  amounts: Object.fromEntries(rateNames.map((each) => [each, shown(rates[each].minor, rates.currency)])),
  hours: {},
  base,
});

/** The kinds of job that a form of a list asks for: its own, then those that it has no price for yet. */
export const kindsIn = ({ lines }: PriceList): readonly string[] => {
  const priced = lines.map(({ job }) => job);
  return [...priced, ...jobKinds.filter((kind) => !priced.includes(kind))];
};

const entered = { mark: 'entered', text: '' } as const;

/** Hours of labour for one job, no more than a list may hold. */
export function parseLabour(text: string): Typed<number> {
  const read = parseHours(text);
  return read.ok && read.value > mostLabourHours ? err({ kind: 'too-large' }) : read;
}

const headFaults = ({ name, currency }: CostsForm): CostsFaults => [
  ...(name.trim() === '' || name.trim().length > mostNameLength ? ['name'] : []),
  ...(/^[A-Z]{3}$/.test(currency) ? [] : ['currency']),
];

/** The list as the form has it; what was changed is from then on entered by a person. */
export function pricesOf(form: CostsForm, before: PriceList): Result<PriceList, CostsFaults> {
  const digits = minorDigits(form.currency);
  const faults: string[] = [...headFaults(form)];
  const lines = kindsIn(before).flatMap((job): readonly PriceLine[] => {
    const line = before.lines.find((each) => each.job === job);
    const [amount = '', time = ''] = [form.amounts[job], form.hours[job]];
    // A job without a price is open: neither is kept where both were emptied.
    if (amount.trim() === '' && time.trim() === '') return [];
    const [minor, hours] = [parseMoney(amount, digits), parseLabour(time)];
    if (!minor.ok) faults.push(job);
    if (!hours.ok) faults.push(`hours/${job}`);
    if (!minor.ok || !hours.ok) return [];
    const isSame = line && minor.value === line.minor && hours.value === round6(line.labourHours);
    if (isSame && form.currency === before.currency) return [line];
    return [{ ...line, job, minor: minor.value, labourHours: hours.value, source: entered }];
  });
  return faults.length > 0
    ? err(faults)
    : ok({ ...before, name: form.name.trim(), currency: form.currency, lines });
}

export function ratesOf(form: CostsForm, before: Rates): Result<Rates, CostsFaults> {
  const digits = minorDigits(form.currency);
  const faults: string[] = [...headFaults(form)];
  const rates = rateNames.map((name): [RateName, Rates[RateName]] => {
    const minor = parseMoney(form.amounts[name] ?? '', digits);
    if (!minor.ok) faults.push(name);
    const isSame = minor.ok && minor.value === before[name].minor && form.currency === before.currency;
    return [
      name,
      !minor.ok || isSame ? before[name] : { ...before[name], minor: minor.value, source: entered },
    ];
  });
  return faults.length > 0
    ? err(faults)
    : ok({ ...before, ...Object.fromEntries(rates), name: form.name.trim(), currency: form.currency });
}
