import { assert } from './result.ts';

/** A JSON value; a field that is undefined counts as absent. */
export type Json =
  null | boolean | number | string | readonly Json[] | { readonly [name: string]: Json | undefined };

/** How deep a value may nest; the deepest record of ours has 8 levels. */
export const deepestJson = 32;

export type JsonFault = 'too-deep' | 'not-finite' | 'lone-surrogate' | 'not-json';

/** What keeps a value from having one canonical text everywhere (RFC 8785, RFC 7493), or undefined. */
export function jsonFault(value: unknown, depth = 0): JsonFault | undefined {
  if (value === null || typeof value === 'boolean' || value === undefined) return undefined;
  if (typeof value === 'number') return Number.isFinite(value) ? undefined : 'not-finite';
  if (typeof value === 'string') return /\p{Surrogate}/u.test(value) ? 'lone-surrogate' : undefined;
  if (typeof value !== 'object') return 'not-json';
  if (depth >= deepestJson) return 'too-deep';
  return partsFault(value, depth);
}

function partsFault(value: object, depth: number): JsonFault | undefined {
  const plain =
    Array.isArray(value) || [Object.prototype, null].includes(Object.getPrototypeOf(value) as null);
  if (!plain) return 'not-json';
  const parts = Array.isArray(value) ? value : [...Object.keys(value), ...Object.values(value)];
  for (const part of parts) {
    const fault = jsonFault(part, depth + 1);
    if (fault !== undefined) return fault;
  }
  return undefined;
}

/**
 * The one text of a JSON value (RFC 8785): names in order of their UTF-16 code units, numbers and strings as
 * ECMAScript writes them, no spaces. The value must have no jsonFault.
 */
export function canonicalJson(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map((part) => canonicalJson(part ?? null)).join(',')}]`;
  if (typeof value === 'object' && value !== null) {
    const fields = Object.entries(value).filter(([, part]) => part !== undefined);
    const named = fields.map(
      ([name, part]) => [name, `${JSON.stringify(name)}:${canonicalJson(part)}`] as const,
    );
    return `{${named
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([, text]) => text)
      .join(',')}}`;
  }
  assert(value !== undefined, 'undefined has no canonical text');
  return JSON.stringify(value);
}
