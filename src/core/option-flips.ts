import { reckon, type CommonSpreads, type Priceable, type Running } from './option-reckon.ts';
import { middleDraw, middleOwn } from './option-draws.ts';
import { spreadOf } from './option-life.ts';

/** What would put two options the other way round: one input, with the rest as it is. */
export interface OptionFlip {
  readonly input: 'life' | 'price' | 'hours-a-year' | 'rock-share';
  /** The option whose life or price it is. */
  readonly option?: string;
  /** Hours, minor units a side, hours a year, or percent. */
  readonly now: number;
  readonly at: number;
  /** How far off that is, in units of what is not known of it: the smallest decides. */
  readonly farness: number;
}

/** Two options and what their cost hangs on, as the search changes it. */
export interface FlipCase {
  readonly first: Priceable & { readonly id: string };
  readonly second: Priceable & { readonly id: string };
  readonly running: Running;
  readonly spreads: CommonSpreads;
  readonly rockShare: number;
  /** Years after which rubber is old. */
  readonly rubberYears: number;
  /** Both as they would be with so many percent of rock. */
  readonly atRockShare: (percent: number) => readonly [Priceable, Priceable];
}

/** What nobody has measured varies by about this factor, eight times of ten: our estimate, it only puts flips in order. */
const looseFactor = { price: 1.1, hoursAYear: 1.4 };
const loosePercent = 25;

const totalOf = (of: Priceable, running: Running, spreads: CommonSpreads): number =>
  reckon(of, running, spreads, middleDraw, middleOwn).total;

/** Enough for a millionth of a step of any grid below. */
const halvings = 20;

/** Where a function crosses 0 between two places with different signs. */
function crossing(f: (x: number) => number, from: number, to: number): number {
  let [low, high] = [from, to];
  const isPositive = f(low) > 0;
  for (let n = 0; n < halvings; n += 1) {
    const middle = (low + high) / 2;
    if (f(middle) > 0 === isPositive) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** The crossing nearest to `now` on the grid, if there is any. */
function nearest(f: (x: number) => number, now: number, grid: readonly number[]): number | undefined {
  const isPositive = f(now) > 0;
  const found = [grid.filter((x) => x > now), grid.filter((x) => x < now).reverse()].flatMap((way) => {
    const at = way.findIndex((x) => f(x) > 0 !== isPositive);
    const end = way[at];
    return end === undefined ? [] : [crossing(f, way[at - 1] ?? now, end)];
  });
  return found.sort((a, b) => Math.abs(a - now) - Math.abs(b - now))[0];
}

const factors = Array.from({ length: 17 }, (_, n) => 10 ** ((n - 8) / 8));
const hoursGrid = Array.from({ length: 16 }, (_, n) => 50 * 80 ** (n / 15));
const percentGrid = Array.from({ length: 11 }, (_, n) => 10 * n);

type Which = 'first' | 'second';

function lifeFlip(of: FlipCase, which: Which): readonly OptionFlip[] {
  const { running, spreads } = of;
  const mine = of[which];
  const other = totalOf(of[which === 'first' ? 'second' : 'first'], running, spreads);
  const longer = (factor: number): Priceable => ({
    ...mine,
    life: { ...mine.life, wearHours: mine.life.wearHours * factor },
  });
  const factor = nearest((x) => totalOf(longer(x), running, spreads) - other, 1, factors);
  if (factor === undefined) return [];
  const hoursOf = (x: number): number => reckon(longer(x), running, spreads, middleDraw, middleOwn).lifeHours;
  const farness = Math.abs(Math.log(factor)) / Math.max(mine.life.spread, 1e-9);
  return [{ input: 'life', option: mine.id, now: hoursOf(1), at: hoursOf(factor), farness }];
}

function priceFlip(of: FlipCase, which: Which): readonly OptionFlip[] {
  const { running, spreads } = of;
  const mine = of[which];
  const { perHour, total } = reckon(mine, running, spreads, middleDraw, middleOwn);
  const other = totalOf(of[which === 'first' ? 'second' : 'first'], running, spreads);
  const factor = 1 + (other - total) / perHour.tracks;
  if (!(factor > 0 && factor < 10)) return [];
  const now = mine.cost.tracksMinor / 2;
  const spread = mine.cost.priceSpread || spreadOf(looseFactor.price);
  const farness = Math.abs(Math.log(factor)) / spread;
  return [{ input: 'price', option: mine.id, now, at: now * factor, farness }];
}

/** The same option where rubber is old after so many hours; what does not age stays. */
const aged = (each: Priceable, oldHours: number): Priceable =>
  each.life.oldHours === Infinity ? each : { ...each, life: { ...each.life, oldHours } };

function hoursFlip(of: FlipCase): readonly OptionFlip[] {
  const now = of.running.hoursAYear;
  const at = nearest(
    (hoursAYear) => {
      const running = { ...of.running, hoursAYear };
      const total = (each: Priceable): number =>
        totalOf(aged(each, of.rubberYears * hoursAYear), running, of.spreads);
      return total(of.first) - total(of.second);
    },
    now,
    hoursGrid,
  );
  if (at === undefined) return [];
  return [
    {
      input: 'hours-a-year',
      now,
      at,
      farness: Math.abs(Math.log(at / now)) / spreadOf(looseFactor.hoursAYear),
    },
  ];
}

function rockFlip(of: FlipCase): readonly OptionFlip[] {
  const { first, second, running, spreads, rockShare: now } = of;
  // A person's own figure is for the ground they have, and says nothing of another.
  if (first.life.from === 'own' || second.life.from === 'own') return [];
  const by = (a: Priceable, b: Priceable): number =>
    totalOf(a, running, spreads) - totalOf(b, running, spreads);
  const f = (percent: number): number => by(...of.atRockShare(percent));
  const at = f(now) > 0 === by(first, second) > 0 ? nearest(f, now, percentGrid) : undefined;
  return at === undefined
    ? []
    : [{ input: 'rock-share', now, at, farness: Math.abs(at - now) / loosePercent }];
}

/** Every single input that would put the two the other way round, the one that decides first. */
export const optionFlips = (of: FlipCase): readonly OptionFlip[] =>
  [
    ...lifeFlip(of, 'first'),
    ...lifeFlip(of, 'second'),
    ...priceFlip(of, 'first'),
    ...priceFlip(of, 'second'),
    ...hoursFlip(of),
    ...rockFlip(of),
  ].sort((a, b) => a.farness - b.farness);
