import { horizonHours, type PartHours } from '../core/hours-left.ts';
import type { CostedJob } from '../core/job-costs.ts';
import type { JobPlan, OpenJob } from '../core/job-plan.ts';
import type { RecordKey } from '../core/keys.ts';
import { isPlanned, type Outlook } from '../core/outlook.ts';
import type { Source } from '../core/source.ts';
import type { ItemPlace } from './scored.ts';

/** Hours left of one part from the machine's last walk on; null where it lies beyond the horizon. */
export interface HoursOfPart extends ItemPlace {
  readonly percent: number | null;
  readonly left: {
    readonly lowHours: number | null;
    readonly middleHours: number | null;
    readonly highHours: number | null;
  } | null;
  /** Why there are no hours. */
  readonly open: readonly string[];
  readonly doubts: readonly string[];
  readonly readings: readonly {
    readonly walk: string;
    readonly hours: number;
    readonly percent: number;
    readonly u: number;
  }[];
  readonly life: {
    readonly id: string;
    readonly lowHours: number;
    readonly highHours: number;
    readonly learnt: boolean;
    readonly source: Source;
  } | null;
}

/** Hours left of a machine at its last walk. */
export interface HoursOfMachine {
  readonly machine: RecordKey | string;
  readonly walk: string;
  readonly clock: 'engine' | 'travel';
  readonly meterHours: number | null;
  readonly hoursPerWeek: number | null;
  readonly horizonHours: number;
  readonly parts: readonly HoursOfPart[];
}

// Engines differ in the last bits of an exponential; a hundredth of an hour is finer than anybody reads.
const hundredth = (value: number): number => Math.round(value * 100) / 100;

const finite = (hours: number): number | null => (Number.isFinite(hours) ? hundredth(hours) : null);

function partOf({ history, left, open, doubts }: PartHours): HoursOfPart {
  const { figure, points } = history;
  const last = points.at(-1);
  return {
    place: history.place,
    item: history.item.id,
    percent: last ? hundredth(last.percent) : null,
    left: left
      ? { lowHours: finite(left.low), middleHours: finite(left.middle), highHours: finite(left.high) }
      : null,
    open,
    doubts,
    readings: points.map(({ walk, hours, percent, u }) => ({
      walk,
      hours: hundredth(hours),
      percent: hundredth(percent),
      u: hundredth(u),
    })),
    life: figure
      ? {
          id: figure.id,
          lowHours: figure.lowHours,
          highHours: figure.highHours,
          learnt: history.isLearnt,
          source: figure.source,
        }
      : null,
  };
}

/** Hours left as plain JSON. */
export const hoursOfMachine = (
  machine: string,
  walk: string,
  { hours, week, meterOffset }: Outlook,
): HoursOfMachine => ({
  machine,
  walk,
  clock: hours.hours.clock,
  meterHours: hours.now === undefined ? null : hundredth(hours.now - meterOffset),
  hoursPerWeek: week ? hundredth(week.hours) : null,
  horizonHours,
  parts: hours.parts.map(partOf),
});

export interface PlannedJob {
  readonly id: string;
  readonly kind: string;
  readonly side: string;
  readonly count: number;
  /** The call that asks for it now; `run` where only wear to come does. */
  readonly call: string;
  readonly dueHours: number | null;
  readonly partsMinor: number;
  readonly labourHours: number;
  readonly labourMinor: number;
  readonly downtimeMinor: number;
  readonly sources: readonly Source[];
}

/** The job plan of a machine at its last walk; amounts are minor units of the currency. */
export interface PlanOfMachine {
  readonly machine: string;
  readonly name: string;
  readonly walk: string;
  readonly currency: string | null;
  readonly horizonHours: number | null;
  readonly visits: readonly {
    readonly meterHours: number;
    readonly inHours: number;
    readonly outlayMinor: number;
    readonly setUpMinor: number;
    readonly jobs: readonly PlannedJob[];
  }[];
  readonly later: readonly PlannedJob[];
  readonly open: readonly { readonly job: string; readonly why: OpenJob['why'] }[];
  readonly costs: Pick<
    JobPlan,
    'costMinor' | 'everythingNowMinor' | 'eachWhenDueMinor' | 'kept' | 'exact' | 'boundMinor'
  > | null;
  readonly mendOrRenew: readonly {
    readonly job: string;
    readonly ways: readonly {
      readonly kind: string;
      readonly hoursGained: number;
      readonly minor: number;
      readonly minorPerHour: number;
      readonly effects: readonly string[];
    }[];
    readonly closed: readonly { readonly kind: string; readonly why: string }[];
  }[];
  readonly ifWrong: readonly {
    readonly job: string;
    readonly if: string;
    readonly chance: number;
    readonly minor: number;
  }[];
  readonly worthReadingAgain: readonly (ItemPlace & { readonly minor: number })[];
}

const jobOf = ({ job, cost, dueHours }: CostedJob): PlannedJob => ({
  id: job.id,
  kind: job.kind,
  side: job.side,
  count: job.count,
  call: job.call,
  dueHours: finite(dueHours),
  partsMinor: cost.partsMinor,
  labourHours: cost.labourHours,
  labourMinor: cost.labourMinor,
  downtimeMinor: cost.downtimeMinor,
  sources: cost.sources,
});

const openOf = ({ job, why }: OpenJob): PlanOfMachine['open'][number] => ({ job: job.id, why });

function plannedOf(plan: JobPlan, meterOffset: number) {
  const { costMinor, everythingNowMinor, eachWhenDueMinor, kept, exact, boundMinor } = plan;
  return {
    currency: plan.currency,
    horizonHours: plan.horizonHours,
    visits: plan.visits.map(({ hours, inHours, outlayMinor, setUpMinor, jobs }) => ({
      meterHours: hundredth(hours - meterOffset),
      inHours: hundredth(inHours),
      outlayMinor,
      setUpMinor,
      jobs: jobs.map(jobOf),
    })),
    later: plan.later.map(jobOf),
    costs: { costMinor, everythingNowMinor, eachWhenDueMinor, kept, exact, boundMinor },
  };
}

/** The plan as plain JSON. */
export function planOfMachine(
  machine: string,
  name: string,
  walk: string,
  { plan, choices, wrong, worth, meterOffset }: Outlook,
): PlanOfMachine {
  const none = { currency: null, horizonHours: null, visits: [], later: [], costs: null };
  return {
    machine,
    name,
    walk,
    ...(isPlanned(plan) ? plannedOf(plan, meterOffset) : none),
    open: plan.open.map(openOf),
    mendOrRenew: choices.map(({ job, ways, closed }) => ({
      job: job.id,
      ways: ways.map(({ kind, hoursGained, minor, perHour, effects }) => ({
        kind,
        hoursGained: hundredth(hoursGained),
        minor,
        minorPerHour: hundredth(perHour),
        effects,
      })),
      closed,
    })),
    ifWrong: wrong.map(({ id, if: when, chance, minor }) => ({
      job: id,
      if: when,
      chance: hundredth(chance),
      minor,
    })),
    worthReadingAgain: worth.map(({ part, minor }) => ({
      place: part.history.place,
      item: part.history.item.id,
      minor,
    })),
  };
}
