import * as z from 'zod/mini';
import { lengthUnits } from './quantity.ts';
import { useSchema } from './use.ts';

export const machineKinds = ['excavator', 'track-loader', 'dozer', 'carrier', 'other'] as const;
export const trackKinds = ['rubber-cored', 'rubber-coreless', 'steel', 'steel-pads', 'rubber-shoes'] as const;
export const sides = ['left', 'right'] as const;

export type MachineKind = (typeof machineKinds)[number];
export type TrackKind = (typeof trackKinds)[number];
export type Side = (typeof sides)[number];

const count = (least: number, most: number) => z.int().check(z.gte(least), z.lte(most));
export const text = (most: number) => z.string().check(z.maxLength(most));

/** The shape of an undercarriage; counts are for one side. */
export const shapeSchema = z.looseObject({
  track: z.enum(trackKinds),
  drive: z.enum(['oval', 'high']),
  idlers: count(1, 3),
  bottomRollers: count(0, 24),
  carrierRollers: count(0, 4),
  slidePlate: z.boolean(),
  suspension: z.enum(['rigid', 'bogie', 'torsion']),
  flanges: z.enum(['single', 'double', 'mixed']),
  tensioner: z.enum(['grease', 'spring']),
});
export type Shape = z.infer<typeof shapeSchema>;

/** What may differ between the two sides of one machine. */
export const sideSchema = z.looseObject({
  make: z.optional(text(120)),
  size: z.optional(text(120)),
  fittedAtHours: z.optional(z.number().check(z.gte(0))),
  sheet: z.optional(text(120)),
});

export const mostHoursAWeek = 168;

/** How somebody knows a fact of a part. */
export const factHows = ['measured', 'read', 'assumed'] as const;

/** A fact of a fitted part: a length in mm, a count, a choice or a text. */
const factSchema = z.looseObject({
  value: z.union([text(160), z.number().check(z.gte(0), z.lte(100_000))]),
  how: z.enum(factHows),
  typed: z.optional(text(40)),
  unit: z.optional(z.enum(lengthUnits)),
  /** Of a pitch: how many spaces were measured as one length. */
  spaces: z.optional(count(1, 100)),
  /** What a second count came to. */
  again: z.optional(count(0, 10_000)),
  /** The day as year-month-day: what was fitted later is another part. */
  on: z.optional(text(10)),
});
export type FittedFact = z.infer<typeof factSchema>;

/** What is known of the parts of one kind on one side, or of the one at a number. */
const fittedSchema = z.looseObject({
  side: z.enum(sides),
  component: text(60),
  number: z.optional(z.int()),
  facts: z.record(text(40), factSchema),
});

/** What somebody has chosen for a line of the parts to order; count and leaving out hold for one walk. */
const orderedSchema = z.looseObject({
  line: text(120),
  partNumber: z.optional(text(80)),
  /** It has to be the same as the old part in every way. */
  match: z.optional(z.boolean()),
  walk: z.optional(text(120)),
  count: z.optional(count(0, 10_000)),
  out: z.optional(z.boolean()),
});
export type Ordered = z.infer<typeof orderedSchema>;

export const machineSchema = z.looseObject({
  v: z.literal(1),
  name: text(120),
  kind: z.enum(machineKinds),
  maker: z.optional(text(120)),
  model: z.optional(text(120)),
  pin: z.optional(text(40)),
  massKg: z.optional(z.number().check(z.gt(0))),
  meterHours: z.optional(z.number().check(z.gte(0))),
  travelHours: z.optional(z.number().check(z.gte(0))),
  /** Engine hours in a usual week, by which hours left become a date. */
  hoursPerWeek: z.optional(z.number().check(z.gte(0), z.lte(mostHoursAWeek))),
  shape: shapeSchema,
  left: z.optional(sideSchema),
  right: z.optional(sideSchema),
  sheet: z.optional(text(120)),
  rules: z.optional(text(120)),
  /** Price list and rates; the starting ones of its class when absent. */
  prices: z.optional(text(120)),
  rates: z.optional(text(120)),
  /** What its tracks are chosen for. */
  use: z.optional(useSchema),
  note: z.optional(text(4000)),
  /** For whoever orders parts. */
  fitted: z.optional(z.array(fittedSchema).check(z.maxLength(200))),
  ordered: z.optional(z.array(orderedSchema).check(z.maxLength(200))),
});
export type Machine = z.infer<typeof machineSchema>;

export const isRubber = (shape: Pick<Shape, 'track'>): boolean =>
  shape.track === 'rubber-cored' || shape.track === 'rubber-coreless';

/** Parts a rubber or steel chain of links and pins has; rubber shoes are bolted on such a chain. */
export const isChain = (shape: Shape): boolean => !isRubber(shape);
