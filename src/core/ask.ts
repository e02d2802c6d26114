import { holds, statesAt, unansweredIn, type Facts, type Leaf, type Where } from './conditions.ts';
import { addTo } from './lists.ts';
import type { Rule } from './rules.ts';
import { stateKey, type ItemState } from './states.ts';

/** A rule at a place where its answer is yes or not known, with the items that it is about there. */
export interface Asked {
  readonly rule: Rule;
  readonly where: Where;
  readonly fired: boolean;
  readonly targets: readonly ItemState[];
  /** For want of what the answer is not known. */
  readonly unanswered: readonly Leaf[];
}

/** True when the item has a place in the result: it was read, asked for, or lost. */
export const isShown = (state: ItemState): boolean => state.known || state.needed || state.open.length > 0;

/** The places where a rule is asked: every part of its first item that was read or is asked for, crack by crack. */
function placesOf(first: string, facts: Facts): readonly Where[] {
  return (facts.byItem.get(first) ?? []).filter(isShown).flatMap(({ item, side, number, cracks }) => {
    const each = { side, component: item.component, number };
    return (cracks.length > 0 ? cracks : [undefined]).map((_, crack) => ({ ...each, crack }));
  });
}

function askAt(rule: Rule, facts: Facts, where: Where): Asked | undefined {
  const truth = holds(rule.when, facts, where);
  if (truth === false) return undefined;
  const targets = rule.items.flatMap((id) => statesAt(facts, id, where));
  const unanswered = truth ? [] : unansweredIn(rule.when, facts, where);
  return { rule, where, fired: truth === true, targets, unanswered };
}

/** Asks rules wherever they apply; a place where the answer is no is left out. */
export function askRules(rules: Iterable<Rule>, facts: Facts): readonly Asked[] {
  const places = new Map<string, readonly Where[]>();
  return [...rules].flatMap((rule) => {
    const first = rule.items[0] ?? '';
    const here = places.get(first) ?? placesOf(first, facts);
    places.set(first, here);
    return here.flatMap((where) => askAt(rule, facts, where) ?? []);
  });
}

/** What was asked, by the items that it is about. */
export function byTarget(asked: readonly Asked[]): ReadonlyMap<string, readonly Asked[]> {
  const targeted = new Map<string, Asked[]>();
  for (const each of asked) {
    for (const { place, item } of each.targets) addTo(targeted, stateKey(place, item.id), each);
  }
  return targeted;
}
