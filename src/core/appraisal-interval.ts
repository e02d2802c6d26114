import { normalQuantile } from './special.ts';

/** Eight of ten lie within low and high. */
export interface Range {
  readonly low: number;
  readonly middle: number;
  readonly high: number;
}

/** A part of the sum: what it is worth for sure at most, its share of life left and how far off that may be. */
export interface Stake {
  /** Minor units of a part with all its life left. */
  readonly amount: number;
  /** Percent left, with its standard uncertainty. */
  readonly left: number;
  readonly u: number;
  /** The price is an estimate. */
  readonly soft: boolean;
}

/** Percent of its price that a part with so much left is worth: as much, and nothing below what can be sold. */
export function worthOf(left: number, saleable: number): number {
  return left < saleable ? 0 : Math.min(100, Math.max(0, left));
}

/** A normal variable by points of equal chance. */
const points = (count: number): readonly number[] =>
  Array.from({ length: count }, (_, n) => normalQuantile((n + 0.5) / count));
const wearPoints = points(41);
const pricePoints = points(15);
const bins = 2000;

// 1.2816 standard deviations either way hold eight of ten.
export const eightOfTen = normalQuantile(0.9);

/** The chances of what all parts are worth together, in equal steps from 0 to the whole. */
function spread(stakes: readonly Stake[], saleable: number, whole: number): Float64Array {
  let chances = new Float64Array(bins + 1);
  chances[0] = 1;
  for (const { amount, left, u } of stakes) {
    const next = new Float64Array(bins + 1);
    for (const z of wearPoints) {
      const by = Math.round((bins * amount * worthOf(left + u * z, saleable)) / 100 / whole);
      for (let n = 0; n + by <= bins; n += 1)
        next[n + by] = (next[n + by] ?? 0) + (chances[n] ?? 0) / wearPoints.length;
    }
    chances = next;
  }
  return chances;
}

/** The amount below which the sum lies with this chance, where prices may all be off together. */
function quantile(chances: Float64Array, factors: readonly number[], whole: number, share: number): number {
  const sums = chances.slice();
  for (let n = 1; n < sums.length; n += 1) sums[n] = (sums[n] ?? 0) + (sums[n - 1] ?? 0);
  const below = (bin: number): number => (bin < 0 ? 0 : (sums[Math.min(bins, Math.floor(bin + 1e-9))] ?? 1));
  let [low, high] = [-1, bins * Math.max(...factors)];
  for (let n = 0; n < 40; n += 1) {
    const middle = (low + high) / 2;
    const chance = factors.reduce((sum, factor) => sum + below(factor > 0 ? middle / factor : bins), 0);
    if (chance / factors.length < share) low = middle;
    else high = middle;
  }
  return (Math.max(0, high) * whole) / bins;
}

/** What the parts are worth together, unrounded, and how far of that readings alone and prices alone may be off. */
export interface Worth extends Range {
  readonly fromWear: Range;
  readonly fromPrice: Range;
}

/**
 * The sum of the parts and the range that holds eight of ten: each part's wear is off by itself, prices that are
 * estimates are off together. The sum of the middles always lies within, so that lines add up to what is shown.
 * @param priceSpread percent that an estimated price may be off in eight of ten cases
 */
export function worthTogether(stakes: readonly Stake[], saleable: number, priceSpread: number): Worth {
  const worth = ({ amount, left }: Stake): number => (amount * worthOf(left, saleable)) / 100;
  const middle = stakes.reduce((sum, stake) => sum + worth(stake), 0);
  const whole = stakes.reduce((sum, { amount }) => sum + amount, 0);
  const soft = stakes.reduce((sum, stake) => sum + (stake.soft ? stake.amount : 0), 0);
  const off = whole > 0 ? ((soft / whole) * priceSpread) / 100 : 0;
  const around = (low: number, high: number): Range => ({
    low: Math.min(low, middle),
    middle,
    high: Math.max(high, middle),
  });
  const fromPrice = around(middle * Math.max(0, 1 - off), middle * (1 + off));
  if (whole <= 0) return { ...fromPrice, fromWear: fromPrice, fromPrice };
  const chances = spread(stakes, saleable, whole);
  const factors = pricePoints.map((z) => Math.max(0, 1 + (off * z) / eightOfTen));
  const at = (of: readonly number[]): Range =>
    around(quantile(chances, of, whole, 0.1), quantile(chances, of, whole, 0.9));
  return { ...at(factors), fromWear: at([1]), fromPrice };
}
