import type { PhotoEvidence } from '../../core/photo-evidence.ts';
import { readingsAtSpot } from '../../core/progress.ts';
import type { Observed, Reading } from '../../core/readings.ts';
import type { PlacedReading } from '../../core/states.ts';
import type { Step } from '../../core/steps.ts';
import { formatter } from '../data/format.ts';
import { sagDraft, sagFrom, sagSpecs } from '../data/sagging.ts';
import { unitFor } from '../data/tool.ts';
import type { WalkModel } from '../data/walk-model.ts';

/** The questions of a walk whose answer can be measured in a picture: single lengths, and sag. */
export const measurable = (model: WalkModel): readonly Step[] =>
  model.steps.filter(({ kind, items: [item] }) => kind === 'sag' || item?.ask.kind === 'length');

/** The evidence of a reading of this step that was measured in this picture. */
export const madeFrom = (
  model: WalkModel,
  step: Step | undefined,
  sha256: string,
): PhotoEvidence | undefined =>
  step &&
  readingsAtSpot(step, model.assembled.input.readings).find(({ reading }) => reading.from?.photo === sha256)
    ?.reading.from;

/** A tenth of a millimetre: no picture tells more. */
const tenth = (mm: number): number => Math.round(mm * 10) / 10;

function observed(model: WalkModel, step: Step, mm: number): Observed {
  const unit = unitFor(step.items[0]?.id ?? '');
  const typed = formatter.value.field(mm, unit);
  if (step.kind !== 'sag') return { kind: 'length', mm, typed, unit };
  // Off a line through two grouser tips is what a straightedge on them reads.
  const method = 'straightedge-grouser' as const;
  const spec = sagSpecs(model, step).find((each) => each.method === method);
  return sagFrom({ ...sagDraft(model, step, unit), method, texts: [typed] }, [mm], unit, spec);
}

/** The reading of a step as measured in a picture, in place of the one that stands there. */
export function readingFrom(
  model: WalkModel,
  step: Step,
  from: PhotoEvidence,
  confirmed: boolean,
): PlacedReading {
  const here = readingsAtSpot(step, model.assembled.input.readings);
  const first = here.find(({ reading }) => reading.what.kind !== 'unseen') ?? here[0];
  const what = observed(model, step, tenth(from.mm));
  const reading: Reading = {
    v: 1,
    what,
    spot: step.spot,
    uMm: from.uMm,
    from,
    ...(confirmed && { confirmed }),
  };
  return { place: step.place, item: step.items[0]?.id ?? '', n: first?.n ?? step.spot, reading };
}
