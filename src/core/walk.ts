import * as z from 'zod/mini';
import { currencySchema, priceMinorSchema } from './currency.ts';
import { loads } from './limits.ts';
import { text } from './machine.ts';
import { observedAtSchema, unseenReasons } from './readings.ts';
import { grounds, turnings } from './use.ts';

export const purposes = ['jobsite', 'hand-out', 'rental-return', 'appraisal'] as const;
export const depths = ['short', 'full'] as const;
export const corners = ['front-left', 'rear-left', 'rear-right', 'front-right'] as const;
export const starts = ['walk', 'track-off', 'drive-first'] as const;
export const cautions = ['ground', 'raised', 'track-turning', 'grease', 'spring', 'track-down'] as const;

export type Purpose = (typeof purposes)[number];
export type Depth = (typeof depths)[number];
export type Corner = (typeof corners)[number];
export type Start = (typeof starts)[number];
export type Caution = (typeof cautions)[number];

/** Whether a line of the charge list counts, as somebody decided. */
const settledSchema = z.looseObject({
  line: text(120),
  is: z.enum(['charged', 'not-charged']),
  /** What was agreed where the line has no amount of its own; minor units of the contract's currency. */
  minor: z.optional(priceMinorSchema),
  /** The currency of that amount; in another one it says nothing. */
  currency: z.optional(currencySchema),
  why: z.optional(text(400)),
});
export type Settled = z.infer<typeof settledSchema>;

/** True for a walk with which a machine is handed out to a renter or taken back. */
export const isRental = (purpose: Purpose): boolean => purpose === 'hand-out' || purpose === 'rental-return';

export const walkSchema = z.looseObject({
  v: z.literal(1),
  machine: text(120),
  purpose: z.enum(purposes),
  depth: z.enum(depths),
  start: z.enum(starts),
  corner: z.enum(corners),
  startedAt: z.optional(observedAtSchema),
  finishedAt: z.optional(observedAtSchema),
  meterHours: z.optional(z.number().check(z.gte(0))),
  meterTyped: z.optional(text(40)),
  travelHours: z.optional(z.number().check(z.gte(0))),
  customer: z.optional(text(160)),
  site: z.optional(text(160)),
  jobNumber: z.optional(text(80)),
  contact: z.optional(text(160)),
  inspector: z.optional(text(160)),
  ground: z.optional(z.enum(grounds)),
  turning: z.optional(z.enum(turnings)),
  load: z.optional(z.enum(loads)),
  clean: z.optional(z.enum(['clean', 'working-dirt', 'packed'])),
  cautions: z.optional(z.array(z.enum(cautions)).check(z.maxLength(12))),
  /** Items opened that this depth does not ask for. */
  opened: z.optional(z.array(text(60)).check(z.maxLength(80))),
  /** Sheet and rule set as pinned: key and stamp; a walk may override the sheet's rule set. */
  sheet: z.optional(z.looseObject({ key: text(120), stamp: z.optional(text(40)) })),
  rules: z.optional(z.looseObject({ key: text(120), stamp: z.optional(text(40)) })),
  /** The step at hand, so that an interrupted walk goes on where it was. */
  step: z.optional(text(120)),
  note: z.optional(text(4000)),
  corrects: z.optional(text(120)),
  /** Of a rental return: the hand-out walk that it is held against, and what was agreed. */
  handOut: z.optional(text(120)),
  contract: z.optional(text(120)),
  /** Lines of the charge list that somebody has settled, with why. */
  settled: z.optional(z.array(settledSchema).check(z.maxLength(200))),
  /** Pictures of the sequence that were left out, each with why. */
  skipped: z.optional(
    z.array(z.looseObject({ shot: text(60), why: z.enum(unseenReasons) })).check(z.maxLength(60)),
  ),
  /** What was chosen for its appraisal, as `appraisal-settings.ts` reads it. */
  appraisal: z.optional(z.looseObject({})),
});
export type Walk = z.infer<typeof walkSchema>;

export const workKinds = [
  'fitted',
  'turned',
  'swapped',
  'link-removed',
  'meter-changed',
  'adjusted',
  'repaired',
] as const;

export const workReasons = ['worn', 'damaged', 'other'] as const;
export type WorkReason = (typeof workReasons)[number];

/** Something done to the machine; the part is side + component + position. */
export const workSchema = z.looseObject({
  v: z.literal(1),
  kind: z.enum(workKinds),
  side: z.optional(z.enum(['left', 'right', 'whole'])),
  component: z.optional(text(60)),
  number: z.optional(z.int()),
  item: z.optional(text(60)),
  /** Why the part before was taken off: worn out, broken before that, or for a reason of another kind. */
  why: z.optional(z.enum(workReasons)),
  /** The meter on the day; of a changed meter what the new one showed, and `oldMeterHours` what the old one did. */
  meterHours: z.optional(z.number().check(z.gte(0))),
  oldMeterHours: z.optional(z.number().check(z.gte(0))),
  newMm: z.optional(z.number()),
  sheet: z.optional(text(120)),
  on: z.optional(text(10)),
  note: z.optional(text(4000)),
});
export type Work = z.infer<typeof workSchema>;
