import type { Comparison } from '../../core/quantity.ts';
import { toMm } from '../../core/quantity.ts';
import type { Condition } from '../../core/rules.ts';
import { unreachable } from '../../core/result.ts';
import type { Formatter } from '../format.ts';
import { limitMeaningWords, trackKindWords } from './choices.ts';
import { findingLabel, itemName } from './items.ts';
import { sagStateWords } from './sag.ts';

/** `30 mm or more`, `above 30 mm`. */
const compared: Record<Comparison, (value: string) => string> = {
  '<': (value) => `below ${value}`,
  '<=': (value) => `${value} or less`,
  '=': (value) => `exactly ${value}`,
  '>=': (value) => `${value} or more`,
  '>': (value) => `above ${value}`,
};

const either = (parts: readonly string[]): string => {
  const last = parts.at(-1) ?? '';
  return parts.length < 2 ? last : `${parts.slice(0, -1).join(', ')} or ${last}`;
};

type Of<Field extends string> = Extract<Condition, Record<Field, unknown>>;

const crackField = { length: 'length of the', depth: 'depth of the' } as const;

const readingText = ({ reading, field, op, value, unit }: Of<'reading'>, format: Formatter): string =>
  `${field === undefined ? '' : `${crackField[field]} `}${itemName(reading)} is ${compared[op](format.inUnit(toMm(value, unit), unit))}`;

/** In quotes, so that it is clear where a finding ends and the next condition begins. */
const quoted = (item: string, finding: string): string => `“${findingLabel(item, finding)}”`;

function findingText({ finding, is = [], atLeast }: Of<'finding'>): string {
  const named = is.map((each) => quoted(finding, each));
  const severe = atLeast === undefined ? [] : [`${quoted(finding, atLeast)} or worse`];
  return `${itemName(finding)} ${either([...named, ...severe])}`;
}

function countText({ count, atLeast, op, value, neighbours }: Of<'count'>, format: Formatter): string {
  const places = `${compared[op](format.number(value))} ${value === 1 ? 'place' : 'places'}`;
  const where = neighbours ? 'side by side' : 'of one side';
  return `${itemName(count)} ${quoted(count, atLeast)} or worse at ${places} ${where}`;
}

const shareText = ({ share, atLeast, op, value }: Of<'share'>, format: Formatter): string =>
  `${itemName(share)} ${quoted(share, atLeast)} or worse along ${compared[op](format.percent(value * 100))} of the way round`;

function wornText({ worn, op, percent, of }: Of<'worn'>, format: Formatter): string {
  const way = of === undefined ? 'worn' : `of the way to the ${limitMeaningWords[of]}`;
  return `${itemName(worn)} is ${compared[op](format.percent(percent))} ${way}`;
}

const trackText = ({ track }: Of<'track'>): string => {
  const names: Readonly<Record<string, { readonly label: string }>> = trackKindWords;
  return `the track is ${either(track.map((kind) => names[kind]?.label ?? kind))}`;
};

const isGroup = (condition: Condition): boolean => 'all' in condition || 'any' in condition;

/** One of several: a group inside a group stands in brackets, so that it is clear what belongs together. */
const part = (condition: Condition, format: Formatter): string =>
  isGroup(condition) ? `(${conditionText(condition, format)})` : conditionText(condition, format);

/** A condition as a mechanic would say it, after `when`. */
export function conditionText(condition: Condition, format: Formatter): string {
  if ('all' in condition) return condition.all.map((each) => part(each, format)).join(' and ');
  if ('any' in condition) return condition.any.map((each) => part(each, format)).join(' or ');
  if ('not' in condition) return `not: ${part(condition.not, format)}`;
  if ('reading' in condition) return readingText(condition, format);
  if ('finding' in condition) return findingText(condition);
  if ('count' in condition) return countText(condition, format);
  if ('share' in condition) return shareText(condition, format);
  if ('worn' in condition) return wornText(condition, format);
  if ('sag' in condition) return `the sag is ${sagStateWords[condition.sag]}`;
  if ('age' in condition)
    return `the ${itemName(condition.age)} was fitted ${compared[condition.op](format.plural(condition.years, 'year', 'years'))} ago`;
  if ('track' in condition) return trackText(condition);
  if ('unknown' in condition) return `${itemName(condition.unknown)} was not read`;
  return unreachable(condition);
}
