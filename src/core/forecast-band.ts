import { normalCdf } from './special.ts';
import type { WearState } from './wear-filter.ts';

/** Wear that is expected at some hours, in percent: one in ten is less, half are, nine in ten are. */
export interface BandPoint {
  /** Hours after the last reading. */
  readonly hours: number;
  readonly low: number;
  readonly middle: number;
  readonly high: number;
}

/** Share of such parts that are worn less than this so many hours after the last reading. */
function shareBelow(
  { rates, weights, means, variances, kappa }: WearState,
  hours: number,
  percent: number,
): number {
  let sum = 0;
  for (let g = 0; g < rates.length; g += 1) {
    const travelled = (rates[g] ?? 0) * hours;
    const sd = Math.sqrt((variances[g] ?? 0) + kappa * travelled);
    sum += (weights[g] ?? 0) * normalCdf((percent - (means[g] ?? 0) - travelled) / Math.max(sd, 1e-9));
  }
  return sum;
}

/** Halvings of the range in which a quantile lies: to a ten thousandth of a percent. */
const halvings = 30;

function quantile(state: WearState, hours: number, share: number): number {
  let low = Math.min(...state.means) - 100;
  let high = Math.max(...state.means) + Math.max(...state.rates) * hours + 100;
  for (let n = 0; n < halvings; n += 1) {
    const middle = (low + high) / 2;
    if (shareBelow(state, hours, middle) < share) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Where the wear of a part is expected to go: eight of ten stay within low and high. */
export const bandOf = (state: WearState, hours: readonly number[]): readonly BandPoint[] =>
  hours.map((each) => ({
    hours: each,
    low: quantile(state, each, 0.1),
    middle: quantile(state, each, 0.5),
    high: quantile(state, each, 0.9),
  }));
