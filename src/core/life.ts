import type { MachineKind, TrackKind } from './machine.ts';
import type { Source } from './source.ts';
import type { Walk } from './walk.ts';
import type { RatePrior } from './wear-filter.ts';

export type Ground = NonNullable<Walk['ground']>;
export type Turning = NonNullable<Walk['turning']>;

/** A figure with where it is from. */
export interface Sourced {
  readonly value: number;
  readonly source: Source;
}

/** How long parts last from new to their limit, as a range of engine hours that about eight of ten fall into. */
export interface LifeFigure {
  readonly id: string;
  readonly items: readonly string[];
  readonly kinds?: readonly MachineKind[];
  readonly tracks?: readonly TrackKind[];
  readonly grounds?: readonly Ground[];
  readonly lowHours: number;
  readonly highHours: number;
  readonly source: Source;
}

/** What the forecast takes from books, and what it has to assume. */
export interface LifeTables {
  /** The first that fits counts: the narrower ones stand before the wider. */
  readonly figures: readonly LifeFigure[];
  /** Life with this much turning, as a share of the figure's. */
  readonly turning: Readonly<Record<Turning, Sourced>>;
  /** Variance of wear for each percent it is expected to grow, in percent. */
  readonly kappa: Sourced;
  /** Standard error of placing the tool, in percent of wear. */
  readonly readingError: Sourced;
  /** How far a part counted as new may be off, in percent of wear. */
  readonly newError: Sourced;
  /** Rubber tracks ended by cuts and broken cores, a year of 1,000 hours, by ground. */
  readonly damage: Readonly<Record<Ground | 'unknown', Sourced>>;
  /** Mean hours until a fault that was found stops the machine, by the call it gave. */
  readonly faultHours: Readonly<Record<'adjust' | 'repair' | 'replace', Sourced>>;
  /** Life of turned pins and bushings, and of built-up grousers, as shares of a new one's. */
  readonly turnedShare: Sourced;
  readonly builtUpShare: Sourced;
  /** Life of a new track or chain on a worn sprocket as a share of that on a new one. */
  readonly wornSprocketShare: Sourced;
  /** Years after which rubber is old whatever its wear. */
  readonly rubberYears: Sourced;
}

export interface LifeCase {
  readonly item: string;
  readonly kind: MachineKind;
  readonly track: TrackKind;
  readonly ground?: Ground | undefined;
  readonly turning?: Turning | undefined;
}

const has = <T>(list: readonly T[] | undefined, value: T | undefined): boolean =>
  list === undefined || (value !== undefined && list.includes(value));

/** The figure for a part of this machine on this ground; undefined when the tables have none. */
export const lifeFigureFor = (
  { figures }: Pick<LifeTables, 'figures'>,
  of: LifeCase,
): LifeFigure | undefined =>
  figures.find(
    (each) =>
      each.items.includes(of.item) &&
      has(each.kinds, of.kind) &&
      has(each.tracks, of.track) &&
      has(each.grounds, of.ground),
  );

// The 90 % point of Student t with three degrees of freedom, so that the range holds eight of ten.
const ninetyPercent = 1.6377443536962102;

/** The prior of the rate of wear, in percent per engine hour, that a figure stands for at this much turning. */
export function priorOf({ lowHours, highHours }: LifeFigure, factor = 1): RatePrior {
  const middle = Math.sqrt(lowHours * highHours) * factor;
  return { centre: Math.log(100 / middle), spread: Math.log(highHours / lowHours) / 2 / ninetyPercent };
}
