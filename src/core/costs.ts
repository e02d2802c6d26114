import * as z from 'zod/mini';
import { currencySchema, priceMinorSchema } from './currency.ts';
import type { JobKind } from './job-kinds.ts';
import { text } from './machine.ts';
import { round6 } from './quantity.ts';
import { err, ok, type Result } from './result.ts';
import { isSoft, sourceSchema, type Source } from './source.ts';

export const mostLabourHours = 1000;
export const mostNameLength = 160;

const book = {
  v: z.literal(1),
  name: text(mostNameLength),
  about: z.optional(text(2000)),
  currency: currencySchema,
  origin: z.optional(z.looseObject({ key: text(120), version: text(60) })),
  version: z.optional(text(60)),
};

export const priceLineSchema = z.looseObject({
  /** A kind of job; one that this version does not know is kept and not used. */
  job: z.string().check(z.regex(/^[a-z][a-z0-9-]{0,59}$/)),
  /** Parts for one side, one part or both sides, as the kind of job says. */
  minor: priceMinorSchema,
  /** Labour for the same, besides lifting the side and taking the track off. */
  labourHours: z.number().check(z.gte(0), z.lte(mostLabourHours)),
  source: sourceSchema,
});
export type PriceLine = z.infer<typeof priceLineSchema>;

const isOnce = (lines: readonly PriceLine[]): boolean =>
  new Set(lines.map(({ job }) => job)).size === lines.length;

/** What jobs cost on machines of one class: parts and labour, a job at most once. */
export const priceListSchema = z.looseObject({
  ...book,
  lines: z.array(priceLineSchema).check(z.maxLength(100), z.refine(isOnce)),
});
export type PriceList = z.infer<typeof priceListSchema>;

const rateSchema = z.looseObject({ minor: priceMinorSchema, source: sourceSchema });

export const rateNames = [
  'labourPerHour',
  'callOut',
  'liftSide',
  'trackOffSide',
  'downtimePerHour',
  'breakdown',
] as const;
export type RateName = (typeof rateNames)[number];

/** What a workshop charges, and what standing still costs. */
export const ratesSchema = z.looseObject({
  ...book,
  labourPerHour: rateSchema,
  /** For each visit. */
  callOut: rateSchema,
  /** Lifting and blocking one side, and letting it down again. */
  liftSide: rateSchema,
  /** Taking the track of one side off and putting it on, once lifted. */
  trackOffSide: rateSchema,
  /** What the machine does not earn while it is worked on. */
  downtimePerHour: rateSchema,
  /** What a stop that nobody planned costs besides: recovery, express parts, a crew that waits. */
  breakdown: rateSchema,
});
export type Rates = z.infer<typeof ratesSchema>;

/** Why a cost is not known; nothing stands for it, 0 least of all. */
export type CostOpen =
  | { readonly kind: 'no-prices' | 'no-rates' }
  | { readonly kind: 'not-here' | 'newer-version'; readonly key: string }
  | { readonly kind: 'two-currencies'; readonly prices: string; readonly rates: string }
  | { readonly kind: 'no-price'; readonly job: JobKind };

/** The line of a kind of job; undefined when the list has none. */
export const priceLine = ({ lines }: PriceList, job: JobKind): PriceLine | undefined =>
  lines.find((line) => line.job === job);

/** The price list and the rates that count for a machine. */
export interface Costs {
  readonly prices: PriceList | undefined;
  readonly rates: Rates | undefined;
  readonly pricesKey: string | undefined;
  readonly ratesKey: string | undefined;
  /** What keeps every cost open. */
  readonly open: readonly CostOpen[];
  /** Keys of those that two phones wrote differently. */
  readonly clashes: readonly string[];
}

/** The one currency of all amounts; undefined while one of both lists is missing or they differ. */
export const currencyOf = ({ prices, rates }: Pick<Costs, 'prices' | 'rates'>): string | undefined =>
  prices && prices.currency === rates?.currency ? prices.currency : undefined;

/** What a job costs before what it shares with others of the visit; amounts in minor units of the currency. */
export interface JobCost {
  readonly currency: string;
  readonly partsMinor: number;
  readonly labourHours: number;
  readonly labourMinor: number;
  readonly downtimeMinor: number;
  /** True when a figure of it is an estimate, from memory or weakly published. */
  readonly soft: boolean;
  readonly sources: readonly Source[];
}

/** An hourly rate over some hours, in whole minor units; half a unit counts up. */
const overHours = (hours: number, rate: number): number => Math.round(round6(hours * rate));

/**
 * What a job costs on a machine.
 * @param count how many parts, sides or pairs of sides, as the kind of job counts
 */
export function jobCost(costs: Costs, job: JobKind, count = 1): Result<JobCost, CostOpen> {
  const { prices, rates, open } = costs;
  const [why] = open;
  const currency = currencyOf(costs);
  if (why) return err(why);
  if (!prices || !rates || currency === undefined) return err({ kind: prices ? 'no-rates' : 'no-prices' });
  const line = priceLine(prices, job);
  if (!line) return err({ kind: 'no-price', job });
  const labourHours = round6(line.labourHours * count);
  const sources = [line.source, rates.labourPerHour.source, rates.downtimePerHour.source];
  return ok({
    currency,
    partsMinor: line.minor * count,
    labourHours,
    labourMinor: overHours(labourHours, rates.labourPerHour.minor),
    downtimeMinor: overHours(labourHours, rates.downtimePerHour.minor),
    soft: sources.some(isSoft),
    sources,
  });
}
