import { studentQuantile } from './special.ts';

/** A reading against hours; y in any one unit. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/** A least squares line y = intercept + slope·x. */
export interface Line {
  readonly slope: number;
  readonly intercept: number;
  readonly count: number;
  /** Middle of the points, which the line goes through. */
  readonly meanX: number;
  readonly meanY: number;
  /** Sum of squares of x about its middle. */
  readonly sxx: number;
  /** Sum of squares of y about the line. */
  readonly residuals: number;
  /** Share of the scatter of y that the line explains, 0 to 1; undefined where y does not vary. */
  readonly rSquared: number | undefined;
  /** Standard deviation about the line and standard errors; undefined for two points, which leave nothing over. */
  readonly errors: { readonly sd: number; readonly slope: number; readonly intercept: number } | undefined;
}

/** From one x to another; `high` is undefined where it is open. */
export interface Reached {
  readonly low: number;
  readonly high: number | undefined;
}

const sum = (values: readonly number[]): number => values.reduce((total, each) => total + each, 0);

/**
 * Least squares line: Montgomery, Peck and Vining, Introduction to Linear Regression Analysis, ch. 2; sums about the
 * means, as NIST StRD asks for its digits. Undefined for fewer than two different x, or what is not finite.
 */
export function fitLine(points: readonly Point[]): Line | undefined {
  const count = points.length;
  const meanX = sum(points.map(({ x }) => x)) / count;
  const meanY = sum(points.map(({ y }) => y)) / count;
  const sxx = sum(points.map(({ x }) => (x - meanX) ** 2));
  const sxy = sum(points.map(({ x, y }) => (x - meanX) * (y - meanY)));
  const syy = sum(points.map(({ y }) => (y - meanY) ** 2));
  const slope = sxy / sxx;
  const residuals = sum(points.map(({ x, y }) => (y - meanY - slope * (x - meanX)) ** 2));
  const intercept = meanY - slope * meanX;
  if (!(sxx > 0) || ![sxx, syy, intercept, residuals].every((each) => Number.isFinite(each)))
    return undefined;
  const rSquared = syy > 0 ? Math.max(0, 1 - residuals / syy) : undefined;
  const errors = count > 2 ? errorsOf(Math.sqrt(residuals / (count - 2)), count, meanX, sxx) : undefined;
  return { slope, intercept, count, meanX, meanY, sxx, residuals, rSquared, errors };
}

function errorsOf(sd: number, count: number, meanX: number, sxx: number): NonNullable<Line['errors']> {
  return { sd, slope: sd / Math.sqrt(sxx), intercept: sd * Math.sqrt(1 / count + (meanX * meanX) / sxx) };
}

/**
 * Slope of the least squares line through the origin, Σxy/Σx²; undefined where every x is 0, or for what is not
 * finite (NIST/SEMATECH e-Handbook 8.4.2.3 extrapolates drift so).
 */
export function slopeThroughOrigin(points: readonly Point[]): number | undefined {
  const slope = sum(points.map(({ x, y }) => x * y)) / sum(points.map(({ x }) => x * x));
  return Number.isFinite(slope) ? slope : undefined;
}

/** Value of the line at x. */
export const lineAt = ({ slope, meanX, meanY }: Line, x: number): number => meanY + slope * (x - meanX);

/** Student's t of an interval that holds with a probability between 0 and 1, times the standard deviation. */
function reach({ count, errors }: Line, probability: number): number | undefined {
  if (errors === undefined || !(probability > 0 && probability < 1)) return undefined;
  return errors.sd * studentQuantile((1 + probability) / 2, count - 2);
}

/**
 * Where one further reading at x falls with a probability: Montgomery, Peck and Vining, 2.5. Undefined for two points,
 * or a probability that is not between 0 and 1.
 */
export function predictionInterval(
  line: Line,
  x: number,
  probability: number,
): { readonly low: number; readonly high: number } | undefined {
  const width = reach(line, probability);
  if (width === undefined || !Number.isFinite(x)) return undefined;
  const half = width * Math.sqrt(1 + 1 / line.count + (x - line.meanX) ** 2 / line.sxx);
  return { low: lineAt(line, x) - half, high: lineAt(line, x) + half };
}

/** The x at which the line has the value y; undefined for a level line. */
export function lineReaches(line: Line, y: number): number | undefined {
  const x = line.meanX + (y - line.meanY) / line.slope;
  return Number.isFinite(x) ? x : undefined;
}

/**
 * The x between which the edges of the prediction band reach the value y (inverse prediction: Fieller). Where the
 * slope is not clear of 0 the far edge turns away from y: then `high` is undefined, and all is undefined unless y lies
 * ahead of the line, beyond the band at the middle of the points. Undefined for two points.
 */
export function bandReaches(line: Line, y: number, probability: number): Reached | undefined {
  const width = reach(line, probability);
  if (width === undefined || !Number.isFinite(y)) return undefined;
  // (slope·u − off)² = least + growing·u², with u counted from the middle of the points.
  const off = y - line.meanY;
  const least = width ** 2 * (1 + 1 / line.count);
  const growing = width ** 2 / line.sxx;
  const lead = line.slope ** 2 - growing;
  const rest = off ** 2 - least;
  const half = line.slope * off;
  // half² − lead·rest without its differences, which rounding would turn below 0 where the points lie on a line.
  const discriminant = growing * off ** 2 + lead * least;
  if (!(discriminant >= 0 && discriminant < Infinity)) return undefined;
  // One root by the sum, the other by the product, so that neither is a difference of near equals.
  const large = half + (half < 0 ? -1 : 1) * Math.sqrt(discriminant);
  const small = large === 0 ? 0 : rest / large;
  if (lead <= 0) return half > 0 && rest > 0 ? { low: line.meanX + small, high: undefined } : undefined;
  const other = large / lead;
  return { low: line.meanX + Math.min(small, other), high: line.meanX + Math.max(small, other) };
}
