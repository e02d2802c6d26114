import type { RuleAnswer } from '../../core/hauling-rules.ts';
import { printedKg, type PrintedMass, type Sum } from '../../core/hauling.ts';
import { kgPerLb } from '../../core/quantity.ts';
import { hauling as words, stepOpen, stepWords } from '../../words/en/hauling.ts';
import { formatter } from '../data/format.ts';
import { preferences } from '../data/preferences.ts';

const other = { kg: 'lb', lb: 'kg' } as const;

/** A mass in a unit, to a tenth, so that 26,000.6 lb never reads as 26,001. */
const inUnit = (kg: number, unit: 'kg' | 'lb'): string =>
  `${formatter.value.number(Math.round((unit === 'kg' ? kg : kg / kgPerLb) * 10) / 10)}\u00a0${unit}`;

/** A mass in the unit that this person reads in. */
export const mass = (kg: number): string => inUnit(kg, preferences.value.mass);

/** A mass in both units, a law's own first. */
export const bothUnits = (kg: number, unit: 'kg' | 'lb'): string =>
  words.both(inUnit(kg, unit), inUnit(kg, other[unit]));

/** A mass as a law prints it, and in the other unit. */
export const printed = (limit: PrintedMass): string => bothUnits(printedKg(limit), limit.unit);

/** A sum, or what it is at least. */
export function sumText(sum: Pick<Sum, 'kg' | 'open'>, say: (kg: number) => string = mass): string {
  if (sum.open.length > 0 && sum.kg === 0) return words.nothingYet;
  return sum.open.length > 0 ? words.atLeast(say(sum.kg)) : say(sum.kg);
}

/** Names in a row, as the language joins them. */
export const named = (names: readonly string[]): string =>
  new Intl.ListFormat('en', { type: 'conjunction' }).format(names);

/** What is certain of a law: where even its least is open, nothing. */
export function askedLine(answer: RuleAnswer): string {
  if (answer.kind === 'step') return stepWords[answer.step];
  const isLeast = answer.atLeast === answer.rule.steps[0]?.step;
  return isLeast ? words.lawOpen : stepOpen(stepWords[answer.atLeast]);
}
