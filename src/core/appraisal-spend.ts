import type { CostedJob } from './job-costs.ts';
import type { OpenJob } from './job-plan.ts';
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

/** What the plan expects to be spent within so many hours; its open jobs where nothing can be told. */
export function spendWithin(
  { plan }: Pick<Outlook, 'plan'>,
  hours: number,
): Spend | { readonly open: readonly OpenJob[] } {
  if (!isPlanned(plan)) return { open: plan.open };
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
    lines: lines
      .filter(({ inHours, chance }) => inHours !== undefined || chance >= worthALine)
      .map((line) => ({ ...line, minor: Math.round(line.minor) })),
    open: plan.open,
  };
}
