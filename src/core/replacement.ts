import { assert } from './result.ts';

/** What a renewal by age weighs. */
export interface AgeReplacement {
  /** The share that outlasts so many hours: falls from 1 at 0 hours towards 0, without jumps before its end. */
  readonly survival: (hours: number) => number;
  /** Cost of a renewal that was planned; above 0. */
  readonly planned: number;
  /** Cost of a renewal after a failure; above 0, in the same unit. */
  readonly failure: number;
}

export interface ReplacementAge {
  /** The age at which to renew; undefined where no age is cheaper than to wait for the failure. */
  readonly hours: number | undefined;
  /** Long-run cost per hour of doing so. */
  readonly costPerHour: number;
  /** Long-run cost per hour of waiting for the failure. */
  readonly runToFailure: number;
}

/** No part lives so long, in hours. */
const longest = 1e9;

/** Where this share is left, life counts as over. */
const negligible = 1e-9;

/** An age must save this share of the cost of waiting, or there is none to name. */
const leastSaving = 1e-6;

const panels = 256;

/**
 * Long-run cost per hour of renewing at an age, [planned·R + failure·(1 − R)] / ∫R: R. E. Barlow and F. Proschan,
 * Mathematical Theory of Reliability (1965), ch. 4. Undefined for costs and ages that are not above 0.
 */
export function ageCost(policy: AgeReplacement, hours: number): number | undefined {
  if (!isPriced(policy) || !(hours > 0 && hours < Infinity)) return undefined;
  const { ages, lived } = livedBy(policy.survival, hours);
  return costPerHour(policy, ages[panels] ?? hours, lived[panels] ?? 0);
}

/**
 * The age with the least long-run cost per hour, as `ageCost` has it; the age to about seven digits. Undefined for
 * costs that are not above 0, and for lives that do not end, or are 0.
 */
export function bestReplacementAge(policy: AgeReplacement): ReplacementAge | undefined {
  const end = isPriced(policy) ? endOf(policy.survival) : undefined;
  if (end === undefined) return undefined;
  const { ages, lived } = livedBy(policy.survival, end);
  const cost = (age: number, panel: number): number =>
    costPerHour(policy, age, (lived[panel] ?? 0) + integral(policy.survival, ages[panel] ?? 0, age));
  // At 0 hours it is infinite: the best is never the first.
  const costs = ages.map(cost);
  const best = costs.indexOf(Math.min(...costs));
  const near = (age: number): number => cost(age, best - 1);
  const hours = lowest(near, ages[best - 1] ?? 0, ages[best + 1] ?? end);
  const runToFailure = policy.failure / (lived[panels] ?? 0);
  const least = near(hours);
  if (least < runToFailure * (1 - leastSaving)) return { hours, costPerHour: least, runToFailure };
  return { hours: undefined, costPerHour: runToFailure, runToFailure };
}

const isPriced = ({ planned, failure }: AgeReplacement): boolean =>
  [planned, failure].every((cost) => cost > 0 && cost < Infinity);

function costPerHour({ survival, planned, failure }: AgeReplacement, age: number, lived: number): number {
  const alive = survival(age);
  return (planned * alive + failure * (1 - alive)) / lived;
}

/** Ages up to an end, and the mean hours lived by each: panels that widen see a short life as sharply as a long one. */
function livedBy(survival: (hours: number) => number, end: number): { ages: number[]; lived: number[] } {
  const ages = Array.from({ length: panels + 1 }, (_, i) => end * (i / panels) ** 3);
  const lived = [0];
  for (let i = 1; i <= panels; i += 1) {
    lived.push((lived[i - 1] ?? 0) + integral(survival, ages[i - 1] ?? 0, ages[i] ?? 0));
  }
  return { ages, lived };
}

/** Hours by which no share worth counting is left; undefined where life does not end, or does not begin. */
function endOf(survival: (hours: number) => number): number | undefined {
  const isOver = (hours: number): boolean => {
    const share = survival(hours);
    assert(share >= 0 && share <= 1, 'survival is a share');
    return share <= negligible;
  };
  let high = 1 / longest;
  if (isOver(high)) return undefined;
  while (!isOver(high)) {
    high *= 2;
    if (high > longest) return undefined;
  }
  let low = high / 2;
  for (let round = 0; round < 50; round += 1) {
    const middle = (low + high) / 2;
    if (isOver(middle)) high = middle;
    else low = middle;
  }
  return high;
}

/** Gauss and Legendre’s three nodes, exact for polynomials up to the fifth degree: Abramowitz and Stegun 25.4.30. */
function integral(f: (x: number) => number, from: number, to: number): number {
  const middle = (from + to) / 2;
  const half = (to - from) / 2;
  const off = half * Math.sqrt(0.6);
  return (half * (5 * f(middle - off) + 8 * f(middle) + 5 * f(middle + off))) / 9;
}

const golden = (Math.sqrt(5) - 1) / 2;

/** The lowest point of a function with one valley, by golden sections. */
function lowest(f: (x: number) => number, from: number, to: number): number {
  let [low, high] = [from, to];
  let [left, right] = [high - golden * (high - low), low + golden * (high - low)];
  let [atLeft, atRight] = [f(left), f(right)];
  while (high - low > 1e-9 * high) {
    if (atLeft <= atRight) {
      [high, right, atRight] = [right, left, atLeft];
      left = high - golden * (high - low);
      atLeft = f(left);
    } else {
      [low, left, atLeft] = [left, right, atRight];
      right = low + golden * (high - low);
      atRight = f(right);
    }
  }
  return (low + high) / 2;
}

export interface Renewals {
  /** Units renewed in the first, second … period. */
  readonly perPeriod: readonly number[];
  /** Mean life in periods. */
  readonly meanLife: number;
  /** What the renewals of a period settle to, units / mean life. */
  readonly steady: number;
}

/** So far from 1 may shares add up, for rounding. */
const roundedSum = 1e-9;

/**
 * Renewals of so many units fitted new at once, of which shares[i] fail in period i + 1 of their life and are renewed
 * at its end: the discrete renewal equation. Undefined for shares below 0 or that do not add up to 1, for no shares,
 * and for units or periods that are not counts.
 */
export function renewalsPerPeriod(
  units: number,
  shares: readonly number[],
  periods: number,
): Renewals | undefined {
  const whole = shares.reduce((sum, each) => sum + each, 0);
  if (!shares.every((each) => each >= 0) || !(Math.abs(whole - 1) <= roundedSum)) return undefined;
  if (!(units >= 0 && units < Infinity && Number.isSafeInteger(periods) && periods >= 0)) return undefined;
  const fitted = [units];
  for (let period = 1; period <= periods; period += 1) {
    fitted.push(shares.reduce((sum, share, i) => sum + share * (fitted[period - 1 - i] ?? 0), 0));
  }
  const meanLife = shares.reduce((sum, share, i) => sum + share * (i + 1), 0);
  return { perPeriod: fitted.slice(1), meanLife, steady: units / meanLife };
}
