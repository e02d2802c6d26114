import { numbersOf } from './groups.ts';
import { components, itemsOf, partsASide, type Component, type Item } from './items.ts';
import { makePlace, type Place, type PlaceSide } from './keys.ts';
import type { Machine, Shape } from './machine.ts';

/** One item at one place of a machine. */
export interface Slot {
  readonly item: Item;
  readonly place: Place;
  /** The place of all such parts of the side together, which has no number. */
  readonly row: Place;
  readonly side: PlaceSide;
  readonly number: number | undefined;
  /** How many such parts the side has. */
  readonly parts: number;
  /** How the side is tightened, which decides what may be said of it. */
  readonly tensioner: Shape['tensioner'];
}

function slotsOfSide({ shape }: Machine, component: Component, side: PlaceSide): readonly Slot[] {
  const parts = partsASide(component, shape);
  const items = itemsOf(component, shape);
  const row = makePlace({ side, component });
  return numbersOf(component, parts).flatMap((number) => {
    const place = number === undefined ? row : makePlace({ side, component, number });
    const { tensioner } = shape;
    return items.map((item) => ({ item, place, row, side, number, parts, tensioner }));
  });
}

/** Every item at every place that a machine of this shape has, left before right. */
export function slotsOf(machine: Machine): readonly Slot[] {
  return components.flatMap((component) => {
    const sides: readonly PlaceSide[] = component === 'machine' ? ['whole'] : ['left', 'right'];
    return sides.flatMap((side) => slotsOfSide(machine, component, side));
  });
}
