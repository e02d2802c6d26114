import { mostNameLength, priceLine, type Costs } from '../../core/costs.ts';
import type { Contract, ContractPart } from '../../core/contract.ts';
import { minorDigits } from '../../core/currency.ts';
import { itemById } from '../../core/items.ts';
import { jobKindsFor } from '../../core/job-kinds.ts';
import type { Shape } from '../../core/machine.ts';
import { round6 } from '../../core/quantity.ts';
import { err, ok, type Result } from '../../core/result.ts';
import { parseCount, parseHours, parseMoney, type Typed } from '../../core/typed.ts';
import { isSoft, type Source } from '../../core/source.ts';
import { grounds } from '../../core/use.ts';
import { formatter } from '../data/format.ts';

type Ground = (typeof grounds)[number];

/** What is typed for one part. */
export interface PartTexts {
  readonly minor: string;
  readonly labour: string;
  readonly life: string;
  readonly source: string;
  /** How sure the price is; `entered` from the moment somebody types another. */
  readonly mark: Source['mark'];
}

/** A contract as its form has it: every number as it was typed. */
export interface ContractTexts {
  /** The stamp of the contract that the form was begun on. */
  readonly base: string | undefined;
  readonly number: string;
  readonly owner: string;
  readonly renter: string;
  readonly clause: string;
  readonly from: string;
  readonly to: string;
  readonly charges: Contract['charges'];
  readonly hours: Contract['hours'];
  readonly hoursCount: string;
  readonly allowance: string;
  readonly currency: string;
  readonly parts: Readonly<Record<string, PartTexts>>;
  readonly labour: NonNullable<Contract['labour']>;
  readonly cutOff: string;
  readonly haulage: string;
  readonly haulageSource: string;
  readonly tax: string;
  readonly waived: readonly string[];
  readonly grounds: readonly Ground[];
  readonly replyDays: string;
  readonly keptDays: string;
  readonly handOut: string;
  readonly note: string;
}

/** A contract before anything is agreed: damage only, a part for what it was worth, no price. */
export const newContract = (machine: string, currency: string): Contract => ({
  v: 1,
  machine,
  charges: 'damage',
  hours: 'meter',
  currency,
  parts: [],
  labour: 'share',
});

const emptyPart: PartTexts = { minor: '', labour: '', life: '', source: '', mark: 'entered' };

export const partTexts = ({ parts }: Pick<ContractTexts, 'parts'>, what: string): PartTexts =>
  parts[what] ?? emptyPart;

/** Single things of which a contract may price each one that is damaged. */
const singles = ['shoes', 'pads', 'guards'] as const;

/** What a contract for a machine of this shape can have a price for: jobs, and single things. */
export const pricedFor = (shape: Shape): readonly string[] => [
  ...jobKindsFor(shape).filter((kind) => /^(?:renew|change|mend)-/.test(kind)),
  ...singles.filter((id) => itemById(id)?.fits(shape)),
];

const typed = (value: number | undefined): string => (value === undefined ? '' : String(round6(value)));

/** The form of a contract. */
export function contractTexts(contract: Contract, stamp?: string): ContractTexts {
  const { currency, charges, hours, labour = 'share', waived = [], grounds: allowed = [] } = contract;
  const money = (minor: number | undefined): string =>
    minor === undefined ? '' : formatter.value.moneyField(minor, currency);
  const { number = '', owner = '', renter = '', clause = '', from = '', to = '', note = '' } = contract;
  return {
    base: stamp,
    ...{ number, owner, renter, clause, from, to, note, charges, hours, labour, currency, waived },
    grounds: allowed,
    hoursCount: typed(contract.hoursCount),
    allowance: typed(contract.allowancePercent),
    parts: Object.fromEntries(
      contract.parts.map(({ what, minor, labourMinor, lifeHours, source }) => [
        what,
        {
          minor: money(minor),
          labour: money(labourMinor),
          life: typed(lifeHours),
          source: source.text,
          mark: source.mark,
        },
      ]),
    ),
    cutOff: typed(contract.cutOffPercent),
    haulage: money(contract.haulageMinor),
    haulageSource: contract.haulageSource?.text ?? '',
    tax: typed(contract.taxPercent),
    replyDays: typed(contract.replyDays),
    keptDays: typed(contract.keptDays),
    handOut: contract.handOut ?? '',
  };
}

