import type { Cleanliness, SagMethod, SagSpec } from '../../core/limits.ts';
import type { LengthUnit } from '../../core/quantity.ts';
import type { ObservedOf } from '../../core/readings.ts';
import type { Step } from '../../core/steps.ts';
import { formatter } from './format.ts';
import { readPad } from './pad-text.ts';
import type { WalkModel } from './walk-model.ts';

export type SagChoice = SagMethod | 'by-eye';
type Sag = ObservedOf<'sag'>;

/** What stands on the screen of a sag, half typed or as it was read. */
export interface SagDraft {
  readonly texts: readonly string[];
  readonly method: SagChoice;
  readonly clean: Cleanliness;
  readonly span: string;
  readonly travel: 'forward' | 'reverse' | undefined;
  readonly coasted: boolean;
}

const raised = new Set<SagMethod>(['frame-to-shoe', 'frame-to-track', 'roller-gap']);

/** The bands that the sheet of a step's side prints; none without a sheet. */
export function sagSpecs(model: WalkModel, step: Step): readonly SagSpec[] {
  const { left, right } = model.assembled.input.sheets;
  return (step.side === 'right' ? right : left)?.sag ?? [];
}

/** The sag that was read at a step. */
export function sagRead(model: WalkModel, step: Step): Sag | undefined {
  const { readings } = model.assembled.input;
  const what = readings.find(({ place, item }) => place === step.place && item === 'sag')?.reading.what;
  return what?.kind === 'sag' ? what : undefined;
}

/** The method to begin with: what was used, else what the sheet prints for this posture. */
function methodFor(model: WalkModel, step: Step, specs: readonly SagSpec[]): SagChoice {
  const isRaised = step.stop.startsWith('raised');
  const printed = specs.find(({ posture }) => (posture === 'raised') === isRaised) ?? specs[0];
  return printed?.method ?? (model.walk.depth === 'short' ? 'by-eye' : 'straightedge-grouser');
}

/** The draft that a step begins with: the reading as it stands, in the unit one reads in now. */
export function sagDraft(model: WalkModel, step: Step, unit: LengthUnit): SagDraft {
  const sag = sagRead(model, step);
  const { field } = formatter.value;
  const shown = sag && (sag.unit === unit ? sag.typed : sag.mm.map((mm) => field(mm, unit)));
  return {
    texts: shown ?? [''],
    method: sag?.method ?? methodFor(model, step, sagSpecs(model, step)),
    clean: sag?.clean ?? model.walk.clean ?? 'clean',
    span: sag?.spanMm === undefined ? '' : field(sag.spanMm, unit),
    travel: sag?.travel,
    coasted: sag?.coasted ?? false,
  };
}

export const isSameSag = (a: SagDraft, b: SagDraft): boolean =>
  a.method === b.method &&
  a.clean === b.clean &&
  a.span === b.span &&
  a.travel === b.travel &&
  a.coasted === b.coasted &&
  a.texts.every((text, i) => text === b.texts[i]);

/** A sag as it is stored: with its method, and the posture and load that the sheet prints for it. */
export function sagFrom(
  draft: SagDraft & { readonly method: SagMethod },
  mm: readonly number[],
  unit: LengthUnit,
  spec: SagSpec | undefined,
): Sag {
  const span = readPad(draft.span, unit);
  return {
    kind: 'sag',
    mm: [...mm],
    typed: [...draft.texts],
    unit,
    method: draft.method,
    posture: spec?.posture ?? (raised.has(draft.method) ? 'raised' : 'ground'),
    clean: draft.clean,
    ...(span.kind === 'length' && { spanMm: span.mm }),
    ...(draft.travel && { travel: draft.travel }),
    ...(draft.coasted && { coasted: true }),
    ...(spec?.loadN !== undefined && { loadN: spec.loadN }),
  };
}
