import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { priceLine, type Rates } from '../../src/core/costs.ts';
import type { JobKind } from '../../src/core/job-kinds.ts';
import { trackKinds } from '../../src/core/machine.ts';
import type { Option } from '../../src/core/option.ts';
import { optionsFor, type OptionsResult } from '../../src/core/options.ts';
import { assert } from '../../src/core/result.ts';
import { grounds, turnings, type Use } from '../../src/core/use.ts';
import { entered } from './made.ts';
import { casesOf, law } from './law.ts';
import {
  answered,
  answerTo,
  asked,
  mini,
  optionOf,
  priced,
  rankedIds,
  rubberNow,
  rubberOrSteel,
} from './options-made.ts';

// Each case draws every option five hundred times.
const runs = casesOf(80);

const hours = fc.integer({ min: 100, max: 9000 });

const optionArb: fc.Arbitrary<Option> = fc
  .record({
    track: fc.constantFrom(...trackKinds),
    minor: fc.integer({ min: 10_000, max: 1_000_000 }),
    fittingHours: fc.integer({ min: 0, max: 20 }),
    life: fc.option(fc.record({ hours })),
  })
  .map(({ track, minor, fittingHours, life }) =>
    optionOf(track, { ...priced(minor), fittingHours, ...(life && { life }) }),
  );

const useArb: fc.Arbitrary<Use> = fc
  .record({
    ground: fc.option(fc.dictionary(fc.constantFrom(...grounds), fc.integer({ min: 0, max: 100 }))),
    turning: fc.option(fc.constantFrom(...turnings)),
    hoursAYear: fc.option(fc.integer({ min: 50, max: 4000 })),
    sharp: fc.boolean(),
    noMarks: fc.boolean(),
  })
  .map(({ ground, turning, hoursAYear, sharp, noMarks }) => ({
    ...(ground && { ground }),
    ...(turning && { turning }),
    ...(hoursAYear !== null && { hoursAYear }),
    sharp,
    noMarks,
  }));

const questionArb = fc.record({
  use: useArb,
  current: fc.constantFrom(undefined, rubberNow, { track: 'steel' as const }),
  options: fc.array(optionArb, { minLength: 1, maxLength: 5 }),
});

const named = (options: readonly Option[]): Readonly<Record<string, Option>> =>
  Object.fromEntries(options.map((option, at) => [`o${at}`, option]));

const firstOf = ({ choice }: OptionsResult): string | undefined =>
  choice.kind === 'first' || choice.kind === 'only' ? choice.id : undefined;

