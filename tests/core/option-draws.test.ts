import { describe, expect, test } from 'vitest';
import { draws, eightOfTen, middleDraw, swapped } from '../../src/core/option-draws.ts';
import { optionFlips, type FlipCase } from '../../src/core/option-flips.ts';
import { learntLife } from '../../src/core/option-learnt.ts';
import { ninety } from '../../src/core/option-life.ts';
import { commonSpreads, reckon, yearly } from '../../src/core/option-reckon.ts';
import { figuresFor } from '../../src/core/option-tables.ts';
import { assert } from '../../src/core/result.ts';
import type { Use } from '../../src/core/use.ts';
import { optionTables } from '../../src/reference/option-tables.ts';
import { randomOf } from '../checks/random.ts';
import { demoMap, mini as miniWalk, outlookAt, steel as steelWalk } from './ahead-made.ts';
import { answered, answerTo, optionOf, priced, rubberOrSteel } from './options-made.ts';

const each = {
  life: draws.map(({ life }) => life),
  damage: draws.map(({ damage }) => damage),
  rest: draws.map(({ rest }) => rest),
  steel: draws.map(({ steel }) => steel),
  'own life': draws.map(({ own }) => own[0].life),
  'own price': draws.map(({ own }) => own[0].price),
  'the other’s life': draws.map(({ own }) => own[1].life),
  'the other’s price': draws.map(({ own }) => own[1].price),
};
const series = Object.entries(each);
const meanOf = (values: readonly number[]): number => values.reduce((sum, x) => sum + x, 0) / values.length;
const dot = (a: readonly number[], b: readonly number[]): number =>
  meanOf(a.map((x, at) => x * (b[at] ?? 0)));

describe('[N11] what is drawn for what is not known', () => {
  test.each(series)('[OP75] %s is as a normal deviate is', (_, values) => {
    expect(meanOf(values)).toBeCloseTo(0, 1);
    expect(dot(values, values)).toBeGreaterThan(0.9);
    expect(dot(values, values)).toBeLessThan(1.1);
    const [low, high] = eightOfTen(Float64Array.from(values));
    expect(Math.abs(low + ninety)).toBeLessThan(0.1);
    expect(Math.abs(high - ninety)).toBeLessThan(0.1);
  });

  test('[OP76] no two of them go together', () => {
    for (const [a, one] of series)
      for (const [b, other] of series)
        if (a < b) expect([a, b, Math.abs(dot(one, other)) < 0.05]).toEqual([a, b, true]);
  });

  test('[OP77] cases come in pairs in which the two options change places and nothing else does', () => {
    draws.forEach((draw, at) => {
      const partner = draws[swapped(at)];
      expect(partner).toEqual({ ...draw, own: [draw.own[1], draw.own[0]] });
    });
  });

  test('[OP78] eight of ten: as many cases are cut off below as above', () => {
    expect(eightOfTen(Float64Array.from({ length: 20 }, (_, n) => 19 - n))).toEqual([2, 17]);
  });

  test('[OP79] two makes are drawn apart, the job for both at once', () => {
    const at = (makeSpread: number) => {
      const use = { ground: { mixed: 1 }, own: { makeSpread, priceSpread: 1 } };
      const [only] = answered({ use, options: { a: optionOf('steel'), b: optionOf('steel') } }).comparisons;
      assert(only, 'two are compared');
      return only.difference.high - only.difference.low;
    };
    expect(at(1)).toBe(0);
    expect(at(1.2)).toBeGreaterThan(0);
    expect(at(1.5)).toBeGreaterThan(at(1.2));
  });
});

describe('[N11] the fixed cases against chance', () => {
  const many = 40_000;
  const { normal } = randomOf(11);
  const chance = Array.from({ length: many }, () => ({
    life: normal(),
    damage: normal(),
    rest: normal(),
    steel: normal(),
    own: [
      { life: normal(), price: normal() },
      { life: normal(), price: normal() },
    ] as const,
  }));
  const running = { hoursAYear: 600, horizonYears: 5, rate: 0.06 };

  test.each<[string, Use]>([
    ['mixed ground', { ground: { mixed: 100 } }],
    ['sharp rock', { ground: { rock: 100 }, sharp: true }],
    ['ground that nobody knows', {}],
  ])(
    '[OP71] on %s the interval of a difference is within a tenth of its width of that of 40,000 chances',
    (_, use) => {
      const { ranked, comparisons, figures } = answered({ use, options: rubberOrSteel });
      const [first, second] = ranked.map((each) => each.figures);
      const [compared] = comparisons;
      assert(first && second && compared, 'both are ranked');
      const spreads = commonSpreads(figures);
      const differences = chance.map(
        (draw) =>
          reckon(first, running, spreads, draw, draw.own[0]).total -
          reckon(second, running, spreads, draw, draw.own[1]).total,
      );
      const [low, high] = eightOfTen(Float64Array.from(differences));
      const { difference } = compared;
      expect(Math.abs(difference.low - low)).toBeLessThan((high - low) / 10);
      expect(Math.abs(difference.high - high)).toBeLessThan((high - low) / 10);
    },
  );
});

