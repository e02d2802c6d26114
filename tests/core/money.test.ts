import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { capitalRecovery, costPerHour, equivalentCost, presentWorth } from '../../src/core/money.ts';
import { expectNear } from './digits.ts';
import { law } from './law.ts';

const rates = fc.double({ min: -0.5, max: 2, noNaN: true });
const amounts = fc.array(fc.integer({ min: -1_000_000, max: 1_000_000 }), { minLength: 1, maxLength: 20 });
const periods = fc.integer({ min: 1, max: 40 });

describe('[N8] the time value of money', () => {
  test('[E120] amounts due later are worth less by the rate of each period', () => {
    expect(presentWorth(0.25, [125])).toBe(100);
    expect(presentWorth(0.25, [0, 156.25])).toBe(100);
    expect(presentWorth(0, [1, 2, 3])).toBe(6);
    expect(presentWorth(0.1, [])).toBe(0);
  });

  test('[E121] worth adds up, and grows with each amount', () => {
    law(
      fc.property(rates, amounts, fc.integer({ min: 1, max: 1000 }), (rate, given, more) => {
        const worth = presentWorth(rate, given) ?? Number.NaN;
        expectNear(
          presentWorth(
            rate,
            given.map((each) => 2 * each),
          ),
          2 * worth,
          1e-12,
          1e-12,
        );
        expect(
          presentWorth(
            rate,
            given.map((each) => each + more),
          ),
        ).toBeGreaterThan(worth);
      }),
    );
  });

  test('[E122] equal payments at the recovery factor pay back exactly 1', () => {
    law(
      fc.property(rates, periods, (rate, count) => {
        const factor = capitalRecovery(rate, count) ?? Number.NaN;
        expectNear(
          presentWorth(
            rate,
            Array.from({ length: count }, () => factor),
          ),
          1,
          1e-12,
        );
      }),
    );
  });

  test('[E123] next to no interest is no interest', () => {
    expect(capitalRecovery(0, 8)).toBe(1 / 8);
    for (const rate of [1e-300, 1e-17, 1e-12, -1e-12]) expectNear(capitalRecovery(rate, 8), 1 / 8, 1e-11);
  });

  test('[E124] the equal cost is worth what the amounts are worth', () => {
    law(
      fc.property(rates, amounts, (rate, given) => {
        const equal = equivalentCost(rate, given) ?? Number.NaN;
        const worth = presentWorth(rate, given) ?? Number.NaN;
        expectNear(
          presentWorth(
            rate,
            given.map(() => equal),
          ),
          worth,
          1e-9,
          1e-6,
        );
      }),
    );
    expect(equivalentCost(0.07, [500, 500, 500])).toBeCloseTo(500, 9);
  });

  test.each([-1, -2, Infinity, Number.NaN])('[E125] a rate of %d is not known', (rate) => {
    expect([presentWorth(rate, [1]), capitalRecovery(rate, 3), equivalentCost(rate, [1])]).toEqual([
      undefined,
      undefined,
      undefined,
    ]);
  });

  test('[E126] amounts that are no number, and no periods, are not known', () => {
    expect(presentWorth(0.1, [1, Number.NaN])).toBeUndefined();
    expect(presentWorth(0.1, [Infinity])).toBeUndefined();
    expect(
      presentWorth(
        -0.999999,
        Array.from({ length: 60 }, () => 1),
      ),
    ).toBeUndefined();
    expect(equivalentCost(0.1, [Number.NaN])).toBeUndefined();
    expect(equivalentCost(0.1, [])).toBeUndefined();
    for (const count of [0, -1, Infinity, Number.NaN]) expect(capitalRecovery(0.1, count)).toBeUndefined();
  });
});

describe('[N8] cost per hour', () => {
  test('[E127] is the cost over the hours that it bought', () => {
    expect(costPerHour(3100, 1300)).toBeCloseTo(2.3846, 4);
    expect(costPerHour(0, 5)).toBe(0);
  });

  test.each([
    [100, 0],
    [100, -5],
    [100, Infinity],
    [100, Number.NaN],
    [Number.NaN, 100],
    [Infinity, 100],
  ])('[E128] of %d over %d h is not known', (cost, hours) =>
    expect(costPerHour(cost, hours)).toBeUndefined(),
  );
});
