import type { CostedJob } from './job-costs.ts';
import type { JobPlan, OpenJob } from './job-plan.ts';
import { isPlanned, type Outlook } from './outlook.ts';

/** What one job of the plan is expected to cost within the hours, in minor units. */
export interface SpendLine {
  readonly costed: CostedJob;
  /** Hours from now of its visit; undefined where that lies beyond. */
  readonly inHours: number | undefined;
  /** Chance that it breaks down before its visit, or within the hours where it has none. */
  readonly chance: number;
  readonly minor: number;
}

/** What the machine is expected to cost within so many hours by its plan, in whole minor units. */
export interface Spend {
  readonly currency: string;
  readonly hours: number;
  readonly minor: number;
  /** Of it what is paid if all goes as planned, and what breakdowns add to that. */
  readonly plannedMinor: number;
  readonly breakdownMinor: number;
  readonly setUpMinor: number;
  /** False while jobs have no price, or measured parts no hours: the sum is then the least that is expected. */
  readonly isWhole: boolean;
  readonly lines: readonly SpendLine[];
  /** Jobs that are in no sum. */
  readonly open: readonly OpenJob[];
}

function lineOf(costed: CostedJob, inHours: number | undefined, hours: number): SpendLine {
  const chance = costed.within(inHours ?? hours);
  const planned = inHours === undefined ? 0 : (1 - chance) * costed.plannedMinor;
  return { costed, inHours, chance, minor: chance * costed.breakdownMinor + planned };
}

/** A chance below this is no line of its own: one in two hundred. */
const worthALine = 0.005;

/**
 * What the plan expects to be spent within so many hours; only its open jobs where nothing can be told, as without
 * prices or where neither a call nor the hours of any part are known.
 */
export function spendWithin(
  { plan, hours: { parts } }: Pick<Outlook, 'plan' | 'hours'>,
  hours: number,
): Spend | { readonly open: readonly OpenJob[] } {
  const isNothing = (each: JobPlan): boolean => each.visits.length === 0 && each.later.length === 0;
  if (!isPlanned(plan) || (isNothing(plan) && !parts.some(({ left }) => left))) return { open: plan.open };
  const isNear = ({ inHours }: { readonly inHours: number }): boolean => inHours <= hours;
  const near = plan.visits.filter(isNear);
  const lines = [
    ...near.flatMap(({ jobs, inHours }) => jobs.map((each) => lineOf(each, inHours, hours))),
    ...plan.visits
      .filter((visit) => !isNear(visit))
      .flatMap(({ jobs }) => jobs.map((each) => lineOf(each, undefined, hours))),
    ...plan.later.map((each) => lineOf(each, undefined, hours)),
  ];
  const setUp = near.reduce((sum, { setUpMinor }) => sum + setUpMinor, 0);
  const planned = near.reduce((sum, { outlayMinor }) => sum + outlayMinor, 0);
  const whole = Math.round(lines.reduce((sum, { minor }) => sum + minor, setUp));
  return {
    currency: plan.currency,
    hours,
    minor: whole,
    plannedMinor: Math.round(planned),
    breakdownMinor: whole - Math.round(planned),
    setUpMinor: Math.round(setUp),
    isWhole: plan.open.length === 0 && parts.every(({ left }) => left !== undefined),
    lines: lines
      .filter(({ inHours, chance }) => inHours !== undefined || chance >= worthALine)
      .map((line) => ({ ...line, minor: Math.round(line.minor) })),
    open: plan.open,
  };
}
