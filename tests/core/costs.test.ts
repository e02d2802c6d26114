import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { BuiltIn } from '../../src/core/assemble.ts';
import { costsFor, type StartingCosts } from '../../src/core/costs-for.ts';
import {
  currencyOf,
  jobCost,
  priceLine,
  priceListSchema,
  rateNames,
  ratesSchema,
  type Costs,
  type PriceLine,
  type PriceList,
  type Rates,
} from '../../src/core/costs.ts';
import { currencySchema, minorDigits } from '../../src/core/currency.ts';
import { recordFault } from '../../src/core/records.ts';
import type { RecordValue } from '../../src/core/versions.ts';
import { shelfOf } from '../../src/files/shelf.ts';
import { keyOf, version } from '../files/samples.ts';
import { entered } from './made.ts';

const line = (job: string, minor: number, labourHours = 2): PriceLine => ({
  job,
  minor,
  labourHours,
  source: entered,
});
const pricesOf = (...lines: readonly PriceLine[]): PriceList => ({
  v: 1,
  name: 'made up',
  currency: 'EUR',
  lines: [...lines],
});
const rate = (minor: number, mark: 'entered' | 'estimate' = 'entered') => ({
  minor,
  source: { mark, text: '' },
});
const rates: Rates = {
  v: 1,
  name: 'made up',
  currency: 'EUR',
  labourPerHour: rate(7000),
  callOut: rate(12_000),
  liftSide: rate(2000),
  trackOffSide: rate(6000),
  downtimePerHour: rate(4000),
  breakdown: rate(60_000),
};
const prices = pricesOf(line('renew-track', 140_000), line('swap-sides', 0, 1.5));
const costs: Costs = {
  prices,
  rates,
  pricesKey: 'price/a',
  ratesKey: 'rate/a',
  open: [],
  clashes: [],
};

describe('a price list', () => {
  test('[CO1] has the line of a job, and undefined for a job without one', () => {
    expect(priceLine(prices, 'renew-track')?.minor).toBe(140_000);
    expect(priceLine(prices, 'renew-idler')).toBeUndefined();
  });

  test.each<[string, unknown]>([
    ['part of a cent', { ...prices, lines: [line('renew-track', 0.5)] }],
    ['a price below nothing', { ...prices, lines: [line('renew-track', -1)] }],
    ['hours below nothing', { ...prices, lines: [line('renew-track', 1, -1)] }],
    ['a job twice', pricesOf(line('renew-track', 1), line('renew-track', 2))],
    ['a line without its source', { ...prices, lines: [{ job: 'renew-track', minor: 1, labourHours: 1 }] }],
    ['no currency', { ...prices, currency: undefined }],
    ['a sign for a currency', { ...prices, currency: '€' }],
    ['a currency in small letters', { ...prices, currency: 'eur' }],
  ])('[CO2] %s is refused', (_, value) => {
    expect(priceListSchema.safeParse(value).success).toBe(false);
    expect(recordFault(keyOf('price/a'), JSON.parse(JSON.stringify(value)) as RecordValue)).toBeDefined();
  });

  test('[CO3] a job of a later version and unknown fields are kept', () => {
    const later = { ...pricesOf({ ...line('renew-axle', 1), kept: 1 }), kept: 2 };
    expect(priceListSchema.parse(later)).toEqual(later);
    expect(recordFault(keyOf('price/a'), later)).toBeUndefined();
  });
});

describe('rates', () => {
  test.each(rateNames)('[CO4] without %s they are refused, and so is part of a cent', (name) => {
    expect(ratesSchema.safeParse(rates).success).toBe(true);
    expect(ratesSchema.safeParse({ ...rates, [name]: undefined }).success).toBe(false);
    expect(ratesSchema.safeParse({ ...rates, [name]: rate(1.5) }).success).toBe(false);
  });
});

describe('what a job costs', () => {
  test('[CO5] parts, labour and downtime, each in whole minor units', () => {
    expect(jobCost(costs, 'renew-track')).toEqual({
      ok: true,
      value: {
        currency: 'EUR',
        partsMinor: 140_000,
        labourHours: 2,
        labourMinor: 14_000,
        downtimeMinor: 8000,
        soft: false,
        sources: [entered, rates.labourPerHour.source, rates.downtimePerHour.source],
      },
    });
  });

  test('[CO6] a price of 0 is a price', () => {
    const cost = jobCost(costs, 'swap-sides');
    expect(cost.ok && [cost.value.partsMinor, cost.value.labourMinor]).toEqual([0, 10_500]);
  });

  test('[CO7] a job without a price is open with the reason, never 0', () => {
    expect(jobCost(costs, 'renew-idler')).toEqual({
      ok: false,
      error: { kind: 'no-price', job: 'renew-idler' },
    });
  });

  test('[CO8] half a minor unit counts up, whatever binary fractions make of it', () => {
    const odd: Costs = {
      ...costs,
      prices: pricesOf(line('renew-track', 1, 0.29)),
      rates: { ...rates, labourPerHour: rate(7050) },
    };
    // 0.29 · 7050 is 2044.5, and 2044.4999… in binary.
    const cost = jobCost(odd, 'renew-track');
    expect(0.29 * 7050).toBeLessThan(2044.5);
    expect(cost.ok && cost.value.labourMinor).toBe(2045);
  });

  test('[CO9] several parts cost as many times one, and all of it is whole minor units', () => {
    fc.assert(
      fc.property(
        fc.nat(1e9),
        fc.integer({ min: 0, max: 4000 }),
        fc.integer({ min: 1, max: 24 }),
        fc.nat(1e6),
        (minor, quarters, count, perHour) => {
          const many: Costs = {
            ...costs,
            prices: pricesOf(line('renew-idler', minor, quarters / 4)),
            rates: { ...rates, labourPerHour: rate(perHour) },
          };
          const cost = jobCost(many, 'renew-idler', count);
          expect(cost.ok && cost.value.partsMinor).toBe(minor * count);
          expect(cost.ok && Number.isSafeInteger(cost.value.labourMinor)).toBe(true);
          expect(cost.ok && cost.value.labourHours).toBe((quarters / 4) * count);
        },
      ),
    );
  });

  test('[CO10] one soft figure makes the cost soft', () => {
    const soft = jobCost(
      { ...costs, rates: { ...rates, labourPerHour: rate(1, 'estimate') } },
      'renew-track',
    );
    expect(soft.ok && soft.value.soft).toBe(true);
    const still = jobCost({ ...costs, rates: { ...rates, breakdown: rate(1, 'estimate') } }, 'renew-track');
    expect(still.ok && still.value.soft).toBe(false);
  });
});

