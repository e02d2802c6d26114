import type { Contract } from '../../src/core/contract.ts';
import type { RentalInput, RentalWalk } from '../../src/core/rental-input.ts';
import { score } from '../../src/core/score.ts';
import type { ScoreInput } from '../../src/core/states.ts';
import type { Walk } from '../../src/core/walk.ts';
import { entered, entryOf, finding, inputOf, mm, read, sheetOf, walkOf } from './made.ts';

/** Small made-up hires: every test says only what matters to it. */

/** One percent of life is one tenth of a millimetre. */
export const tenthSheet = sheetOf([entryOf('lug-depth', 20, 10)]);

export const contractOf = (more: Partial<Contract> = {}): Contract => ({
  v: 1,
  machine: 'machine/made-up',
  charges: 'damage-and-wear',
  hours: 'billed',
  hoursCount: 180,
  currency: 'EUR',
  parts: [{ what: 'renew-track', lifeHours: 3000, minor: 600_000, source: entered }],
  ...more,
});

/** Lugs of the left track, percent worn by `tenthSheet`, each read without error unless said. */
export const lugs = (percents: readonly number[], uMm = 0, place = 'left.track') =>
  percents.map((percent, i) =>
    read(place, 'lug-depth', mm(20 - percent / 10), { n: i + 1, spot: i + 1, uMm }),
  );

type Readings = ScoreInput['readings'];

export function walkedOf(key: string, readings: Readings, walk: Partial<Walk> = {}): RentalWalk {
  const input = inputOf({
    sheet: tenthSheet,
    readings,
    walk: walkOf({ purpose: 'rental-return', depth: 'short', ...walk }),
  });
  return { key, input, scored: score(input), photos: [] };
}

/** A hire whose left track went out and came back as said. */
export const hireOf = (
  out: Readings,
  back: Readings,
  contract: Partial<Contract> = {},
  walk: Partial<Walk> = {},
): RentalInput => ({
  contract: contractOf(contract),
  handOut: walkedOf('walk/out', out, { purpose: 'hand-out' }),
  returned: walkedOf('walk/back', back, walk),
});

export const sound = [read('left.track', 'cord', finding('none'))];
export const cut = [read('left.track', 'cord', finding('cut', { count: 1 }))];
