import { narrow, place, rounded, type Branch, type Placed, type Task } from './plan-branch.ts';
import { relax, roomFor, type Relaxed } from './plan-relaxed.ts';
import { visitsBelow, type Table } from './plan-tables.ts';

/** The cheapest plan found in a branch. */
export interface Found {
  readonly cost: number;
  readonly placed: Placed;
  /** No plan of the branch costs less; equals `cost` where the search came to its end. */
  readonly bound: number;
}

interface Search {
  readonly room: readonly Table[];
  best: Pick<Found, 'cost' | 'placed'>;
  /** How many sets of visits may still be looked at. */
  effort: number;
}

/** A look that brings the bound by less than this share nearer to the best plan has not gained. */
const gain = 1 / 16;

/** Once no stronger pull gains any more, jobs are tried one by one. */
const weakest = 1 / 8;

/** The shares of a torn job brought closer: where the first was taken it gets dearer, where the last was, cheaper. */
function drawn(task: Task, [first, last]: readonly [number, number], by: number): Task {
  if (first === last) return task;
  const shares = task.shares.map(({ setUp, costs }, i) => {
    const way = i === 0 ? by : -by;
    return { setUp, costs: costs.map((cost, v) => cost + (v === first ? way : v === last ? -way : 0)) };
  });
  return { ...task, shares };
}

/** The branch after a look: torn jobs brought closer, visits dropped that no better plan of it can use. */
function closer(branch: Branch, { cost, ends, totals }: Relaxed, best: number, pull: number): Branch {
  const torn = ends.filter(([first, last]) => first !== last).length;
  const by = rounded((pull * (best - cost)) / (2 * torn), branch.grain);
  const tasks = branch.tasks.map((task, t) => drawn(task, ends[t] ?? [0, 0], by));
  return narrow({ ...branch, tasks }, visitsBelow(totals, best - branch.spent));
}

/** Where moving one job at a time leads from here. */
function settled(branch: Branch, start: readonly number[]): readonly number[] {
  let options = start;
  let least = place(branch, start).spent;
  for (let isBetter = true; isBetter;) {
    isBetter = false;
    for (const [task, { costs }] of branch.tasks.entries())
      for (const option of costs.keys()) {
        const moved = options.map((each, t) => (t === task ? option : each));
        const { spent } = place(branch, moved);
        if (spent < least) [options, least, isBetter] = [moved, spent, true];
      }
  }
  return options;
}

/** Keeps the plan with each torn job at one of its ends, and better ones near it, where it is the best so far. */
function consider(search: Search, branch: Branch, { ends, cost }: Relaxed): void {
  for (const end of [0, 1]) {
    const options = ends.map((each) => each[end] ?? 0);
    const { spent } = place(branch, options);
    if (spent >= search.best.cost) continue;
    const whole = place(branch, spent > cost ? settled(branch, options) : options);
    search.best = { cost: whole.spent, placed: whole.placed };
  }
}

/**
 * Looks at a branch as if jobs with two sides could be torn apart, and answers a bound of its plans. Lagrangian
 * relaxation (Fisher, The Lagrangian relaxation method for solving integer programming problems, 1981): as long as
 * that brings the bound nearer to the best plan known, the two shares of each torn job are drawn to one visit; then
 * one job is tried at each visit in turn.
 */
function explore(search: Search, start: Branch): number {
  let branch = start;
  let bound = -Infinity;
  // A pull of 1 would close the gap if the bound rose straight; the first look always halves.
  for (let pull = 2; ;) {
    if (search.effort <= 0) return bound;
    search.effort -= 2 ** branch.visits.length;
    const relaxed = relax(branch, search.room);
    const { cost, ends } = relaxed;
    consider(search, branch, relaxed);
    if (cost - bound <= gain * (search.best.cost - bound)) pull /= 2;
    bound = Math.max(bound, cost);
    const torn = ends.findIndex(([first, last]) => first !== last);
    if (torn < 0 || bound >= search.best.cost) return bound;
    branch = closer(branch, relaxed, search.best.cost, pull);
    if (pull < weakest) return Math.max(bound, split(search, branch, torn));
  }
}

/** The bound of a branch from those of all places where one of its jobs can be. */
function split(search: Search, branch: Branch, torn: number): number {
  let least = Infinity;
  for (const [option, cost] of (branch.tasks[torn]?.costs ?? []).entries()) {
    if (cost === Infinity) continue;
    const options = branch.tasks.map((_, t) => (t === torn ? option : undefined));
    least = Math.min(least, explore(search, place(branch, options)));
  }
  return least;
}

/** The cheapest plan of a branch, exact unless the search runs out of its effort: so many sets of visits. */
export function cheapestPlan(branch: Branch, effort: number): Found {
  const room = roomFor(branch.setUps.length, branch.visits.length);
  const search: Search = { room, best: { cost: Infinity, placed: new Map() }, effort };
  const bound = explore(search, branch);
  return { ...search.best, bound: Math.min(bound, search.best.cost) };
}
