import type { Branch } from './plan-branch.ts';
import { addLeast, addSum, addTable, leastSet, leastWithin, sourceOf, type Table } from './plan-tables.ts';
import { assert } from './result.ts';

/** The cheapest plan of a branch if jobs with two shares could have each at another visit. */
export interface Relaxed {
  /** Never more than any plan of the branch costs. */
  readonly cost: number;
  /** For each task where its first share is done and where its last: alike where it has one. */
  readonly ends: readonly (readonly [first: number, last: number])[];
  /** What the free tasks cost at least when the visits of a set are called out. */
  readonly totals: Table;
}

/** Tables for so many set-ups, and one to scribble in; they do for all branches in turn. */
export const roomFor = (setUps: number, visits: number): readonly Table[] =>
  Array.from({ length: setUps + 1 }, () => new Float64Array(2 ** visits));

/** The cheapest visit of a set, the earliest of several; none only where that is cheaper still. */
function cheapest(costs: readonly number[], set: number): number {
  const none = costs.length - 1;
  let best = none;
  for (let v = none - 1; v >= 0; v -= 1)
    if (((set >> v) & 1) === 1 && (costs[v] ?? Infinity) <= (costs[best] ?? Infinity)) best = v;
  return best;
}

/**
 * A set-up can be done only at visits that have the one it rests on, and each share waits on one set-up alone. So
 * the table of each, its least cost for each set of visits that it may use, goes into that of the one it rests on,
 * and the call-out's tells which visits are worth it. Where no job is torn, this is the optimum.
 */
export function relax({ tasks, setUps, visits, spent }: Branch, room: readonly Table[]): Relaxed {
  const [scratch, totals, ...others] = room.map((table) => table.subarray(0, 2 ** visits.length));
  assert(scratch && totals, 'room for a table');
  const tableOf = (k: number): Table => others[k - 1] ?? totals;
  for (const k of setUps.keys()) tableOf(k).fill(0);
  for (const { shares } of tasks)
    for (const { setUp, costs } of shares) addLeast(tableOf(setUp), costs, scratch);
  for (const [k, { restsOn, prices }] of [...setUps.entries()].reverse()) {
    addSum(tableOf(k), prices, scratch);
    if (k === 0) continue;
    leastWithin(tableOf(k));
    addTable(tableOf(restsOn), tableOf(k));
  }
  const sets: number[] = [];
  for (const [k, { restsOn }] of setUps.entries())
    sets.push(k === 0 ? leastSet(totals) : sourceOf(tableOf(k), sets[restsOn] ?? 0));
  const ends = tasks.map(({ shares }) => {
    const at = shares.map(({ setUp, costs }) => cheapest(costs, sets[setUp] ?? 0));
    return [at[0] ?? 0, at.at(-1) ?? 0] as const;
  });
  return { cost: spent + (totals[sets[0] ?? 0] ?? 0), ends, totals };
}
