import * as z from 'zod/mini';
import { mostNameLength } from './costs.ts';
import { currencySchema, priceMinorSchema } from './currency.ts';
import { text } from './machine.ts';
import { sourceSchema } from './source.ts';
import { grounds } from './use.ts';

/** What the renter pays for beside the hire: damage alone, or wear beyond what was agreed too. */
export const chargedFor = ['damage', 'damage-and-wear'] as const;

/** Which hours wear is allowed for: those billed, those that the meter ran, or those that the hire includes. */
export const hourBases = ['billed', 'meter', 'included'] as const;

/** How the labour of a damaged part is charged: by the share of life that was left, whole, or not at all. */
export const labourShares = ['share', 'whole', 'none'] as const;

const percent = z.number().check(z.gte(0), z.lte(100));

/** A cut-off beyond this would leave a part without any value while it still runs. */
const mostCutOff = 90;

const contractPartSchema = z.looseObject({
  /** A kind of job (`renew-track`), or one item (`shoes`) whose price is for each that is damaged. */
  what: z.string().check(z.regex(/^[a-z][a-z0-9-]{0,59}$/)),
  /** Standard life in hours, by which wear is allowed. */
  lifeHours: z.optional(z.number().check(z.gt(0), z.lte(100_000))),
  /** Price of the part, and labour to fit it, in minor units of the contract's currency. */
  minor: z.optional(priceMinorSchema),
  labourMinor: z.optional(priceMinorSchema),
  source: sourceSchema,
});

export type ContractPart = z.infer<typeof contractPartSchema>;

const isOnce = (parts: readonly ContractPart[]): boolean =>
  new Set(parts.map(({ what }) => what)).size === parts.length;

/** What owner and renter agreed about the undercarriage of one machine for one hire. */
export const contractSchema = z.looseObject({
  v: z.literal(1),
  machine: text(120),
  number: z.optional(text(80)),
  owner: z.optional(text(mostNameLength)),
  renter: z.optional(text(mostNameLength)),
  /** The clause on wear and damage, as its number or in its words. */
  clause: z.optional(text(4000)),
  /** Days of the hire, `YYYY-MM-DD`. */
  from: z.optional(text(10)),
  to: z.optional(text(10)),
  charges: z.enum(chargedFor),
  hours: z.enum(hourBases),
  /** The hours billed or included; the meter's come from both walks. */
  hoursCount: z.optional(z.number().check(z.gte(0), z.lte(100_000))),
  currency: currencySchema,
  parts: z.array(contractPartSchema).check(z.maxLength(60), z.refine(isOnce)),
  /** Percent of life left at which a part counts as worth nothing. */
  cutOffPercent: z.optional(z.number().check(z.gte(0), z.lte(mostCutOff))),
  /** Percent of life that may be used up beyond hours ÷ standard life. */
  allowancePercent: z.optional(percent),
  labour: z.optional(z.enum(labourShares)),
  /** Bringing the machine in, or the parts out; charged once where anything is. */
  haulageMinor: z.optional(priceMinorSchema),
  haulageSource: z.optional(sourceSchema),
  taxPercent: z.optional(percent),
  /** Items and kinds of job that the owner does not charge. */
  waived: z.optional(z.array(text(60)).check(z.maxLength(60))),
  /** Ground that the machine may work on; any where it is absent. */
  grounds: z.optional(z.array(z.enum(grounds)).check(z.maxLength(grounds.length))),
  /** Days in which the renter may object, and in which what was taken off is kept. */
  replyDays: z.optional(z.int().check(z.gte(0), z.lte(365))),
  keptDays: z.optional(z.int().check(z.gte(0), z.lte(365))),
  /** The hand-out walk; the machine's last one before the return where it is absent. */
  handOut: z.optional(text(120)),
  note: z.optional(text(4000)),
});
export type Contract = z.infer<typeof contractSchema>;

/** What the contract says of the first of these names that it has a line for; undefined where it has none. */
export const contractPart = ({ parts }: Contract, ...names: readonly string[]): ContractPart | undefined =>
  names.flatMap((name) => parts.filter(({ what }) => what === name))[0];

/**
 * Share of the price that a part with so much of its life left is worth, when it counts as worth nothing at a
 * cut-off: (left − cut-off)/(100 − cut-off), and 0 below it.
 */
export const valueShare = (leftPercent: number, cutOffPercent: number): number =>
  Math.max(0, (leftPercent - cutOffPercent) / (100 - cutOffPercent));
