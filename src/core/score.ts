import { callRank, meanwhileRank, stricter, worseCall, type Call, type Meanwhile } from './calls.ts';
import { holds, itemsIn, statesAt, type Facts, type Where } from './conditions.ts';
import { crossRead } from './cross.ts';
import { itemById } from './items.ts';
import type { Params, Reason, Open } from './reason.ts';
import { isCovered, ruleLanguage, type Rule, type RuleSet } from './rules.ts';
import { gatherStates, stateKey, type ItemState, type PlacedReading, type ScoreInput } from './states.ts';
import { verdictOf, type Verdict } from './verdict.ts';

export interface Note {
  readonly kind: 'estimate' | 'print-contradicts' | 'load-assumed' | 'band-gap' | 'by-eye';
  readonly params: Params;
}

/** What one item at one place needs. */
export interface ItemOutcome {
  readonly state: ItemState;
  readonly atLeast: Call;
  readonly meanwhile: Meanwhile;
  readonly reasons: readonly Reason[];
  readonly open: readonly Open[];
  readonly notes: readonly Note[];
  readonly canPark: boolean;
}

export interface Scored {
  readonly outcomes: readonly ItemOutcome[];
  readonly verdict: Verdict;
}

/** A rule that was asked at a place, with what it is about there. */
interface Asked {
  readonly rule: Rule;
  readonly where: Where;
  readonly fired: boolean;
  readonly targets: readonly ItemState[];
  readonly missing: readonly string[];
}

/** What the rules are asked about: every state, and the few facts of machine and walk. */
export function factsOf(input: ScoreInput): Facts {
  const states = crossRead(gatherStates(input), input.walk.depth);
  const byItem = new Map<string, ItemState[]>();
  for (const state of states.values())
    byItem.set(state.item.id, [...(byItem.get(state.item.id) ?? []), state]);
  const { track } = input.machine.shape;
  return { states, byItem, track, load: input.walk.load, ageYears: input.ageYears ?? {} };
}

/** The places where a rule is asked: every part of its first item that was read or is asked for. */
function placesOf(rule: Rule, facts: Facts): readonly Where[] {
  const first = rule.items[0] ?? '';
  const component = itemById(first)?.component ?? '';
  return (facts.byItem.get(first) ?? [])
    .filter((state) => state.known || state.needed || state.open.length > 0)
    .flatMap(({ side, number, cracks }) => {
      const each = { side, component, number };
      return cracks.length > 1 ? cracks.map((_, crack) => ({ ...each, crack })) : [{ ...each, crack: 0 }];
    });
}

function askRule(rule: Rule, facts: Facts): readonly Asked[] {
  return placesOf(rule, facts).flatMap((where): readonly Asked[] => {
    const truth = holds(rule.when, facts, where);
    if (truth === false) return [];
    const targets = rule.items.flatMap((id) => statesAt(facts, id, where));
    if (truth) return [{ rule, where, fired: true, targets, missing: [] }];
    const missing = itemsIn(rule.when).filter((id) =>
      statesAt(facts, id, where).some((state) => !state.known),
    );
    return [{ rule, where, fired: false, targets, missing }];
  });
}

