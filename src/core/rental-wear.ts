import { chooseLimit, limitsFor, type ItemLimits, type LimitSheet, type Load } from './limits.ts';
import type { Place } from './keys.ts';
import { plausibility } from './plausible.ts';
import { fromMm } from './quantity.ts';
import { bySpot, isSized, sizeOf, together, type SpotSize } from './sizes.ts';
import type { ItemState, ScoreInput } from './states.ts';
import { fromTolerance, wear, type Wear } from './wear.ts';

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

type Part = Pick<ItemState, 'item' | 'place' | 'number' | 'parts'>;

/** The sizes of an item at a place by spot; one that cannot well be right counts only when it was confirmed. */
function spotsOf(input: ScoreInput, { place, item }: Part, entry: ItemLimits): readonly SpotSize[] {
  const sizes = input.readings.flatMap(({ place: at, item: of, n, reading }): readonly SpotSize[] => {
    if (at !== place || of !== item.id || !isSized(reading.what)) return [];
    const size = sizeOf(reading, reading.what, input.tools ?? {});
    const isRight = reading.confirmed === true || !plausibility(item, size, entry, input.walk.load);
    return isRight ? [{ spot: reading.spot ?? n, ...size }] : [];
  });
  return bySpot(sizes);
}

const mean = (values: readonly number[]): number =>
  values.reduce((sum, each) => sum + each, 0) / values.length;

/** Limits taken as exact, so that what is left is the error of the reading. */
const exact = (entry: ItemLimits): ItemLimits => ({
  ...entry,
  ...(entry.new && { new: { ...entry.new, tolerance: 0 } }),
  limits: entry.limits.map((limit) => ({ ...limit, tolerance: 0 })),
});

interface Both {
  readonly was: SpotSize;
  readonly is: SpotSize;
  readonly from: Wear;
  readonly to: Wear;
}

/** The spots that both walks measured, with their wear by limits taken as exact. */
function pairsOf(before: ScoreInput, after: ScoreInput, part: Part, entry: ItemLimits): readonly Both[] {
  const reading = exact(entry);
  const worn = (size: SpotSize) => wear(reading, size, after.walk.load);
  const are = spotsOf(after, part, entry);
  return spotsOf(before, part, entry).flatMap((was) => {
    const is = are.find(({ spot }) => spot === was.spot);
    const [from, to] = [worn(was), is && worn(is)];
    return is && from && to ? [{ was, is, from, to }] : [];
  });
}

/** Standard uncertainty of new and limit together, as a share of the way from one to the other. */
function ofSheet(entry: ItemLimits, { newMm, limitMm }: Wear, load: Load | undefined): number {
  const limit = chooseLimit(entry, 'hundred', load)?.limit;
  const both = together(fromTolerance(entry.new?.tolerance), fromTolerance(limit?.tolerance));
  return both / Math.abs(fromMm(newMm - limitMm, entry.unit));
}

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
  part: Part,
): UsedUp | undefined {
  const { item, place, number, parts } = part;
  const entry = sheet && limitsFor(sheet, item.id, number === undefined ? undefined : { number, of: parts });
  const both = entry ? pairsOf(before, after, part, entry) : [];
  const [first] = both;
  if (!entry || !first) return undefined;
  const beforePercent = mean(both.map(({ from }) => from.percent));
  const afterPercent = mean(both.map(({ to }) => to.percent));
  const usedPercent = afterPercent - beforePercent;
  const shared = ofSheet(entry, first.from, after.walk.load);
  const ofReadings = together(mean(both.map(({ from }) => from.u)), mean(both.map(({ to }) => to.u)));
  const u = together(ofReadings, usedPercent * shared);
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
    vague: 2 * shared >= 1,
  };
}
