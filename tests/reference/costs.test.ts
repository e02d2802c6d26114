import { describe, expect, test } from 'vitest';
import { costsFor } from '../../src/core/costs-for.ts';
import { jobCost, priceLine, priceListSchema, rateNames, ratesSchema } from '../../src/core/costs.ts';
import { jobKindsFor, jobTraits, type JobKind } from '../../src/core/job-kinds.ts';
import { keySchema } from '../../src/core/keys.ts';
import type { Machine, TrackKind } from '../../src/core/machine.ts';
import { assert } from '../../src/core/result.ts';
import { shelfOf } from '../../src/files/shelf.ts';
import { builtIn } from '../../src/reference/built-in.ts';
import { startingCostsFor } from '../../src/reference/cost-classes.ts';
import { startingPrices } from '../../src/reference/prices.ts';
import { startingRates } from '../../src/reference/rates.ts';
import { startingSheets } from '../../src/reference/sheets.ts';
import { machineOn } from './walkaround.ts';

const lists = startingPrices.map(({ key, value }) => [key, value] as const);
const isRubberKey = (key: string): boolean => key.includes('-rubber-');
const tracksOf = (key: string): readonly TrackKind[] =>
  isRubberKey(key) ? ['rubber-cored', 'rubber-coreless'] : ['steel', 'steel-pads', 'rubber-shoes'];
const classOfKey = (key: string): string => key.replace(/^[a-z]+\/starting-/, '');

const empty = shelfOf({ versions: [], unstamped: [] });
const costsOf = (machine: Machine) => costsFor(empty, builtIn, machine, startingCostsFor(machine));

describe('[N7] the starting prices', () => {
  test('[CO30] are there for every class that has a starting sheet, and for no other', () => {
    const classes = startingSheets.map(({ key }) => classOfKey(key)).sort();
    expect(lists.map(([key]) => classOfKey(key)).sort()).toEqual(classes);
    expect(Object.keys(builtIn.prices)).toHaveLength(lists.length);
  });

  test.each(lists)('[CO31] %s has a line for every kind of job of its class, and no other', (key, list) => {
    expect(keySchema.safeParse(key).success).toBe(true);
    expect(priceListSchema.safeParse(list).error).toBeUndefined();
    const wanted = new Set(tracksOf(key).flatMap((track) => jobKindsFor(machineOn(track).shape)));
    expect(new Set(list.lines.map(({ job }) => job))).toEqual(wanted);
  });

  test.each(lists)('[CO32] %s marks every figure an estimate and says that it is invented', (_, list) => {
    for (const { source } of list.lines) {
      expect(source.mark).toBe('estimate');
      expect(source.text).toMatch(/[Ii]nvented/);
    }
    expect(list.about).toMatch(/[Ii]nvented/);
    expect(list.currency).toBe('EUR');
  });

  test.each(lists)('[CO33] %s gives every job whole euros, and hours to the quarter', (_, list) => {
    for (const { job, minor, labourHours } of list.lines) {
      expect(minor % 100, job).toBe(0);
      expect(minor > 0, job).toBe(job !== 'swap-sides');
      expect(labourHours > 0 && Number.isInteger(labourHours * 4), job).toBe(true);
    }
  });

  // In the order of mass.
  const excavators = lists.filter(([key]) => key.includes('-steel-'));
  const dozers = lists.filter(([key]) => key.includes('-dozer-'));

  test.each(jobKindsFor(machineOn('steel-pads').shape))(
    '[CO34] %s never costs less, nor takes less, on a heavier machine of its kind',
    (job) => {
      for (const classes of [excavators, dozers]) {
        const lines = classes.map(([, list]) => priceLine(list, job));
        const rises = (values: readonly (number | undefined)[]) =>
          expect(values).toEqual([...values].sort((a, b) => (a ?? 0) - (b ?? 0)));
        rises(lines.map((line) => line?.minor));
        rises(lines.map((line) => line?.labourHours));
      }
    },
  );

  test.each<[string, string, JobKind, number, number]>([
    ['rubber-mini', 'track', 'renew-track', 500, 2000],
    ['rubber-loader', 'track', 'renew-track', 1000, 2000],
    ['steel-23t', 'chain', 'renew-chain', 3500, 7000],
    ['steel-23t', 'roller', 'renew-bottom-roller', 150, 400],
  ])('[CO35] a %s %s (%s) costs between %d and %d euros', (id, _, job, low, high) => {
    const list = builtIn.prices[`price/starting-${id}`];
    assert(list, 'there is a list');
    const euros = (priceLine(list, job)?.minor ?? 0) / 100;
    expect(euros).toBeGreaterThanOrEqual(low);
    expect(euros).toBeLessThanOrEqual(high);
  });
});

