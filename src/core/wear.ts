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

// A tolerance ±a is a rectangular distribution, a/√3 (JCGM 100:2008, 4.3.7).
const fromTolerance = (tolerance: number | undefined): number => (tolerance ?? 0) / Math.sqrt(3);

/**
 * The curve from new (0 %) to the limit (100 %), over the break points if it is the limit that counts as 100 %: they
 * say nothing of the way to another one. Undefined when it is not monotone.
 */
function knotsOf(entry: ItemLimits, { at: limitAt, limit }: ChosenLimit): readonly Knot[] | undefined {
  if (!entry.new || entry.new.at === limitAt) return undefined;
  const sign = limitAt > entry.new.at ? 1 : -1;
  const breaks = limit.hundred ? (entry.breaks ?? []) : [];
  const inner = breaks.map(({ at, percent }) => ({ at, percent, u: 0 }));
  inner.sort((a, b) => sign * (a.at - b.at));
  const first = { at: entry.new.at, percent: 0, u: fromTolerance(entry.new.tolerance) };
  const knots = [first, ...inner, { at: limitAt, percent: 100, u: fromTolerance(limit.tolerance) }];
  const rises = knots.every((knot, i) => {
    const next = knots[i + 1];
    return !next || (sign * (next.at - knot.at) > 0 && next.percent > knot.percent);
  });
  return rises ? knots : undefined;
}

/** The piece of the curve that a value lies on; beyond either end the outer piece goes on. */
function pieceAt(knots: readonly Knot[], at: number): readonly [Knot, Knot] | undefined {
  const [first, last] = [knots[0], knots.at(-1)];
  if (!first || !last) return undefined;
  const sign = last.at > first.at ? 1 : -1;
  let start = 0;
  while (start + 2 < knots.length && sign * (at - (knots[start + 1]?.at ?? at)) > 0) start += 1;
  const [from, to] = [knots[start], knots[start + 1]];
  return from && to ? [from, to] : undefined;
}

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
  const knots = chosen && knotsOf(entry, chosen);
  const at = fromMm(size.mm, entry.unit);
  const piece = knots && pieceAt(knots, at);
  if (!chosen || !piece || !entry.new) return undefined;
  const [a, b] = piece;
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
  const knots = chosen && knotsOf(entry, chosen);
  if (!knots) return undefined;
  let start = 0;
  while (start + 2 < knots.length && percent > (knots[start + 1]?.percent ?? percent)) start += 1;
  const [a, b] = [knots[start], knots[start + 1]];
  if (!a || !b) return undefined;
  return toMm(a.at + ((percent - a.percent) * (b.at - a.at)) / (b.percent - a.percent), entry.unit);
}
