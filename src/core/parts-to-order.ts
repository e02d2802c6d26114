import { callRank } from './calls.ts';
import type { JobPlan, OpenJob } from './job-plan.ts';
import type { Job } from './jobs.ts';
import type { PlaceSide } from './keys.ts';
import type { Ordered } from './machine.ts';
import { countOf, needsOf, type Need } from './order-needs.ts';
import { factsOfPart, type FactInput, type PartFact } from './part-facts.ts';
import { traitsOfPart, type PartKind } from './part-kinds.ts';
import type { ItemOutcome } from './score.ts';

/** A part to order: how many, for where, why, and what the parts desk has to know of it. */
export interface OrderLine {
  /** Of the job and the part: `left.renew-track.rubber-track`. */
  readonly id: string;
  readonly kind: PartKind;
  readonly side: PlaceSide;
  /** Counted from the idler; none where the side has one, or where all are meant. */
  readonly numbers: readonly number[];
  /** How many; undefined where somebody has to count. Never negative. */
  readonly count: number | undefined;
  /** What it is without the person's own count. */
  readonly counted: number | undefined;
  /** Why: the jobs that take it, with what asks for them. */
  readonly jobs: readonly Job[];
  /** Not asked for itself, but goes with the part that is renewed. */
  readonly goesWith: boolean;
  /** A new track on a worn sprocket wears faster, and no sprocket of this side is on the list. */
  readonly onWornSprocket: boolean;
  readonly facts: readonly PartFact[];
  readonly partNumber: string | undefined;
  readonly match: boolean;
  readonly out: boolean;
}

/** When the parts have to be there: by a visit of the plan, at a time nobody has planned, or beyond the horizon. */
export type OrderWhen =
  | { readonly kind: 'visit'; readonly hours: number; readonly inHours: number }
  | { readonly kind: 'unplanned'; readonly open: OpenJob }
  | { readonly kind: 'later' };

export interface OrderGroup {
  readonly when: OrderWhen;
  readonly lines: readonly OrderLine[];
}

export interface PartsToOrder {
  readonly groups: readonly OrderGroup[];
  /** Jobs that take no part, so that nothing is dropped in silence. */
  readonly partless: readonly Job[];
}

export interface OrderInput extends FactInput {
  readonly plan: JobPlan | { readonly open: readonly OpenJob[] };
  /** The walk that it is ordered after: its own counts and what it leaves out. */
  readonly walk: string;
}

function numbersOf({ outcomes, worn }: Job): readonly number[] {
  const numbers = [
    ...outcomes.map(({ state }) => state.number),
    ...worn.map(({ history }) => history.number),
  ];
  return [...new Set(numbers.flatMap((number) => number ?? []))].sort((a, b) => a - b);
}

/** A chain that is not sealed keeps the seals that it has not got. */
const isNotTaken = ({ kind }: Need, facts: readonly PartFact[]): boolean =>
  kind === 'joint-seals' && facts.some(({ name, value }) => name === 'joint' && value !== 'sealed');

function lineOf(need: Need, job: Job, numbers: readonly number[], input: OrderInput): readonly OrderLine[] {
  const { kind } = need;
  const { side } = job;
  const [number] = numbers.length === 1 ? numbers : [];
  const facts = side === 'whole' ? [] : factsOfPart({ kind, side, number }, input);
  if (isNotTaken(need, facts)) return [];
  const counted = countOf(need, numbers, facts);
  const line = { id: `${job.id}.${kind}`, kind, side, numbers, jobs: [job], facts, counted };
  return [{ ...line, goesWith: need.goesWith === true, count: counted, ...noChoice }];
}

const noChoice = {
  onWornSprocket: false,
  partNumber: undefined,
  match: false,
  out: false,
} as const;

/** Where rollers have different flanges each is a line of its own. */
function linesOfNeed(need: Need, job: Job, input: OrderInput): readonly OrderLine[] {
  const numbers = isNumberedPart(need.kind) ? numbersOf(job) : [];
  const isSplit = need.kind === 'bottom-roller' && input.machine.shape.flanges === 'mixed';
  if (!isSplit) return lineOf(need, job, numbers, input);
  return numbers.flatMap((number) =>
    lineOf(need, job, [number], input).map((line) => ({ ...line, id: `${line.id}.${number}` })),
  );
}

const isNumberedPart = (kind: PartKind): boolean => {
  const { component } = traitsOfPart(kind);
  return component === 'idler' || component === 'bottom-roller' || component === 'carrier-roller';
};

