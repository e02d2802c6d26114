/** One of the set-ups of a job on which no other of them rests, with its share of the job's costs. */
export interface Share {
  /** The set-up, by number. */
  readonly setUp: number;
  /** At each visit, and last at none; Infinity where it may not be. */
  readonly costs: readonly number[];
}

/** A job whose visit is still free. */
export interface Task {
  readonly id: string;
  readonly costs: readonly number[];
  /** All its set-ups, by number. */
  readonly needs: readonly number[];
  /** One share, or one for each side; together they are `costs`. */
  readonly shares: readonly Share[];
}

/** Work shared by the jobs of a visit. */
export interface Shared {
  /** The number of the one it rests on, lower than its own; the call-out is number 0. */
  readonly restsOn: number;
  /** Its price at each visit: 0 where it is done already. */
  readonly prices: readonly number[];
}

/** Where jobs have been put: the number of a visit of the input, or undefined for none. */
export type Placed = ReadonlyMap<string, number | undefined>;

/** All plans that agree on some jobs and keep to some visits. */
export interface Branch {
  /** What all costs are multiples of. */
  readonly grain: number;
  readonly tasks: readonly Task[];
  readonly setUps: readonly Shared[];
  /** The visits that may still be used, by their numbers in the input. */
  readonly visits: readonly number[];
  readonly placed: Placed;
  /** What the placed jobs cost with their set-ups. */
  readonly spent: number;
}

/** Rounds to a multiple of a power of two. */
export const rounded = (cost: number, grain: number): number => Math.round(cost / grain) * grain;

/** The branch with tasks put where `options` has a number: the place in `visits`, or their count for none. */
export function place(branch: Branch, options: readonly (number | undefined)[]): Branch {
  const { tasks, visits } = branch;
  const prices = branch.setUps.map((each) => [...each.prices]);
  const placed = new Map(branch.placed);
  let { spent } = branch;
  for (const [t, { id, costs, needs }] of tasks.entries()) {
    const option = options[t];
    if (option === undefined) continue;
    placed.set(id, visits[option]);
    spent += costs[option] ?? Infinity;
    for (const need of option < visits.length ? needs : []) {
      spent += prices[need]?.[option] ?? 0;
      prices[need]?.splice(option, 1, 0);
    }
  }
  return {
    ...branch,
    tasks: tasks.filter((_, t) => options[t] === undefined),
    setUps: branch.setUps.map((each, k) => ({ ...each, prices: prices[k] ?? [] })),
    placed,
    spent,
  };
}

/** The branch with no visits but those in a set. */
export function narrow(branch: Branch, set: number): Branch {
  const kept = set | (1 << branch.visits.length);
  const within = (list: readonly number[]): readonly number[] =>
    list.filter((_, v) => ((kept >> v) & 1) === 1);
  const costsWithin = <T extends { readonly costs: readonly number[] }>(each: T): T => ({
    ...each,
    costs: within(each.costs),
  });
  return {
    ...branch,
    visits: within(branch.visits),
    setUps: branch.setUps.map((each) => ({ ...each, prices: within(each.prices) })),
    tasks: branch.tasks.map((task) => ({ ...costsWithin(task), shares: task.shares.map(costsWithin) })),
  };
}