describe('[N11] laws of the ranking', () => {
  test('[OP10] the order in which options are given changes nothing', () => {
    law(
      fc.property(questionArb, ({ options, ...more }) => {
        const input = asked({ ...more, options: named(options) });
        const turned = { ...input, options: [...input.options].reverse() };
        expect(optionsFor(turned)).toEqual(optionsFor(input));
      }),
      runs,
    );
  });

  test('[OP11] a cheaper price never makes an option rank lower, nor takes a win from it', () => {
    law(
      fc.property(questionArb, fc.double({ min: 0, max: 1, noNaN: true }), ({ options, ...more }, share) => {
        const [first] = options;
        assert(first?.price, 'there is one');
        const cheaper = { ...first, price: { ...first.price, minor: Math.floor(first.price.minor * share) } };
        const before = answered({ ...more, options: named(options) });
        const after = answered({ ...more, options: named([cheaper, ...options.slice(1)]) });
        expect(rankedIds(after).indexOf('o0')).toBeLessThanOrEqual(rankedIds(before).indexOf('o0'));
        if (firstOf(before) === 'o0') expect(firstOf(after)).toBe('o0');
      }),
      runs,
    );
  });

  test('[OP12] an option that is dearer, lasts no longer and takes no less to fit never wins', () => {
    const worseArb = fc.record({
      dearer: fc.integer({ min: 1, max: 500_000 }),
      longer: fc.integer({ min: 0, max: 20 }),
      shorter: fc.double({ min: 0.1, max: 1, noNaN: true }),
    });
    law(
      fc.property(questionArb, worseArb, ({ options, ...more }, { dearer, longer, shorter }) => {
        const [first] = options;
        assert(first?.price, 'there is one');
        const worse: Option = {
          ...first,
          price: { ...first.price, minor: first.price.minor + dearer },
          fittingHours: (first.fittingHours ?? 0) + longer,
          ...(first.life &&
            first.track.startsWith('rubber-c') && { life: { hours: first.life.hours * shorter } }),
        };
        const result = answered({ ...more, options: { ...named(options), a: worse } });
        expect(firstOf(result)).not.toBe('a');
        const ranking = rankedIds(result);
        if (ranking.includes('a')) expect(ranking.indexOf('a')).toBeGreaterThan(ranking.indexOf('o0'));
      }),
      runs,
    );
  });

  test('[OP13] two options of one kind are a tie, whichever of them is named first', () => {
    law(
      fc.property(useArb, optionArb, (use, option) => {
        const result = answered({ use, options: { a: option, b: option } });
        const [only] = result.comparisons;
        if (!only) return;
        expect(only.difference.middle).toBe(0);
        expect(only.difference.low).toBe(-only.difference.high || 0);
        expect(result.choice).toEqual({ kind: 'too-close', ids: ['a', 'b'] });
      }),
      runs,
    );
  });

  test('[OP14] which of two carries which name changes nothing in how they compare', () => {
    law(
      fc.property(useArb, optionArb, optionArb, (use, one, other) => {
        const [here, there] = [
          answered({ use, options: { a: one, b: other } }),
          answered({ use, options: { a: other, b: one } }),
        ];
        const [first, second] = [here.comparisons[0], there.comparisons[0]];
        if (!first || !second || first.difference.middle === 0) return;
        expect(second).toEqual({ ...first, first: first.second, second: first.first });
      }),
      runs,
    );
  });

  test('[OP15] currencies never mix: what is not priced in that of the rates has no cost, and says so', () => {
    law(
      fc.property(questionArb, fc.constantFrom('USD', 'GBP', 'JPY'), ({ options, ...more }, currency) => {
        const [first] = options;
        assert(first?.price, 'there is one');
        const foreign = { ...first, price: { ...first.price, currency } };
        const result = answered({ ...more, options: { ...named(options), foreign } });
        const answer = answerTo(result, 'foreign');
        expect(answer.figures).toBeUndefined();
        expect(answer.open).toEqual({ kind: 'other-currency', option: currency, rates: 'EUR' });
        const rest = answered({ ...more, options: named(options) });
        expect(rankedIds(result)).toEqual(rankedIds(rest));
        for (const { figures } of result.ranked) expect(figures?.currency).toBe('EUR');
      }),
      runs,
    );
  });

  test('[OP16] every interval holds its middle, and nothing is negative or endless', () => {
    law(
      fc.property(questionArb, ({ options, ...more }) => {
        for (const { figures } of answered({ ...more, options: named(options) }).ranked) {
          assert(figures, 'what is ranked has figures');
          for (const { low, middle, high } of [figures.lifeHours, figures.costPerHour]) {
            expect(low).toBeGreaterThan(0);
            expect(middle).toBeGreaterThanOrEqual(low);
            expect(high).toBeGreaterThanOrEqual(middle);
            expect(high).toBeLessThan(Infinity);
          }
          expect(figures.yearlyMinor).toBeGreaterThan(0);
        }
      }),
      runs,
    );
  });
});

