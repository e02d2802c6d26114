import * as z from 'zod/mini';
import { text } from './machine.ts';
import { fromMm, lengthUnits, toMm, type LengthUnit } from './quantity.ts';
import { sourceSchema } from './source.ts';

export const limitMeanings = ['turn', 'service', 'replace', 'destruction'] as const;
export const loads = ['light', 'average', 'heavy'] as const;
export type LimitMeaning = (typeof limitMeanings)[number];
export type Load = (typeof loads)[number];

const size = z.number().check(z.gte(-10000), z.lte(10000));

/** The same size printed in another unit, kept to see whether the print contradicts itself. */
const alsoPrinted = z.looseObject({ at: size, unit: z.enum(lengthUnits), resolution: z.optional(size) });

export const limitSchema = z.looseObject({
  at: size,
  /** How far the limit itself may be off, ±; exact where the print does not say. */
  tolerance: z.optional(z.number().check(z.gte(0))),
  means: z.enum(limitMeanings),
  /** The limit that counts as 100 % worn. */
  hundred: z.optional(z.boolean()),
  loads: z.optional(z.array(z.enum(loads)).check(z.minLength(1))),
  also: z.optional(alsoPrinted),
  source: sourceSchema,
});
export type Limit = z.infer<typeof limitSchema>;

/** New and limit sizes of one item, in the unit and resolution in which they are printed. */
export const itemLimitsSchema = z.looseObject({
  item: text(60),
  /** Which parts, counted from the idler; `ends` are the first and the last. All when absent. */
  positions: z.optional(z.union([z.enum(['ends', 'inner']), z.array(z.int()).check(z.minLength(1))])),
  unit: z.enum(lengthUnits),
  resolution: z.optional(z.number().check(z.gt(0))),
  new: z.optional(
    z.looseObject({ at: size, tolerance: z.optional(z.number().check(z.gte(0))), source: sourceSchema }),
  ),
  limits: z.array(limitSchema).check(z.maxLength(12)),
  /** Sizes at which a stated percentage is reached, between new and limit; straight lines between them. */
  breaks: z.optional(
    z.array(z.looseObject({ at: size, percent: z.number(), source: sourceSchema })).check(z.maxLength(12)),
  ),
});
export type ItemLimits = z.infer<typeof itemLimitsSchema>;

export const sagMethods = [
  'straightedge-grouser',
  'straightedge-shoe',
  'straightedge-slide',
  'string',
  'frame-to-shoe',
  'frame-to-track',
  'roller-gap',
  'deflection',
  'retreat',
] as const;
export type SagMethod = (typeof sagMethods)[number];
export const postures = ['ground', 'raised'] as const;
export const cleanliness = ['clean', 'working-dirt', 'packed'] as const;
export type Posture = (typeof postures)[number];
export type Cleanliness = (typeof cleanliness)[number];

/** What a method reads: true sag, a distance that holds the sag, a give under a load, or the idler's retreat. */
export const sagReads: Record<SagMethod, 'sag' | 'distance' | 'deflection' | 'retreat'> = {
  'straightedge-grouser': 'sag',
  'straightedge-shoe': 'sag',
  'straightedge-slide': 'sag',
  string: 'sag',
  'frame-to-shoe': 'distance',
  'frame-to-track': 'distance',
  'roller-gap': 'distance',
  deflection: 'deflection',
  retreat: 'retreat',
};

export const sagSpecSchema = z.looseObject({
  method: z.enum(sagMethods),
  posture: z.enum(postures),
  /** The state in which the print wants the track; absent where it does not say. */
  clean: z.optional(z.enum(['clean', 'working-dirt'])),
  unit: z.enum(lengthUnits),
  resolution: z.optional(z.number().check(z.gt(0))),
  low: size,
  high: size,
  also: z.optional(
    z.looseObject({ low: size, high: size, unit: z.enum(lengthUnits), resolution: z.optional(size) }),
  ),
  /** The reading of a pulled-tight track, from which a distance becomes true sag. */
  taut: z.optional(size),
  /** Above this the print warns that the track comes off. */
  derailAbove: z.optional(size),
  loadN: z.optional(z.number().check(z.gt(0))),
  source: sourceSchema,
});
export type SagSpec = z.infer<typeof sagSpecSchema>;

