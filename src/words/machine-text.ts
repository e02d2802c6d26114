import type { Shape } from '../core/machine.ts';
import { driveWords, trackKindWords } from './en/choices.ts';
import { componentNames } from './en/items.ts';
import { shapeLine } from './en/machine.ts';
import type { Formatter } from './format.ts';

/** The undercarriage in one line: `rubber with cores, oval; 1 idler, 4 bottom rollers, slide plate a side`. */
export function shapeInWords(shape: Shape, { plural }: Pick<Formatter, 'plural'>): string {
  const count = (number: number, part: 'idler' | 'bottom-roller' | 'carrier-roller'): string =>
    plural(number, componentNames[part].one, componentNames[part].many);
  return shapeLine(
    trackKindWords[shape.track].label,
    driveWords[shape.drive].label,
    count(shape.bottomRollers, 'bottom-roller'),
    count(shape.idlers, 'idler'),
    shape.slidePlate ? componentNames['slide-plate'].one : count(shape.carrierRollers, 'carrier-roller'),
  );
}
