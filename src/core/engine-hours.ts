import { dayOfWalk, dayOfWork } from './days.ts';
import type { Walk, Work } from './walk.ts';

/** What does not fit about the hours of a machine, or keeps them from being known. */
export type HoursFault = 'no-hours' | 'meter-back' | 'old-meter-unknown';

/** Where work stands in time: its meter reading and its day. */
export type WorkHours = Pick<Work, 'meterHours' | 'on'>;

/** Hours of the engine that run on over changed meters. */
export interface EngineHours {
  /** In the order of the walks given; undefined where the walk has none. */
  readonly ofWalks: readonly (number | undefined)[];
  readonly ofWork: (work: WorkHours) => number | undefined;
  /** True when a change of meters is on record. */
  readonly isChanged: boolean;
  readonly fault?: HoursFault;
}

interface Change {
  readonly day: number | undefined;
  readonly oldHours: number | undefined;
  readonly newHours: number;
}

const changesOf = (work: readonly Work[]): readonly Change[] =>
  work
    .filter(({ kind }) => kind === 'meter-changed')
    .map((each) => ({
      day: dayOfWork(each),
      oldHours: each.oldMeterHours,
      newHours: each.meterHours ?? 0,
    }))
    .sort((a, b) => (a.day ?? 0) - (b.day ?? 0) || a.newHours - b.newHours);

/** Hours on one meter, from a change on. */
interface Stretch {
  /** The change; undefined for the first meter and where the day of the change is not known. */
  readonly day: number | undefined;
  readonly newHours: number;
  /** What to add to its readings; undefined where nothing tells. */
  readonly add: number | undefined;
}

/** On the day of the change itself, whether hours are the new meter's: it can have run no more than that day. */
const isOnNew = (meter: number, newHours: number): boolean => meter >= newHours && meter - newHours <= 24;

const isFrom = (stretch: Stretch, day: number | undefined, meter: number): boolean =>
  stretch.day === undefined || day === undefined || day > stretch.day
    ? true
    : day === stretch.day && isOnNew(meter, stretch.newHours);

/** Meters on their way through the walks. */
interface Meters {
  readonly left: Change[];
  stretches: readonly Stretch[];
  add: number;
  /** Last reading of the meter that is on; undefined before the first. */
  before: number | undefined;
  fault: HoursFault | undefined;
}

/** Goes on to the next meter. What the old one showed last need not be known when nobody read it. */
function change(meters: Meters, { day, oldHours, newHours }: Change): void {
  const { before, stretches } = meters;
  if (before !== undefined && (oldHours === undefined || oldHours < before))
    meters.fault ??= 'old-meter-unknown';
  const isLost = oldHours === undefined && before === undefined;
  meters.add = isLost ? 0 : meters.add + (oldHours ?? before ?? 0) - newHours;
  const past = isLost ? stretches.map((each) => ({ ...each, add: undefined })) : stretches;
  meters.stretches = [...past, { day, newHours, add: meters.add }];
  meters.before = newHours;
}

/** Takes the changes that come before a reading. */
function changeUntil(meters: Meters, meter: number, day: number | undefined): void {
  const isDue = (each: Change): boolean => {
    const { before = 0 } = meters;
    if (each.day === undefined) return meter < before;
    if (day === undefined || day < each.day) return false;
    return day > each.day || meter < before || isOnNew(meter, each.newHours);
  };
  for (let next = meters.left[0]; next !== undefined && isDue(next); next = meters.left[0]) {
    meters.left.shift();
    change(meters, next);
  }
}

/**
 * Engine hours of walks, given in the order of time. A meter that stands lower than at the walk before is a fault
 * unless a change of meters with the old one's last reading is on record between them.
 */
export function engineHours(walks: readonly Walk[], work: readonly Work[]): EngineHours {
  const meters: Meters = {
    left: [...changesOf(work)],
    stretches: [{ day: undefined, newHours: 0, add: 0 }],
    add: 0,
    before: undefined,
    fault: undefined,
  };
  const ofWalks = walks.map((walk) => {
    const meter = walk.meterHours;
    if (meter === undefined) return undefined;
    changeUntil(meters, meter, dayOfWalk(walk));
    if (meters.before !== undefined && meter < meters.before) meters.fault ??= 'meter-back';
    meters.before = meter;
    return meter + meters.add;
  });
  // Meters that were changed since: work may be noted on them.
  for (const each of meters.left) if (each.day !== undefined) change(meters, each);
  const { stretches, fault } = meters;
  return {
    ofWalks,
    ofWork: (each) => hoursOfWork(each, stretches),
    isChanged: stretches.length > 1,
    ...(fault && { fault }),
  };
}

/** Work noted by its meter reading counts on the meter of its day, without a day on the latest one. */
function hoursOfWork({ meterHours, on }: WorkHours, stretches: readonly Stretch[]): number | undefined {
  if (meterHours === undefined) return undefined;
  const day = dayOfWork({ on });
  const add = stretches.filter((each) => isFrom(each, day, meterHours)).at(-1)?.add;
  return add === undefined ? undefined : meterHours + add;
}
