import { isSized, sizeOf } from '../../core/sizes.ts';
import { meanSagMm } from '../../core/sag.ts';
import type { Step } from '../../core/steps.ts';
import type { WalkModel } from './walk-model.ts';

/** The same spot's size on the machine's last walk in mm, or undefined. */
export function lastSize(model: WalkModel, step: Step): number | undefined {
  const [item] = step.items;
  const there = model.last.filter(({ place, item: id }) => place === step.place && id === item?.id);
  const same = there.find(({ n, reading }) => (reading.spot ?? n) === step.spot) ?? there[0];
  if (!same) return undefined;
  const { what } = same.reading;
  if (what.kind === 'sag') return meanSagMm(what);
  return isSized(what) ? sizeOf(same.reading, what, {}).mm : undefined;
}
