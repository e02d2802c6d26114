import type { ItemLimits, Limit, LimitSheet, SagSpec } from '../../core/limits.ts';
import type { LengthUnit } from '../../core/quantity.ts';
import { err, ok, type Result } from '../../core/result.ts';
import { formatter } from './format.ts';
import { isEmpty, numberIn, optionalNumber, positionsOf, sourceOf } from './sheet-numbers.ts';
import type { ItemRow, LimitRow, SagRow, SheetForm } from './sheet-rows.ts';

/** The rows to look at again, and `name`. */
export type SheetFaults = readonly string[];

function limitOf(row: LimitRow, unit: LengthUnit, unitWas: LengthUnit | undefined): Limit | undefined {
  const at = numberIn(row.at, unit, unitWas === unit ? row.was?.at : undefined);
  if (at === undefined) return undefined;
  const { also: _also, loads: _loads, hundred: _hundred, ...was } = row.was ?? {};
  // A second print belongs to the first: once that is changed there is nothing left to compare.
  const isSame = at === row.was?.at && unitWas === unit;
  return {
    ...was,
    at,
    means: row.means,
    ...(row.hundred && { hundred: true }),
    ...(row.loads.length > 0 && { loads: [...row.loads] }),
    ...(isSame && row.was?.also && { also: row.was.also }),
    source: sourceOf(row, row.was?.source),
  };
}

function entryOf(row: ItemRow): ItemLimits | undefined {
  const { unit, was } = row;
  const kept = was?.unit === unit ? was.new : undefined;
  const limits = row.limits.map((limit) => limitOf(limit, unit, was?.unit));
  const fresh = optionalNumber(row.new, unit, kept?.at);
  const tolerance = optionalNumber(row.tolerance, unit, kept?.tolerance);
  const resolution = optionalNumber(row.resolution, 'mm', was?.resolution);
  const positions = positionsOf(row.positions, row.numbers);
  const isWhole = limits.every((limit) => limit !== undefined);
  if (row.item === '' || !isWhole || !fresh.ok || !tolerance.ok || !resolution.ok || !positions.ok)
    return undefined;
  const { new: _new, breaks: _breaks, positions: _positions, resolution: _resolution, ...rest } = was ?? {};
  return {
    ...rest,
    item: row.item,
    ...(positions.value !== undefined && { positions: positions.value }),
    unit,
    ...(resolution.value !== undefined && resolution.value > 0 && { resolution: resolution.value }),
    ...(fresh.value !== undefined && {
      new: {
        at: fresh.value,
        ...(tolerance.value !== undefined && { tolerance: Math.abs(tolerance.value) }),
        source: sourceOf(row, was?.new?.source),
      },
    }),
    limits: limits.filter((limit) => limit !== undefined),
    ...(row.breaks && was?.unit === unit && { breaks: row.breaks }),
  };
}

function specOf(row: SagRow): SagSpec | undefined {
  const { unit } = row;
  const was = row.was?.unit === unit ? row.was : undefined;
  const [low, high] = [numberIn(row.low, unit, was?.low), numberIn(row.high, unit, was?.high)];
  const taut = optionalNumber(row.taut, unit, was?.taut);
  const derail = optionalNumber(row.derailAbove, unit, was?.derailAbove);
  const load = optionalNumber(row.loadN, 'mm', was?.loadN);
  if (low === undefined || high === undefined || !taut.ok || !derail.ok || !load.ok) return undefined;
  const { clean: _c, also, taut: _t, derailAbove: _d, loadN: _l, ...rest } = row.was ?? {};
  const isSame = low === was?.low && high === was.high;
  return {
    ...rest,
    method: row.method,
    posture: row.posture,
    ...(row.clean !== '' && { clean: row.clean }),
    unit,
    low,
    high,
    ...(isSame && also && { also }),
    ...(taut.value !== undefined && { taut: taut.value }),
    ...(derail.value !== undefined && { derailAbove: derail.value }),
    ...(load.value !== undefined && load.value > 0 && { loadN: load.value }),
    source: sourceOf(row, row.was?.source),
  };
}

/** The sheet that the form describes, on top of what the record holds besides. */
export function sheetOf(form: SheetForm, before: LimitSheet | undefined): Result<LimitSheet, SheetFaults> {
  const items = form.items.map((row) => ({ id: row.id, made: entryOf(row) }));
  const sag = form.sag.map((row) => ({ id: row.id, made: specOf(row) }));
  const faults = [
    ...(isEmpty(form.name) ? ['name'] : []),
    ...[...items, ...sag].flatMap(({ id, made }) => (made === undefined ? [id] : [])),
  ];
  if (faults.length > 0) return err(faults);
  const { about: _about, rules: _rules, ...rest } = before ?? {};
  return ok({
    ...rest,
    v: 1,
    name: form.name.trim(),
    ...(!isEmpty(form.about) && { about: form.about.trim() }),
    items: items.flatMap(({ made }) => made ?? []),
    sag: sag.flatMap(({ made }) => made ?? []),
    ...(form.rules !== '' && { rules: form.rules }),
  });
}

/** How a size of the sheet would be typed in its unit. */
export const spellIn =
  (unit: LengthUnit) =>
  ({ mm }: { mm: number }): string =>
    formatter.value.field(mm, unit);
