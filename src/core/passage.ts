import { scaledTail } from './special.ts';
import type { WearState } from './wear-filter.ts';

/** When a part first reaches a wear, counted in hours from the last reading. */
export interface Passage {
  /** Probability that it is reached within so many hours. */
  readonly within: (hours: number) => number;
  /** The hours within which it is reached with this probability; Infinity when beyond any machine's life. */
  readonly quantile: (share: number) => number;
}

/** Beyond this nothing is looked for, in hours. */
const farthest = 1e6;

/** So many standard deviations from the limit a part is surely short of it. */
const surely = 5;

/** Nodes over what may be left, where a part may already be past the limit. */
const nodes = 32;

const density = (z: number): number => Math.exp(-(z * z) / 2);

/** P(passed) when the wear still to go is normal with mean `left`, all of it surely above 0. */
function passed(travelled: number, left: number, variance: number, kappa: number): number {
  const spread = Math.sqrt(kappa * travelled + variance);
  const a = (travelled - left) / spread;
  const b = (travelled + left + (2 * variance) / kappa) / spread;
  const e = density(a);
  const first = a < 0 ? e * scaledTail(-a) : 1 - e * scaledTail(a);
  return first + e * scaledTail(b);
}

/** The same where part of it may be below 0, which is past the limit already: summed over what may be left. */
function passedNear(travelled: number, left: number, variance: number, kappa: number): number {
  const sd = Math.sqrt(variance);
  const low = Math.max(0, left - surely * sd);
  const width = Math.max(0, left + surely * sd - low) / nodes;
  const past = left < 0 ? 1 - tail(-left / sd) : tail(left / sd);
  let weights = 0;
  let sum = 0;
  for (let n = 0; n < nodes && width > 0; n += 1) {
    const at = low + (n + 0.5) * width;
    const weight = density((at - left) / sd);
    weights += weight;
    sum += weight * passed(travelled, at, 0, kappa);
  }
  return weights === 0 ? 1 : past + (1 - past) * (sum / weights);
}

/** Upper tail of the standard normal distribution for z ≥ 0. */
const tail = (z: number): number => density(z) * scaledTail(z);

/**
 * First passage of wear to `percent`: inverse Gaussian given rate and wear (Folks and Chhikara, The inverse Gaussian
 * distribution and its statistical application, 1978), mixed over what is known of both.
 */
export function passageOf(state: WearState, percent = 100): Passage {
  const { rates, weights, means, variances, kappa } = state;
  const count = rates.length;
  const near = means.map((mean, g) => {
    const variance = variances[g] ?? 0;
    return variance > 0 && percent - mean < surely * Math.sqrt(variance) ? 1 : 0;
  });
  const within = (hours: number): number => {
    let sum = 0;
    for (let g = 0; g < count; g += 1) {
      const left = percent - (means[g] ?? 0);
      const variance = variances[g] ?? 0;
      const travelled = (rates[g] ?? 0) * hours;
      const one =
        near[g] === 1
          ? passedNear(travelled, left, variance, kappa)
          : left <= 0
            ? 1
            : travelled <= 0
              ? 0
              : passed(travelled, left, variance, kappa);
      sum += (weights[g] ?? 0) * one;
    }
    return Math.min(1, Math.max(0, sum));
  };
  return { within, quantile: (share) => quantileOf(within, share, guess(state, percent)) };
}

/** About the middle of the passage, to start the search from. */
function guess({ rates, weights, means }: WearState, percent: number): number {
  let rate = 0;
  let mean = 0;
  rates.forEach((each, g) => {
    rate += (weights[g] ?? 0) * Math.log(each);
    mean += (weights[g] ?? 0) * (means[g] ?? 0);
  });
  return Math.max(1, percent - mean) / Math.exp(rate);
}

// Probabilities closer than this to 0 or 1 say no more about where the hours are.
const least = 1e-15;

/** The scale on which the passage is nearly a straight line over the logarithm of the hours. */
function straight(probability: number): number {
  const inside = Math.min(1 - least, Math.max(least, probability));
  return Math.log(inside / (1 - inside));
}

/** Solves within(hours) = share by secants between brackets, which a straight line lets meet within a few steps. */
function quantileOf(within: (hours: number) => number, share: number, start: number): number {
  if (within(0) >= share) return 0;
  if (within(farthest) < share) return Infinity;
  const wanted = straight(share);
  let [low, high] = [-Infinity, Math.log(farthest)];
  let at = Math.log(start);
  let off = straight(within(start)) - wanted;
  let slope = 8;
  for (let round = 0; round < 100; round += 1) {
    if (off > 0) high = Math.min(high, at);
    else low = Math.max(low, at);
    const step = Math.max(-2, Math.min(2, -off / slope));
    const isInside = at + step > low && at + step < high;
    const next = isInside ? at + step : (Math.max(low, at - 4) + high) / 2;
    if (Math.abs(next - at) < 1e-7) return Math.exp(next);
    const nextOff = straight(within(Math.exp(next))) - wanted;
    slope = Math.max(0.1, (nextOff - off) / (next - at));
    [at, off] = [next, nextOff];
  }
  return Math.exp(at);
}
