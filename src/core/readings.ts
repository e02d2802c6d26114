import * as z from 'zod/mini';
import { cleanliness, postures, sagMethods } from './limits.ts';
import { text } from './machine.ts';
import { photoEvidenceSchema } from './photo-evidence.ts';
import { lengthUnits } from './quantity.ts';

const mm = z.number().check(z.gte(-10000), z.lte(100000));
const typed = text(40);
const unit = z.enum(lengthUnits);

export const unseenReasons = [
  'guarded',
  'mud',
  'unsafe',
  'no-tool',
  'no-time',
  'not-fitted',
  'other',
] as const;
export type UnseenReason = (typeof unseenReasons)[number];

/** What was read. Lengths are millimetres; `typed` is what the person entered and in which unit. */
export const observedSchema = z.discriminatedUnion('kind', [
  z.looseObject({ kind: z.literal('length'), mm, typed, unit }),
  z.looseObject({
    kind: z.literal('finding'),
    finding: text(40),
    /** How many, where the item is counted. */
    count: z.optional(z.int().check(z.gte(0), z.lte(10000))),
    /** Share of the circumference, 0 to 1. */
    share: z.optional(z.number().check(z.gte(0), z.lte(1))),
  }),
  z.looseObject({
    kind: z.literal('crack'),
    lengthMm: mm,
    depthMm: mm,
    cordVisible: z.boolean(),
    typed: z.optional(z.array(typed).check(z.maxLength(2))),
    unit: z.optional(unit),
  }),
  z.looseObject({
    kind: z.literal('sag'),
    /** One value, or several spans of one side whose mean counts. */
    mm: z.array(mm).check(z.minLength(1), z.maxLength(4)),
    typed: z.array(typed).check(z.maxLength(4)),
    unit,
    method: z.enum(sagMethods),
    posture: z.enum(postures),
    clean: z.enum(cleanliness),
    travel: z.optional(z.enum(['forward', 'reverse'])),
    coasted: z.optional(z.boolean()),
    spanMm: z.optional(mm),
    loadN: z.optional(z.number().check(z.gt(0))),
  }),
  z.looseObject({
    kind: z.literal('pitch'),
    totalMm: mm,
    links: z.int().check(z.gte(1), z.lte(20)),
    typed,
    unit,
  }),
  z.looseObject({
    kind: z.literal('tread'),
    centreMm: mm,
    linkMm: mm,
    typed: z.array(typed).check(z.maxLength(2)),
    unit,
  }),
  z.looseObject({
    kind: z.literal('pair'),
    outerMm: mm,
    innerMm: mm,
    typed: z.array(typed).check(z.maxLength(2)),
    unit,
  }),
  z.looseObject({
    kind: z.literal('pass'),
    /** The items that were looked at and found fine at every part of the component, … */
    items: z.array(text(60)).check(z.maxLength(60)),
    /** … except at these numbers, which have readings of their own or are open. */
    except: z.array(z.int()).check(z.maxLength(60)),
    /** How much of the loop was seen. */
    seen: z.enum(['whole', 'half']),
  }),
  z.looseObject({ kind: z.literal('unseen'), why: z.enum(unseenReasons) }),
]);
export type Observed = z.infer<typeof observedSchema>;
export type ObservedKind = Observed['kind'];
export type ObservedOf<K extends ObservedKind> = Extract<Observed, { kind: K }>;

/** When something was seen: the phone's clock as data, never used to order anything. */
export const observedAtSchema = z.looseObject({
  utc: text(40),
  offsetMinutes: z.int(),
  zone: z.optional(text(60)),
});

export type ObservedAt = z.infer<typeof observedAtSchema>;

export const readingSchema = z.looseObject({
  v: z.literal(1),
  what: observedSchema,
  /** Which spot of the part: readings of one spot are repeats, of different spots samples. */
  spot: z.optional(z.int().check(z.gte(1))),
  tool: z.optional(text(40)),
  /** Standard uncertainty of the reading in mm, when the person or tool states one. */
  uMm: z.optional(z.number().check(z.gte(0))),
  /** The picture and marks that it was measured from. */
  from: z.optional(photoEvidenceSchema),
  at: z.optional(observedAtSchema),
  note: z.optional(text(4000)),
  /** Where the mark is that shows which lug, link or shoe was read, so that another walk reads the same one. */
  mark: z.optional(text(160)),
  /** The person was asked about an implausible value and said that it is right. */
  confirmed: z.optional(z.boolean()),
});
export type Reading = z.infer<typeof readingSchema>;