/** The figures of a reading for the sentence that explains a call, in base units. */
function paramsOf(state: ItemState, where: Where): Params {
  const { wear, sampled, sag, finding, count, share } = state;
  const crack = state.cracks[where.crack] ?? state.cracks[0];
  return {
    item: state.item.id,
    side: state.side,
    component: state.item.component,
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

/** True when a rule whose answer is not known could make the item's outcome worse than it is. */
const couldWorsen = (rule: Rule, atLeast: Call, meanwhile: Meanwhile): boolean =>
  callRank(rule.call) > callRank(atLeast) || meanwhileRank(rule.meanwhile) > meanwhileRank(meanwhile);

function openOf(
  state: ItemState,
  waiting: readonly Asked[],
  rules: RuleSet | undefined,
  outcome: { atLeast: Call; meanwhile: Meanwhile },
): readonly Open[] {
  const open = [...state.open];
  if (state.known) {
    if (!rules) open.push({ kind: 'no-rules', params: {} });
    else if (rules.language > ruleLanguage)
      open.push({ kind: 'newer-rules', params: { language: rules.language } });
    else if (!isCovered(rules, state.item.id))
      open.push({ kind: 'not-covered', params: { set: rules.name } });
  }
  const others = waiting
    .filter(({ rule }) => couldWorsen(rule, outcome.atLeast, outcome.meanwhile))
    .flatMap(({ missing }) => missing.filter((id) => id !== state.item.id));
  for (const item of new Set(state.known ? others : [])) open.push({ kind: 'needs', params: { item } });
  return open;
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

/** True when some rule of the set could stop the machine over this item. */
const stops = (rules: RuleSet | undefined, itemId: string): boolean =>
  rules?.rules.some(
    ({ items, call, meanwhile }) =>
      items.includes(itemId) && (call === 'park' || meanwhile === 'move-only' || meanwhile === 'nothing'),
  ) ?? false;

function outcomeOf(state: ItemState, asked: readonly Asked[], rules: RuleSet | undefined): ItemOutcome {
  const fired = asked.filter((each) => each.fired);
  const atLeast = fired.reduce<Call>((worst, { rule }) => worseCall(worst, rule.call), 'run');
  const meanwhile = fired.reduce<Meanwhile>((worst, { rule }) => stricter(worst, rule.meanwhile), 'work');
  const waiting = asked.filter((each) => !each.fired);
  return {
    state,
    atLeast,
    meanwhile,
    reasons: reasonsOf(fired, state),
    open: openOf(state, waiting, rules, { atLeast, meanwhile }),
    notes: notesOf(state, fired),
    canPark: state.item.canPark || stops(rules, state.item.id),
  };
}

/** True when the item has a place in the result: it was read, asked for, or lost. */
const isShown = (state: ItemState): boolean => state.known || state.needed || state.open.length > 0;

/** The outcome of every item, from facts; a set in a later language than ours answers nothing. */
export function outcomesOf(facts: Facts, rules: RuleSet | undefined): readonly ItemOutcome[] {
  const readable = rules && rules.language <= ruleLanguage ? rules.rules : [];
  const asked = readable.flatMap((rule) => askRule(rule, facts));
  const byState = new Map<string, Asked[]>();
  for (const each of asked) {
    for (const target of each.targets) {
      const key = stateKey(target.place, target.item.id);
      byState.set(key, [...(byState.get(key) ?? []), each]);
    }
  }
  return [...facts.states]
    .filter(([, state]) => isShown(state))
    .map(([key, state]) => outcomeOf(state, byState.get(key) ?? [], rules));
}

const severity = (verdict: Verdict): number =>
  callRank(verdict.atLeast) * 10 + meanwhileRank(verdict.meanwhile);

function scoreOnce(input: ScoreInput): Scored {
  const outcomes = outcomesOf(factsOf(input), input.rules);
  return { outcomes, verdict: verdictOf(outcomes) };
}

const isSame = (a: PlacedReading, b: PlacedReading): boolean =>
  a.place === b.place && a.item === b.item && a.n === b.n;

/**
 * Scores a walk: what each item needs, what is open, and the verdict. Where two versions of a reading clash,
 * each is scored, the more severe result stands, and the clash is open.
 */
export function score(input: ScoreInput): Scored {
  const results = [undefined, ...(input.clashes ?? [])].map((other) => {
    const { clashes, readings } = input;
    const taken = other ? readings.map((each) => (isSame(each, other) ? other : each)) : readings;
    return scoreOnce({ ...input, readings: taken, ...(clashes && { clashes }) });
  });
  return results.reduce((worst, each) => (severity(each.verdict) > severity(worst.verdict) ? each : worst));
}
