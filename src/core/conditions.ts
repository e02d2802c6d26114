import { itemById } from './items.ts';
import type { PlaceSide } from './keys.ts';
import type { Load } from './limits.ts';
import { compare, fromMm, type Comparison } from './quantity.ts';
import type { Condition } from './rules.ts';
import type { Crack, ItemState } from './states.ts';
import { unreachable } from './result.ts';
import { wear } from './wear.ts';

/** Yes, no, or undefined for not known. */
export type Truth = boolean | undefined;

/** Where a condition is asked: a side, perhaps one numbered part of it, perhaps one of several cracks. */
export interface Where {
  readonly side: PlaceSide;
  readonly component: string;
  readonly number: number | undefined;
  readonly crack: number;
}

/** What conditions are asked about. */
export interface Facts {
  /** States by item id and side, so that a lookup does not walk the whole machine. */
  readonly byItem: ReadonlyMap<string, readonly ItemState[]>;
  readonly track: string;
  readonly load: Load | undefined;
  readonly ageYears: { readonly left?: number; readonly right?: number };
}

export const everyOf = (truths: readonly Truth[]): Truth => {
  if (truths.includes(false)) return false;
  return truths.includes(undefined) ? undefined : true;
};

export const anyOf = (truths: readonly Truth[]): Truth => {
  if (truths.includes(true)) return true;
  return truths.includes(undefined) ? undefined : false;
};

/** An item's states that a condition speaks of: the same part's, else all of the same side (or of the machine). */
export function statesAt(facts: Facts, itemId: string, where: Where): readonly ItemState[] {
  const { side, number } = where;
  const isSamePart = itemById(itemId)?.component === where.component;
  return (facts.byItem.get(itemId) ?? []).filter(
    (state) =>
      (side === 'whole' || state.side === side || state.side === 'whole') &&
      (!isSamePart || state.number === number),
  );
}

/** Asks each state; an item that this machine does not have answers no, one not read answers not known. */
function ask(facts: Facts, itemId: string, where: Where, test: (state: ItemState) => Truth): Truth {
  if (!itemById(itemId)) return undefined;
  let truth: Truth = false;
  for (const state of statesAt(facts, itemId, where)) {
    const answer = state.known ? test(state) : undefined;
    if (answer) return true;
    if (answer === undefined) truth = undefined;
  }
  return truth;
}

function findingIs(
  state: ItemState,
  condition: { is?: string[] | undefined; atLeast?: string | undefined },
): Truth {
  const { item, finding } = state;
  if (item.ask.kind === 'crack') {
    const isAsked = condition.is?.includes('cord-visible') || condition.atLeast === 'cord-visible';
    return isAsked && state.cracks.some((crack) => crack.cordVisible);
  }
  if (finding === undefined || item.ask.kind !== 'finding') return undefined;
  const { findings } = item.ask;
  const least = condition.atLeast === undefined ? -1 : findings.indexOf(condition.atLeast);
  const isNamed = condition.is?.includes(finding) ?? false;
  return isNamed || (least >= 0 && findings.indexOf(finding) >= least);
}

/** A comparison with a number of which only the least and the most possible values are known. */
function compareBetween(least: number, most: number, op: Comparison, value: number): Truth {
  const low = compare(least, op, value);
  if (least === most) return low;
  if (op === '=') return compare(value, '<', least) || compare(value, '>', most) ? false : undefined;
  return low === compare(most, op, value) ? low : undefined;
}

/** The longest run of numbers that follow each other, in the order in which they stand. */
function longestRun(numbers: readonly number[]): number {
  let [best, run, last] = [0, 0, Number.NaN];
  for (const each of numbers) {
    run = each === last + 1 ? run + 1 : 1;
    best = Math.max(best, run);
    last = each;
  }
  return best;
}

type Count = Extract<Condition, { count: string }>;

const isHit = (state: ItemState, { atLeast }: Count): Truth =>
  state.known ? findingIs(state, { atLeast }) : undefined;

function countOf(facts: Facts, where: Where, condition: Count): Truth {
  const states = statesAt(facts, condition.count, { ...where, component: '', number: undefined });
  const [only, ...others] = states;
  if (!only) return itemById(condition.count) ? false : undefined;
  if (others.length === 0 && only.number === undefined) return countMarks(only, condition);
  const numbers = (wanted: readonly Truth[]) =>
    states.filter((state) => wanted.includes(isHit(state, condition))).map((state) => state.number ?? 0);
  const size = condition.neighbours ? longestRun : (list: readonly number[]) => list.length;
  return compareBetween(
    size(numbers([true])),
    size(numbers([true, undefined])),
    condition.op,
    condition.value,
  );
}