const atMost =
  (most: number, parse: (text: string) => Typed<number>) =>
  (text: string): Typed<number> => {
    const read = parse(text);
    return read.ok && read.value > most ? err({ kind: 'too-large' }) : read;
  };

export const parsePercent = atMost(100, parseHours);
/** A part worth nothing above this much life left would be worth nothing while it still runs. */
export const parseCutOff = atMost(90, parseHours);
export const parseLife = atMost(100_000, parseHours);
export const parseDays = atMost(365, parseCount);

/** Names of the fields that cannot be saved as they are; those of a part are `<part>.<field>`. */
export type ContractFaults = readonly string[];

/** Reads one field after the other and notes those that are no number. */
interface Reader {
  readonly faults: string[];
  readonly read: <N extends string>(
    key: N,
    name: string,
    text: string,
    parse: (text: string) => Typed<number>,
  ) => Partial<Record<N, number>>;
}

function makeReader(): Reader {
  const faults: string[] = [];
  return {
    faults,
    read: (key, name, text, parse) => {
      if (text.trim() === '') return {};
      const read = parse(text);
      if (read.ok) return { [key]: read.value } as Partial<Record<typeof key, number>>;
      faults.push(name);
      return {};
    },
  };
}

/** A text as long as a record may hold it, or nothing. */
const words = <N extends string>(key: N, text: string, most: number): Partial<Record<N, string>> => {
  const kept = text.trim().slice(0, most);
  return kept === '' ? {} : ({ [key]: kept } as Partial<Record<N, string>>);
};

const mostSource = 400;

const moneyIn =
  ({ currency }: ContractTexts) =>
  (text: string): Typed<number> =>
    parseMoney(text, minorDigits(currency));

function partsOf(texts: ContractTexts, before: Contract, { read, faults }: Reader): readonly ContractPart[] {
  return Object.entries(texts.parts).flatMap(([what, part]): readonly ContractPart[] => {
    const made = {
      ...read('minor', `${what}.minor`, part.minor, moneyIn(texts)),
      ...read('labourMinor', `${what}.labour`, part.labour, moneyIn(texts)),
      ...read('lifeHours', `${what}.life`, part.life, parseLife),
    };
    if (made.lifeHours === 0) faults.push(`${what}.life`);
    if (Object.keys(made).length === 0) return [];
    const old = before.parts.find((each) => each.what === what);
    const { minor: _m, labourMinor: _l, lifeHours: _h, ...others } = old ?? {};
    const source = { mark: part.mark, text: part.source.trim().slice(0, mostSource) };
    return [{ ...others, what, ...made, source }];
  });
}

function haulageOf(
  texts: ContractTexts,
  { haulageSource: before }: Contract,
  { read }: Reader,
): Pick<Contract, 'haulageMinor' | 'haulageSource'> {
  const haulage = read('haulageMinor', 'haulage', texts.haulage, moneyIn(texts));
  if (haulage.haulageMinor === undefined) return {};
  const text = texts.haulageSource.trim().slice(0, mostSource);
  return { ...haulage, haulageSource: { mark: before?.text === text ? before.mark : 'entered', text } };
}

const textsOf = (texts: ContractTexts) => ({
  ...words('number', texts.number, 80),
  ...words('owner', texts.owner, mostNameLength),
  ...words('renter', texts.renter, mostNameLength),
  ...words('clause', texts.clause, 4000),
  ...words('from', texts.from, 10),
  ...words('to', texts.to, 10),
  ...words('handOut', texts.handOut, 120),
  ...words('note', texts.note, 4000),
});

