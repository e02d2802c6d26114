import type { Json } from '../../core/canonical-json.ts';
import type { PartHours } from '../../core/hours-left.ts';
import type { CostedJob } from '../../core/job-costs.ts';
import { isPlanned, type Outlook } from '../../core/outlook.ts';
import { round6 } from '../../core/quantity.ts';
import type { ItemOutcome, Scored } from '../../core/score.ts';
import { shownCall } from '../../core/verdict.ts';

/** Hours come from exponentials, in whose last bits engines differ: a seal holds whole ones. */
const whole = (hours: number): number | null => (Number.isFinite(hours) ? Math.round(hours) : null);

const placeOf = ({ state }: ItemOutcome) => ({ place: state.place, item: state.item.id });

const paramsOf = (params: Readonly<Record<string, string | number>>): Json =>
  Object.fromEntries(
    Object.entries(params).map(([name, value]) => [name, typeof value === 'number' ? round6(value) : value]),
  );

/** What asks for something, with every reason; what may run needs none. */
const neededOf = (outcome: ItemOutcome): Json => ({
  ...placeOf(outcome),
  atLeast: outcome.atLeast,
  meanwhile: outcome.meanwhile,
  reasons: outcome.reasons.map(({ rule, message, params }) => ({ rule, message, params: paramsOf(params) })),
});

const openOf = (outcome: ItemOutcome): Json => ({
  ...placeOf(outcome),
  couldPark: outcome.canPark,
  why: outcome.open.map(({ kind }) => kind),
});

/** The verdict with its reasons, as plain JSON. */
export function sealedVerdict({ verdict, outcomes }: Scored): Json {
  const { atLeast, meanwhile, settled, drivers } = verdict;
  return {
    call: shownCall(verdict),
    atLeast,
    meanwhile,
    settled,
    drivers: drivers.map(placeOf),
    needs: outcomes.filter((each) => each.atLeast !== 'run' || each.meanwhile !== 'work').map(neededOf),
  };
}

/** All that was open, what could park the machine first. */
export const sealedOpen = ({ verdict }: Scored): readonly Json[] =>
  [...verdict.openParking, ...verdict.openOther].map(openOf);

const partOf = ({ history, left, open }: PartHours): Json => ({
  place: history.place,
  item: history.item.id,
  left: left ? { low: whole(left.low), middle: whole(left.middle), high: whole(left.high) } : null,
  open,
});

const jobOf = ({ job, dueHours, cost }: CostedJob): Json => ({
  job: job.id,
  call: job.call,
  dueHours: whole(dueHours),
  minor: cost.partsMinor + cost.labourMinor + cost.downtimeMinor,
});

/** Hours left and the plan as they were shown: whole hours, and money in minor units. */
export function sealedAhead({ hours, plan, meterOffset }: Outlook): {
  readonly hours: Json;
  readonly plan: Json;
} {
  const open = plan.open.map(({ job }) => job.id);
  if (!isPlanned(plan)) return { hours: hours.parts.map(partOf), plan: { open } };
  return {
    hours: hours.parts.map(partOf),
    plan: {
      currency: plan.currency,
      costMinor: Math.round(plan.costMinor),
      visits: plan.visits.map(({ hours: at, outlayMinor, jobs }) => ({
        meterHours: whole(at - meterOffset),
        outlayMinor: Math.round(outlayMinor),
        jobs: jobs.map(jobOf),
      })),
      later: plan.later.map(jobOf),
      open,
    },
  };
}
