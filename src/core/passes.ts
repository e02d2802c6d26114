import { isPassable } from './groups.ts';
import { makePlace, parsePlace, type Place } from './keys.ts';
import type { ObservedOf } from './readings.ts';
import type { Slot } from './slots.ts';
import { compareBytewise } from './stamp.ts';
import type { PlacedReading } from './states.ts';

/** A group that was looked at and found fine in one tap. */
export interface Pass {
  readonly place: Place;
  readonly item: string;
  readonly what: ObservedOf<'pass'>;
  /** The part it speaks for; all parts of the component where it has none. */
  readonly number: number | undefined;
}

/** Passes by the place of all parts together. */
export type Passes = ReadonlyMap<Place, readonly Pass[]>;

/** The passes of a walk; of several of one group the latest stands, whatever order they come in. */
export function passesOf(readings: readonly PlacedReading[]): Passes {
  const latest = new Map<string, { n: number; row: Place; pass: Pass }>();
  for (const { place, item, n, reading } of readings) {
    const { what } = reading;
    const key = `${place}|${item}`;
    if (what.kind !== 'pass' || (latest.get(key)?.n ?? -1) >= n) continue;
    const { side, component, number } = parsePlace(place);
    latest.set(key, { n, row: makePlace({ side, component }), pass: { place, item, what, number } });
  }
  const rows = new Map<Place, Pass[]>();
  for (const [, { row, pass }] of [...latest].sort(([a], [b]) => compareBytewise(a, b))) {
    rows.set(row, [...(rows.get(row) ?? []), pass]);
  }
  return rows;
}

/** The pass that speaks for an item at a place, if one does. */
export function passFor(passes: Passes, { item, row, number }: Slot): Pass | undefined {
  if (!isPassable(item)) return undefined;
  return passes.get(row)?.find((pass) => {
    if (!pass.what.items.includes(item.id)) return false;
    const isOfPart = pass.number === undefined || pass.number === number;
    return isOfPart && (number === undefined || !pass.what.except.includes(number));
  });
}
