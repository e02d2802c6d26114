import { describe, expect, test } from 'vitest';
import fc from 'fast-check';
import { enoughHistories, learn, learnPrior, lessonOf } from '../../src/core/fleet.ts';
import { passageOf } from '../../src/core/passage.ts';
import { assert } from '../../src/core/result.ts';
import { filterWear, momentsOf, rateLikelihood, type WearEvent } from '../../src/core/wear-filter.ts';
import { priorOf } from '../../src/core/life.ts';

const prior = { centre: Math.log(100 / 1500), spread: 0.4 };
const model = { prior, kappa: 1 };

const fitted = (hours = 0, percent = 0, u = 2): WearEvent => ({ kind: 'fitted', hours, percent, u });
const read = (hours: number, percent: number, u = 2.5): WearEvent => ({ kind: 'read', hours, percent, u });
const stepped = (hours: number): WearEvent => ({ kind: 'stepped', hours });

const passage = (...events: WearEvent[]) => {
  const state = filterWear(events, model);
  assert(state, 'a wear');
  return passageOf(state);
};
const middle = (...events: WearEvent[]): number => passage(...events).quantile(0.5);

/** Readings at rising hours, among them the same hours twice, better than new and past the limit. */
const histories = fc
  .array(
    fc.record({
      hours: fc.integer({ min: 0, max: 800 }),
      percent: fc.double({ min: -30, max: 180, noNaN: true }),
      u: fc.double({ min: 0.3, max: 15, noNaN: true }),
    }),
    { minLength: 1, maxLength: 8 },
  )
  .map((steps) => {
    let at = 0;
    return steps.map(({ hours, percent, u }) => read((at += hours), percent, u));
  });

describe('[N6] the filter', () => {
  test('[F10] nothing known of the wear at the end is no state', () => {
    expect(filterWear([], model)).toBeUndefined();
    expect(filterWear([fitted(), stepped(100)], model)).toBeUndefined();
  });

  test('[F11] without a reading the rate is the prior’s', () => {
    const state = filterWear([fitted()], model);
    assert(state, 'a state');
    expect(momentsOf(state).mean).toBeCloseTo(prior.centre, 2);
    expect(state.surprise).toBe(0.5);
  });

  test('[F12] one reading of a part whose fitting is unknown says nothing of the rate', () => {
    const state = filterWear([read(700, 40)], model);
    assert(state, 'a state');
    expect(momentsOf(state).mean).toBeCloseTo(prior.centre, 2);
    expect([...state.means].every((mean) => mean === 40)).toBe(true);
  });

  test('[F13] a new fitting forgets the rate, a step keeps it and forgets the wear', () => {
    const before = [fitted(), read(500, 60), read(800, 96)];
    const anew = filterWear([...before, fitted(900)], model);
    const turned = filterWear([...before, stepped(900), read(900, 10)], model);
    assert(anew && turned, 'states');
    expect(momentsOf(anew).mean).toBeCloseTo(prior.centre, 2);
    expect(momentsOf(turned).mean).toBeCloseTo(Math.log(0.115), 1);
    expect([...turned.means].every((mean) => mean === 10)).toBe(true);
  });

  test('[F14] a reading far above what was to be expected surprises near 1, far below near 0', () => {
    const state = (percent: number) =>
      filterWear([fitted(), read(300, 20), read(400, percent)], model)?.surprise;
    expect(state(27)).toBeGreaterThan(0.2);
    expect(state(27)).toBeLessThan(0.8);
    expect(state(80)).toBeGreaterThan(0.999);
    expect(state(-15)).toBeLessThan(0.001);
  });

  test('[F15] whatever is read, nothing is NaN, weights sum to 1 and the interval is in order', () => {
    fc.assert(
      fc.property(histories, fc.boolean(), (events, isFitted) => {
        const state = filterWear(isFitted ? [fitted(), ...events] : events, model);
        assert(state, 'a state');
        expect(state.weights.reduce((sum, each) => sum + each, 0)).toBeCloseTo(1, 9);
        for (const values of [state.rates, state.means, state.variances])
          expect([...values].every(Number.isFinite)).toBe(true);
        expect(state.surprise).toBeGreaterThanOrEqual(0);
        expect(state.surprise).toBeLessThanOrEqual(1);
        const { quantile, within } = passageOf(state);
        const shares = [0.1, 0.5, 0.9].map(quantile);
        expect(shares.some(Number.isNaN)).toBe(false);
        expect([...shares].sort((a, b) => a - b)).toEqual(shares);
        const chances = [0, 1, 10, 100, 1000, 1e4, 1e6].map(within);
        chances.forEach((chance, at) => expect(chance).toBeGreaterThanOrEqual((chances[at - 1] ?? 0) - 1e-9));
        expect(chances.every((chance) => chance >= 0 && chance <= 1)).toBe(true);
      }),
      { numRuns: 300 },
    );
  });

  test('[F16] more wear at the same hours never leaves more hours', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 5, max: 95, noNaN: true }),
        fc.double({ min: 0, max: 20, noNaN: true }),
        fc.integer({ min: 100, max: 3000 }),
        (percent, more, hours) => {
          const [less, worse] = [
            middle(fitted(), read(hours, percent)),
            middle(fitted(), read(hours, percent + more)),
          ];
          expect(worse).toBeLessThanOrEqual(less * (1 + 1e-6));
        },
      ),
    );
  });

  test('[F17] the last bits of a reading, in which engines differ, move no hour', () => {
    fc.assert(
      fc.property(histories, (events) => {
        const nudged = events.map((event) =>
          event.kind === 'read'
            ? { ...event, percent: event.percent * (1 + 2e-16), u: event.u * (1 - 2e-16) }
            : event,
        );
        const [one, other] = [events, nudged].map((each) => middle(...each));
        expect(Math.abs((one ?? 0) - (other ?? 0))).toBeLessThan(1e-3 * Math.max(1, Math.min(one ?? 0, 1e4)));
      }),
    );
  });
});

