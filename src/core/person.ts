import * as z from 'zod/mini';
import { text } from './machine.ts';

/** For whom somebody signs. */
export const signerRoles = ['inspector', 'renter', 'buyer', 'owner'] as const;
export type SignerRole = (typeof signerRoles)[number];

/** How somebody signed: by hand, by the name that was typed, or not at all. */
export const signingWays = ['drawn', 'typed', 'refused'] as const;
export type SigningWay = (typeof signingWays)[number];

/** The points of a drawn signature, as shares of the pad's width: x from 0 to 1, y from 0 down. */
const stroke = z.array(z.number().check(z.gte(-1), z.lte(4))).check(z.maxLength(2000));

/** Who signed a walk, apart from the seal, which holds only a salted hash: a person can be erased, a seal not. */
export const personSchema = z.looseObject({
  v: z.literal(1),
  role: z.enum(signerRoles),
  name: text(160),
  way: z.optional(z.enum(signingWays)),
  /** Each stroke as x, y, x, y, …; absent where somebody would not or could not sign. */
  strokes: z.optional(z.array(stroke).check(z.maxLength(200))),
  /** What they do not agree with, in their own words. */
  objection: z.optional(text(4000)),
  /** 32 random bytes as hexadecimal digits, so that nobody finds the name by trying names. */
  salt: z.string().check(z.regex(/^[0-9a-f]{64}$/)),
});
export type Person = z.infer<typeof personSchema>;
