import { normalCdf } from './special.ts';

/** What is believed of the rate of wear before anything is read. */
export interface RatePrior {
  /** Middle of the natural logarithm of the rate in percent per hour. */
  readonly centre: number;
  /** Scale of a Student t distribution about it, in natural logarithms. */
  readonly spread: number;
}

export interface WearModel {
  readonly prior: RatePrior;
  /** Variance of wear for each percent that it is expected to grow, in percent; above 0. */
  readonly kappa: number;
}

/**
 * What happened to a part, in order of running hours: it was fitted with a known wear; it was turned or built up, so
 * that its wear is unknown but its rate goes on; it was read. Wear and standard uncertainty in percent.
 */
export type WearEvent =
  | { readonly kind: 'fitted' | 'read'; readonly hours: number; readonly percent: number; readonly u: number }
  | { readonly kind: 'stepped'; readonly hours: number };

/** What is known of a part after its last event: for each rate its weight, and the wear as mean and variance. */
export interface WearState {
  /** Running hours of the last event. */
  readonly hours: number;
  readonly kappa: number;
  readonly rates: Float64Array;
  /** Sum to 1. */
  readonly weights: Float64Array;
  readonly means: Float64Array;
  readonly variances: Float64Array;
  /**
   * How high the last reading is among those that the events before it let expect: about 0 far too low, about 1 far
   * too high, ½ as expected, or where nothing lets expect anything.
   */
  readonly surprise: number;
}

interface Grid {
  /** Natural logarithm of the first rate. */
  readonly from: number;
  readonly step: number;
  readonly count: number;
}

/** From 50,000 hours of life to 25, fixed, so that the same readings give the same figures on every phone. */
const wholeGrid: Grid = { from: Math.log(100 / 50_000), step: Math.log(2000) / 60, count: 61 };

/** Few enough degrees of freedom that a misplaced middle is soon given up. */
const degreesOfFreedom = 3;

/** Below this share of a step the rates are too coarse for what is known; the steps are then made finer. */
const coarse = 0.7;
const finerCount = 41;
const finerRounds = 8;

/**
 * Wear as a Wiener process with drift r and variance κ·r an hour, seen through reading error: for each rate of a
 * grid the exact Kalman steps, and for the rates the exact weights of Bayes. Undefined without any wear known at
 * the end. Hours must not fall, uncertainties must be above 0 or the state known: a bug otherwise.
 */
export function filterWear(events: readonly WearEvent[], model: WearModel): WearState | undefined {
  const last = events.at(-1);
  if (last === undefined || last.kind === 'stepped') return undefined;
  const whole = onGrid(events, model, wholeGrid);
  let state = whole;
  let { step } = wholeGrid;
  for (let round = 0; round < finerRounds; round += 1) {
    const { mean, sd } = momentsOf(state);
    if (sd >= coarse * step) break;
    const half = Math.max(6 * sd, 1.5 * step);
    step = (2 * half) / (finerCount - 1);
    state = onGrid(events, model, { from: mean - half, step, count: finerCount });
  }
  return { ...pruned(state), surprise: whole.surprise };
}

/** The prior of a rate, as a logarithm up to a constant. */
export function logPrior({ centre, spread }: RatePrior, logRate: number): number {
  const z = (logRate - centre) / spread;
  return (-(degreesOfFreedom + 1) / 2) * Math.log1p((z * z) / degreesOfFreedom);
}

/** A filter on its way through the events. */
interface Filter {
  readonly kappa: number;
  readonly rates: Float64Array;
  readonly priors: Float64Array;
  readonly logs: Float64Array;
  readonly means: Float64Array;
  readonly variances: Float64Array;
  hours: number;
  known: boolean;
}

function filterOn({ from, step, count }: Grid, { prior, kappa }: WearModel): Filter {
  const rates = Float64Array.from({ length: count }, (_, g) => Math.exp(from + g * step));
  const priors = Float64Array.from({ length: count }, (_, g) => logPrior(prior, from + g * step));
  const [means, variances] = [new Float64Array(count), new Float64Array(count)];
  return { kappa, rates, priors, logs: priors.slice(), means, variances, hours: 0, known: false };
}

function onGrid(events: readonly WearEvent[], model: WearModel, grid: Grid): WearState {
  const filter = filterOn(grid, model);
  let surprise = 0.5;
  events.forEach((event, at) => {
    if (at === events.length - 1) surprise = surpriseOf(filter, event);
    meet(filter, event);
  });
  const { kappa, rates, logs, means, variances, hours } = filter;
  return { hours, kappa, rates, weights: normalised(logs), means, variances, surprise };
}