describe('[N11] what would put two options the other way round', () => {
  const figures = figuresFor(optionTables, 'excavator');
  const spreads = commonSpreads(figures);
  const use = { ground: { mixed: 80, rock: 20 }, hoursAYear: 700, takesSteel: true };
  const sharp = { ...use, ground: { mixed: 100 }, sharp: true };
  const asFor = (work: Use, minor = 150_000) =>
    answered({
      use: work,
      current: { track: 'rubber-cored' },
      options: { rubber: optionOf('rubber-cored', priced(minor)), steel: optionOf('steel', priced(230_000)) },
    });
  const result = asFor(use);
  const [first, second] = result.ranked;
  const flipOf = (input: string, option?: string) =>
    result.flips.find((flip) => flip.input === input && flip.option === option);

  test.each(['rubber', 'steel'])('[OP80] at the price that is named for %s both cost the same', (id) => {
    const at = flipOf('price', id)?.at;
    assert(at !== undefined, 'a price flips it');
    const changed = Object.fromEntries(
      result.ranked.map((answer) => [
        answer.id,
        answer.id === id ? { ...answer.option, ...priced(at) } : answer.option,
      ]),
    );
    const again = answered({ use, current: { track: 'rubber-cored' }, options: changed });
    const [one, other] = ['rubber', 'steel'].map(
      (each) => answerTo(again, each).figures?.costPerHour.middle ?? 0,
    );
    expect(one).toBeCloseTo(other ?? 0, 6);
  });

  test.each([
    ['hours-a-year', use, 150_000, (at: number) => ({ ...use, hoursAYear: at })],
    ['rock-share', sharp, 100_000, (at: number) => ({ ...sharp, ground: { mixed: 100 - at, rock: at } })],
  ] as const)('[OP81] at the %s that is named both cost the same', (input, now, minor, changed) => {
    const at = asFor(now, minor).flips.find((flip) => flip.input === input)?.at;
    assert(at !== undefined, 'it flips');
    const again = asFor(changed(at), minor);
    const [one, other] = ['rubber', 'steel'].map(
      (id) => answerTo(again, id).figures?.costPerHour.middle ?? 0,
    );
    expect(one).toBeCloseTo(other ?? 0, 3);
  });

  test('[OP82] a life that is named lies on the way to the other one winning', () => {
    assert(first && second, 'two are ranked');
    const [mine, theirs] = [flipOf('life', first.id), flipOf('life', second.id)];
    expect(mine?.at).toBeLessThan(mine?.now ?? 0);
    expect(theirs?.at).toBeGreaterThan(theirs?.now ?? Infinity);
  });

  test('[OP83] the input that decides stands first', () => {
    expect(result.flips.length).toBeGreaterThan(2);
    const order = result.flips.map(({ farness }) => farness);
    expect(order).toEqual([...order].sort((a, b) => a - b));
  });

  test('[OP84] an own life says nothing of other ground', () => {
    const own = answered({
      use,
      options: { rubber: optionOf('rubber-cored', { life: { hours: 1000 } }), steel: optionOf('steel') },
    });
    expect(own.flips.map(({ input }) => input)).not.toContain('rock-share');
  });

  test('[OP85] with one option nothing can flip', () => {
    expect(answered({ use, options: { steel: optionOf('steel') } }).flips).toEqual([]);
  });

  test('[OP86] tracks that cost nothing have no price that flips them', () => {
    const { figures: of } = answerTo(answered({ use, options: rubberOrSteel }), 'rubber');
    assert(of, 'it is priced');
    const free = { life: of.life, cost: { ...of.cost, tracksMinor: 0 } };
    const flips = optionFlips({
      first: { id: 'a', ...free },
      second: { id: 'b', ...free },
      running: { hoursAYear: 700, horizonYears: 5, rate: 0.06 },
      spreads,
      rockShare: 0,
      rubberYears: 8,
      atRockShare: () => [free, free],
    } satisfies FlipCase);
    expect(flips.map(({ input }) => input)).not.toContain('price');
  });

  test('[OP87] a rate at which money is worth nothing has no cost a year', () => {
    const { figures: of } = answerTo(answered({ use, options: rubberOrSteel }), 'rubber');
    assert(of, 'it is priced');
    const running = { hoursAYear: 700, horizonYears: 5, rate: -1 };
    const reckoned = reckon(of, running, spreads, middleDraw, middleDraw.own[0]);
    expect(yearly(of, reckoned, running)).toBeUndefined();
  });
});

describe('[N11] what the machine’s own walks show', () => {
  const partsAt = (walk: typeof miniWalk) => outlookAt(demoMap(), walk).hours.parts;

  test('[OP88] the side that is done first tells how long tracks last', () => {
    const parts = partsAt(miniWalk);
    const learnt = learntLife('rubber-cored', parts, { ground: 'mixed' });
    assert(learnt, 'three walks tell');
    expect(learnt.hours).toBeGreaterThan(500);
    expect(learnt.hours).toBeLessThan(1300);
    expect(learnt.spread).toBeGreaterThan(0);
    const sides = parts.filter(({ history }) => history.item.id === 'lug-depth');
    const lives = sides.map((part) => learntLife('rubber-cored', [part], {})?.hours ?? 0);
    expect(learnt.hours).toBe(Math.min(...lives));
  });

  test('[OP89] steel goes by its links and pitch, and rubber readings tell nothing of it', () => {
    expect(learntLife('steel', partsAt(steelWalk), {})?.hours).toBeGreaterThan(2000);
    expect(learntLife('steel', partsAt(miniWalk), {})).toBeUndefined();
  });

  test('[OP90] one reading says more of the book than of the machine', () => {
    const [part] = partsAt(miniWalk).filter(({ history }) => history.item.id === 'lug-depth');
    assert(part, 'there is one');
    const once = { ...part, history: { ...part.history, points: part.history.points.slice(0, 1) } };
    expect(learntLife('rubber-cored', [once], {})).toBeUndefined();
  });
});
