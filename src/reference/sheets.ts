import { isRubber, type MachineKind, type Shape } from '../core/machine.ts';
import { dozerClasses } from './sheets-dozer.ts';
import { excavatorClasses } from './sheets-excavator.ts';
import { rubberSheets } from './sheets-rubber.ts';
import type { Sheet } from './sheet-rows.ts';

/** Every starting sheet, rubber first, then steel by mass. */
export const startingSheets: readonly Sheet[] = [
  ...rubberSheets,
  ...excavatorClasses.map((each) => each.sheet),
  ...dozerClasses.map((each) => each.sheet),
];

/** From here on a rubber excavator counts as midi. */
const midiKg = 6000;

function rubberId(kind: MachineKind, shape: Shape, massKg: number | undefined): string {
  const loader = shape.track === 'rubber-coreless' ? 'rubber-loader-coreless' : 'rubber-loader';
  if (kind === 'track-loader' || kind === 'dozer') return loader;
  if (kind === 'carrier') return 'rubber-carrier';
  return massKg !== undefined && massKg > midiKg ? 'rubber-midi' : 'rubber-mini';
}

/**
 * The key of the starting sheet for a machine. Undefined for steel of unknown mass and for what is heavier than
 * any class, because the same number would be right on one machine and far off on another.
 */
export function startingSheetFor(
  kind: MachineKind,
  shape: Shape,
  massKg: number | undefined,
): string | undefined {
  if (isRubber(shape)) return `limits/starting-${rubberId(kind, shape, massKg)}`;
  if (massKg === undefined) return undefined;
  const classes = kind === 'dozer' || kind === 'track-loader' ? dozerClasses : excavatorClasses;
  return classes.find(({ upToKg }) => massKg <= upToKg)?.sheet.key;
}