describe('[N11] what an option costs', () => {
  const rate = (minor: number) => ({ minor, source: entered });
  const rates: Rates = {
    v: 1,
    name: 'made up',
    currency: 'EUR',
    labourPerHour: rate(10_000),
    callOut: rate(0),
    liftSide: rate(0),
    trackOffSide: rate(0),
    downtimePerHour: rate(0),
    breakdown: rate(0),
  };
  const { pricesFor } = asked({ options: {} });
  const withRates = { pricesFor: (track: (typeof trackKinds)[number]) => ({ ...pricesFor(track), rates }) };
  const only = (option: Option, use: Use = {}) => {
    const { figures } = answerTo(answered({ ...withRates, use, options: { only: option } }), 'only');
    assert(figures, 'it is priced');
    return figures;
  };

  test('[CV-62] two tracks at 1,400 and 300 of labour over 1,300 h: 2.385 an hour, besides wear on the rest', () => {
    const { perHour, costPerHour } = only(
      optionOf('rubber-cored', { ...priced(140_000), fittingHours: 1.5, life: { hours: 1300 } }),
    );
    expect((perHour.tracks + perHour.fitting) / 100).toBeCloseTo(2.385, 3);
    expect(costPerHour.middle).toBeCloseTo(perHour.tracks + perHour.fitting + perHour.rest, 9);
    expect(perHour.rest).toBeGreaterThan(0);
  });

  test('[CV-56] 100,000 every 10 years at 7 % are 14,237.75 a year, besides wear on the rest', () => {
    const use = { hoursAYear: 1000, own: { ratePercent: 7, rubberYears: 50 } };
    const option = optionOf('rubber-cored', {
      ...priced(5_000_000),
      fittingHours: 0,
      life: { hours: 10_000 },
    });
    const { yearlyMinor = 0, perHour } = only(option, use);
    expect((yearlyMinor - perHour.rest * 1000) / 100).toBeCloseTo(14_237.75, 2);
  });

  test('[OP17] without interest a year costs its hours', () => {
    const { yearlyMinor, costPerHour } = only(optionOf('steel', priced(200_000)), {
      hoursAYear: 800,
      own: { ratePercent: 0 },
    });
    expect(yearlyMinor).toBeCloseTo(costPerHour.middle * 800, 6);
  });

  test('[OP18] a change of kind is paid at once and spread over the time that the machine is kept', () => {
    const at = (horizonYears: number) =>
      answerTo(
        answered({
          current: rubberNow,
          use: { hoursAYear: 500, own: { horizonYears } },
          options: { ...rubberOrSteel, own: optionOf('steel', { ...priced(150_000), besidesMinor: 40_000 }) },
        }),
        'own',
      ).figures;
    expect(at(4)?.perHour.besides).toBeCloseTo(20, 9);
    expect(at(8)?.perHour.besides).toBeCloseTo(10, 9);
    const { cost, outlayMinor } = at(4) ?? {};
    expect(outlayMinor).toBe((cost?.tracksMinor ?? 0) + (cost?.fittingMinor ?? 0) + 40_000);
  });

  test('[OP19] the dearer one pays back after what it costs more at once, over what it saves an hour', () => {
    const result = answered({
      ...withRates,
      options: {
        cheap: optionOf('rubber-cored', { ...priced(100_000), fittingHours: 0, life: { hours: 1000 } }),
        dear: optionOf('rubber-cored', { ...priced(150_000), fittingHours: 0, life: { hours: 3000 } }),
        poor: optionOf('rubber-cored', { ...priced(150_000), fittingHours: 0, life: { hours: 1000 } }),
      },
    });
    const [cheap, dear, poor] = ['cheap', 'dear', 'poor'].map((id) => answerTo(result, id).figures);
    assert(cheap && dear && poor, 'all are priced');
    expect(cheap.payBack).toEqual({ kind: 'cheapest-to-buy' });
    const saved = cheap.costPerHour.middle - dear.costPerHour.middle;
    expect(dear.payBack).toEqual({ kind: 'after', hours: 100_000 / saved, than: 'cheap' });
    expect(poor.payBack).toEqual({ kind: 'never', than: 'cheap' });
  });

  test('[OP20] a price that nobody gave is drawn as unsure, one that somebody gave is not', () => {
    expect(only(optionOf('rubber-cored', priced(100_000))).cost.priceSpread).toBe(0);
    expect(only(optionOf('rubber-cored')).cost.priceSpread).toBeGreaterThan(0);
  });

  test('[OP21] without rates, or a price that counts, there is no cost', () => {
    const without = (pricing: object) => {
      const input = asked({ options: rubberOrSteel });
      const prices = input.pricesFor('steel');
      const result = optionsFor({ ...input, pricesFor: () => ({ ...prices, ...pricing }) });
      expect(result.choice.kind).toBe('default');
      return answerTo(result, 'steel').open;
    };
    expect(without({ rates: undefined })).toEqual({ kind: 'no-rates' });
    expect(without({ prices: undefined, starting: undefined })).toEqual({
      kind: 'no-price',
      job: 'renew-chain',
    });
  });

  test('[OP22] pads that are changed while the chain lasts are counted', () => {
    const result = answered({ options: { steel: optionOf('steel'), pads: optionOf('steel-pads') } });
    const [steel, pads] = ['steel', 'pads'].map((id) => answerTo(result, id).figures?.perHour.parts ?? 0);
    expect(pads).toBeGreaterThan((steel ?? 0) * 5);
  });
});

