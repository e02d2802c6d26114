import type { Step } from '../../core/steps.ts';
import type { Caution } from '../../core/walk.ts';
import type { WalkModel } from './walk-model.ts';

/** The cautions that a step needs and that have not been ticked on this walk. */
export function cautionsFor(model: WalkModel, step: Step): readonly Caution[] {
  const needed: Caution[] = ['ground'];
  const grease = model.machine.shape.tensioner === 'grease';
  if (step.stop === 'drive') needed.push('track-turning');
  if (step.stop.startsWith('raised')) needed.push('raised', 'track-turning');
  if (step.component === 'adjuster') needed.push(grease ? 'grease' : 'spring');
  if (step.group === 'off') needed.push('track-down');
  const ticked = new Set(model.walk.cautions);
  return needed.filter((caution) => !ticked.has(caution));
}
