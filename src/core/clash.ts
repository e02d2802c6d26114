import { callRank, meanwhileRank, stricter, worseCall } from './calls.ts';
import type { ItemOutcome } from './score.ts';
import { stateKey, type ClashSide, type ScoreInput } from './states.ts';

type Sides = readonly ClashSide[];

/** Up to so many whole walks are scored for every combination of sides. */
const mostCombined = 16;

const nameOf = ({ place, item, n }: ClashSide): string => `${stateKey(place, item)}|${n}`;

const withSides = (input: ScoreInput, sides: Sides): ScoreInput => {
  const replaced = new Set(sides.map(nameOf));
  const kept = input.readings.filter((each) => !replaced.has(nameOf(each)));
  const put = sides.flatMap((each) => (each.reading ? [{ ...each, reading: each.reading }] : []));
  return { ...input, readings: [...kept, ...put] };
};

/** Every choice of one or no other side for each clashing reading. */
const combined = (clashes: readonly Sides[]): readonly Sides[] =>
  clashes.reduce<readonly Sides[]>(
    (chosen, others) => chosen.flatMap((each) => [each, ...others.map((side) => [...each, side])]),
    [[]],
  );

/**
 * The walk by each of its sides, the displayed one first: every combination where they are few, so that no rule
 * which looks at two clashing readings is missed; else each other side alone, and all of them together.
 */
export function sidesOf(input: ScoreInput): readonly ScoreInput[] {
  const clashes = new Map<string, ClashSide[]>();
  for (const each of input.clashes ?? []) {
    const name = nameOf(each);
    clashes.set(name, [...(clashes.get(name) ?? []), each]);
  }
  const lists = [...clashes.values()];
  const many = lists.reduce((product, { length }) => product * (length + 1), 1) > mostCombined;
  const alone: readonly Sides[] = [[], ...lists.flat().map((side) => [side])];
  const choices = many ? [...alone, lists.flatMap(([side]) => side ?? [])] : combined(lists);
  return choices.map((sides) => withSides(input, sides));
}

const severity = ({ atLeast, meanwhile }: ItemOutcome): number =>
  callRank(atLeast) * 10 + meanwhileRank(meanwhile);

/** Equal things once, in the order in which they first come. */
function once<T>(all: readonly T[], nameOf: (each: T) => string): readonly T[] {
  const seen = new Map<string, T>();
  for (const each of all) if (!seen.has(nameOf(each))) seen.set(nameOf(each), each);
  return [...seen.values()];
}

/** The more severe of two outcomes of one item, with the reasons, open ends and strictness of both. */
function worseOf(a: ItemOutcome, b: ItemOutcome): ItemOutcome {
  const [worse, other] = severity(b) > severity(a) ? [b, a] : [a, b];
  return {
    ...worse,
    atLeast: worseCall(worse.atLeast, other.atLeast),
    meanwhile: stricter(worse.meanwhile, other.meanwhile),
    reasons: once([...worse.reasons, ...other.reasons], ({ rule }) => rule),
    open: once([...worse.open, ...other.open], (each) => JSON.stringify(each)),
    notes: once([...worse.notes, ...other.notes], (each) => JSON.stringify(each)),
  };
}

/** For each item the most severe of its outcomes by every side, and all that is open by any. */
export function worstOf(sides: readonly (readonly ItemOutcome[])[]): readonly ItemOutcome[] {
  if (sides.length === 1) return sides.flat();
  const worst = new Map<string, ItemOutcome>();
  for (const outcome of sides.flat()) {
    const key = stateKey(outcome.state.place, outcome.state.item.id);
    const before = worst.get(key);
    worst.set(key, before ? worseOf(before, outcome) : outcome);
  }
  return [...worst.values()];
}
