import * as z from 'zod/mini';
import type { Walk } from './walk.ts';

/** What a person can choose to say how good the parts of a machine have to be: by what is renewed. */
export const valuedKinds = [
  'renew-track',
  'renew-chain',
  'renew-shoes',
  'renew-pads',
  'renew-idler',
  'renew-bottom-roller',
] as const;
export type ValuedKind = (typeof valuedKinds)[number];

/** What is measured of the parts that a job renews. */
export const wearItems: Readonly<Record<ValuedKind, readonly string[]>> = {
  'renew-track': ['lug-depth'],
  'renew-chain': ['link-height', 'pitch', 'bushing-od'],
  'renew-shoes': ['grouser'],
  'renew-pads': ['pad-height'],
  'renew-idler': ['idler-tread'],
  'renew-bottom-roller': ['roller-tread'],
};

/** What renews the part that an item is measured on. */
export const valuedKindOf = (item: string): ValuedKind | undefined =>
  valuedKinds.find((kind) => wearItems[kind].includes(item));

/** Signs that no reading tells: somebody has to look. */
export const askedSigns = [
  'fresh-paint',
  'built-up-teeth',
  'removed-link',
  'unknown-tracks',
  'fresh-oil',
] as const;
export type AskedSign = (typeof askedSigns)[number];

/** How far ahead the plan looks, so that no spend can be told beyond. */
export const mostHoursAhead = 2000;

const percentLeft = z.int().check(z.gte(0), z.lte(100));
const hoursAhead = z.number().check(z.gte(1), z.lte(mostHoursAhead));

/** The condition that a buyer or a seller states. */
const statedSchema = z.discriminatedUnion('kind', [
  /** So much left at least of every part, or of each kind that has a figure of its own. */
  z.looseObject({
    kind: z.literal('percent'),
    percent: percentLeft,
    of: z.optional(z.partialRecord(z.enum(valuedKinds), percentLeft)),
  }),
  /** Nothing due within so many hours. */
  z.looseObject({ kind: z.literal('hours'), hours: hoursAhead }),
]);
type Stated = z.infer<typeof statedSchema>;

/** Percent left that a condition wants of a part, by what is measured on it. */
export function percentWanted({ percent, of }: Extract<Stated, { kind: 'percent' }>, item: string): number {
  const kind = valuedKindOf(item);
  return (kind && of?.[kind]) ?? percent;
}

/**
 * What an appraisal leans on beside readings and prices, each a choice of the person. `saleable`: percent left below
 * which a part is worth nothing (a quarter: common practice, no source). `sets`: whether parts of one row count as
 * the worst of them. `hours`: how far ahead spend is told. `priceSpread`: how far off a price that is an estimate
 * may be, in percent, in eight of ten cases (our estimate).
 */
export interface AppraisalSettings {
  readonly saleable: number;
  readonly sets: 'worst' | 'each';
  readonly hours: number;
  readonly priceSpread: number;
  readonly stated: Stated;
  readonly seen: Readonly<Partial<Record<AskedSign, 'yes' | 'no'>>>;
}

const setsSchema = z.enum(['worst', 'each']);
const seenSchema = z.partialRecord(z.enum(askedSigns), z.enum(['yes', 'no']));

function read<T>(schema: z.ZodMiniType<T>, value: unknown, start: T): T {
  const found = schema.safeParse(value);
  return found.success ? found.data : start;
}

/** The choices of a walk; what is missing or cannot be read stands as it starts. */
export function settingsOf({ appraisal = {} }: Pick<Walk, 'appraisal'>): AppraisalSettings {
  return {
    saleable: read(percentLeft, appraisal['saleable'], 25),
    sets: read(setsSchema, appraisal['sets'], 'worst'),
    hours: read(hoursAhead, appraisal['hours'], 1000),
    priceSpread: read(percentLeft, appraisal['priceSpread'], 30),
    stated: read<Stated>(statedSchema, appraisal['stated'], { kind: 'percent', percent: 50 }),
    seen: read(seenSchema, appraisal['seen'], {}),
  };
}
