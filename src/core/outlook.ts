import { assemble, valueIn, type Assembled, type BuiltIn, type Shelf } from './assemble.ts';
import { costsFor, type StartingCosts } from './costs-for.ts';
import type { Costs } from './costs.ts';
import { wrongCalls, worthReading, type WorthReading, type WrongCall } from './cost-of-wrong.ts';
import type { Learnt } from './fleet.ts';
import type { HistoryInput, WalkReadings } from './history.ts';
import { holdsOf, type Hold } from './holds.ts';
import { hoursLeft, rubberRisk, type MachineHours, type RubberRisk } from './hours-left.ts';
import { jobPlan, planHorizonHours, visitHours, type JobPlan, type OpenJob } from './job-plan.ts';
import type { Spell } from './job-costs.ts';
import { isDemo, parseKey, prefixOf } from './keys.ts';
import type { LifeTables } from './life.ts';
import { isRubber, type Side } from './machine.ts';
import { choiceOf, type Choice } from './mend.ts';
import type { ObservedAt } from './readings.ts';
import { daysBetween } from './days.ts';
import { score, type Scored } from './score.ts';
import { compareBytewise } from './stamp.ts';
import type { Walk, Work } from './walk.ts';
import type { RatePrior } from './wear-filter.ts';

/** Hours that the machine works in a week, as its record says or as its walks show. */
export interface WeekHours {
  readonly hours: number;
  readonly from: 'machine' | 'walks';
}

/** What lies ahead of a machine at a walk: hours left, the jobs and when, and what else could be done. */
export interface Outlook {
  readonly hours: MachineHours;
  /** Histories of the own fleet by the life figure that they stand in for. */
  readonly learntFrom: ReadonlyMap<string, number>;
  /** Running hours less this are the hour meter's. */
  readonly meterOffset: number;
  readonly week: WeekHours | undefined;
  /** Damage and age of rubber tracks; undefined for steel. */
  readonly rubber: { readonly left: RubberRisk; readonly right: RubberRisk } | undefined;
  /** What was done to the machine, of all that is on record. */
  readonly work: readonly Work[];
  readonly costs: Costs;
  readonly holds: ReadonlyMap<string, Hold>;
  /** When each walk was started, by its key. */
  readonly walkedAt: ReadonlyMap<string, ObservedAt>;
  readonly life: LifeTables;
  readonly plan: JobPlan | { readonly open: readonly OpenJob[] };
  readonly choices: readonly Choice[];
  readonly wrong: readonly WrongCall[];
  /** Readings whose repetition is expected to save most, first. */
  readonly worth: readonly WorthReading[];
}

export interface OutlookOptions {
  /** Price list and rates of the machine's class, for when it names none. */
  readonly starting: StartingCosts;
  readonly learnt?: Learnt;
  /** The plan that stands now, by running hours; without it that of the walk before. */
  readonly earlier?: ReadonlyMap<string, number | 'never'>;
}

export const isPlanned = (plan: Outlook['plan']): plan is JobPlan => 'visits' in plan;

const dayOf = (walk: Walk): string => walk.startedAt?.utc ?? '';

/**
 * The finished walks of the machine up to this one, which need not be finished, in the order of time. One that another
 * of them corrects is left out: the same walkaround would count twice.
 */
export function walksUpTo(shelf: Shelf, walkKey: string, walk: Walk): readonly (readonly [string, Walk])[] {
  const all = shelf.under(prefixOf('walk', { demo: isDemo(walkKey) })).flatMap(([key, versions]) => {
    const each = valueIn<Walk>(versions);
    const isOne =
      each?.machine === walk.machine && each.finishedAt !== undefined && dayOf(each) <= dayOf(walk);
    const one: readonly [string, Walk][] = isOne && key !== walkKey ? [[key, each]] : [];
    return one;
  });
  const corrected = new Set([walk, ...all.map(([, each]) => each)].map(({ corrects }) => corrects));
  const standing = all.filter(([key, { corrects }]) => !corrected.has(key) && corrects !== walkKey);
  standing.sort(([a, one], [b, other]) => compareBytewise(dayOf(one), dayOf(other)) || compareBytewise(a, b));
  return [...standing, [walkKey, walk]];
}

/** Everything that the histories of a machine are made of, from records. */
export function historyInput(
  shelf: Shelf,
  builtIn: BuiltIn,
  walkKey: string,
  { input }: Assembled,
  learnt?: ReadonlyMap<string, RatePrior>,
): HistoryInput {
  const walks = walksUpTo(shelf, walkKey, input.walk).map(([key, walk]): WalkReadings => {
    if (key === walkKey) return { key, walk, readings: input.readings };
    const made = assemble(shelf, builtIn, key);
    return { key, walk, readings: made.ok ? made.value.input.readings : [] };
  });
  const machine = parseKey(input.walk.machine);
  const prefix =
    machine?.kind === 'machine' ? prefixOf('work', { owner: machine.id, demo: isDemo(walkKey) }) : undefined;
  const work =
    prefix === undefined ? [] : shelf.under(prefix).flatMap(([, versions]) => valueIn<Work>(versions) ?? []);
  return {
    machine: input.machine,
    walks,
    work,
    sheets: input.sheets,
    tools: builtIn.tools,
    life: builtIn.life,
    ...(learnt && { learnt }),
  };
}

/** At least so many days have to lie between two walks for their hours to tell what a week is. */
const enoughDays = 21;

function weekOf({ machine, walks }: HistoryInput, hours: MachineHours['hours']): WeekHours | undefined {
  if (machine.hoursPerWeek !== undefined && machine.hoursPerWeek > 0)
    return { hours: machine.hoursPerWeek, from: 'machine' };
  const [first, last] = [walks[0]?.walk, walks.at(-1)?.walk];
  const [from, to] = [hours.ofWalks[0], hours.ofWalks.at(-1)];
  if (hours.fault || !first || !last || from === undefined || to === undefined || to <= from)
    return undefined;
  const days = daysBetween(first, last);
  return days === undefined || days < enoughDays
    ? undefined
    : { hours: (7 * (to - from)) / days, from: 'walks' };
}

