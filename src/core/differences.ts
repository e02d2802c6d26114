import { canonicalJson } from './canonical-json.ts';

/** Where two JSON values differ: the way there, and what stands there on each side; absent where nothing does. */
export interface Difference {
  readonly path: readonly (string | number)[];
  readonly from?: unknown;
  readonly to?: unknown;
}

type Fields = Readonly<Record<string, unknown>>;

const isObject = (value: unknown): value is Fields =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const isSame = (from: unknown, to: unknown): boolean =>
  from === undefined || to === undefined ? from === to : canonicalJson(from) === canonicalJson(to);

const own = (fields: Fields, name: string): unknown =>
  Object.hasOwn(fields, name) ? fields[name] : undefined;

/** Every place at which two JSON values differ, down to the single field; none for equal values. */
export function differencesOf(
  from: unknown,
  to: unknown,
  path: readonly (string | number)[] = [],
): readonly Difference[] {
  if (isSame(from, to)) return [];
  if (isObject(from) && isObject(to)) {
    const names = [...new Set([...Object.keys(from), ...Object.keys(to)])].sort();
    return names.flatMap((name) => differencesOf(own(from, name), own(to, name), [...path, name]));
  }
  if (Array.isArray(from) && Array.isArray(to)) {
    const longer = Array.from({ length: Math.max(from.length, to.length) }, (_, at) => at);
    return longer.flatMap((at) => differencesOf(from[at], to[at], [...path, at]));
  }
  return [{ path, ...(from !== undefined && { from }), ...(to !== undefined && { to }) }];
}
