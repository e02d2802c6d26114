import { components, isNumbered, partsASide, type Component } from '../../core/items.ts';
import type { Shape, Side } from '../../core/machine.ts';
import type { LengthUnit } from '../../core/quantity.ts';
import { err, ok, type Result } from '../../core/result.ts';
import { parseHours, parseLength } from '../../core/typed.ts';
import type { Work, WorkReason, workKinds } from '../../core/walk.ts';
import { dateParts } from '../../words/calendar.ts';

export type WorkKind = (typeof workKinds)[number];

/** The form as typed; what is empty was left out. */
export interface WorkTexts {
  readonly kind: string;
  readonly component: string;
  readonly side: string;
  readonly number: string;
  readonly on: string;
  readonly meter: string;
  readonly size: string;
  readonly sheet: string;
  readonly note: string;
  /** Why the part before came off; of fitted parts only. */
  readonly why: string;
  /** Last reading of the old meter; of a changed meter only. */
  readonly oldMeter: string;
}

export type WorkFault = 'kind' | 'component' | 'side' | 'meter' | 'oldMeter' | 'size';

/** A changed hour meter is about no part. */
export const hasPart = (kind: string): boolean => kind !== '' && kind !== 'meter-changed';

/** The parts that a machine of this shape has and that work can be noted on. */
export const partsOf = (shape: Shape): readonly Component[] =>
  components.filter((component) => component !== 'machine' && partsASide(component, shape) > 0);

/** How many of the chosen part one side has, where they are numbered. */
export const numbersOf = (texts: WorkTexts, shape: Shape): number => {
  const component = texts.component as Component;
  return component !== undefined && isNumbered(component) ? partsASide(component, shape) : 0;
};

const isEmpty = (text: string): boolean => text.trim() === '';

function faultsOf(texts: WorkTexts, unit: LengthUnit): readonly WorkFault[] {
  const fine: readonly (readonly [WorkFault, boolean])[] = [
    ['kind', texts.kind !== ''],
    ['component', !hasPart(texts.kind) || texts.component !== ''],
    ['side', !hasPart(texts.kind) || texts.side !== ''],
    ['meter', isEmpty(texts.meter) || parseHours(texts.meter).ok],
    ['oldMeter', isEmpty(texts.oldMeter) || parseHours(texts.oldMeter).ok],
    ['size', isEmpty(texts.size) || parseLength(texts.size, unit).ok],
  ];
  return fine.flatMap(([fault, isFine]) => (isFine ? [] : [fault]));
}

/**
 * The work that the form describes: one record for each side, because a part is machine, side, component and
 * number, and its history is cut on its own side only.
 */
export function workOf(
  texts: WorkTexts,
  shape: Shape,
  unit: LengthUnit,
): Result<readonly Work[], readonly WorkFault[]> {
  const faults = faultsOf(texts, unit);
  if (faults.length > 0) return err(faults);
  const common = commonOf(texts, unit);
  if (!hasPart(texts.kind)) return ok([{ ...common, side: 'whole' }]);
  const number = Number(texts.number);
  const isOne = number >= 1 && number <= numbersOf(texts, shape);
  const part = { ...common, component: texts.component, ...(isOne && { number }) };
  const sides = texts.side === 'both' ? (['left', 'right'] as const) : [texts.side as Side];
  return ok(sides.map((side) => ({ ...part, side })));
}

function commonOf(texts: WorkTexts, unit: LengthUnit): Work {
  const meter = parseHours(texts.meter);
  const old = texts.kind === 'meter-changed' ? parseHours(texts.oldMeter) : undefined;
  const isFitted = texts.kind === 'fitted' && texts.why !== '';
  const size = hasPart(texts.kind) ? parseLength(texts.size, unit) : undefined;
  return {
    v: 1,
    kind: texts.kind as WorkKind,
    // A calendar control gives a whole day or nothing.
    ...(dateParts(texts.on) && { on: texts.on }),
    ...(meter.ok && { meterHours: meter.value, meterTyped: texts.meter.trim() }),
    ...(old?.ok && { oldMeterHours: old.value }),
    ...(isFitted && { why: texts.why as WorkReason }),
    ...(size?.ok && { newMm: size.value.mm, newTyped: texts.size.trim(), newUnit: unit }),
    ...(hasPart(texts.kind) && texts.sheet !== '' && { sheet: texts.sheet }),
    ...(!isEmpty(texts.note) && { note: texts.note.trim() }),
  };
}
