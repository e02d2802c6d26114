import { assert } from './result.ts';
import { root } from './root.ts';
import { gammaQ, lnGamma, upperGammaFraction } from './special.ts';

/** Lives whose share exp(−(t/scale)^shape) outlasts t; both above 0, scale in hours. */
export interface Weibull {
  readonly shape: number;
  readonly scale: number;
}

export interface WeibullFit extends Weibull {
  readonly logLikelihood: number;
}

/** A shape beyond this is a set of failures all but alike, not a distribution. */
const mostShape = 1e6;

/**
 * Maximum likelihood from hours at failure and hours at which units were taken out while good (suspensions), exact in
 * time: R. B. Abernethy, The New Weibull Handbook, App. C; NIST/SEMATECH e-Handbook 8.4.1. Undefined without a failure,
 * where nothing outlasted failures that are all alike, for hours that are not above 0, and where the scale is
 * beyond what a number can hold.
 */
export function fitWeibull(
  failures: readonly number[],
  suspensions: readonly number[] = [],
): WeibullFit | undefined {
  const all = [...failures, ...suspensions];
  if (failures.length === 0 || !all.every((each) => each > 0 && each < Infinity)) return undefined;
  const longest = Math.max(...all);
  // Relative to the longest, so that no power overflows.
  const logs = all.map((each) => Math.log(each) - Math.log(longest));
  const middle = mean(logs.slice(0, failures.length));
  const slope = (shape: number): number => {
    const powers = logs.map((each) => Math.exp(shape * each));
    const weighed = logs.reduce((sum, each, i) => sum + each * (powers[i] ?? 0), 0);
    return weighed / total(powers) - 1 / shape - middle;
  };
  const bracket = bracketOf(slope);
  if (bracket === undefined) return undefined;
  const shape = root(slope, ...bracket);
  const powers = total(logs.map((each) => Math.exp(shape * each)));
  const scale = longest * (powers / failures.length) ** (1 / shape);
  if (!(scale > 0 && scale < Infinity)) return undefined;
  return { shape, scale, logLikelihood: logLikelihood({ shape, scale }, failures, suspensions) };
}

const total = (values: readonly number[]): number => values.reduce((sum, each) => sum + each, 0);
const mean = (values: readonly number[]): number => total(values) / values.length;

/** Two shapes with the root of the rising slope between them; undefined where there is none. */
function bracketOf(slope: (shape: number) => number): [number, number] | undefined {
  let low = 1;
  while (slope(low) > 0) low /= 2;
  let high = 1;
  while (slope(high) < 0) {
    high *= 2;
    if (high > mostShape) return undefined;
  }
  return [low, high];
}

/** Logarithm of the likelihood: densities of the failures, survivals of the suspensions. */
function logLikelihood(
  { shape, scale }: Weibull,
  failures: readonly number[],
  suspensions: readonly number[],
): number {
  const density = (hours: number): number => Math.log(shape / scale) + (shape - 1) * Math.log(hours / scale);
  const spent = [...failures, ...suspensions].map((each) => (each / scale) ** shape);
  return total(failures.map(density)) - total(spent);
}

function assertWeibull({ shape, scale }: Weibull): void {
  assert(shape > 0 && shape < Infinity && scale > 0 && scale < Infinity, 'shape and scale above 0');
}

/** Share that outlasts so many hours; 1 at and before 0. */
export function weibullSurvival(weibull: Weibull, hours: number): number {
  assertWeibull(weibull);
  return hours <= 0 ? 1 : Math.exp(-((hours / weibull.scale) ** weibull.shape));
}

/** Mean life in hours, scale·Γ(1 + 1/shape). */
export function weibullMean(weibull: Weibull): number {
  assertWeibull(weibull);
  return weibull.scale * Math.exp(lnGamma(1 + 1 / weibull.shape));
}

/** Standard deviation of life in hours: the variance is scale²·(Γ(1 + 2/shape) − Γ(1 + 1/shape)²). */
export function weibullSd(weibull: Weibull): number {
  assertWeibull(weibull);
  const excess = lnGamma(1 + 2 / weibull.shape) - 2 * lnGamma(1 + 1 / weibull.shape);
  return weibullMean(weibull) * Math.sqrt(Math.max(0, Math.expm1(excess)));
}

/** Mean hours still to come of what has run so many hours: the integral of survival from there, over survival there. */
export function weibullMeanResidual(weibull: Weibull, hours: number): number {
  assertWeibull(weibull);
  assert(hours >= 0 && hours < Infinity, 'an age');
  const { shape, scale } = weibull;
  const spent = (hours / scale) ** shape;
  const a = 1 / shape;
  if (spent >= a + 1) return (hours / shape) * upperGammaFraction(a, spent);
  return weibullMean(weibull) * gammaQ(a, spent) * Math.exp(spent);
}
