import type {
  Cleanliness,
  ItemLimits,
  Limit,
  LimitMeaning,
  LimitSheet,
  Load,
  Posture,
  SagMethod,
  SagSpec,
} from '../../core/limits.ts';
import type { LengthUnit } from '../../core/quantity.ts';
import type { SourceMark } from '../../core/source.ts';
import { newId } from './moment.ts';
import { textOf } from './sheet-numbers.ts';

export interface SourceTexts {
  readonly mark: SourceMark;
  readonly source: string;
}

export interface LimitRow extends SourceTexts {
  readonly id: string;
  readonly at: string;
  readonly means: LimitMeaning;
  readonly hundred: boolean;
  readonly loads: readonly Load[];
  readonly was: Limit | undefined;
}

export type PositionChoice = 'all' | 'ends' | 'inner' | 'some';

export interface ItemRow extends SourceTexts {
  readonly id: string;
  readonly item: string;
  readonly positions: PositionChoice;
  readonly numbers: string;
  readonly unit: LengthUnit;
  readonly resolution: string;
  readonly new: string;
  readonly tolerance: string;
  readonly limits: readonly LimitRow[];
  readonly breaks: ItemLimits['breaks'];
  readonly was: ItemLimits | undefined;
}

export interface SagRow extends SourceTexts {
  readonly id: string;
  readonly method: SagMethod;
  readonly posture: Posture;
  readonly clean: Exclude<Cleanliness, 'packed'> | '';
  readonly unit: LengthUnit;
  readonly low: string;
  readonly high: string;
  readonly taut: string;
  readonly derailAbove: string;
  readonly loadN: string;
  readonly was: SagSpec | undefined;
}

/** A sheet as its form has it, numbers as they were typed. */
export interface SheetForm {
  readonly id: string;
  /** The stamp of the sheet that the form was begun on. */
  readonly base: string | undefined;
  readonly name: string;
  readonly about: string;
  readonly rules: string;
  readonly items: readonly ItemRow[];
  readonly sag: readonly SagRow[];
}

const entered = { mark: 'entered', source: '' } as const;

const limitRow = (limit: Limit, unit: LengthUnit): LimitRow => ({
  id: newId(),
  at: textOf(limit.at, unit),
  means: limit.means,
  hundred: limit.hundred === true,
  loads: limit.loads ?? [],
  mark: limit.source.mark,
  source: limit.source.text,
  was: limit,
});

export const newLimitRow = (isFirst: boolean): LimitRow => ({
  id: newId(),
  at: '',
  means: 'replace',
  hundred: isFirst,
  loads: [],
  was: undefined,
  ...entered,
});

const itemRow = (entry: ItemLimits): ItemRow => ({
  id: newId(),
  item: entry.item,
  positions: Array.isArray(entry.positions) ? 'some' : (entry.positions ?? 'all'),
  numbers: Array.isArray(entry.positions) ? entry.positions.join(', ') : '',
  unit: entry.unit,
  resolution: entry.resolution === undefined ? '' : String(entry.resolution),
  new: entry.new === undefined ? '' : textOf(entry.new.at, entry.unit),
  tolerance: entry.new?.tolerance === undefined ? '' : textOf(entry.new.tolerance, entry.unit),
  mark: entry.new?.source.mark ?? 'entered',
  source: entry.new?.source.text ?? '',
  limits: entry.limits.map((limit) => limitRow(limit, entry.unit)),
  breaks: entry.breaks,
  was: entry,
});

export const newItemRow = (unit: LengthUnit): ItemRow => ({
  id: newId(),
  item: '',
  positions: 'all',
  numbers: '',
  unit,
  resolution: '',
  new: '',
  tolerance: '',
  limits: [newLimitRow(true)],
  breaks: undefined,
  was: undefined,
  ...entered,
});

const sagRow = (spec: SagSpec): SagRow => ({
  id: newId(),
  method: spec.method,
  posture: spec.posture,
  clean: spec.clean ?? '',
  unit: spec.unit,
  low: textOf(spec.low, spec.unit),
  high: textOf(spec.high, spec.unit),
  taut: spec.taut === undefined ? '' : textOf(spec.taut, spec.unit),
  derailAbove: spec.derailAbove === undefined ? '' : textOf(spec.derailAbove, spec.unit),
  loadN: spec.loadN === undefined ? '' : String(spec.loadN),
  mark: spec.source.mark,
  source: spec.source.text,
  was: spec,
});

export const newSagRow = (unit: LengthUnit): SagRow => ({
  id: newId(),
  method: 'straightedge-grouser',
  posture: 'ground',
  clean: '',
  unit,
  low: '',
  high: '',
  taut: '',
  derailAbove: '',
  loadN: '',
  was: undefined,
  ...entered,
});

/**
 * The form of a sheet, or of a new one.
 * @param rules the rule set of a new sheet; without any it would leave everything open
 */
export const sheetForm = (
  sheet: LimitSheet | undefined,
  stamp: string | undefined,
  rules: string,
): SheetForm => ({
  id: newId(),
  base: stamp,
  name: sheet?.name ?? '',
  about: sheet?.about ?? '',
  rules: sheet ? (sheet.rules ?? '') : rules,
  items: sheet?.items.map(itemRow) ?? [],
  sag: sheet?.sag.map(sagRow) ?? [],
});
