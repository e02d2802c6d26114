import { round6 } from '../core/quantity.ts';

/** The same value with every number in it on the grid of 1e-6 on which values are compared. */
export function rounded<T>(value: T): T {
  if (typeof value === 'number') return round6(value) as T;
  if (Array.isArray(value)) return value.map(rounded) as T;
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([name, part]) => [name, rounded(part)])) as T;
}
