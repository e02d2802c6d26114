import type { ItemLimits } from '../../core/limits.ts';
import { toMm, type LengthUnit } from '../../core/quantity.ts';
import { err, ok, type Result } from '../../core/result.ts';
import type { Source, SourceMark } from '../../core/source.ts';
import { parseCount, parseLength } from '../../core/typed.ts';
import { formatter } from './format.ts';

export const isEmpty = (text: string): boolean => text.trim() === '';

/** A stored number as it would be typed; sixteenths as a tape says them. */
export const textOf = (value: number, unit: LengthUnit): string =>
  unit === 'in/16' ? formatter.value.field(toMm(value, unit), unit) : String(value);

/** What was typed, in the unit; a text that was not touched gives the stored number back to the last digit. */
export function numberIn(text: string, unit: LengthUnit, was: number | undefined): number | undefined {
  if (was !== undefined && text === textOf(was, unit)) return was;
  const read = parseLength(text, unit);
  return read.ok ? read.value.value : undefined;
}

/** The same for a number that may be left out. */
export function optionalNumber(
  text: string,
  unit: LengthUnit,
  was: number | undefined,
): Result<number | undefined, undefined> {
  if (isEmpty(text)) return ok(undefined);
  const value = numberIn(text, unit, was);
  return value === undefined ? err(undefined) : ok(value);
}

const needsText: readonly SourceMark[] = ['published', 'derived', 'weak'];

/** A source; a figure that is said to be published but not where counts as an estimate. */
export function sourceOf(
  { mark, source }: { readonly mark: SourceMark; readonly source: string },
  was: Source | undefined,
): Source {
  const text = source.trim();
  return { ...was, mark: text === '' && needsText.includes(mark) ? 'estimate' : mark, text };
}

/** Part numbers as typed: `1, 7`. */
export function positionsOf(
  choice: 'all' | 'ends' | 'inner' | 'some',
  numbers: string,
): Result<ItemLimits['positions'], undefined> {
  if (choice === 'all') return ok(undefined);
  if (choice !== 'some') return ok(choice);
  const read = numbers
    .split(/[\s,;]+/)
    .filter((part) => part !== '')
    .map(parseCount);
  const found = read.flatMap((each) => (each.ok && each.value > 0 ? [each.value] : []));
  return found.length > 0 && found.length === read.length ? ok(found) : err(undefined);
}
