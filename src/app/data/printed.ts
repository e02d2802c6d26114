import { toMm, type LengthUnit } from '../../core/quantity.ts';
import { formatter } from './format.ts';
import { preferences } from './preferences.ts';

const isInches = (unit: LengthUnit): boolean => unit !== 'mm';

/** A size as it is printed and, where the person reads the other family of units, in those. */
export function printed(at: number, unit: LengthUnit, resolution?: number): string {
  const format = formatter.value;
  const mm = toMm(at, unit);
  const print = format.inUnit(mm, unit, resolution);
  return isInches(unit) === isInches(preferences.value.length) ? print : `${print} (${format.length(mm)})`;
}