/** What the person has chosen; counts and what is left out are those of this walk. */
function chosenFor(line: OrderLine, { machine, walk }: OrderInput, isHeldOff: boolean): OrderLine {
  const choice: Ordered | undefined = machine.ordered?.find((each) => each.line === line.id);
  const own = choice?.walk === walk ? choice : undefined;
  return {
    ...line,
    count: own?.count ?? line.count,
    partNumber: choice?.partNumber,
    match: choice?.match === true,
    out: own?.out ?? isHeldOff,
  };
}

/** The same part for two jobs of one visit is one line: the larger count serves both, unless each names other parts. */
function merged(lines: readonly OrderLine[]): readonly OrderLine[] {
  const byPart = new Map<string, OrderLine>();
  for (const line of lines) {
    const part = [line.side, line.kind, ...(line.id.endsWith(line.kind) ? [] : line.numbers)].join('.');
    const known = byPart.get(part);
    byPart.set(part, known ? bothOf(known, line) : line);
  }
  return [...byPart.values()];
}

function bothOf(one: OrderLine, other: OrderLine): OrderLine {
  const isOpen = one.counted === undefined || other.counted === undefined;
  const [a, b] = [one.counted ?? 0, other.counted ?? 0];
  const areOthers =
    one.numbers.length > 0 &&
    other.numbers.length > 0 &&
    !one.numbers.some((number) => other.numbers.includes(number));
  const counted = isOpen ? undefined : areOthers ? a + b : Math.max(a, b);
  return {
    ...one,
    counted,
    count: counted,
    numbers: [...new Set([...one.numbers, ...other.numbers])].sort((a, b) => a - b),
    jobs: [...one.jobs, ...other.jobs],
    goesWith: one.goesWith && other.goesWith,
  };
}

function groupOf(when: OrderWhen, jobs: readonly Job[], input: OrderInput): OrderGroup {
  const lines = jobs.flatMap((job) => needsOf(job).flatMap((need) => linesOfNeed(need, job, input)));
  const isHeldOff = when.kind === 'unplanned' && when.open.why.kind === 'held-off';
  return { when, lines: merged(lines).map((line) => chosenFor(line, input, isHeldOff)) };
}

/** What nobody has planned, by why not. */
function unplanned(all: readonly OpenJob[], input: OrderInput): readonly OrderGroup[] {
  const kinds = [...new Set(all.map(({ why }) => why.kind))];
  return kinds.flatMap((kind) => {
    const mine = all.filter(({ why }) => why.kind === kind);
    const [open] = mine;
    const jobs = mine.map(({ job }) => job);
    return open ? [groupOf({ kind: 'unplanned', open }, jobs, input)] : [];
  });
}

/** What is left beyond the horizon needs a part only where the walk itself asks for it. */
const isAsked = ({ call }: Job): boolean => callRank(call) >= callRank('repair');

const isWorn = ({ state: { item, finding } }: ItemOutcome): boolean =>
  item.id === 'sprocket-teeth' && finding !== undefined && finding !== 'good';

/** New tracks and worn sprockets are told of (seekmach 2026: replace them together). */
function besideSprockets(groups: readonly OrderGroup[], outcomes: readonly ItemOutcome[]) {
  const lines = groups.flatMap((group) => group.lines);
  const worn = new Set(outcomes.filter(isWorn).map(({ state }) => state.side));
  const renewed = new Set(lines.filter(({ kind }) => kind === 'sprocket').map(({ side }) => side));
  const isOn = ({ kind, side }: OrderLine): boolean =>
    (kind === 'rubber-track' || kind === 'chain') && worn.has(side) && !renewed.has(side);
  return groups.map((group) => ({
    ...group,
    lines: group.lines.map((line) => ({ ...line, onWornSprocket: isOn(line) })),
  }));
}

/**
 * The parts to order: what the verdict asks for and what the plan renews, by the visit that needs it. Every job that
 * is planned, or asked for and not planned, has its lines or stands among those that take no part.
 */
export function partsToOrder(input: OrderInput): PartsToOrder {
  const { plan } = input;
  const [visits, later] = 'visits' in plan ? [plan.visits, plan.later] : [[], []];
  const asked = later.map(({ job }) => job).filter(isAsked);
  const groups = [
    ...visits.map(({ hours, inHours, jobs }) =>
      groupOf(
        { kind: 'visit', hours, inHours },
        jobs.map(({ job }) => job),
        input,
      ),
    ),
    ...unplanned(plan.open, input),
    groupOf({ kind: 'later' }, asked, input),
  ];
  const jobs = [
    ...visits.flatMap((visit) => visit.jobs.map(({ job }) => job)),
    ...plan.open.map(({ job }) => job),
    ...asked,
  ];
  const served = new Set(groups.flatMap(({ lines }) => lines.flatMap((line) => line.jobs)));
  return {
    groups: besideSprockets(groups, input.outcomes).filter(({ lines }) => lines.length > 0),
    partless: jobs.filter((job) => !served.has(job)),
  };
}
