import { askRules, byTarget } from './ask.ts';
import { itemsIn, type Facts } from './conditions.ts';
import { judge, judgingBy } from './judge.ts';
import type { Rule, RuleSet } from './rules.ts';
import type { AllFacts } from './score.ts';
import type { ItemState } from './states.ts';
import { callOf, type MachineCall } from './verdict.ts';

function rulesByItem(rules: readonly Rule[]): ReadonlyMap<string, ReadonlySet<Rule>> {
  const looking = new Map<string, Set<Rule>>();
  for (const rule of rules) {
    for (const id of itemsIn(rule.when)) looking.set(id, (looking.get(id) ?? new Set()).add(rule));
  }
  return looking;
}

function withState(facts: AllFacts, state: ItemState): Facts {
  const { id } = state.item;
  const peers = (facts.byItem.get(id) ?? []).map((each) => (each.place === state.place ? state : each));
  return { ...facts, byItem: new Map(facts.byItem).set(id, peers) };
}

/**
 * Answers what the machine's call would be were the value of one item another, without scoring the whole walk
 * again: only the rules that look at the item are asked anew. The other state must be as known and as open as
 * the one it stands for; without one, the answer is the call as it is.
 */
export function whatIf(facts: AllFacts, set: RuleSet): (other?: ItemState) => MachineCall {
  const judging = judgingBy(set);
  const looking = rulesByItem(judging.rules);
  const all = askRules(judging.rules, facts);
  const asked = byTarget(all);
  const at = new Map([...facts.states].map(([key, state], index) => [key, { index, state }]));
  const judged = [...at].map(([key, { state }]) => judge(state, asked.get(key) ?? [], judging));
  return (other) => {
    const rules = other && looking.get(other.item.id);
    if (!rules) return callOf(judged);
    const before = byTarget(all.filter(({ rule }) => rules.has(rule)));
    const again = byTarget(askRules(rules, withState(facts, other)));
    const after = [...judged];
    for (const key of new Set([...before.keys(), ...again.keys()])) {
      const slot = at.get(key);
      const kept = (asked.get(key) ?? []).filter(({ rule }) => !rules.has(rule));
      if (slot) after[slot.index] = judge(slot.state, [...kept, ...(again.get(key) ?? [])], judging);
    }
    return callOf(after);
  };
}
