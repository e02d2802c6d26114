import * as z from 'zod/mini';
import { calls, meanwhiles } from './calls.ts';
import { limitMeanings } from './limits.ts';
import { text } from './machine.ts';
import { lengthUnits, type Comparison, type LengthUnit } from './quantity.ts';
import { sourceSchema } from './source.ts';

/** The version of the rule language; a set written in a later one is not evaluated but shown as open. */
export const ruleLanguage = 1;

const comparisons = ['<', '<=', '=', '>=', '>'] as const;

/**
 * A condition is data in a closed language and is answered with yes, no or not known.
 * `reading` compares a length (of a crack: its length or depth) in the unit of the rule; `finding` is one of
 * a list, or as severe as one (`atLeast`); `count` counts places of one side (or counted marks of one reading);
 * `neighbours` asks for that many side by side; `share` is of the circumference; `worn` is percent of the way to
 * a limit; `sag` is the state by the sheet; `age` is in years since fitted; `unknown` is true when not read.
 */
export type Condition =
  | { all: Condition[] }
  | { any: Condition[] }
  | { not: Condition }
  | {
      reading: string;
      field?: 'length' | 'depth' | undefined;
      op: Comparison;
      value: number;
      unit: LengthUnit;
    }
  | { finding: string; is?: string[] | undefined; atLeast?: string | undefined }
  | { count: string; atLeast: string; op: Comparison; value: number; neighbours?: boolean | undefined }
  | { share: string; atLeast: string; op: Comparison; value: number }
  | { worn: string; op: Comparison; percent: number; of?: (typeof limitMeanings)[number] | undefined }
  | { sag: 'tight' | 'right' | 'loose' | 'derailing' }
  | { age: string; op: Comparison; years: number }
  | { track: string[] }
  | { unknown: string };

const item = text(60);
const op = z.enum(comparisons);
const value = z.number();

/** Deepest nesting that is read; a deeper one is refused as not a rule of ours. */
const deepest = 8;

/** The conditions that hold no others. */
export const leafSchemas = [
  z.strictObject({
    reading: item,
    field: z.optional(z.enum(['length', 'depth'])),
    op,
    value,
    unit: z.enum(lengthUnits),
  }),
  z.strictObject({
    finding: item,
    is: z.optional(z.array(item).check(z.maxLength(20))),
    atLeast: z.optional(item),
  }),
  z.strictObject({ count: item, atLeast: item, op, value, neighbours: z.optional(z.boolean()) }),
  z.strictObject({ share: item, atLeast: item, op, value }),
  z.strictObject({ worn: item, op, percent: value, of: z.optional(z.enum(limitMeanings)) }),
  z.strictObject({ sag: z.enum(['tight', 'right', 'loose', 'derailing']) }),
  z.strictObject({ age: item, op, years: value }),
  z.strictObject({ track: z.array(item).check(z.maxLength(5)) }),
  z.strictObject({ unknown: item }),
] as const;

// Each level is a schema of its own, so that hostile nesting is refused and cannot exhaust the stack.
function conditionAt(depth: number): z.ZodMiniType<Condition> {
  if (depth === 0) return z.union(leafSchemas);
  const inner = conditionAt(depth - 1);
  const list = z.array(inner).check(z.minLength(1), z.maxLength(30));
  return z.union([
    z.strictObject({ all: list }),
    z.strictObject({ any: list }),
    z.strictObject({ not: inner }),
    ...leafSchemas,
  ]);
}

export const conditionSchema = conditionAt(deepest);

export const ruleSchema = z.looseObject({
  id: text(80).check(z.regex(/^[\w.-]+$/)),
  /** The items that the outcome belongs to; the first one's component is where the rule is asked. */
  items: z.array(item).check(z.minLength(1), z.maxLength(20)),
  when: conditionSchema,
  call: z.enum(calls),
  meanwhile: z.enum(meanwhiles),
  /** A message of the catalogue, or `written` with the author's own text. */
  reason: z.looseObject({ message: text(80), text: z.optional(text(1000)) }),
  /** True where the print leaves a gap between two bands and the more severe one was taken. */
  gap: z.optional(z.boolean()),
  source: sourceSchema,
});
export type Rule = z.infer<typeof ruleSchema>;

export const ruleSetSchema = z.looseObject({
  v: z.literal(1),
  language: z.int(),
  name: text(160),
  about: z.optional(text(2000)),
  /**
   * Item → ids of the rules that together cover it. An item is covered only while all of them are in the set,
   * so that deleting a rule opens the item and never makes it milder.
   */
  covers: z.record(text(60), z.array(text(80)).check(z.maxLength(60))),
  rules: z.array(ruleSchema).check(z.maxLength(400)),
  origin: z.optional(z.looseObject({ key: text(120), version: text(60) })),
  version: z.optional(text(60)),
});
export type RuleSet = z.infer<typeof ruleSetSchema>;

/** True for a set whose language this build understands; another one is not asked. */
export const isReadable = (set: RuleSet): boolean => set.language <= ruleLanguage;

/** The items that the set names and for each of which it still holds every rule that it names. */
export function coveredItems(set: RuleSet): ReadonlySet<string> {
  const held = new Set(set.rules.map(({ id }) => id));
  const covered = Object.entries(set.covers).filter(([, needed]) => needed.every((id) => held.has(id)));
  return new Set(isReadable(set) ? covered.map(([itemId]) => itemId) : []);
}

export const isCovered = (set: RuleSet, itemId: string): boolean => coveredItems(set).has(itemId);

/** The items over which some rule of the set could stop the machine. */
export function stoppingItems(set: RuleSet): ReadonlySet<string> {
  const stops = set.rules.filter(
    ({ call, meanwhile }) => call === 'park' || meanwhile === 'move-only' || meanwhile === 'nothing',
  );
  return new Set(stops.flatMap(({ items }) => items));
}
