import { wearItems, type ValuedKind } from './appraisal-settings.ts';
import { itemsOf, partsASide, type Item } from './items.ts';
import { jobKindsFor, jobTraits, type JobKind } from './job-kinds.ts';
import type { Shape } from './machine.ts';
import type { ItemOutcome } from './score.ts';

export const isValued = (kind: JobKind): kind is ValuedKind => Object.hasOwn(wearItems, kind);

/** What wear is read by on such a part of this machine; none where it is judged by eye alone. */
export function wearItemsOf(kind: JobKind, shape: Shape): readonly Item[] {
  const ids = isValued(kind) ? wearItems[kind] : [];
  return itemsOf(jobTraits[kind].component, shape).filter(({ id }) => ids.includes(id));
}

/** The kinds of part of a machine that wear out and are renewed. */
export const wearingKinds = (shape: Shape): readonly JobKind[] =>
  jobKindsFor(shape).filter((kind) => isValued(kind) || byEye.includes(kind));

/** Parts that wear, and that this walk has no measure for. */
const byEye: readonly JobKind[] = ['renew-sprocket', 'renew-carrier-roller', 'renew-slide-plate'];

/** How many such parts a side has; a track, a chain and its shoes count as one. */
export const countOf = (kind: JobKind, shape: Shape): number =>
  jobTraits[kind].per === 'part' ? partsASide(jobTraits[kind].component, shape) : 1;

/** Percent of life left of what was measured; below 0 past the limit, above 100 over new. */
export const leftOf = ({ state }: ItemOutcome): number | undefined => state.wear && 100 - state.wear.percent;
