import { items } from '../core/items.ts';
import { ruleLanguage, type RuleSet } from '../core/rules.ts';
import { partRules } from './rules-parts.ts';
import { rubberRules } from './rules-rubber.ts';
import { steelRules } from './rules-steel.ts';

export const startingRulesKey = 'rules/starting';

const rules = [...rubberRules, ...steelRules, ...partRules];

/** For every item the rules that speak about it; none for what only informs other rules. */
const covers = Object.fromEntries(
  items.map(({ id }) => [id, rules.filter((rule) => rule.items.includes(id)).map((rule) => rule.id)]),
);

/** The rule set a new user starts with: what the trade commonly does, with makers' prints where there are any. */
export const startingRules = {
  v: 1,
  language: ruleLanguage,
  name: 'Starting rules',
  about:
    'Common practice of the trade, with published calls where some were found. A maker’s own rules come first where you have them.',
  version: '2026-1',
  covers,
  rules,
} satisfies RuleSet;