describe('[N11] the rest of the undercarriage', () => {
  const line = (job: JobKind) => {
    const { prices, rates } = asked({ options: {} }).pricesFor('rubber-cored');
    const found = prices && priceLine(prices, job);
    assert(found && rates, 'the starting list has it');
    return found.minor + found.labourHours * rates.labourPerHour.minor;
  };
  const { bottomRollers, idlers, carrierRollers } = mini.shape;
  const wheels =
    2 *
    (bottomRollers * line('renew-bottom-roller') +
      idlers * line('renew-idler') +
      carrierRollers * line('renew-carrier-roller'));
  const { figures: starting } = answered({ options: rubberOrSteel });

  test.each([
    ['rubber', 1, starting.sprocketSetsRubber.value],
    ['steel', starting.restOnSteel.value, starting.sprocketSetsSteel.value],
  ] as const)(
    '[OP28] %s bears its share of rollers, idlers and sprockets of both sides',
    (id, share, sets) => {
      const { figures } = answerTo(answered({ options: rubberOrSteel }), id);
      assert(figures, 'it is priced');
      const hours = Math.sqrt(4000 * 15_000) * share;
      const sprockets = (2 * line('renew-sprocket')) / (sets * figures.life.wearHours);
      expect(figures.perHour.rest).toBeCloseTo(wheels / hours + sprockets, 9);
    },
  );

  test('[OP29] what a change of kind needs is paid for both sides, part by part', () => {
    const changed = answerTo(answered({ current: rubberNow, options: rubberOrSteel }), 'steel');
    expect(changed.figures?.cost.besides).toEqual([
      { part: 'sprocket', minor: 2 * line('renew-sprocket') },
      { part: 'bottom-roller', minor: 2 * bottomRollers * line('renew-bottom-roller') },
      { part: 'idler', minor: 2 * idlers * line('renew-idler') },
    ]);
    const alone = answerTo(answered({ options: rubberOrSteel }), 'steel');
    expect(alone.figures?.cost.besides).toEqual([]);
  });

  test('[OP39] the machine’s own list counts before the starting list', () => {
    const input = asked({ options: { steel: optionOf('steel') } });
    const chain = { job: 'renew-chain', minor: 77_000, labourHours: 1, source: entered };
    const given = input.pricesFor('steel');
    assert(given.prices && given.starting, 'there are lists');
    const prices = { ...given.prices, lines: [...given.prices.lines, chain] };
    const answer = answerTo(optionsFor({ ...input, pricesFor: () => ({ ...given, prices }) }), 'steel');
    const shoes = priceLine(given.starting, 'renew-shoes')?.minor ?? 0;
    expect(answer.figures?.cost.tracksMinor).toBe(2 * (77_000 + shoes));
  });

  test('[OP72] no starting list stands in for one that the machine names and that cannot be used', () => {
    const input = asked({ options: rubberOrSteel });
    const openWith = (more: object) => {
      const pricesFor = () => ({ ...input.pricesFor('steel'), ...more });
      return answerTo(optionsFor({ ...input, pricesFor }), 'steel').open;
    };
    const { prices } = input.pricesFor('steel');
    expect(openWith({ prices: { ...prices, currency: 'GBP' } })).toEqual({
      kind: 'two-currencies',
      prices: 'GBP',
      rates: 'EUR',
    });
    const gone = { kind: 'not-here', key: 'price/gone' };
    expect(openWith({ prices: undefined, open: [gone] })).toEqual(gone);
    // A machine without any list has the starting one.
    expect(openWith({ prices: undefined, open: [{ kind: 'no-prices' }] })).toBeUndefined();
  });
});

