import { isRubber, type MachineKind, type Shape } from '../core/machine.ts';

interface SheetClass {
  readonly upToKg: number;
  readonly id: string;
}

/** Starting sheets of steel excavators by operating mass, lightest first. */
export const excavatorClasses: readonly SheetClass[] = [
  { upToKg: 4500, id: 'steel-mini' },
  { upToKg: 7000, id: 'steel-5t' },
  { upToKg: 10_000, id: 'steel-8t' },
  { upToKg: 15_000, id: 'steel-13t' },
  { upToKg: 19_000, id: 'steel-17t' },
  { upToKg: 28_000, id: 'steel-23t' },
  { upToKg: 40_000, id: 'steel-32t' },
];

/** The same for dozers and steel loaders. */
export const dozerClasses: readonly SheetClass[] = [
  { upToKg: 12_000, id: 'dozer-small' },
  { upToKg: 25_000, id: 'dozer-mid' },
  { upToKg: Infinity, id: 'dozer-large' },
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
 * The class of a machine among those that starting values are given for. Undefined for steel of unknown mass and for
 * what is heavier than any class, because the same number would be right on one machine and far off on another.
 */
export function classOf(kind: MachineKind, shape: Shape, massKg: number | undefined): string | undefined {
  if (isRubber(shape)) return rubberId(kind, shape, massKg);
  if (massKg === undefined) return undefined;
  const classes = kind === 'dozer' || kind === 'track-loader' ? dozerClasses : excavatorClasses;
  return classes.find(({ upToKg }) => massKg <= upToKg)?.id;
}

/** The key of the starting sheet for a machine; undefined where no class fits it. */
export function startingSheetFor(
  kind: MachineKind,
  shape: Shape,
  massKg: number | undefined,
): string | undefined {
  const id = classOf(kind, shape, massKg);
  return id === undefined ? undefined : `limits/starting-${id}`;
}
