import { eightOfTen } from './appraisal-interval.ts';
import type { HoursFault } from './engine-hours.ts';
import type { MachineHours, PartHours } from './hours-left.ts';
import { studentCdf, studentQuantile } from './special.ts';
import type { RatePrior } from './wear-filter.ts';

/** A part whose wear was held against the hours that it has run. */
export interface MeterPart {
  readonly part: PartHours;
  readonly percent: number;
  /** Hours since it was fitted, or since the machine was new where nobody knows. */
  readonly ranHours: number;
  readonly isFittedKnown: boolean;
  /** Hours in which eight of ten such parts wear so much. */
  readonly takes: { readonly low: number; readonly high: number };
}

/**
 * Whether the hours on the meter fit the wear. `low`: too few for so much wear; `high`: too many for so little;
 * `renewed`: too many as well, but nobody knows when the parts were fitted.
 */
export type MeterSays = 'plausible' | 'low' | 'high' | 'renewed' | 'open';

export interface MeterCheck {
  readonly says: MeterSays;
  /** Running hours of the machine. */
  readonly hours: number | undefined;
  readonly parts: readonly MeterPart[];
  /** Share of such machines whose wear is this far off or further; undefined where nothing was held against it. */
  readonly share: number | undefined;
  /** A change of meters is on record. */
  readonly isChanged: boolean;
  readonly fault: HoursFault | undefined;
  /** It ran faster than the calendar. */
  readonly isTooFast: boolean;
}

/** As many degrees of freedom as the rate of wear is believed with. */
const freedom = 3;

/** A machine as far off as one in twenty is questioned (common practice, no source). */
const questioned = 0.05;

/** Wear below this is as good as none, in percent. */
const leastWear = 0.5;

/** How much further a rate lies from the middle than usual rates do. */
const offBy = ({ centre, spread }: RatePrior, percent: number, hours: number): number =>
  (Math.log(Math.max(leastWear, percent) / hours) - centre) / spread;

interface Held extends MeterPart {
  /** The rate with the benefit of the doubt either way. */
  readonly slow: number;
  readonly fast: number;
}

function held(part: PartHours): readonly Held[] {
  const { points, events, prior } = part.history;
  const point = points.at(-1);
  if (!point || !prior || part.open.length > 0 || events.some(({ kind }) => kind === 'stepped')) return [];
  const fitted = events.find(({ kind }) => kind === 'fitted');
  const ranHours = point.hours - (fitted?.hours ?? 0);
  if (ranHours <= 0) return [];
  const off = eightOfTen * point.u;
  const within = studentQuantile(0.9, freedom) * prior.spread;
  const worn = Math.max(leastWear, point.percent);
  return [
    {
      part,
      percent: point.percent,
      ranHours,
      isFittedKnown: fitted !== undefined,
      takes: { low: worn / Math.exp(prior.centre + within), high: worn / Math.exp(prior.centre - within) },
      slow: offBy(prior, point.percent - off, ranHours),
      fast: offBy(prior, point.percent + off, ranHours),
    },
  ];
}

const mean = (values: readonly number[]): number =>
  values.reduce((sum, each) => sum + each, 0) / values.length;

/**
 * Holds the wear of all measured parts against the hours of the machine. Parts of one machine wear alike, so that
 * they speak together: their mean is judged like one part.
 */
export function meterCheck({ hours, now, parts }: MachineHours): MeterCheck {
  const all = parts.flatMap(held);
  const common = {
    hours: now,
    parts: all.map(({ slow: _slow, fast: _fast, ...part }) => part),
    isChanged: hours.isChanged,
    fault: hours.fault,
    isTooFast: hours.tooFast,
  };
  if (all.length === 0) return { says: 'open', share: undefined, ...common };
  const above = 1 - studentCdf(mean(all.map(({ slow }) => slow)), freedom);
  const below = studentCdf(mean(all.map(({ fast }) => fast)), freedom);
  if (above < questioned) return { says: 'low', share: above, ...common };
  if (below >= questioned) return { says: 'plausible', share: Math.min(above, below), ...common };
  const isKnown = all.every(({ isFittedKnown }) => isFittedKnown);
  return { says: isKnown ? 'high' : 'renewed', share: below, ...common };
}
