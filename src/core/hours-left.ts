import { historiesOf, type HistoryFault, type HistoryInput, type PartHistory } from './history.ts';
import type { LifeTables } from './life.ts';
import { passageOf, type Passage } from './passage.ts';
import type { RunningHours } from './running-hours.ts';
import type { Walk } from './walk.ts';
import { filterWear, type WearState } from './wear-filter.ts';
import { weibullSurvival, type Weibull } from './weibull.ts';

/** What looks wrong although it can be reckoned with. */
export type Doubt = 'too-fast' | 'too-slow' | 'meter-fast' | 'fitted-unknown' | 'one-reading';

/** Hours from the last walk on; Infinity where it lies beyond the horizon. */
export interface Interval {
  /** One in ten such parts is worn out sooner. */
  readonly low: number;
  readonly middle: number;
  /** One in ten lasts longer. */
  readonly high: number;
}

/** Hours left of one part, or why there are none. */
export interface PartHours {
  readonly history: PartHistory;
  /** Why there is no figure; then none of the rest is there. */
  readonly open: readonly HistoryFault[];
  readonly doubts: readonly Doubt[];
  readonly state?: WearState;
  readonly passage?: Passage;
  readonly left?: Interval;
}

/** Damage and age, which end rubber tracks whatever their wear. */
export interface RubberRisk {
  /** Share of such tracks that cuts and broken cores end within so many hours. */
  readonly within: (hours: number) => number;
  readonly isLearnt: boolean;
  /** Years of age at which rubber is given up, and where they are known those left. */
  readonly years: number;
  readonly yearsLeft?: number;
}

export interface RiskCase {
  readonly ground: Walk['ground'];
  readonly ageYears: number | undefined;
  readonly ranHours: number | undefined;
  readonly learnt: Weibull | undefined;
}

export interface MachineHours {
  readonly hours: RunningHours;
  /** Running hours of the last walk. */
  readonly now: number | undefined;
  /** What was looked at last, those with the fewest hours first, then those without a figure. */
  readonly parts: readonly PartHours[];
}

/** Beyond this nobody plans: about the working life of a mid-size excavator (USACE EP 1110-1-8, 2003: 8,000 to 12,000 h). */
export const horizonHours = 10_000;

/** A reading as far off as this one in a thousand times is questioned. */
const surprising = 0.001;

/** Hours left of every measured part of a machine. */
export function hoursLeft(input: HistoryInput): MachineHours {
  const { hours, parts } = historiesOf(input);
  const now = [...hours.ofWalks].reverse().find((each) => each !== undefined);
  const figured = parts
    .filter(({ points, events }) => points.length > 0 || events.length > 0)
    .map((history) => partHours(history, input.life, hours, now));
  figured.sort(
    (a, b) => (a.left?.middle ?? Infinity) - (b.left?.middle ?? Infinity) || orderOf(a) - orderOf(b),
  );
  return { hours, now, parts: figured };
}

const orderOf = ({ state }: PartHours): number => (state === undefined ? 1 : 0);

function partHours(
  history: PartHistory,
  life: LifeTables,
  hours: RunningHours,
  now: number | undefined,
): PartHours {
  const { events, prior, faults } = history;
  const open = faults.length === 0 && events.at(-1)?.kind === 'stepped' ? (['no-reading'] as const) : faults;
  if (open.length > 0 || prior === undefined) return { history, open, doubts: [] };
  const model = { prior, kappa: life.kappa.value };
  const state = filterWear(events, model);
  if (state === undefined) return { history, open: ['no-reading'], doubts: [] };
  const passage = passageOf(state);
  // Counted from the machine's last walk, which may be later than the last reading of this part.
  const since = Math.max(0, (now ?? state.hours) - state.hours);
  return {
    history,
    open: [],
    doubts: doubtsOf(history, hours, state.surprise),
    state,
    passage,
    left: intervalOf(passage, since),
  };
}

/** The interval, counted from `since` hours after the last reading. */
export function intervalOf(passage: Passage, since = 0): Interval {
  const at = (share: number): number => {
    const hours = passage.quantile(share) - since;
    return hours > horizonHours ? Infinity : Math.max(0, hours);
  };
  return { low: at(0.1), middle: at(0.5), high: at(0.9) };
}

function doubtsOf(history: PartHistory, hours: RunningHours, surprise: number): readonly Doubt[] {
  const reads = history.events.filter(({ kind }) => kind === 'read').length;
  const doubts: Doubt[] = [];
  if (surprise > 1 - surprising) doubts.push('too-fast');
  if (surprise < surprising) doubts.push('too-slow');
  if (hours.tooFast) doubts.push('meter-fast');
  if (!history.fittedKnown) doubts.push('fitted-unknown');
  if (reads < 2 && !history.fittedKnown) doubts.push('one-reading');
  return doubts;
}

/**
 * Cuts and broken cores, and age, of the track of one side: at the usual rate for the ground, or as the own fleet
 * has learnt from tracks that something other than wear ended.
 * @param ranHours how long this track has been on, where that is known
 */
export function rubberRisk(life: LifeTables, { ground, ageYears, ranHours, learnt }: RiskCase): RubberRisk {
  const aYear = life.damage[ground ?? 'unknown'].value;
  const years = life.rubberYears.value;
  const ran = ranHours ?? 0;
  return {
    within: (hours) =>
      learnt
        ? 1 - weibullSurvival(learnt, ran + hours) / weibullSurvival(learnt, ran)
        : 1 - Math.exp((-aYear * hours) / 1000),
    isLearnt: learnt !== undefined,
    years,
    ...(ageYears !== undefined && { yearsLeft: Math.max(0, years - ageYears) }),
  };
}
