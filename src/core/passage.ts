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

/** Nodes over what may be past the limit already. */
const nodes = 32;

/** Beyond so many κ past the limit the formula for what is short of it adds nothing more. */
const adds = 20;

const density = (z: number): number => Math.exp(-(z * z) / 2);

/** Upper tail of the standard normal distribution for z ≥ 0. */
const tail = (z: number): number => density(z) * scaledTail(z);

/** exp(−a²/2)·exp(b²/2)·Φ(−b), for b of either sign. */
const tilted = (a: number, b: number): number =>
  b >= 0 ? density(a) * scaledTail(b) : Math.exp((b * b - a * a) / 2) - density(a) * scaledTail(-b);

/**
 * The mean of the inverse Gaussian chance over a normal wear still to go with mean `left`, in closed form; right where
 * all of it is surely above 0.
 */
function passed(travelled: number, left: number, variance: number, kappa: number): number {
  const spread = Math.sqrt(kappa * travelled + variance);
  const a = (travelled - left) / spread;
  const b = (travelled + left + (2 * variance) / kappa) / spread;
  const first = a < 0 ? tail(-a) : 1 - tail(a);
  return first + tilted(a, b);
}

/**
 * How much more than 1 that formula gives a part that is past the limit by `past`:
 * exp(−2·past/κ)·Φ((past − travelled)/s) − Φ(−(past + travelled)/s) with s² = κ·travelled.
 */
function excess(travelled: number, past: number, kappa: number): number {
  const spread = Math.sqrt(kappa * travelled);
  const [short, far] = [(travelled - past) / spread, (travelled + past) / spread];
  return tilted(far, short) - tail(far);
}

/** The same where part of it may be past the limit already: what the formula counts beyond 1 there is taken off. */
function passedNear(travelled: number, left: number, variance: number, kappa: number): number {
  const sd = Math.sqrt(variance);
  if (travelled <= 0) return left < 0 ? 1 - tail(-left / sd) : tail(left / sd);
  const from = Math.max(0, -left - surely * sd);
  const to = Math.min(adds * kappa, surely * sd - left);
  if (to <= from) return left < 0 ? 1 : Math.min(1, passed(travelled, left, variance, kappa));
  // Even steps of the root, since close to the limit the excess rises fast.
  const width = (Math.sqrt(to) - Math.sqrt(from)) / nodes;
  let sum = 0;
  for (let n = 0; n < nodes; n += 1) {
    const root = Math.sqrt(from) + (n + 0.5) * width;
    sum += 2 * root * density((root * root + left) / sd) * excess(travelled, root * root, kappa);
  }
  return passed(travelled, left, variance, kappa) - (sum * width) / (sd * rootTwoPi);
}

const rootTwoPi = Math.sqrt(2 * Math.PI);

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
