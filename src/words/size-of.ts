import type { Numbers } from './format.ts';

const taped = new Set(['pitch', 'roller-tread', 'bushing-od', 'link-height', 'idler-tread', 'sag']);

/** True for items read as a length by tape or caliper; the others are read as a depth. */
export const isTaped = (itemId: string): boolean => taped.has(itemId);

/** A size of an item in the unit in which this reader reads that item. */
export const sizeOf = (itemId: string, valueMm: number, { length, depth }: Numbers): string =>
  isTaped(itemId) ? length(valueMm) : depth(valueMm);
