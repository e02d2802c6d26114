import { isSized, sizeOf } from '../../core/sizes.ts';
import { meanSagMm } from '../../core/sag.ts';
import type { Step } from '../../core/steps.ts';
import { pad } from '../../words/en/pad.ts';
import { sizeText } from './tool.ts';
import type { WalkModel } from './walk-model.ts';

/** The same spot's size on the machine's last walk, or on the hand-out that leads this one, in mm; or undefined. */
function lastSize(model: WalkModel, step: Step): number | undefined {
  const [item] = step.items;
  const there = model.last.filter(({ place, item: id }) => place === step.place && id === item?.id);
  const same =
    there.find(({ n, reading }) => (reading.spot ?? n) === step.spot) ??
    // Held against a hand-out, another lug's value would be taken for this one's.
    (model.rental?.handOut ? undefined : there[0]);
  if (!same) return undefined;
  const { what } = same.reading;
  if (what.kind === 'sag') return meanSagMm(what);
  return isSized(what) ? sizeOf(same.reading, what, {}).mm : undefined;
}

/** What stands beside the new value, or undefined. */
export function lastLine(model: WalkModel, step: Step): string | undefined {
  const [item] = step.items;
  const size = lastSize(model, step);
  // What stands above the pad with its mark and photo need not stand under it too.
  const isAbove = model.rental?.handedOutAt(step) !== undefined;
  if (item === undefined || size === undefined || isAbove) return undefined;
  return (model.rental?.handOut ? pad.handOut : pad.last)(sizeText(item.id, size));
}
