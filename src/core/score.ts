import { askRules, byTarget, isShown, type Asked } from './ask.ts';
import { callRank, meanwhileRank } from './calls.ts';
import { sidesOf, worstOf } from './clash.ts';
import type { Facts, Where } from './conditions.ts';
import { crossRead } from './cross.ts';
import { judge, judgingBy, type Judged, type Judging } from './judge.ts';
import { addTo } from './lists.ts';
import type { Params, Reason } from './reason.ts';
import type { RuleSet } from './rules.ts';
import { gatherStates, type ItemState, type ScoreInput } from './states.ts';
import { verdictOf, type Verdict } from './verdict.ts';

export interface Note {
  readonly kind: 'estimate' | 'print-contradicts' | 'load-assumed' | 'band-gap' | 'by-eye';
  readonly params: Params;
}

/** What one item at one place needs, and why. */
export interface ItemOutcome extends Judged {
  readonly state: ItemState;
  readonly reasons: readonly Reason[];
  readonly notes: readonly Note[];
}

export interface Scored {
  readonly outcomes: readonly ItemOutcome[];
  readonly verdict: Verdict;
}

/** What scoring knows: every state, and what the rules are asked about. */
export interface AllFacts extends Facts {
  readonly states: ReadonlyMap<string, ItemState>;
}

/** All that the rules are asked about: every state, and the few facts of machine and walk. */
export function factsOf(input: ScoreInput): AllFacts {
  const states = crossRead(gatherStates(input), input.walk.depth);
  const byItem = new Map<string, ItemState[]>();
  for (const state of states.values()) addTo(byItem, state.item.id, state);
  const { track } = input.machine.shape;
  return { states, byItem, track, load: input.walk.load, ageYears: input.ageYears ?? {} };
}

/** The figures of a reading for the sentence that explains a call, in base units. */
function paramsOf(state: ItemState, where: Where): Params {
  const { wear, sampled, sag, finding, count, share } = state;
  const crack = state.cracks[where.crack] ?? state.cracks[0];
  return {
    item: state.item.id,
    side: state.side,
    component: state.item.component,
    tensioner: state.tensioner,
    ...(state.number !== undefined && { number: state.number }),
    ...(finding !== undefined && { finding }),
    ...(count !== undefined && { count }),
    ...(share !== undefined && { share }),
    ...(sampled && { mm: sampled.worst.mm }),
    ...(wear && { percent: wear.percent, expanded: wear.expanded, newMm: wear.newMm, limitMm: wear.limitMm }),
    ...(sag && {
      mm: sag.valueMm,
      byMm: sag.byMm,
      lowMm: sag.lowMm,
      highMm: sag.highMm,
      method: sag.spec.method,
    }),
    ...(crack && { lengthMm: crack.lengthMm, depthMm: crack.depthMm }),
  };
}

const reasonOf = (asked: Asked, state: ItemState): Reason => ({
  rule: asked.rule.id,
  message: asked.rule.reason.message,
  params: {
    ...paramsOf(state, asked.where),
    ...(asked.rule.reason.text !== undefined && { text: asked.rule.reason.text }),
  },
  source: asked.rule.source,
});

/** Reasons by severity, and each said once. */
function reasonsOf(fired: readonly Asked[], state: ItemState): readonly Reason[] {
  const sorted = [...fired].sort(
    (a, b) =>
      callRank(b.rule.call) - callRank(a.rule.call) ||
      meanwhileRank(b.rule.meanwhile) - meanwhileRank(a.rule.meanwhile),
  );
  const seen = new Set<string>();
  return sorted.flatMap((asked) => {
    if (seen.has(asked.rule.id)) return [];
    seen.add(asked.rule.id);
    return [reasonOf(asked, state)];
  });
}

function notesOf(state: ItemState, fired: readonly Asked[]): readonly Note[] {
  const { wear, sag } = state;
  const notes: Note[] = [];
  if (wear?.soft) notes.push({ kind: 'estimate', params: { newMm: wear.newMm, limitMm: wear.limitMm } });
  if (wear?.chosen.contradicts || sag?.contradicts) notes.push({ kind: 'print-contradicts', params: {} });
  if (wear?.chosen.loadAssumed) notes.push({ kind: 'load-assumed', params: { limitMm: wear.limitMm } });
  if (fired.some(({ rule }) => rule.gap)) notes.push({ kind: 'band-gap', params: {} });
  return notes;
}

function outcomeOf(state: ItemState, asked: readonly Asked[], judging: Judging): ItemOutcome {
  const fired = asked.filter((each) => each.fired);
  return {
    state,
    ...judge(state, asked, judging),
    reasons: reasonsOf(fired, state),
    notes: notesOf(state, fired),
  };
}

/** The outcome of every item, from facts; a set in a later language than ours answers nothing. */
export function outcomesOf(facts: AllFacts, rules: RuleSet | undefined): readonly ItemOutcome[] {
  const judging = judgingBy(rules);
  const asked = byTarget(askRules(judging.rules, facts));
  return [...facts.states]
    .filter(([, state]) => isShown(state))
    .map(([key, state]) => outcomeOf(state, asked.get(key) ?? [], judging));
}

/**
 * Scores a walk: what each item needs, what is open, and the verdict. Where versions of readings clash, every
 * side is scored, the most severe result stands for each item, and the clash is open.
 */
export function score(input: ScoreInput): Scored {
  const outcomes = worstOf(sidesOf(input).map((side) => outcomesOf(factsOf(side), input.rules)));
  return { outcomes, verdict: verdictOf(outcomes) };
}