const walkedAt = ({ walks }: HistoryInput): ReadonlyMap<string, ObservedAt> =>
  new Map(walks.flatMap(({ key, walk: { startedAt } }) => (startedAt ? [[key, startedAt] as const] : [])));

function rubberOf(
  { input }: Assembled,
  { parts }: MachineHours,
  life: LifeTables,
  { learnt }: OutlookOptions,
): Outlook['rubber'] {
  if (!isRubber(input.machine.shape)) return undefined;
  const risk = (side: Side): RubberRisk => {
    const track = parts.find(({ history }) => history.side === side && history.item.id === 'lug-depth');
    return rubberRisk(life, {
      ground: input.walk.ground,
      ageYears: input.ageYears?.[side],
      ranHours: track?.history.lives.at(-1)?.hours,
      learnt: learnt?.damage,
    });
  };
  return { left: risk('left'), right: risk('right') };
}

/** The outlook of a machine at a walk. */
export function outlookOf(
  shelf: Shelf,
  builtIn: BuiltIn,
  walkKey: string,
  assembled: Assembled,
  scored: Scored,
  options: OutlookOptions,
): Outlook {
  const { input, machineKey } = assembled;
  const { machine, walk } = input;
  const history = historyInput(shelf, builtIn, walkKey, assembled, options.learnt?.rates);
  const hours = hoursLeft(history);
  const nowHours = hours.now ?? walk.meterHours ?? machine.meterHours ?? 0;
  const meterOffset = walk.meterHours === undefined ? 0 : nowHours - walk.meterHours;
  const costs = costsFor(shelf, builtIn, machine, options.starting);
  const holds = holdsOf(shelf, machineKey);
  const earlier = options.earlier ?? earlierPlan(shelf, builtIn, walkKey, walk, nowHours, options);
  const { parts } = hours;
  const { outcomes } = scored;
  const at = { life: builtIn.life, load: walk.load, nowHours, meterOffset, ...(earlier && { earlier }) };
  const plan = jobPlan({ shape: machine.shape, outcomes, parts, costs, holds, ...at });
  return {
    hours,
    learntFrom: options.learnt?.counts ?? new Map(),
    meterOffset,
    week: weekOf(history, hours.hours),
    rubber: rubberOf(assembled, hours, builtIn.life, options),
    work: history.work,
    costs,
    holds,
    walkedAt: walkedAt(history),
    life: builtIn.life,
    plan,
    ...furtherOf(plan, { assembled, scored, hours, costs, builtIn, nowHours }),
  };
}

/** The plan as it was after the walk before, with today's prices, so that only what changed changes it. */
function earlierPlan(
  shelf: Shelf,
  builtIn: BuiltIn,
  walkKey: string,
  walk: Walk,
  nowHours: number,
  options: OutlookOptions,
): ReadonlyMap<string, number | 'never'> | undefined {
  const before = walksUpTo(shelf, walkKey, walk).at(-2);
  const made = before && assemble(shelf, builtIn, before[0]);
  if (!before || !made?.ok) return undefined;
  const nothing = new Map<string, number | 'never'>();
  const { plan } = outlookOf(shelf, builtIn, before[0], made.value, score(made.value.input), {
    ...options,
    earlier: nothing,
  });
  if (!isPlanned(plan)) return undefined;
  // What was planned for a visit that has gone by is free to be planned anew.
  return new Map([...plan.chosen].filter(([, hours]) => hours === 'never' || hours > nowHours));
}

interface Further {
  readonly assembled: Assembled;
  readonly scored: Scored;
  readonly hours: MachineHours;
  readonly costs: Costs;
  readonly builtIn: BuiltIn;
  readonly nowHours: number;
}

/** Other ways than those planned, and what being wrong costs. */
function furtherOf(plan: Outlook['plan'], of: Further): Pick<Outlook, 'choices' | 'wrong' | 'worth'> {
  const { rates } = of.costs;
  if (!isPlanned(plan) || !rates) return { choices: [], wrong: [], worth: [] };
  const { machine, walk } = of.assembled.input;
  const { life } = of.builtIn;
  const { nowHours } = of;
  const visits = visitHours(nowHours, planHorizonHours);
  const spell: Spell = { nowHours, horizonHours: planHorizonHours, visits, life, load: walk.load };
  const planned = plan.visits.flatMap((visit) => visit.jobs.map((each) => ({ each, visit })));
  const all = [...planned.map(({ each }) => each), ...plan.later];
  const mend = {
    shape: machine.shape,
    outcomes: of.scored.outcomes,
    parts: of.hours.parts,
    costs: of.costs,
    rates,
    life,
    planned: new Set(planned.map(({ each }) => each.job.id)),
  };
  const others = (id: string) =>
    planned
      .filter(({ each }) => each.job.id !== id)
      .map(({ each, visit }) => ({ needs: each.needs, hours: visit.hours }));
  const worth = all.flatMap((each) => worthReading(each, others(each.job.id), spell, of.costs, rates) ?? []);
  const now = plan.visits.find(({ inHours }) => inHours === 0);
  return {
    choices: planned.map(({ each, visit }) => choiceOf(mend, each, visit.jobs.length)),
    wrong: wrongCalls(all, new Set(now?.jobs.map(({ job }) => job.id)), (visits[1] ?? nowHours) - nowHours),
    worth: worth.filter(({ minor }) => minor > 0).sort((a, b) => b.minor - a.minor),
  };
}
