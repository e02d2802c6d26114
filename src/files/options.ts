import type { OptionAnswer, OptionFigures } from '../core/option-answer.ts';
import type { CostBasis, OptionOpen } from '../core/option-cost.ts';
import type { Spread } from '../core/option-draws.ts';
import type { Fit } from '../core/option-fit.ts';
import type { MassDifference } from '../core/option-mass.ts';
import type { CurrentTrack } from '../core/option-match.ts';
import type { OptionFlip } from '../core/option-flips.ts';
import type { FigureName, SourcedFact } from '../core/option-tables.ts';
import type { Choice, Comparison, DefaultChoice, OptionsResult } from '../core/options.ts';
import type { Sourced } from '../core/life.ts';
import type { Source } from '../core/source.ts';

/** Life and money of one option; amounts in minor units of the currency. */
export interface FiguresOfOption {
  readonly currency: string;
  readonly lifeHours: Spread;
  readonly lifeFrom: OptionFigures['life']['from'];
  readonly minorPerHour: Spread;
  /** The middle of the cost per hour, by what it is for. */
  readonly minorPerHourFor: OptionFigures['perHour'];
  readonly minorAYear: number | null;
  readonly outlayMinor: number;
  readonly besides: CostBasis['besides'];
  readonly payBack: OptionFigures['payBack'];
  readonly sources: readonly Source[];
}

/** One option as plain JSON; without figures where something keeps its cost open. */
export interface OptionOfMachine extends Fit {
  readonly id: string;
  readonly name: string;
  readonly track: string;
  readonly fits: boolean;
  readonly figures: FiguresOfOption | null;
  readonly open: OptionOpen | null;
  readonly massDifferenceKg: MassDifference | null;
  readonly facts: readonly SourcedFact[];
}

/** Tracks for one machine, those that fit first and the cheapest per hour before the others. */
export interface OptionsOfMachine {
  readonly machine: string;
  readonly name: string;
  readonly current: CurrentTrack | null;
  readonly choice: Choice;
  readonly default: DefaultChoice | null;
  readonly ranked: readonly string[];
  readonly options: readonly OptionOfMachine[];
  readonly comparisons: readonly Comparison[];
  readonly flips: readonly OptionFlip[];
  readonly startingFrom: Readonly<Record<FigureName, Sourced>>;
}

// Engines differ in the last bits of an exponential; a hundredth is finer than anybody reads.
const hundredth = (value: number): number => Math.round(value * 100) / 100;

const onceEach = (sources: readonly Source[]): readonly Source[] => [
  ...new Map(sources.map((source) => [`${source.mark} ${source.text}`, source])).values(),
];

const rounded = ({ low, middle, high }: Spread): Spread => ({
  low: hundredth(low),
  middle: hundredth(middle),
  high: hundredth(high),
});

function figuresOf(figures: OptionFigures): FiguresOfOption {
  const { tracks, fitting, rest, parts, besides } = figures.perHour;
  const { payBack } = figures;
  return {
    currency: figures.currency,
    lifeHours: rounded(figures.lifeHours),
    lifeFrom: figures.life.from,
    minorPerHour: rounded(figures.costPerHour),
    minorPerHourFor: {
      tracks: hundredth(tracks),
      fitting: hundredth(fitting),
      rest: hundredth(rest),
      parts: hundredth(parts),
      besides: hundredth(besides),
    },
    minorAYear: figures.yearlyMinor === undefined ? null : Math.round(figures.yearlyMinor),
    outlayMinor: Math.round(figures.outlayMinor),
    besides: figures.cost.besides.map(({ part, minor }) => ({ part, minor: Math.round(minor) })),
    payBack: payBack.kind === 'after' ? { ...payBack, hours: hundredth(payBack.hours) } : payBack,
    sources: onceEach([...figures.life.sources, ...figures.cost.sources]),
  };
}

const optionOf = (answer: OptionAnswer): OptionOfMachine => ({
  id: answer.id,
  name: answer.option.name,
  track: answer.option.track,
  fits: answer.fit.against.length === 0,
  ...answer.fit,
  figures: answer.figures ? figuresOf(answer.figures) : null,
  open: answer.open ?? null,
  massDifferenceKg: answer.mass ?? null,
  facts: answer.facts,
});

/** The comparison of tracks as plain JSON. */
export const optionsOfMachine = (
  machine: string,
  name: string,
  current: CurrentTrack | undefined,
  result: OptionsResult,
): OptionsOfMachine => ({
  machine,
  name,
  current: current ?? null,
  choice: result.choice,
  default: result.default ?? null,
  ranked: result.ranked.map(({ id }) => id),
  options: [...result.ranked, ...result.others].map(optionOf),
  comparisons: result.comparisons.map((each) => ({ ...each, difference: rounded(each.difference) })),
  flips: result.flips.map((each) => ({
    ...each,
    now: hundredth(each.now),
    at: hundredth(each.at),
    farness: hundredth(each.farness),
  })),
  startingFrom: result.figures,
});
