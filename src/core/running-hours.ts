import { dayOfWalk, dayOfWork, daysBetween } from './days.ts';
import { engineHours, type HoursFault, type WorkHours } from './engine-hours.ts';
import type { Walk, Work } from './walk.ts';

/** Hours that run on over changed meters; what a walk's are, and what those of work are. */
export interface RunningHours {
  /** `travel`: hours of travel, scaled so that they count like engine hours; `engine`: the hour meter's. */
  readonly clock: 'engine' | 'travel';
  /** Share of engine hours that the machine travels; only with the travel clock. */
  readonly travelShare?: number;
  /** In the order of the walks given; undefined where the walk has none. */
  readonly ofWalks: readonly (number | undefined)[];
  /** Of the meter reading noted with work; undefined where it has none. */
  readonly ofWork: (work: WorkHours) => number | undefined;
  /** False for work noted at hours that the machine had not run on that day, or had run before. */
  readonly fits: (work: WorkHours) => boolean;
  /** True when a change of meters is on record. */
  readonly isChanged: boolean;
  readonly fault?: HoursFault;
  /** The meter ran faster than the calendar. */
  readonly tooFast: boolean;
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

/** Notes of work are off by so much without harm: they are often written at the end of a day, or from memory. */
const slackHours = 24;

/** No work without a day is taken to be further ahead of the last walk than this: about two years of work. */
const farthestAhead = 3000;

/** Tells by the walks whether hours can be those of a day; without a day whether they are not far ahead. */
function fitsWalks(
  walks: readonly Walk[],
  hours: readonly (number | undefined)[],
): (at: number, day: number | undefined) => boolean {
  const known = walks.flatMap((walk, n) => {
    const ran = hours[n];
    return ran === undefined ? [] : [{ ran, day: dayOfWalk(walk) }];
  });
  const last = known.at(-1);
  const dated = known.flatMap(({ ran, day }) => (day === undefined ? [] : [{ ran, day }]));
  return (at, day) => {
    if (last === undefined) return true;
    if (day === undefined) return at <= last.ran + farthestAhead;
    return dated.every((walk) => {
      const sinceDays = day - walk.day;
      if (sinceDays < 0) return at <= walk.ran + slackHours;
      return at >= walk.ran - slackHours && at <= walk.ran + slackHours + 24 * sinceDays;
    });
  };
}

/**
 * The hours that wear is counted in. Undercarriages wear by travel, so travel hours are taken where every walk has
 * them, scaled by the machine's share of travel; else engine hours.
 */
export function runningHours(walks: readonly Walk[], work: readonly Work[]): RunningHours {
  const engine = engineHours(walks, work);
  const { ofWalks, ofWork, fault } = engine;
  const isUnknown = ofWalks.every((each) => each === undefined);
  const isFitting = fitsWalks(walks, ofWalks);
  const common = {
    ...((isUnknown || fault) && { fault: fault ?? ('no-hours' as const) }),
    fits: (each: WorkHours): boolean => {
      const at = ofWork(each);
      return at === undefined || isFitting(at, dayOfWork(each));
    },
    isChanged: engine.isChanged,
    tooFast: isTooFast(walks, ofWalks),
  };
  const pairs = fault === undefined && !engine.isChanged ? travelPairs(walks, ofWalks) : undefined;
  const last = pairs?.at(-1);
  if (!pairs || !last || last.engine <= 0 || last.travel <= 0) {
    return { clock: 'engine', ofWalks, ofWork, ...common };
  }
  const travelShare = last.travel / last.engine;
  return {
    clock: 'travel',
    travelShare,
    ofWalks: pairs.map(({ travel }) => travel / travelShare),
    ofWork: (each) => {
      const at = ofWork(each);
      return at === undefined ? undefined : travelAt(pairs, travelShare, at) / travelShare;
    },
    ...common,
  };
}