const builtIn: Pick<BuiltIn, 'prices' | 'rates'> = {
  prices: { 'price/starting-a': prices },
  rates: { 'rate/starting': rates },
};
const starting: StartingCosts = { prices: 'price/starting-a', rates: 'rate/starting' };

type Held = Readonly<Record<string, object>>;
const held = (records: Held) =>
  shelfOf({
    versions: [],
    unstamped: Object.entries(records).map(([key, value]) => ({
      key: keyOf(key),
      value: value as RecordValue,
    })),
  });
const found = (records: Held, machine: { prices?: string; rates?: string } = {}, start = starting) =>
  costsFor(held(records), builtIn, machine, start);

describe('the costs of a machine', () => {
  test('[CO11] are those that it names, and else those of its class', () => {
    const own = { ...prices, name: 'own' };
    expect(found({})).toEqual({
      prices,
      rates,
      pricesKey: 'price/starting-a',
      ratesKey: 'rate/starting',
      open: [],
      clashes: [],
    });
    expect(found({ 'price/own': own }, { prices: 'price/own' }).prices).toEqual(own);
    expect(found({ 'price/own': own }, { prices: 'price/own' }).ratesKey).toBe('rate/starting');
  });

  test('[CO12] one stored under the key of a built-in one stands for it', () => {
    expect(found({ 'rate/starting': { ...rates, name: 'own' } }).rates?.name).toBe('own');
  });

  test.each<[string, Held, { prices?: string; rates?: string }, StartingCosts, unknown]>([
    ['no class fits', {}, {}, {}, [{ kind: 'no-prices' }, { kind: 'no-rates' }]],
    ['the list is not here', {}, { prices: 'price/b' }, starting, [{ kind: 'not-here', key: 'price/b' }]],
    [
      'what is named is no list',
      { 'machine/m': {} },
      { rates: 'machine/m' },
      starting,
      [{ kind: 'not-here', key: 'machine/m' }],
    ],
    [
      'a newer version wrote it',
      { 'price/b': { v: 2 } },
      { prices: 'price/b' },
      starting,
      [{ kind: 'newer-version', key: 'price/b' }],
    ],
    [
      'a newer version wrote what also comes with the app',
      { 'rate/starting': { v: 2 } },
      {},
      starting,
      [{ kind: 'newer-version', key: 'rate/starting' }],
    ],
    [
      'currencies would mix',
      { 'rate/b': { ...rates, currency: 'USD' } },
      { rates: 'rate/b' },
      starting,
      [{ kind: 'two-currencies', prices: 'EUR', rates: 'USD' }],
    ],
  ])('[CO13] are open with the reason when %s, and so is every job', (_, records, machine, start, open) => {
    const costed = found(records, machine, start);
    expect(costed.open).toEqual(open);
    expect(currencyOf(costed)).toBeUndefined();
    const job = jobCost(costed, 'renew-track');
    expect(job).toEqual({ ok: false, error: costed.open[0] });
  });

  test('[CO14] say which list two phones wrote differently, and take the one that is displayed', () => {
    const key = keyOf('price/b');
    const shelf = shelfOf({
      versions: [version(key, { ...prices, name: 'one' }, 1), version(key, { ...prices, name: 'other' }, 2)],
      unstamped: [],
    });
    const costed = costsFor(shelf, builtIn, { prices: 'price/b' }, starting);
    expect(costed.clashes).toEqual(['price/b']);
    expect(costed.prices?.name).toBe('other');
  });
});

describe('currencies', () => {
  // ISO 4217, list one.
  test.each([
    ['EUR', 2],
    ['USD', 2],
    ['JPY', 0],
    ['KRW', 0],
    ['HUF', 2],
    ['KWD', 3],
    ['IQD', 3],
    ['CLF', 4],
    ['XYZ', 2],
  ])('[CO15] %s has %d decimals, whatever shops round to', (currency, decimals) => {
    expect(minorDigits(currency)).toBe(decimals);
  });

  test('[CO16] a currency is three capital letters', () => {
    for (const code of ['EUR', 'JPY']) expect(currencySchema.safeParse(code).success).toBe(true);
    for (const code of ['eur', 'EURO', 'E1R', '']) expect(currencySchema.safeParse(code).success).toBe(false);
  });
});