export const limitSheetSchema = z.looseObject({
  v: z.literal(1),
  name: text(160),
  about: z.optional(text(2000)),
  items: z.array(itemLimitsSchema).check(z.maxLength(200)),
  sag: z.array(sagSpecSchema).check(z.maxLength(20)),
  rules: z.optional(text(120)),
  origin: z.optional(z.looseObject({ key: text(120), version: text(60) })),
  version: z.optional(text(60)),
});
export type LimitSheet = z.infer<typeof limitSheetSchema>;

export interface Position {
  readonly number: number;
  readonly of: number;
}

/** True when the entry is for this part; a part without a number matches only entries for all. */
function isFor(entry: ItemLimits, position: Position | undefined): boolean {
  const { positions } = entry;
  if (positions === undefined) return true;
  if (position === undefined) return false;
  const isEnd = position.number === 1 || position.number === position.of;
  if (positions === 'ends') return isEnd;
  if (positions === 'inner') return !isEnd;
  return positions.includes(position.number);
}

/** The sheet's entry for an item at a position: one made for that position before one made for all. */
export function limitsFor(sheet: LimitSheet, itemId: string, position?: Position): ItemLimits | undefined {
  const entries = sheet.items.filter((entry) => entry.item === itemId && isFor(entry, position));
  return entries.find((entry) => entry.positions !== undefined) ?? entries[0];
}

/** True when the part grows as it wears. */
export function grows(entry: ItemLimits): boolean {
  const limit = entry.limits.find((each) => each.hundred) ?? entry.limits[0];
  return entry.new !== undefined && limit !== undefined && limit.at > entry.new.at;
}

export interface ChosenLimit {
  readonly limit: Limit;
  /** In the entry's unit: the stricter of two contradicting prints. */
  readonly at: number;
  readonly contradicts: boolean;
  /** True when the load was not known and the strictest load's limit was taken. */
  readonly loadAssumed: boolean;
}

/** Half the step of a print; one that does not say is taken for whole units, or for tenths of an inch. */
const halfStep = (unit: LengthUnit, resolution: number | undefined): number =>
  toMm((resolution ?? (unit === 'in' ? 0.1 : 1)) / 2, unit);

/** True when two prints of one length differ by more than their rounding allows. */
export function printsDisagree(
  a: { at: number; unit: LengthUnit; resolution?: number | undefined },
  b: { at: number; unit: LengthUnit; resolution?: number | undefined },
): boolean {
  const rounding = halfStep(a.unit, a.resolution) + halfStep(b.unit, b.resolution);
  return Math.abs(toMm(a.at, a.unit) - toMm(b.at, b.unit)) > rounding;
}

function strictLimit(entry: ItemLimits, limit: Limit): { at: number; contradicts: boolean } {
  if (!limit.also) return { at: limit.at, contradicts: false };
  const main = { at: limit.at, unit: entry.unit, resolution: entry.resolution };
  if (!printsDisagree(main, limit.also)) return { at: limit.at, contradicts: false };
  const other = fromMm(toMm(limit.also.at, limit.also.unit), entry.unit);
  return { at: grows(entry) ? Math.min(limit.at, other) : Math.max(limit.at, other), contradicts: true };
}

/**
 * The limit of one meaning (or the one that counts as 100 %) for a load. An unknown load takes the strictest
 * and says so. Undefined when the sheet has none.
 */
export function chooseLimit(
  entry: ItemLimits,
  means: LimitMeaning | 'hundred',
  load: Load | undefined,
): ChosenLimit | undefined {
  const wanted = entry.limits.filter((each) =>
    means === 'hundred' ? each.hundred === true : each.means === means,
  );
  const fitting =
    load === undefined ? wanted : wanted.filter((each) => !each.loads || each.loads.includes(load));
  const sign = grows(entry) ? 1 : -1;
  const [strictest] = fitting
    .map((limit) => ({ limit, ...strictLimit(entry, limit) }))
    .sort((a, b) => sign * (a.at - b.at));
  if (!strictest) return undefined;
  return { ...strictest, loadAssumed: load === undefined && strictest.limit.loads !== undefined };
}
