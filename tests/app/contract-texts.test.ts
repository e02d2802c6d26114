import { describe, expect, test } from 'vitest';
import {
  contractOf,
  contractTexts,
  filledFrom,
  inCurrency,
  newContract,
  pricedFor,
  type ContractTexts,
} from '../../src/app/rental/contract-texts.ts';
import { contractSchema, type Contract } from '../../src/core/contract.ts';
import type { Costs, PriceList, Rates } from '../../src/core/costs.ts';
import { assert } from '../../src/core/result.ts';
import { builtIn } from '../../src/reference/built-in.ts';
import { machineOf } from '../core/made.ts';

const empty = newContract('machine/a', 'EUR');
const full: Contract = {
  ...empty,
  number: 'R-204',
  owner: 'Yard North',
  renter: 'Kim Osei',
  clause: '7.2: wear beyond the usual',
  from: '2026-11-03',
  to: '2026-11-17',
  charges: 'damage-and-wear',
  hours: 'billed',
  hoursCount: 80,
  allowancePercent: 2.5,
  parts: [
    {
      what: 'renew-track',
      lifeHours: 1500,
      minor: 123_450,
      labourMinor: 30_000,
      source: { mark: 'published', text: 'list of May, page 4' },
    },
    { what: 'guards', minor: 9900, source: { mark: 'entered', text: '' } },
  ],
  labour: 'whole',
  cutOffPercent: 10,
  haulageMinor: 25_000,
  haulageSource: { mark: 'published', text: 'haulier' },
  taxPercent: 19,
  waived: ['renew-sprocket'],
  grounds: ['mixed', 'paving'],
  replyDays: 7,
  keptDays: 30,
  handOut: 'walk/out',
  note: 'keys at the gate',
};

const made = (texts: Partial<ContractTexts>, before = full): Contract => {
  const result = contractOf({ ...contractTexts(before), ...texts }, before);
  assert(result.ok, 'a contract');
  return result.value;
};

describe('the form of a contract', () => {
  test('[RW10] a new contract charges damage only, and nothing has a price', () => {
    expect(made({}, empty)).toEqual(empty);
    expect(contractSchema.safeParse(empty).success).toBe(true);
    expect(empty).toMatchObject({ charges: 'damage', labour: 'share', parts: [] });
  });

  test('[RW11] read back untouched it is the contract, with every source and what a later version wrote', () => {
    const later: Contract = { ...full, deposit: { minor: 5 } };
    expect(made({}, later)).toEqual(later);
    const [first] = full.parts;
    assert(first, 'a part');
    const parts = [{ ...first, colour: 'black' }];
    expect(made({}, { ...full, parts }).parts).toEqual(parts);
  });

  test('[RW11] what is emptied is gone from the record', () => {
    const { parts, haulageMinor: _m, haulageSource: _s, number: _n, grounds: _g, ...others } = full;
    const [track] = parts;
    const texts = contractTexts(full);
    const emptied = made({
      number: ' ',
      haulage: '',
      grounds: [],
      parts: { ...texts.parts, guards: { minor: '', labour: '', life: '', source: 'x', mark: 'entered' } },
    });
    expect(emptied).toEqual({ ...others, parts: [track] });
  });

  const track = (minor: string) => ({
    parts: { 'renew-track': { minor, labour: '', life: '', source: '', mark: 'entered' as const } },
  });
  test.each([
    ['currency', { currency: 'euro' }],
    ['hoursCount', { hoursCount: 'many' }],
    ['hoursCount', { hoursCount: '100001' }],
    ['allowance', { allowance: '101' }],
    ['cutOff', { cutOff: '91' }],
    ['haulage', { haulage: '1,2,3' }],
    ['haulage', { haulage: '-1' }],
    ['tax', { tax: '1,900' }],
    ['replyDays', { replyDays: '2.5' }],
    ['keptDays', { keptDays: '366' }],
    ['renew-track.minor', track('dear')],
    ['renew-track.life', { parts: { 'renew-track': { ...track('1').parts['renew-track'], life: '0' } } }],
  ] as const)('[RW12] %s stays as typed until it can be read: %o', (name, texts) => {
    const result = contractOf({ ...contractTexts(full), ...texts }, full);
    expect(result.ok ? [] : result.error).toEqual([name]);
  });

  test('[RW12] whatever can be saved is a contract that a file may hold', () => {
    const long = 'x'.repeat(5000);
    const texts = { number: long, owner: long, renter: long, clause: long, note: long, haulageSource: long };
    const saved = made({ ...texts, cutOff: '90', replyDays: '365' });
    expect(contractSchema.safeParse(saved).error).toBeUndefined();
  });

  test('[RW18] the form remembers which version it was begun on, and no record does', () => {
    const texts = contractTexts(full, 'stamp-1');
    expect(texts.base).toBe('stamp-1');
    expect(made(texts)).toEqual(full);
  });

  test('[RW13] in another currency every price is one that a person answers for', () => {
    const texts = { ...contractTexts(full), ...inCurrency(contractTexts(full), 'JPY') };
    const result = contractOf({ ...texts, haulage: '' }, full);
    // Yen have no decimals, so the old amount is asked about instead of taken for a hundred times as much.
    expect(result.ok ? [] : result.error).toContain('renew-track.minor');
    const dollars = made({ ...inCurrency(contractTexts(full), 'USD') });
    expect(dollars.parts.map(({ source }) => source.mark)).toEqual(['entered', 'entered']);
  });
});

