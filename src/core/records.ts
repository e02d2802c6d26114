import type * as z from 'zod/mini';
import { priceListSchema, ratesSchema } from './costs.ts';
import { isNewer, valueVersion, type RecordValue } from './versions.ts';
import { jsonFault } from './canonical-json.ts';
import { contractSchema } from './contract.ts';
import { holdSchema } from './holds.ts';
import { kindOf, partsOf, type Kind, type RecordKey } from './keys.ts';
import { limitSheetSchema } from './limits.ts';
import { machineSchema } from './machine.ts';
import { optionSchema } from './option.ts';
import { personSchema } from './person.ts';
import { photoSchema } from './photo.ts';
import { problemOf, type Fault } from './problem.ts';
import { readingFault } from './reading-fault.ts';
import { readingSchema, type Reading } from './readings.ts';
import { ruleSetSchema } from './rules.ts';
import { sealSchema } from './seal.ts';
import { walkSchema, workSchema } from './walk.ts';

/** What the value of each kind looks like at `v: 1`; kinds that are not here are carried along unread. */
export const valueSchemas = {
  machine: machineSchema,
  limits: limitSheetSchema,
  rules: ruleSetSchema,
  walk: walkSchema,
  reading: readingSchema,
  work: workSchema,
  price: priceListSchema,
  rate: ratesSchema,
  contract: contractSchema,
  option: optionSchema,
  hold: holdSchema,
  photo: photoSchema,
  person: personSchema,
  seal: sealSchema,
} as const satisfies Partial<Record<Kind, z.ZodMiniType>>;
export type ReadKind = keyof typeof valueSchemas;

export const isReadKind = (kind: Kind): kind is ReadKind => Object.hasOwn(valueSchemas, kind);

/**
 * What is wrong with the value of a record that comes in from outside, or undefined. A kind that this build does
 * not read and a value of a newer build need only be JSON: they stay as they are.
 */
export function recordFault(key: RecordKey, value: RecordValue): Fault | undefined {
  const fault = jsonFault(value);
  if (fault !== undefined) return { path: [], problem: { kind: fault } };
  const kind = kindOf(key);
  if (!isReadKind(kind) || isNewer(value, valueVersion)) return undefined;
  const parsed = valueSchemas[kind].safeParse(value);
  if (!parsed.success) return problemOf(parsed.error.issues, value);
  const parts = partsOf(key);
  return parts.kind === 'reading' ? readingFault(parts.item, value as unknown as Reading) : undefined;
}
