import { isRubberTrack, type OptionMachine } from './option-life.ts';
import type { CurrentTrack } from './option-match.ts';
import type { Figures } from './option-tables.ts';
import type { Option } from './option.ts';

/** How much more or less the machine weighs with an option than now, both sides, in kg. */
export interface MassDifference {
  readonly lowKg: number;
  readonly highKg: number;
  readonly from: 'own' | 'starting';
}

/** The mass that counts as mid-size, from which the starting difference grows and shrinks with the machine. */
const midSizeKg = { least: 5000, most: 10_000 };

/** From the masses of both tracks; else from what a steel outfit commonly weighs more. */
export function massDifference(
  { massKg, shape }: OptionMachine,
  current: CurrentTrack | undefined,
  option: Option,
  figures: Figures,
): MassDifference | undefined {
  if (current?.massKg !== undefined && option.massKg) {
    const kg = 2 * (option.massKg.value - current.massKg);
    return { lowKg: kg, highKg: kg, from: 'own' };
  }
  // The mass of a machine without tracks yet is that with the tracks of its shape.
  const [from, to] = [isRubberTrack(current?.track ?? shape.track), isRubberTrack(option.track)];
  if (from === to) return { lowKg: 0, highKg: 0, from: 'starting' };
  if (massKg === undefined) return undefined;
  const scale = massKg / Math.min(Math.max(massKg, midSizeKg.least), midSizeKg.most);
  const [low, high] = [figures.steelHeavierLowKg.value * scale, figures.steelHeavierHighKg.value * scale];
  return from
    ? { lowKg: low, highKg: high, from: 'starting' }
    : { lowKg: -high, highKg: -low, from: 'starting' };
}
