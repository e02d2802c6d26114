import { chooseLimit, type ChosenLimit, type ItemLimits, type LimitMeaning, type Load } from './limits.ts';
import { fromMm, toMm } from './quantity.ts';
import { isSoft } from './source.ts';

/** A size with its standard uncertainty, both in millimetres. */
export interface Size {
  readonly mm: number;
  readonly uMm: number;
}

/** How far a part is worn towards one limit. Nothing is clamped: below 0 and above 100 are real. */
export interface Wear {
  readonly percent: number;
  /** Standard uncertainty and, expanded with k = 2, the figure shown after ±. */
  readonly u: number;
  readonly expanded: number;
  readonly means: LimitMeaning;
  readonly newMm: number;
  readonly limitMm: number;
  readonly chosen: ChosenLimit;
  /** True when the new or the limit value is an estimate, from memory or weakly published. */
  readonly soft: boolean;
}

interface Knot {
  readonly at: number;
  readonly percent: number;
  readonly u: number;
}

/** Standard uncertainty of a tolerance ±a, taken as rectangular: a/√3 (JCGM 100:2008, 4.3.7). */
export const fromTolerance = (tolerance: number | undefined): number => (tolerance ?? 0) / Math.sqrt(3);

/** A straight piece of the way from new to a limit. */
interface Piece {
  readonly from: Knot;
  readonly to: Knot;
}
type Curve = readonly [Piece, ...Piece[]];

/**
 * The curve from new (0 %) to the limit (100 %), over the break points if it is the limit that counts as 100 %: they
 * say nothing of the way to another one. Undefined when it does not rise all the way, as when new is the limit.
 */
function curveOf(entry: ItemLimits, { at: limitAt, limit }: ChosenLimit): Curve | undefined {
  if (!entry.new) return undefined;
  const breaks = limit.hundred ? (entry.breaks ?? []) : [];
  const inner = breaks.map(({ at, percent }) => ({ at, percent, u: 0 }));
  inner.sort((a, b) => a.percent - b.percent);
  const first = { at: entry.new.at, percent: 0, u: fromTolerance(entry.new.tolerance) };
  const last = { at: limitAt, percent: 100, u: fromTolerance(limit.tolerance) };
  const rest = inner.map((from, i) => ({ from, to: inner[i + 1] ?? last }));
  const curve: Curve = [{ from: first, to: inner[0] ?? last }, ...rest];
  const isPast = isPastOn(curve);
  return curve.every(({ from, to }) => isPast(to.at, from) && to.percent > from.percent) ? curve : undefined;
}

/** Tells which sizes are more worn than a knot, by the way from new to the first knot. */
function isPastOn([{ from, to }]: Curve): (at: number, knot: Knot) => boolean {
  return to.at > from.at ? (at, knot) => at > knot.at : (at, knot) => at < knot.at;
}

/** The piece of a curve that a value lies on; beyond either end the outer piece goes on. */
const pieceOf = (curve: Curve, isPast: (knot: Knot) => boolean): Piece =>
  curve.filter(({ from }) => isPast(from)).at(-1) ?? curve[0];

/**
 * Percent worn p = 100·(N − m)/(N − L), for shrinking and growing parts alike, with its uncertainty by the law
 * of propagation (JCGM 100:2008, 5.1.2). Undefined when the sheet has no new or no such limit value, when
 * both are equal, or when its break points do not rise from new to limit.
 */
export function wear(
  entry: ItemLimits,
  size: Size,
  load: Load | undefined,
  means: LimitMeaning | 'hundred' = 'hundred',
): Wear | undefined {
  const chosen = chooseLimit(entry, means, load);
  const curve = chosen && curveOf(entry, chosen);
  if (!chosen || !curve || !entry.new) return undefined;
  const at = fromMm(size.mm, entry.unit);
  const isPast = isPastOn(curve);
  const { from: a, to: b } = pieceOf(curve, (knot) => isPast(at, knot));
  const [rise, run] = [b.percent - a.percent, b.at - a.at];
  const perReading = (rise / run) * fromMm(size.uMm, entry.unit);
  const perA = ((rise * (at - b.at)) / (run * run)) * a.u;
  const perB = ((rise * (at - a.at)) / (run * run)) * b.u;
  const u = Math.sqrt(perReading * perReading + perA * perA + perB * perB);
  return {
    percent: a.percent + (rise * (at - a.at)) / run,
    u,
    expanded: 2 * u,
    means: chosen.limit.means,
    newMm: toMm(entry.new.at, entry.unit),
    limitMm: toMm(chosen.at, entry.unit),
    chosen,
    soft: isSoft(entry.new.source) || isSoft(chosen.limit.source),
  };
}

/** The size in mm at which a part has that percentage: the inverse of `wear`, for what-if questions. */
export function sizeAtPercent(
  entry: ItemLimits,
  percent: number,
  load: Load | undefined,
  means: LimitMeaning | 'hundred' = 'hundred',
): number | undefined {
  const chosen = chooseLimit(entry, means, load);
  const curve = chosen && curveOf(entry, chosen);
  if (!curve) return undefined;
  const { from: a, to: b } = pieceOf(curve, (knot) => percent > knot.percent);
  return toMm(a.at + ((percent - a.percent) * (b.at - a.at)) / (b.percent - a.percent), entry.unit);
}