describe('[N11] which tracks are chosen', () => {
  test('[OP23] what does not fit is not ranked, and stands with its reasons', () => {
    const result = answered({ options: rubberOrSteel, use: { takesSteel: false, ground: { rock: 1 } } });
    expect(result.choice).toEqual({ kind: 'only', id: 'rubber' });
    expect(result.others.map(({ id }) => id)).toEqual(['steel']);
  });

  test('[OP24] where nothing fits, or nothing has a cost, that is said', () => {
    const none = answered({ options: { steel: optionOf('steel') }, use: { takesSteel: false } });
    expect(none.choice).toEqual({ kind: 'none-fits' });
    const foreign = answered({ options: { a: optionOf('rubber-cored', priced(1, 'USD')) } });
    expect(foreign.choice).toEqual({ kind: 'no-figures' });
  });

  test.each<[string, Parameters<typeof answered>[0]]>([
    ['on a machine that is heavier', { options: rubberOrSteel, machine: { ...mini, massKg: 12_000 } }],
    ['on a dozer', { options: rubberOrSteel, machine: { ...mini, kind: 'dozer' } }],
    ['where steel is on now', { options: rubberOrSteel, current: { track: 'steel' } }],
    ['where no rubber track is among the options', { options: { steel: optionOf('steel') } }],
  ])('[OP25] nothing is proposed by default %s', (_, question) => {
    const result = answered(question);
    expect(result.default).toBeUndefined();
    expect(result.choice.kind).not.toBe('default');
  });

  test('[OP99] sharp rock on ground that is not known is something known of the work', () => {
    const { choice, default: usual } = answered({ options: rubberOrSteel, use: { sharp: true } });
    expect([choice.kind === 'default', usual?.ids]).toEqual([false, ['rubber']]);
  });

  test('[OP26] the default stands beside two that are too close to call', () => {
    const result = answered({ options: rubberOrSteel, use: { ground: { mixed: 100 } } });
    expect(result.choice).toEqual({ kind: 'too-close', ids: ['steel', 'rubber'] });
    expect(result.default?.ids).toEqual(['rubber']);
  });

  test('[OP27] two of one kind that share what is not known are told apart by half in price', () => {
    const options = {
      cheap: optionOf('rubber-cored', priced(100_000)),
      dear: optionOf('rubber-cored', priced(150_000)),
    };
    const result = answered({ options, use: { ground: { mixed: 100 } } });
    expect(result.choice).toEqual({ kind: 'first', id: 'cheap', runnerUp: 'dear' });
    const [{ figures } = { figures: undefined }, other] = result.ranked;
    // Each alone is so unsure that their intervals overlap widely.
    expect(figures?.costPerHour.high).toBeGreaterThan(other?.figures?.costPerHour.low ?? Infinity);
  });
});
