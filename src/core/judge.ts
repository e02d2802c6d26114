import type { Asked } from './ask.ts';
import { callRank, meanwhileRank, stricter, worseCall, type Call, type Meanwhile } from './calls.ts';
import { itemsIn, type Leaf } from './conditions.ts';
import type { Open } from './reason.ts';
import { coveredItems, isReadable, stoppingItems, type Rule, type RuleSet } from './rules.ts';
import type { ItemState } from './states.ts';

/** What an item comes to under the rules: what is known of it sets the floor, what is not known is open. */
export interface Judged {
  readonly atLeast: Call;
  readonly meanwhile: Meanwhile;
  readonly open: readonly Open[];
  /** True when it could park the machine: it must be known before a machine may be called `run`. */
  readonly canPark: boolean;
}

/** A rule set looked through once for all items. */
export interface Judging {
  readonly set: RuleSet | undefined;
  /** The rules to ask; none of a set in a later language than ours. */
  readonly rules: readonly Rule[];
  readonly covered: ReadonlySet<string>;
  readonly stopping: ReadonlySet<string>;
}

export const judgingBy = (set: RuleSet | undefined): Judging => ({
  set,
  rules: set && isReadable(set) ? set.rules : [],
  covered: set ? coveredItems(set) : new Set(),
  stopping: set ? stoppingItems(set) : new Set(),
});

/** Why the rules as such do not tell what a known item needs. */
function unjudged({ item }: ItemState, { set, covered }: Judging): readonly Open[] {
  if (!set) return [{ kind: 'no-rules', params: {} }];
  if (!isReadable(set)) return [{ kind: 'newer-rules', params: { language: set.language } }];
  return covered.has(item.id) ? [] : [{ kind: 'not-covered', params: { set: set.name } }];
}

/** What is missing for an answer, seen from one item; what its own state says already is not said again. */
function wantFor(leaf: Leaf, state: ItemState): Open | undefined {
  const [item] = itemsIn(leaf);
  if (item === undefined) return undefined;
  if (item !== state.item.id) return { kind: 'needs', params: { item } };
  if ('worn' in leaf) return state.wear && { kind: 'no-limit', params: { means: leaf.of ?? '' } };
  const isCounted = 'share' in leaf || ('count' in leaf && state.number === undefined);
  return isCounted ? { kind: 'not-counted', params: {} } : undefined;
}

function openOf(state: ItemState, waiting: readonly Asked[], judging: Judging): readonly Open[] {
  if (!state.known) return state.open;
  const wants = waiting.flatMap(({ unanswered }) => unanswered.flatMap((leaf) => wantFor(leaf, state) ?? []));
  const once = new Map(wants.map((each) => [JSON.stringify(each), each]));
  return [...state.open, ...unjudged(state, judging), ...once.values()];
}

/** Judges an item by the rules that fired over it and those whose answer is not known. */
export function judge(state: ItemState, asked: readonly Asked[], judging: Judging): Judged {
  const fired = asked.filter((each) => each.fired);
  const atLeast = fired.reduce<Call>((worst, { rule }) => worseCall(worst, rule.call), 'run');
  const meanwhile = fired.reduce<Meanwhile>((worst, { rule }) => stricter(worst, rule.meanwhile), 'work');
  // An answer that could not make it worse is not waited for.
  const waiting = asked.filter(
    ({ fired: has, rule }) =>
      !has &&
      (callRank(rule.call) > callRank(atLeast) || meanwhileRank(rule.meanwhile) > meanwhileRank(meanwhile)),
  );
  return {
    atLeast,
    meanwhile,
    open: openOf(state, waiting, judging),
    canPark: state.item.canPark || judging.stopping.has(state.item.id),
  };
}
