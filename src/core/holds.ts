import * as z from 'zod/mini';
import { valueIn, type Shelf } from './assemble.ts';
import { isDemo, parseKey, prefixOf } from './keys.ts';
import { text } from './machine.ts';

const hours = z.optional(z.number().check(z.gte(0)));

/** What somebody has fixed about a job of the plan; hours are those of the machine's meter. */
export const holdSchema = z.looseObject({
  v: z.literal(1),
  /** It is not to be done. */
  skip: z.optional(z.literal(true)),
  from: hours,
  to: hours,
  why: z.optional(text(400)),
});
export type Hold = z.infer<typeof holdSchema>;

/** Whether a hold leaves a visit at these hours open to its job; without a hold every visit is. */
export const holdAllows = (hold: Hold | undefined, atHours: number): boolean =>
  hold === undefined ||
  (hold.skip !== true && atHours >= (hold.from ?? 0) && atHours <= (hold.to ?? Infinity));

/** The holds of a machine by the id of their job; those of a newer version are left out. */
export function holdsOf(shelf: Shelf, machineKey: string): ReadonlyMap<string, Hold> {
  const parts = parseKey(machineKey);
  if (parts?.kind !== 'machine') return new Map();
  const prefix = prefixOf('hold', { owner: parts.id, demo: isDemo(machineKey) });
  return new Map(
    shelf.under(prefix).flatMap(([key, versions]) => {
      const hold = valueIn<Hold>(versions);
      const at = parseKey(key);
      return hold && at?.kind === 'hold' ? [[at.job, hold] as const] : [];
    }),
  );
}
