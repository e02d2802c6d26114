import { limitsFor, type ItemLimits, type LimitSheet } from './limits.ts';
import type { Place } from './keys.ts';
import { fromMm } from './quantity.ts';
import { isSized, sizeOf, together } from './sizes.ts';
import type { ItemState, ScoreInput } from './states.ts';
import { fromTolerance, wear } from './wear.ts';

/** What a part measured at one spot in one walk, in millimetres, and percent worn by the sheet of the return. */
export interface SpotReading {
  readonly spot: number;
  readonly mm: number;
  readonly uMm: number;
  readonly percent: number;
}

/** How much of a part a hire used up, by the spots that both walks measured. */
export interface UsedUp {
  readonly place: Place;
  readonly item: string;
  readonly before: readonly SpotReading[];
  readonly after: readonly SpotReading[];
  /** Percent worn at hand-out and at return, means over the spots. */
  readonly beforePercent: number;
  readonly afterPercent: number;
  /** Percent of life used, with its standard uncertainty; expanded with k = 2 it is the figure after ±. */
  readonly usedPercent: number;
  readonly u: number;
  readonly expanded: number;
  /** The sheet itself is so vague that more wear could count for less: nothing may be charged by it. */
  readonly vague: boolean;
}

interface Sized {
  readonly spot: number;
  readonly mm: number;
  readonly uMm: number;
}

/** The sizes of an item at a place by spot; repeats at one spot are averaged. */
function spotsOf(input: ScoreInput, place: Place, item: string): readonly Sized[] {
  const spots = new Map<number, Sized[]>();
  for (const { place: at, item: of, n, reading } of input.readings) {
    if (at !== place || of !== item || !isSized(reading.what)) continue;
    const spot = reading.spot ?? n;
    const sized = { spot, ...sizeOf(reading, reading.what, input.tools ?? {}) };
    spots.set(spot, [...(spots.get(spot) ?? []), sized]);
  }
  return [...spots].map(([spot, all]) => ({
    spot,
    mm: mean(all.map(({ mm }) => mm)),
    uMm: Math.max(...all.map(({ uMm }) => uMm)),
  }));
}

const mean = (values: readonly number[]): number =>
  values.reduce((sum, each) => sum + each, 0) / values.length;

/** Limits taken as exact, so that what is left is the error of the reading. */
const exact = (entry: ItemLimits): ItemLimits => ({
  ...entry,
  ...(entry.new && { new: { ...entry.new, tolerance: 0 } }),
  limits: entry.limits.map((limit) => ({ ...limit, tolerance: 0 })),
});

/**
 * Percent of a part's life that a hire used, 100·(m₁ − m₂)/(N − L), by the spots that both walks measured and one
 * sheet. New and limit are shared by both walks, so their errors count with what was used alone:
 * u² = 2·(100·u_m/(N − L))² + (used·u_N/(N − L))² + (used·u_L/(N − L))². The reading's error is taken as common to
 * the spots of one walk: a gauge that is off is off at each. Undefined without such spots, sheet, new or limit.
 */
export function usedUp(
  sheet: LimitSheet | undefined,
  before: ScoreInput,
  after: ScoreInput,
  { item, place, number, parts }: Pick<ItemState, 'item' | 'place' | 'number' | 'parts'>,
): UsedUp | undefined {
  const entry = sheet && limitsFor(sheet, item.id, number === undefined ? undefined : { number, of: parts });
  if (!entry) return undefined;
  const { load } = after.walk;
  const reading = exact(entry);
  const worn = (size: Sized) => wear(reading, size, load);
  const [were, are] = [spotsOf(before, place, item.id), spotsOf(after, place, item.id)];
  const both = were.flatMap((was) => {
    const is = are.find(({ spot }) => spot === was.spot);
    const [from, to] = [worn(was), is && worn(is)];
    return is && from && to ? [{ was, is, from, to }] : [];
  });
  const [first] = both;
  if (!first) return undefined;
  const { newMm, limitMm, chosen } = first.from;
  const span = Math.abs(fromMm(newMm - limitMm, entry.unit));
  const beforePercent = mean(both.map(({ from }) => from.percent));
  const afterPercent = mean(both.map(({ to }) => to.percent));
  const usedPercent = afterPercent - beforePercent;
  const ofSheet = together(fromTolerance(entry.new?.tolerance), fromTolerance(chosen.limit.tolerance)) / span;
  const ofReadings = together(mean(both.map(({ from }) => from.u)), mean(both.map(({ to }) => to.u)));
  const u = together(ofReadings, usedPercent * ofSheet);
  return {
    place,
    item: item.id,
    before: both.map(({ was, from }) => ({ ...was, percent: from.percent })),
    after: both.map(({ is, to }) => ({ ...is, percent: to.percent })),
    beforePercent,
    afterPercent,
    usedPercent,
    u,
    expanded: 2 * u,
    vague: 2 * ofSheet >= 1,
  };
}