describe('[N6] first passage', () => {
  test('[F18] the quantile inverts the chance', () => {
    for (const events of [
      [fitted(), read(600, 30)],
      [read(600, 92, 4)],
      [fitted(), read(100, 5), read(900, 70)],
    ]) {
      const { within, quantile } = passage(...events);
      for (const share of [0.1, 0.25, 0.5, 0.75, 0.9]) {
        const hours = quantile(share);
        if (hours > 0) expect(within(hours)).toBeCloseTo(share, 5);
        else expect(within(0)).toBeGreaterThanOrEqual(share);
      }
    }
  });

  test('[F19] what is surely past the limit has no hours left, what never wears has no end', () => {
    expect(middle(read(1000, 140, 1))).toBe(0);
    const state = filterWear([fitted(), read(1000, 50)], model);
    assert(state, 'a state');
    expect(passageOf(state, 1e9).quantile(0.5)).toBe(Infinity);
    expect(passageOf({ ...state, means: state.means.map(() => -1e9) }).within(1000)).toBe(0);
  });

  test('[F20] a further limit is reached later', () => {
    const state = filterWear([fitted(), read(600, 40)], model);
    assert(state, 'a state');
    expect(passageOf(state, 120).quantile(0.5)).toBeGreaterThan(passageOf(state, 100).quantile(0.5));
  });
});

describe('[N6] what a life figure stands for', () => {
  test('[F21] eight of ten parts of its prior last between its low and high hours', () => {
    const figure = {
      id: 'x',
      items: [],
      lowHours: 800,
      highHours: 2000,
      source: { mark: 'estimate', text: '' },
    } as const;
    const { centre, spread } = priorOf(figure);
    // 90 % point of Student t with three degrees of freedom: 1.6377 (Abramowitz and Stegun, table 26.10).
    expect(100 / Math.exp(centre + 1.6377 * spread)).toBeCloseTo(800, 0);
    expect(100 / Math.exp(centre - 1.6377 * spread)).toBeCloseTo(2000, 0);
    expect(priorOf(figure, 0.7).centre - centre).toBeCloseTo(-Math.log(0.7), 12);
  });
});

