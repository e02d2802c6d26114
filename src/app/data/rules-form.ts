import type { Call, Meanwhile } from '../../core/calls.ts';
import type { LengthUnit } from '../../core/quantity.ts';
import { round6 } from '../../core/quantity.ts';
import { err, ok, type Result } from '../../core/result.ts';
import type { Condition, Rule, RuleSet } from '../../core/rules.ts';
import type { SourceMark } from '../../core/source.ts';
import { parseCount, parseLength, type Typed } from '../../core/typed.ts';
import { isEmpty, sourceOf, textOf } from './sheet-numbers.ts';

/** What a person has changed about one rule; the rest follows the record. */
export interface RuleEdit {
  readonly call?: Call;
  readonly meanwhile?: Meanwhile;
  /** By the way to the number inside the condition, as typed. */
  readonly numbers?: Readonly<Record<string, string>>;
  readonly reason?: string;
  readonly mark?: SourceMark;
  readonly source?: string;
}

/** A rule set as its form has it. */
export interface RulesForm {
  /** The stamp of the set that the form was begun on. */
  readonly base: string | undefined;
  readonly name: string;
  readonly about: string;
  readonly edits: Readonly<Record<string, RuleEdit>>;
  readonly removed: readonly string[];
}

export const rulesForm = (set: RuleSet, stamp: string | undefined): RulesForm => ({
  base: stamp,
  name: set.name,
  about: set.about ?? '',
  edits: {},
  removed: [],
});

type Leaf = Exclude<Condition, { all: Condition[] } | { any: Condition[] } | { not: Condition }>;

/** Changes every leaf of a condition; `path` leads to it. */
function mapLeaves(
  condition: Condition,
  change: (leaf: Leaf, path: string) => Condition,
  path = '',
): Condition {
  if ('all' in condition)
    return { all: condition.all.map((each, i) => mapLeaves(each, change, `${path}.all.${i}`)) };
  if ('any' in condition)
    return { any: condition.any.map((each, i) => mapLeaves(each, change, `${path}.any.${i}`)) };
  if ('not' in condition) return { not: mapLeaves(condition.not, change, `${path}.not`) };
  return change(condition, path);
}

/** A number inside a condition that can be changed. */
export interface Threshold {
  readonly path: string;
  readonly leaf: Leaf;
  readonly kind: 'size' | 'count' | 'percent' | 'years';
  readonly unit: LengthUnit;
  /** As it would be typed. */
  readonly text: string;
  readonly parse: (text: string) => Typed<number>;
}

const inUnit =
  (unit: LengthUnit) =>
  (text: string): Typed<number> => {
    const read = parseLength(text, unit);
    if (read.ok) return ok(read.value.value);
    const { error } = read;
    if (error.kind === 'ambiguous')
      return err({ kind: 'ambiguous', readings: [error.readings[0].value, error.readings[1].value] });
    return err(error.kind === 'negative' ? { kind: 'negative', reading: error.reading.value } : error);
  };

function thresholdOf(leaf: Leaf, path: string): Threshold | undefined {
  const plain = { path, leaf, unit: 'mm' as const, parse: inUnit('mm') };
  if ('reading' in leaf) {
    const { unit, value } = leaf;
    return { path, leaf, kind: 'size', unit, text: textOf(value, unit), parse: inUnit(unit) };
  }
  if ('count' in leaf) return { ...plain, kind: 'count', text: String(leaf.value), parse: parseCount };
  if ('share' in leaf) return { ...plain, kind: 'percent', text: String(round6(leaf.value * 100)) };
  if ('worn' in leaf) return { ...plain, kind: 'percent', text: String(leaf.percent) };
  return 'age' in leaf ? { ...plain, kind: 'years', text: String(leaf.years) } : undefined;
}

/** The numbers that a rule compares with. */
export function thresholdsOf(condition: Condition): readonly Threshold[] {
  const found: Threshold[] = [];
  mapLeaves(condition, (leaf, path) => {
    const threshold = thresholdOf(leaf, path);
    if (threshold) found.push(threshold);
    return leaf;
  });
  return found;
}

function withNumber(leaf: Leaf, value: number): Leaf {
  if ('worn' in leaf) return { ...leaf, percent: value };
  if ('age' in leaf) return { ...leaf, years: value };
  if ('share' in leaf) return { ...leaf, value: value / 100 };
  return 'reading' in leaf || 'count' in leaf ? { ...leaf, value } : leaf;
}

/** The condition with the numbers as typed; undefined while one of them is no number. */
function changedWhen(when: Condition, numbers: RuleEdit['numbers']): Condition | undefined {
  if (!numbers) return when;
  let isWhole = true;
  const changed = mapLeaves(when, (leaf, path) => {
    const threshold = thresholdOf(leaf, path);
    const text = numbers[path];
    // A text that was not touched leaves the stored number as it is, to the last digit.
    if (!threshold || text === undefined || text === threshold.text) return leaf;
    const read = threshold.parse(text);
    isWhole &&= read.ok;
    return read.ok ? withNumber(leaf, read.value) : leaf;
  });
  return isWhole ? changed : undefined;
}

/** A rule with what was changed about it; undefined while a number of it cannot be read. */
export function changedRule(rule: Rule, edit: RuleEdit | undefined): Rule | undefined {
  if (!edit) return rule;
  const when = changedWhen(rule.when, edit.numbers);
  if (!when) return undefined;
  const { mark = rule.source.mark, source = rule.source.text } = edit;
  return {
    ...rule,
    when,
    call: edit.call ?? rule.call,
    meanwhile: edit.meanwhile ?? rule.meanwhile,
    reason: reasonOf(rule, edit.reason),
    source:
      edit.mark === undefined && edit.source === undefined
        ? rule.source
        : sourceOf({ mark, source }, rule.source),
  };
}

/** A reason of one's own stands instead of the catalogue's; emptied, the catalogue's comes back. */
function reasonOf({ reason }: Rule, text: string | undefined): Rule['reason'] {
  if (text === undefined) return reason;
  const { text: _text, ...rest } = reason;
  return isEmpty(text) ? rest : { ...rest, text: text.trim() };
}

/** Rules to look at again, and `name`. */
export type RulesFaults = readonly string[];

/** The rule set that the form describes. */
export function ruleSetOf(form: RulesForm, before: RuleSet): Result<RuleSet, RulesFaults> {
  const kept = before.rules.filter(({ id }) => !form.removed.includes(id));
  const rules = kept.map((rule) => ({ id: rule.id, made: changedRule(rule, form.edits[rule.id]) }));
  const faults = [
    ...(isEmpty(form.name) ? ['name'] : []),
    ...rules.flatMap(({ id, made }) => (made ? [] : [id])),
  ];
  if (faults.length > 0) return err(faults);
  const { about: _about, ...rest } = before;
  return ok({
    ...rest,
    name: form.name.trim(),
    ...(!isEmpty(form.about) && { about: form.about.trim() }),
    rules: rules.flatMap(({ made }) => made ?? []),
  });
}

/** The items that are open as long as the set lacks the rule. */
export const opensWithout = (set: RuleSet, id: string): readonly string[] =>
  Object.entries(set.covers).flatMap(([item, needed]) => (needed.includes(id) ? [item] : []));