describe('[N7] the starting rates', () => {
  test.each(startingRates.map(({ key, value }) => [key, value] as const))(
    '[CO36] %s are rates, each figure an estimate that says it is invented',
    (key, rates) => {
      expect(keySchema.safeParse(key).success).toBe(true);
      expect(ratesSchema.safeParse(rates).error).toBeUndefined();
      for (const name of rateNames) {
        expect(rates[name].minor, name).toBeGreaterThan(0);
        expect(rates[name].source).toMatchObject({ mark: 'estimate' });
        expect(rates[name].source.text).toMatch(/[Ii]nvented/);
      }
      expect(rates.currency).toBe('EUR');
    },
  );
});

describe('[N7] what a machine starts with', () => {
  const loader: Machine = { ...machineOn('rubber-cored'), kind: 'track-loader' };

  test.each<[string, Machine, string, string]>([
    ['a rubber mini', machineOn('rubber-cored'), 'price/starting-rubber-mini', 'rate/starting'],
    ['a loader', loader, 'price/starting-rubber-loader', 'rate/starting'],
    ['a steel 21 t', machineOn('steel'), 'price/starting-steel-23t', 'rate/starting-mid'],
    [
      'a steel 35 t',
      { ...machineOn('steel'), massKg: 35_000 },
      'price/starting-steel-32t',
      'rate/starting-heavy',
    ],
    ['a dozer', { ...machineOn('steel'), kind: 'dozer' }, 'price/starting-dozer-mid', 'rate/starting-mid'],
  ])('[CO37] %s has the list and the rates of its class', (_, machine, pricesKey, ratesKey) => {
    const costs = costsOf(machine);
    expect(costs).toMatchObject({ pricesKey, ratesKey, open: [] });
  });

  test('[CO38] every class has rates that there are', () => {
    for (const [massKg, kind] of [3e3, 6e3, 9e3, 12e3, 18e3, 25e3, 38e3].flatMap((mass) =>
      (['excavator', 'dozer'] as const).map((each) => [mass, each] as const),
    ))
      expect(costsOf({ ...machineOn('steel'), massKg, kind }).open).toEqual([]);
  });

  test('[CO39] steel of unknown mass has none, and says so', () => {
    const { massKg: _, ...machine } = machineOn('steel');
    expect(costsOf(machine).open).toEqual([{ kind: 'no-prices' }, { kind: 'no-rates' }]);
  });

  test('[CV-62] two tracks of a loader and their fitting come to 2.385 an hour over 1,300 h', () => {
    const costs = costsOf(loader);
    const one = jobCost(costs, 'renew-track');
    assert(one.ok && costs.rates, 'there is a price');
    const { liftSide, trackOffSide } = costs.rates;
    expect(jobTraits['renew-track'].needs).toBe('track-off');
    const side = one.value.partsMinor + one.value.labourMinor + liftSide.minor + trackOffSide.minor;
    expect(2 * side).toBe(2 * 140_000 + 30_000);
    expect((2 * side) / 100 / 1300).toBeCloseTo(2.385, 3);
  });
});