describe('[N6] learning from the own fleet', () => {
  const part = (hoursOfLife: number, n: number): readonly WearEvent[] => [
    fitted(),
    read(300, (30_000 / hoursOfLife) * (1 + 0.02 * (n % 3))),
    read(600, (60_000 / hoursOfLife) * (1 - 0.02 * (n % 3))),
  ];
  const logs = (lives: readonly number[]) => lives.map((each, n) => rateLikelihood(part(each, n), 1));

  test('[F22] fewer than ten histories teach nothing', () => {
    const lives = Array<number>(enoughHistories - 1).fill(900);
    expect(learnPrior(logs(lives))).toBeUndefined();
    expect(learnPrior(logs([...lives, 900]))).toBeDefined();
  });

  test('[F23] ten alike teach their rate and a narrow spread, ten unlike a wide one', () => {
    const alike = learnPrior(logs(Array<number>(12).fill(900)));
    const unlike = learnPrior(logs([300, 400, 500, 700, 900, 900, 1200, 1600, 2100, 2700, 900, 900]));
    assert(alike && unlike, 'priors');
    expect(100 / Math.exp(alike.centre)).toBeGreaterThan(800);
    expect(100 / Math.exp(alike.centre)).toBeLessThan(1000);
    expect(alike.spread).toBeGreaterThan(0.12);
    expect(alike.spread).toBeLessThan(0.16);
    expect(unlike.spread).toBeGreaterThan(0.3);
  });

  test('[F25] what few histories leave open of middle and spread is part of the spread', () => {
    const lives = [700, 800, 900, 1000, 1150];
    const [ten, fifty] = [2, 10].map((times) =>
      learnPrior(logs(Array(times).fill(lives).flat() as number[])),
    );
    assert(ten && fifty, 'priors');
    expect(ten.spread).toBeGreaterThan(fifty.spread * 1.1);
    expect(Math.abs(ten.centre - fifty.centre)).toBeLessThan(0.02);
  });

  test('[F26] like parts of one machine teach as one, and fewer than three machines nothing', () => {
    const rollers = (lives: readonly number[]) => ({
      parts: lives.map((hours, n) => ({
        item: { id: 'roller-tread' },
        figure: { id: 'rollers' },
        events: part(hours, n),
        earlier: [],
        lives: [],
        faults: [],
      })) as unknown as Parameters<typeof lessonOf>[0]['parts'],
    });
    const one = lessonOf(rollers(Array<number>(8).fill(900)), 1);
    expect(one.paces.map(({ figure, histories }) => [figure, histories])).toEqual([['rollers', 8]]);
    expect(one.paces[0]?.logs).toHaveLength(61);
    expect(learn([one, one]).rates.size).toBe(0);
    expect([...learn([one, one]).counts]).toEqual([['rollers', 16]]);
    const three = learn([one, one, one]).rates.get('rollers');
    const apart = learnPrior(Array<Float64Array>(24).fill(rateLikelihood(part(900, 0), 1)));
    expect(three?.spread).toBeGreaterThan((apart?.spread ?? 0) * 1.5);
  });

  test('[F27] parts that were there before teach as a history of their own', () => {
    const before = [
      {
        item: { id: 'lug-depth' },
        figure: { id: 'x' },
        events: part(900, 0),
        earlier: [part(800, 0)],
        lives: [],
        faults: [],
      },
    ];
    const { paces } = lessonOf({ parts: before as unknown as Parameters<typeof lessonOf>[0]['parts'] }, 1);
    expect(paces.map(({ histories }) => histories)).toEqual([1, 1]);
    const likeliest = paces.map(({ logs: each }) => each.indexOf(Math.max(...each)));
    expect(likeliest[1]).toBeGreaterThanOrEqual(likeliest[0] ?? NaN);
  });

  test('[F24] lessons go by life figure; broken tracks teach their own Weibull from three on', () => {
    const pace = (figure: string) => ({ figure, logs: [...rateLikelihood(part(900, 0), 1)], histories: 1 });
    const lives = [400, 500, 650, 800, 900, 1000, 1100, 1200, 1300, 1400];
    const lesson = (broken: number) => ({
      paces: [pace('one'), pace('other')],
      lives: lives.map((hours, n) => ({ hours, broke: n < broken })),
    });
    const learnt = learn([
      ...Array<ReturnType<typeof lesson>>(9).fill({ ...lesson(0), lives: [] }),
      lesson(3),
    ]);
    expect([...learnt.counts]).toEqual([
      ['one', 10],
      ['other', 10],
    ]);
    expect([...learnt.rates.keys()]).toEqual(['one', 'other']);
    expect(learnt.damage?.scale).toBeGreaterThan(800);
    expect(learn([lesson(2)]).damage).toBeUndefined();
    expect(learn([lesson(2)]).rates.size).toBe(0);
    expect(lessonOf({ parts: [] }, 1)).toEqual({ paces: [], lives: [] });
  });
});
