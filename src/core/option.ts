import * as z from 'zod/mini';
import { currencySchema, priceMinorSchema } from './currency.ts';
import { mostLabourHours, mostNameLength } from './costs.ts';
import { text, trackKinds } from './machine.ts';
import { sourceSchema } from './source.ts';

/** How a figure that has to match came about. */
export const hows = ['measured', 'read', 'assumed'] as const;
export type How = (typeof hows)[number];

type Steps = readonly { readonly toHours: number }[];
const isRising = (steps: Steps): boolean =>
  steps.every(({ toHours }, at) => at === 0 || toHours > (steps[at - 1]?.toHours ?? 0));

const known = <T extends z.ZodMiniType>(value: T) => z.optional(z.looseObject({ value, how: z.enum(hows) }));
const size = known(z.number().check(z.gt(0), z.lte(10_000)));
const count = known(z.int().check(z.gte(1), z.lte(400)));
const words = known(text(200));
const hours = z.number().check(z.gt(0), z.lte(100_000));

/** What has to match between a track and the machine it goes on; lengths in mm. */
export const fitSchema = z.looseObject({
  widthMm: size,
  pitchMm: size,
  links: count,
  /** Where the guides of the track run against its rollers. */
  guide: known(z.enum(['centre', 'outer'])),
  hornWidthMm: size,
  hornHeightMm: size,
  /** What the rollers run on. */
  rollersOn: known(z.enum(['core', 'rubber'])),
  sprocketTeeth: count,
  sprocketBolts: count,
  boltCircleMm: size,
  boreMm: size,
  offsetMm: known(z.number().check(z.gte(-1000), z.lte(1000))),
  /** Tread of a rubber track or shoe of a steel one. */
  tread: words,
  /** The whole moulding as read, with every suffix. */
  moulding: words,
});
export type FitFacts = z.infer<typeof fitSchema>;

/** A track that could be put on a machine, or that is on it; all for one side. */
export const optionSchema = z.looseObject({
  v: z.literal(1),
  name: text(mostNameLength),
  /** The machine that it is meant for; without one it can be asked about for any. */
  machine: z.optional(text(120)),
  /** True for what is on that machine now. */
  fitted: z.optional(z.boolean()),
  track: z.enum(trackKinds),
  origin: z.optional(z.enum(['genuine', 'aftermarket'])),
  make: z.optional(text(120)),
  /** For one side, in minor units, ready to fit. */
  price: z.optional(
    z.looseObject({
      minor: priceMinorSchema,
      currency: currencySchema,
      source: z.optional(sourceSchema),
    }),
  ),
  /** Labour for one side, lifting and taking the old track off included. */
  fittingHours: z.optional(z.number().check(z.gte(0), z.lte(mostLabourHours))),
  /** Hours from new to the limit; one in ten is done before `lowHours`, one in ten lasts beyond `highHours`. */
  life: z.optional(
    z.looseObject({
      hours,
      lowHours: z.optional(hours),
      highHours: z.optional(hours),
      source: z.optional(sourceSchema),
    }),
  ),
  warranty: z.optional(
    z.looseObject({
      months: z.optional(z.int().check(z.gte(1), z.lte(600))),
      /** Share of the price that is paid back up to so many hours, the fewest hours first. */
      steps: z
        .array(z.looseObject({ toHours: hours, percent: z.number().check(z.gte(0), z.lte(100)) }))
        .check(z.maxLength(20), z.refine(isRising)),
    }),
  ),
  massKg: known(z.number().check(z.gt(0), z.lte(100_000))),
  fit: z.optional(fitSchema),
  /** What a change to this kind needs besides the tracks, both sides, in the currency of the price. */
  besidesMinor: z.optional(priceMinorSchema),
  note: z.optional(text(4000)),
});
export type Option = z.infer<typeof optionSchema>;

/** Percent of the price that a warranty pays back at so many hours; 0 beyond its last step. */
export const warrantyPercent = (
  steps: readonly { readonly toHours: number; readonly percent: number }[],
  atHours: number,
): number => steps.find(({ toHours }) => atHours <= toHours)?.percent ?? 0;