/** Marks of one part that the person counted; one at least where something was found and nothing counted. */
function countMarks(state: ItemState, condition: Count): Truth {
  const hit = isHit(state, condition);
  if (hit !== true) return hit === false ? compare(0, condition.op, condition.value) : undefined;
  if (state.count !== undefined) return compare(state.count, condition.op, condition.value);
  return compareBetween(1, Infinity, condition.op, condition.value);
}

function readingIs(
  state: ItemState,
  where: Where,
  condition: Extract<Condition, { reading: string }>,
): Truth {
  const against = (mm: number): boolean => compare(fromMm(mm, condition.unit), condition.op, condition.value);
  if (state.item.ask.kind === 'crack') {
    const crack: Crack | undefined = state.cracks[where.crack] ?? state.cracks[0];
    return crack && against(condition.field === 'depth' ? crack.depthMm : crack.lengthMm);
  }
  if (state.sag) return against(state.sag.valueMm);
  return state.sampled && against(state.sampled.worst.mm);
}

function wornIs(state: ItemState, facts: Facts, condition: Extract<Condition, { worn: string }>): Truth {
  if (!state.sampled || !state.limits) return undefined;
  const worn = condition.of ? wear(state.limits, state.sampled.worst, facts.load, condition.of) : state.wear;
  return worn && compare(worn.percent, condition.op, condition.percent);
}

function shareIs(state: ItemState, condition: Extract<Condition, { share: string }>): Truth {
  const hit = findingIs(state, { atLeast: condition.atLeast });
  if (hit !== true) return hit === false ? compare(0, condition.op, condition.value) : undefined;
  return state.share === undefined
    ? compareBetween(0, 1, condition.op, condition.value)
    : compare(state.share, condition.op, condition.value);
}

const sagIs = ({ sag }: ItemState, wanted: string): Truth =>
  sag?.state === wanted || (wanted === 'loose' && sag?.state === 'derailing');

function ageIs(facts: Facts, where: Where, condition: Extract<Condition, { age: string }>): Truth {
  const { left, right } = facts.ageYears;
  const years = where.side === 'right' ? right : left;
  return years === undefined ? undefined : compare(years, condition.op, condition.years);
}

/** Answers a condition at a place: yes, no, or undefined while something it needs is not known. */
export function holds(condition: Condition, facts: Facts, where: Where): Truth {
  const inner = (each: Condition): Truth => holds(each, facts, where);
  if ('all' in condition) return everyOf(condition.all.map(inner));
  if ('any' in condition) return anyOf(condition.any.map(inner));
  if ('not' in condition) {
    const truth = inner(condition.not);
    return truth === undefined ? undefined : !truth;
  }
  return leafHolds(condition, facts, where);
}

/** A condition that asks about one thing. */
export type Leaf = Exclude<Condition, { all: Condition[] } | { any: Condition[] } | { not: Condition }>;

function leafHolds(condition: Leaf, facts: Facts, where: Where): Truth {
  if ('reading' in condition) {
    return ask(facts, condition.reading, where, (state) => readingIs(state, where, condition));
  }
  if ('finding' in condition)
    return ask(facts, condition.finding, where, (state) => findingIs(state, condition));
  if ('count' in condition) return countOf(facts, where, condition);
  if ('share' in condition) return ask(facts, condition.share, where, (state) => shareIs(state, condition));
  if ('worn' in condition)
    return ask(facts, condition.worn, where, (state) => wornIs(state, facts, condition));
  if ('sag' in condition) return ask(facts, 'sag', where, (state) => sagIs(state, condition.sag));
  if ('age' in condition) return ageIs(facts, where, condition);
  if ('track' in condition) return condition.track.includes(facts.track);
  if ('unknown' in condition) return statesAt(facts, condition.unknown, where).some((state) => !state.known);
  return unreachable(condition);
}

/** The leaves for want of which a condition has no answer at a place; none when it has one. */
export function unansweredIn(condition: Condition, facts: Facts, where: Where): readonly Leaf[] {
  if (holds(condition, facts, where) !== undefined) return [];
  const inner = (each: Condition): readonly Leaf[] => unansweredIn(each, facts, where);
  if ('all' in condition) return condition.all.flatMap(inner);
  if ('any' in condition) return condition.any.flatMap(inner);
  return 'not' in condition ? inner(condition.not) : [condition];
}

/** Every item that a condition looks at. */
export function itemsIn(condition: Condition): readonly string[] {
  if ('all' in condition) return condition.all.flatMap(itemsIn);
  if ('any' in condition) return condition.any.flatMap(itemsIn);
  if ('not' in condition) return itemsIn(condition.not);
  if ('reading' in condition) return [condition.reading];
  if ('finding' in condition) return [condition.finding];
  if ('count' in condition) return [condition.count];
  if ('share' in condition) return [condition.share];
  if ('worn' in condition) return [condition.worn];
  if ('sag' in condition) return ['sag'];
  if ('unknown' in condition) return [condition.unknown];
  return [];
}