describe('prices of a machine’s list', () => {
  const shape = machineOf('rubber-cored').shape;
  const costs: Costs = {
    prices: builtIn.prices['price/starting-rubber-mini'] as PriceList,
    rates: builtIn.rates['rate/starting'] as Rates,
    pricesKey: undefined,
    ratesKey: undefined,
    open: [],
    clashes: [],
  };

  test('[RW14] fill what is empty, keep what was agreed, and say that they are estimates', () => {
    const filled = filledFrom(costs, shape, contractTexts({ ...empty, parts: [...full.parts] }));
    assert(filled.ok, 'prices');
    const { parts } = made(filled.value, { ...empty, parts: [...full.parts] });
    expect(parts.find(({ what }) => what === 'renew-track')).toEqual(full.parts[0]);
    const sprocket = parts.find(({ what }) => what === 'renew-sprocket');
    const line = costs.prices?.lines.find(({ job }) => job === 'renew-sprocket');
    expect(sprocket?.minor).toBe(line?.minor);
    expect(sprocket?.labourMinor).toBe(
      Math.round((line?.labourHours ?? 0) * (costs.rates?.labourPerHour.minor ?? 0)),
    );
    expect(sprocket?.source).toEqual({
      mark: 'estimate',
      text: `${costs.prices?.name}; ${costs.rates?.name}`,
    });
  });

  test('[RW14] nothing is filled in from lists that are missing or of two currencies', () => {
    const open = [{ kind: 'two-currencies' as const, prices: 'EUR', rates: 'USD' }];
    const none = { ok: false, error: { kind: 'no-list' } };
    expect(filledFrom({ ...costs, open }, shape, contractTexts(empty))).toEqual(none);
    expect(filledFrom({ ...costs, prices: undefined }, shape, contractTexts(empty))).toEqual(none);
  });

  const bare = { minor: '', labour: '', life: '', source: '', mark: 'entered' as const };
  test.each([
    ['haulage', { haulage: '250' }],
    ['a price', { parts: { guards: { ...bare, minor: '99' } } }],
    ['labour', { parts: { guards: { ...bare, labour: '99' } } }],
  ])('[RW17] a list of another currency never relabels what was typed: %s', (_name, typed) => {
    const texts = { ...contractTexts({ ...empty, currency: 'USD' }), ...typed };
    expect(filledFrom(costs, shape, texts)).toEqual({
      ok: false,
      error: { kind: 'other-currency', list: 'EUR' },
    });
  });

  test('[RW17] where nothing is typed yet the list brings its currency', () => {
    const filled = filledFrom(costs, shape, contractTexts({ ...empty, currency: 'USD' }));
    expect(filled.ok && filled.value.currency).toBe('EUR');
  });

  test('[RW14] only what the machine has can have a price', () => {
    expect(pricedFor(shape)).toContain('renew-track');
    expect(pricedFor(shape)).not.toContain('renew-chain');
    expect(pricedFor(machineOf('steel').shape)).toEqual(expect.arrayContaining(['renew-chain', 'shoes']));
    expect(pricedFor(machineOf('steel').shape)).not.toContain('pads');
  });
});
