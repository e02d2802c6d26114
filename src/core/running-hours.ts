import type { Walk, Work } from './walk.ts';

/** What does not fit about the hours of a machine, or keeps them from being known. */
export type HoursFault = 'no-hours' | 'meter-back' | 'old-meter-unknown';

/** Hours that run on over changed meters; what a walk's are, and what those of work are. */
export interface RunningHours {
  /** `travel`: hours of travel, scaled so that they count like engine hours; `engine`: the hour meter's. */
  readonly clock: 'engine' | 'travel';
  /** Share of engine hours that the machine travels; only with the travel clock. */
  readonly travelShare?: number;
  /** In the order of the walks given; undefined where the walk has none. */
  readonly ofWalks: readonly (number | undefined)[];
  readonly ofWork: (work: Work) => number | undefined;
  readonly fault?: HoursFault;
  /** The meter ran faster than the calendar. */
  readonly tooFast: boolean;
}

const dayOf = (walk: Walk): string => walk.startedAt?.utc.slice(0, 10) ?? '';

interface Change {
  readonly on: string;
  readonly oldHours: number | undefined;
  readonly newHours: number;
}

const changesOf = (work: readonly Work[]): readonly Change[] =>
  work
    .filter(({ kind }) => kind === 'meter-changed')
    .map((each) => ({ on: each.on ?? '', oldHours: each.oldMeterHours, newHours: each.meterHours ?? 0 }))
    .sort((a, b) => (a.on < b.on ? -1 : 1));

/** A stretch of hours on one meter: what to add to it, and from which day it counts. */
interface Stretch {
  readonly from: string;
  readonly add: number;
}

interface Engine {
  readonly hours: readonly (number | undefined)[];
  readonly stretches: readonly Stretch[];
  readonly fault?: HoursFault;
}

/**
 * Engine hours of walks, given in the order of time. A meter that stands lower than at the walk before is a fault
 * unless a change of meters with the old one's last reading is on record between them.
 */
function engineHours(walks: readonly Walk[], work: readonly Work[]): Engine {
  const left = [...changesOf(work)];
  const stretches: Stretch[] = [{ from: '', add: 0 }];
  const hours: (number | undefined)[] = [];
  let add = 0;
  let before = 0;
  let fault: HoursFault | undefined;
  for (const walk of walks) {
    const meter = walk.meterHours;
    if (meter === undefined) {
      hours.push(undefined);
      continue;
    }
    const isDue = ({ on }: Change): boolean => (on === '' ? meter < before : on <= dayOf(walk));
    while (left[0] !== undefined && isDue(left[0])) {
      const [change] = left.splice(0, 1);
      if (change === undefined) break;
      if (change.oldHours === undefined || change.oldHours < before) fault ??= 'old-meter-unknown';
      add += (change.oldHours ?? before) - change.newHours;
      before = change.newHours;
      stretches.push({ from: change.on, add });
    }
    if (meter < before) fault ??= 'meter-back';
    before = meter;
    hours.push(meter + add);
  }
  return { hours, stretches, ...(fault && { fault }) };
}

/** Work noted by its meter reading counts on the meter of its day, without a day on the latest one. */
function hoursOfWork({ meterHours, on }: Work, stretches: readonly Stretch[]): number | undefined {
  if (meterHours === undefined) return undefined;
  const mine = on === undefined ? stretches : stretches.filter(({ from }) => from <= on);
  return meterHours + (mine.at(-1)?.add ?? 0);
}

const isoDate = /^(\d{4})-(\d{2})-(\d{2})/;

/** Days of the Gregorian calendar since some day long ago (days_from_civil, H. Hinnant, 2013). */
function dayNumber(day: string): number | undefined {
  const [, years, months, days] = (isoDate.exec(day) ?? []).map(Number);
  if (years === undefined || months === undefined || days === undefined) return undefined;
  const year = months <= 2 ? years - 1 : years;
  const month = months <= 2 ? months + 9 : months - 3;
  const leaps = Math.floor(year / 4) - Math.floor(year / 100) + Math.floor(year / 400);
  return 365 * year + leaps + Math.floor((153 * month + 2) / 5) + days;
}

/** Whole days from one walk to another; undefined where either has no date. */
export function daysBetween(a: Walk, b: Walk): number | undefined {
  const [from, to] = [dayNumber(dayOf(a)), dayNumber(dayOf(b))];
  return from === undefined || to === undefined ? undefined : to - from;
}

function isTooFast(walks: readonly Walk[], hours: readonly (number | undefined)[]): boolean {
  return walks.some((walk, at) => {
    const [now, before, last] = [hours[at], hours[at - 1], walks[at - 1]];
    if (now === undefined || before === undefined || last === undefined) return false;
    const days = daysBetween(last, walk);
    return days !== undefined && now - before > 24 * (days + 1);
  });
}

interface Pair {
  readonly engine: number;
  readonly travel: number;
}

/** Engine and travel hours of all walks; undefined unless every walk has both, and both grow. */
function travelPairs(
  walks: readonly Walk[],
  hours: readonly (number | undefined)[],
): readonly Pair[] | undefined {
  const pairs = walks.flatMap(({ travelHours }, at): readonly Pair[] => {
    const engine = hours[at];
    return engine === undefined || travelHours === undefined ? [] : [{ engine, travel: travelHours }];
  });
  const grow = pairs.every(({ engine, travel }, at) => {
    const before = pairs[at - 1] ?? { engine: 0, travel: -1 };
    return engine >= before.engine && travel > before.travel;
  });
  return pairs.length === walks.length && pairs.length > 0 && grow ? pairs : undefined;
}

/** Travel hours at an engine hour: straight between the walks, before and beyond them at the usual share. */
function travelAt(pairs: readonly Pair[], share: number, engine: number): number {
  const after = pairs.findIndex((each) => each.engine >= engine);
  const a = pairs[after === -1 ? pairs.length - 1 : after - 1] ?? { engine: 0, travel: 0 };
  const b = pairs[after];
  const slope =
    b === undefined || b.engine === a.engine ? share : (b.travel - a.travel) / (b.engine - a.engine);
  return a.travel + slope * (engine - a.engine);
}

/**
 * The hours that wear is counted in. Undercarriages wear by travel, so travel hours are taken where every walk has
 * them, scaled by the machine's share of travel; else engine hours.
 */
export function runningHours(walks: readonly Walk[], work: readonly Work[]): RunningHours {
  const { hours, stretches, fault } = engineHours(walks, work);
  const isUnknown = hours.every((each) => each === undefined);
  const common = {
    ...((isUnknown || fault) && { fault: fault ?? ('no-hours' as const) }),
    tooFast: isTooFast(walks, hours),
  };
  const pairs = fault === undefined && stretches.length === 1 ? travelPairs(walks, hours) : undefined;
  const last = pairs?.at(-1);
  if (!pairs || !last || last.engine <= 0 || last.travel <= 0) {
    return { clock: 'engine', ofWalks: hours, ofWork: (each) => hoursOfWork(each, stretches), ...common };
  }
  const travelShare = last.travel / last.engine;
  return {
    clock: 'travel',
    travelShare,
    ofWalks: pairs.map(({ travel }) => travel / travelShare),
    ofWork: (each) => {
      const engine = hoursOfWork(each, stretches);
      return engine === undefined ? undefined : travelAt(pairs, travelShare, engine) / travelShare;
    },
    ...common,
  };
}
