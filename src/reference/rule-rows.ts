import type { Call, Meanwhile } from '../core/calls.ts';
import type { Condition, Rule } from '../core/rules.ts';
import type { Source } from '../core/source.ts';
import { common, estimate } from './sources.ts';

/** One finding of an item: what it needs, and what the machine may do until then. */
export type FindingRow = readonly [finding: string, call: Call, meanwhile: Meanwhile, source?: Source];

/** True when the item was found in one of these states. */
export const is = (finding: string, ...states: string[]): Condition => ({ finding, is: states });

/** A rule whose message has the same name as the rule. */
export function rule(
  id: string,
  items: string[],
  when: Condition,
  call: Call,
  meanwhile: Meanwhile,
  source: Source = common,
): Rule {
  return { id, items, when, call, meanwhile, reason: { message: id }, source };
}

/** One rule for each finding that needs something, named `item.finding`. */
export const byFinding = (item: string, rows: readonly FindingRow[]): readonly Rule[] =>
  rows.map(([finding, call, meanwhile, source]) =>
    rule(`${item}.${finding}`, [item], is(item, finding), call, meanwhile, source),
  );

/** From here on a worn part is looked at sooner. */
const watchPercent = 75;

/** From here on a part is so far past its limit that it harms its neighbours. */
export const beyondPercent = 120;

const watchSource = estimate(`Watch sooner from ${watchPercent} % worn: our estimate`);
const beyondSource = estimate(`Light work only from ${beyondPercent} % worn: our estimate`);

/** True from one percentage on and below another, so that a part gives one reason at a time. */
export const wornFrom = (item: string, percent: number, below?: number): Condition => {
  const from: Condition = { worn: item, op: '>=', percent };
  return below === undefined ? from : { all: [from, { worn: item, op: '<', percent: below }] };
};

function wearRule(
  item: string,
  step: 'watch' | 'limit' | 'beyond',
  when: Condition,
  call: Call,
  meanwhile: Meanwhile,
  source: Source,
): Rule {
  const reason = { message: `wear.${step}` };
  return { id: `${item}.${step}`, items: [item], when, call, meanwhile, reason, source };
}

/** Watch sooner when an item nears the limit of its sheet. */
export const watchRule = (item: string): Rule =>
  wearRule(item, 'watch', wornFrom(item, watchPercent, 100), 'recheck', 'work', watchSource);

/** Light work only once an item is far past the limit of its sheet. */
export const beyondRule = (item: string, call: Call = 'replace'): Rule =>
  wearRule(item, 'beyond', wornFrom(item, beyondPercent), call, 'light-work', beyondSource);

/** Watch, act at the limit, and only light work far beyond it. */
export const byWear = (item: string, call: Call = 'replace', atLimit: Source = common): readonly Rule[] => [
  watchRule(item),
  wearRule(item, 'limit', wornFrom(item, 100, beyondPercent), call, 'work', atLimit),
  beyondRule(item, call),
];
