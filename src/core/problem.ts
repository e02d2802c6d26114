import type * as z from 'zod/mini';
import type { JsonFault } from './canonical-json.ts';
import { assert } from './result.ts';

/** What does not fit at one field of a value; numbers are in the field's own unit. */
export type Problem =
  | { readonly kind: JsonFault | 'missing' | 'malformed' | 'no-alternative' }
  | { readonly kind: 'wrong-type'; readonly expected: string }
  | { readonly kind: 'not-one-of'; readonly options: readonly string[] }
  | { readonly kind: 'above' | 'longer' | 'more'; readonly most: number }
  | { readonly kind: 'below' | 'shorter' | 'fewer'; readonly least: number }
  | { readonly kind: 'unknown-field'; readonly name: string };

/** A problem with the way to its field; the empty path is the value itself. */
export interface Fault {
  readonly path: readonly (string | number)[];
  readonly problem: Problem;
}

type Issue = z.core.$ZodIssue;

/** The value at a path of a schema's own names; undefined where it ends early. */
const at = (value: unknown, path: readonly PropertyKey[]): unknown =>
  path.reduce<unknown>((inner, name) => (inner as Record<PropertyKey, unknown> | null)?.[name], value);

const tooBig = { string: 'longer', array: 'more' } as const;
const tooSmall = { string: 'shorter', array: 'fewer' } as const;
type Counted = keyof typeof tooBig;
const isCounted = (origin: string): origin is Counted => origin === 'string' || origin === 'array';

function problemIn(issue: Issue): Problem {
  switch (issue.code) {
    case 'invalid_type':
      return { kind: 'wrong-type', expected: issue.expected };
    case 'invalid_value':
      return { kind: 'not-one-of', options: issue.values.map(String) };
    case 'too_big':
      return {
        kind: isCounted(issue.origin) ? tooBig[issue.origin] : 'above',
        most: Number(issue.maximum),
      };
    case 'too_small':
      return {
        kind: isCounted(issue.origin) ? tooSmall[issue.origin] : 'below',
        least: Number(issue.minimum),
      };
    case 'unrecognized_keys':
      return { kind: 'unknown-field', name: issue.keys[0] ?? '' };
    case 'invalid_union':
      return 'options' in issue && issue.options
        ? { kind: 'not-one-of', options: issue.options.map(String) }
        : { kind: 'no-alternative' };
    default:
      return { kind: 'malformed' };
  }
}

/** The first thing that a schema found wrong with a value of JSON. */
export function problemOf(issues: readonly Issue[], value: unknown): Fault {
  const [issue] = issues;
  assert(issue, 'a value is refused for a reason');
  // JSON has no symbols for names.
  const path = issue.path as (string | number)[];
  const isMissing = issue.code !== 'unrecognized_keys' && at(value, path) === undefined;
  return { path, problem: isMissing ? { kind: 'missing' } : problemIn(issue) };
}