function meet(filter: Filter, event: WearEvent): void {
  const passed = event.hours - filter.hours;
  filter.hours = event.hours;
  if (event.kind === 'stepped') {
    filter.known = false;
    return;
  }
  if (event.kind === 'fitted') filter.logs.set(filter.priors);
  if (event.kind === 'read' && filter.known) {
    update(filter, passed, event.percent, event.u * event.u);
    return;
  }
  filter.means.fill(event.percent);
  filter.variances.fill(event.u * event.u);
  filter.known = true;
}

/** The Kalman step for each rate; a reading that a rate makes likely adds to that rate's weight. */
function update(
  { kappa, rates, logs, means, variances }: Filter,
  hours: number,
  percent: number,
  noise: number,
): void {
  for (let g = 0; g < rates.length; g += 1) {
    const rate = rates[g] ?? 0;
    const mean = (means[g] ?? 0) + rate * hours;
    const variance = (variances[g] ?? 0) + kappa * rate * hours;
    const sum = variance + noise;
    const off = percent - mean;
    logs[g] = (logs[g] ?? 0) - 0.5 * (Math.log(sum) + (off * off) / sum);
    means[g] = mean + (variance / sum) * off;
    variances[g] = (variance * noise) / sum;
  }
}

function surpriseOf(
  { kappa, rates, logs, means, variances, hours, known }: Filter,
  event: WearEvent,
): number {
  if (event.kind !== 'read' || !known) return 0.5;
  const weights = normalised(logs);
  const passed = event.hours - hours;
  let sum = 0;
  for (let g = 0; g < rates.length; g += 1) {
    const weight = weights[g] ?? 0;
    if (weight < negligible) continue;
    const rate = rates[g] ?? 0;
    const variance = (variances[g] ?? 0) + kappa * rate * passed + event.u * event.u;
    const z = (event.percent - (means[g] ?? 0) - rate * passed) / Math.sqrt(variance);
    sum += weight * normalCdf(z);
  }
  return sum;
}

function normalised(logs: Float64Array): Float64Array {
  let most = -Infinity;
  for (const each of logs) most = Math.max(most, each);
  let sum = 0;
  const weights = logs.map((each) => {
    const weight = Math.exp(each - most);
    sum += weight;
    return weight;
  });
  return weights.map((each) => each / sum);
}

/** Natural logarithms of the rates of the fixed grid, for what is learnt over many parts. */
export const logRates: Float64Array = Float64Array.from(
  { length: wholeGrid.count },
  (_, g) => wholeGrid.from + g * wholeGrid.step,
);

/** How likely each rate of the fixed grid makes the readings of a part, as logarithms up to a constant. */
export function rateLikelihood(events: readonly WearEvent[], kappa: number): Float64Array {
  const filter = filterOn(wholeGrid, { prior: { centre: 0, spread: 1 }, kappa });
  filter.priors.fill(0);
  filter.logs.fill(0);
  for (const event of events) meet(filter, event);
  return filter.logs;
}

/** Mean and standard deviation of the logarithm of the rate. */
export function momentsOf({ rates, weights }: Pick<WearState, 'rates' | 'weights'>): {
  readonly mean: number;
  readonly sd: number;
} {
  let mean = 0;
  let square = 0;
  rates.forEach((rate, g) => {
    const logRate = Math.log(rate);
    const weight = weights[g] ?? 0;
    mean += weight * logRate;
    square += weight * logRate * logRate;
  });
  return { mean, sd: Math.sqrt(Math.max(0, square - mean * mean)) };
}

/** Rates that hold less than this share of the belief in all are left out of what follows. */
const negligible = 1e-8;

function pruned(state: WearState): WearState {
  const kept = [...state.weights.keys()].filter((g) => (state.weights[g] ?? 0) > negligible);
  const pick = (values: Float64Array): Float64Array => Float64Array.from(kept, (g) => values[g] ?? 0);
  const weights = pick(state.weights);
  const sum = weights.reduce((total, each) => total + each, 0);
  return {
    ...state,
    rates: pick(state.rates),
    weights: weights.map((each) => each / sum),
    means: pick(state.means),
    variances: pick(state.variances),
  };
}
