import type { Item } from '../../core/items.ts';
import { limitsFor, type ItemLimits } from '../../core/limits.ts';
import { plausibility } from '../../core/plausible.ts';
import type { LengthUnit } from '../../core/quantity.ts';
import type { Observed, Reading } from '../../core/readings.ts';
import type { Params } from '../../core/reason.ts';
import { isSized, sizeOf } from '../../core/sizes.ts';
import type { Step } from '../../core/steps.ts';
import { pad } from '../../words/en/pad.ts';
import { formatter } from './format.ts';
import { toolUncertaintyOf } from './tool.ts';
import type { WalkModel } from './walk-model.ts';

/** The fields that an item's reading is typed into. */
export function fieldsOf(item: Item): readonly { readonly id: string; readonly label: string }[] {
  if (item.ask.kind === 'pitch') return [{ id: 'total', label: pad.total }];
  if (item.ask.kind === 'tread')
    return [
      { id: 'centre', label: pad.centre },
      { id: 'link', label: pad.link },
    ];
  if (item.ask.kind === 'pair')
    return [
      { id: 'outer', label: pad.outer },
      { id: 'inner', label: pad.inner },
    ];
  return [{ id: 'length', label: '' }];
}

/** What was read, from the millimetres and texts of the fields in order. */
export function observedFrom(
  item: Item,
  mm: readonly number[],
  typed: readonly string[],
  unit: LengthUnit,
  links: number,
): Observed {
  const [a = 0, b = 0] = mm;
  const texts = [...typed];
  if (item.ask.kind === 'pitch') return { kind: 'pitch', totalMm: a, links, typed: texts[0] ?? '', unit };
  if (item.ask.kind === 'tread') return { kind: 'tread', centreMm: a, linkMm: b, typed: texts, unit };
  if (item.ask.kind === 'pair') return { kind: 'pair', outerMm: a, innerMm: b, typed: texts, unit };
  return { kind: 'length', mm: a, typed: texts[0] ?? '', unit };
}

/** The millimetres of a reading's fields, in their order. */
export function mmOf(what: Observed): readonly number[] {
  if (what.kind === 'length') return [what.mm];
  if (what.kind === 'pitch') return [what.totalMm];
  if (what.kind === 'tread') return [what.centreMm, what.linkMm];
  return what.kind === 'pair' ? [what.outerMm, what.innerMm] : [];
}

/** The fields of a reading as text: as it was typed, or in the unit that the person reads in now. */
export function textsOf(what: Observed, unit: LengthUnit): readonly string[] {
  if (!('unit' in what) || what.unit !== unit) return mmOf(what).map((mm) => formatter.value.field(mm, unit));
  if (what.kind === 'length' || what.kind === 'pitch') return [what.typed];
  return what.kind === 'tread' || what.kind === 'pair' ? what.typed : [];
}

/** The sheet's entry that a step's reading is compared with. */
export function limitsAt(model: WalkModel, step: Step): ItemLimits | undefined {
  const { sheets } = model.assembled.input;
  const sheet = step.side === 'right' ? sheets.right : sheets.left;
  const [item] = step.items;
  const [number] = step.numbers;
  const of = model.machine.shape.bottomRollers;
  return sheet && item && limitsFor(sheet, item.id, number === undefined ? undefined : { number, of });
}

/** Why a reading cannot well be right, before it is taken; undefined when it may be. */
export function doubtOf(model: WalkModel, step: Step, reading: Reading): Params | undefined {
  const [item] = step.items;
  if (!item || !isSized(reading.what)) return undefined;
  const size = sizeOf(reading, reading.what, toolUncertaintyOf(model));
  return plausibility(item, size, limitsAt(model, step), model.walk.load);
}