/** The contract as the form has it; what the form does not know is kept. */
export function contractOf(texts: ContractTexts, before: Contract): Result<Contract, ContractFaults> {
  const reader = makeReader();
  const { read, faults } = reader;
  if (!/^[A-Z]{3}$/.test(texts.currency)) faults.push('currency');
  const { charges, hours, currency, labour, waived, grounds: allowed } = texts;
  const made: Contract = {
    ...unknownOf(before),
    ...{ v: 1, machine: before.machine, charges, hours, currency, labour },
    ...textsOf(texts),
    parts: [...partsOf(texts, before, reader)],
    ...haulageOf(texts, before, reader),
    ...read('hoursCount', 'hoursCount', texts.hoursCount, parseLife),
    ...read('allowancePercent', 'allowance', texts.allowance, parsePercent),
    ...read('cutOffPercent', 'cutOff', texts.cutOff, parseCutOff),
    ...read('taxPercent', 'tax', texts.tax, parsePercent),
    ...read('replyDays', 'replyDays', texts.replyDays, parseDays),
    ...read('keptDays', 'keptDays', texts.keptDays, parseDays),
    ...(waived.length > 0 && { waived: [...waived] }),
    ...(allowed.length > 0 && { grounds: [...allowed] }),
  };
  return faults.length > 0 ? err(faults) : ok(made);
}

const known = new Set([
  ...['v', 'machine', 'number', 'owner', 'renter', 'clause', 'from', 'to', 'charges', 'hours', 'hoursCount'],
  ...['allowancePercent', 'currency', 'parts', 'labour', 'cutOffPercent', 'haulageMinor', 'haulageSource'],
  ...['taxPercent', 'waived', 'grounds', 'replyDays', 'keptDays', 'handOut', 'note'],
]);

/** Fields that a later version of the app wrote. */
const unknownOf = (contract: Contract): Readonly<Record<string, unknown>> =>
  Object.fromEntries(Object.entries(contract).filter(([name]) => !known.has(name)));

/** The same amounts in another currency are other prices, which somebody answers for. */
export const inCurrency = (texts: ContractTexts, currency: string): Partial<ContractTexts> => ({
  currency,
  parts: Object.fromEntries(
    Object.entries(texts.parts).map(([what, part]) => [what, { ...part, mark: 'entered' as const }]),
  ),
});

const hasAmount = ({ haulage, parts }: ContractTexts): boolean =>
  [haulage, ...Object.values(parts).flatMap(({ minor, labour }) => [minor, labour])].some(
    (text) => text.trim() !== '',
  );

/** Why nothing was filled in: no lists of one currency, or amounts of another one that nothing may relabel. */
export type NotFilled =
  { readonly kind: 'no-list' } | { readonly kind: 'other-currency'; readonly list: string };

/** Prices of a machine's list and labour at its rates, for parts that have none yet. */
export function filledFrom(
  { prices, rates, open }: Costs,
  shape: Shape,
  texts: ContractTexts,
): Result<ContractTexts, NotFilled> {
  if (!prices || !rates || open.length > 0) return err({ kind: 'no-list' });
  const { currency } = prices;
  if (currency !== texts.currency && hasAmount(texts)) return err({ kind: 'other-currency', list: currency });
  const money = (minor: number): string => formatter.value.moneyField(minor, currency);
  const filled = jobKindsFor(shape).flatMap((job) => {
    const line = pricedFor(shape).includes(job) ? priceLine(prices, job) : undefined;
    const now = partTexts(texts, job);
    if (!line || now.minor.trim() !== '' || now.labour.trim() !== '') return [];
    const labour = Math.round(round6(line.labourHours * rates.labourPerHour.minor));
    const rate = rates.labourPerHour.source;
    const part = {
      ...now,
      minor: money(line.minor),
      labour: money(labour),
      source: `${prices.name}; ${rates.name}`,
      mark: isSoft(rate) ? rate.mark : line.source.mark,
    };
    return [[job, part] as const];
  });
  return ok({ ...texts, currency, parts: { ...texts.parts, ...Object.fromEntries(filled) } });
}
