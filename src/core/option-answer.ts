import { costBasis, type CostBasis, type OptionOpen, type OptionPrices } from './option-cost.ts';
import {
  reckon,
  yearly,
  type CommonSpreads,
  type PerHour,
  type Priceable,
  type Reckoned,
  type Running,
} from './option-reckon.ts';
import { draws, eightOfTen, middleDraw, middleOwn, type Spread } from './option-draws.ts';
import { fitOf, type Fit } from './option-fit.ts';
import { massDifference, type MassDifference } from './option-mass.ts';
import type { CurrentTrack } from './option-match.ts';
import {
  lifeBasis,
  type LearntLife,
  type LifeBasis,
  type LifeCase,
  type OptionMachine,
} from './option-life.ts';
import type { Figures, OptionTables, SourcedFact } from './option-tables.ts';
import type { Option } from './option.ts';
import type { TrackKind } from './machine.ts';
import type { Use } from './use.ts';

/** An option with the id by which it is told from the others. */
export interface NamedOption {
  readonly id: string;
  readonly option: Option;
}

/** What is asked: which of these tracks for this machine and this work. */
export interface OptionsInput {
  readonly machine: OptionMachine;
  /** What is on it now; absent for a machine that has yet to get tracks. */
  readonly current: CurrentTrack | undefined;
  readonly options: readonly NamedOption[];
  readonly use: Use;
  /** Prices and rates for a kind of track on this machine. */
  readonly pricesFor: (track: TrackKind) => OptionPrices;
  readonly tables: OptionTables;
  /** How long tracks last on this machine by its own walks. */
  readonly learnt?: LearntLife | undefined;
}

/** Life and cost of an option; amounts in minor units of the currency, unrounded. */
export interface OptionFigures {
  readonly currency: string;
  readonly lifeHours: Spread;
  readonly costPerHour: Spread;
  /** The middle of the cost by what it is for. */
  readonly perHour: PerHour;
  readonly yearlyMinor: number | undefined;
  /** What has to be paid at once: tracks, fitting, and what a change of kind needs besides. */
  readonly outlayMinor: number;
  readonly life: LifeBasis;
  readonly cost: CostBasis;
  /** Hours after which it has earned back what it costs more at once than the cheapest to buy that fits. */
  readonly payBack:
    | { readonly kind: 'cheapest-to-buy' }
    | { readonly kind: 'after'; readonly hours: number; readonly than: string }
    | { readonly kind: 'never'; readonly than: string };
}

/** One option with all that is known of it. */
export interface OptionAnswer extends NamedOption {
  readonly fit: Fit;
  readonly figures: OptionFigures | undefined;
  /** Why it has no figures. */
  readonly open: OptionOpen | undefined;
  readonly mass: MassDifference | undefined;
  readonly facts: readonly SourcedFact[];
}

/** A question on its way to the answer. */
export interface Case {
  readonly input: OptionsInput;
  readonly figures: Figures;
  readonly running: Running;
  readonly spreads: CommonSpreads;
  /** Cost per hour of every option in each of the fixed cases. */
  readonly totals: Map<string, Float64Array>;
}

export const lifeCaseOf = ({ input: { machine, tables, learnt }, figures }: Case): LifeCase => ({
  machine,
  tables,
  figures,
  learnt,
});

const middleOf = (priceable: Priceable, { running, spreads }: Case): Reckoned =>
  reckon(priceable, running, spreads, middleDraw, middleOwn);

function spreadsOf(id: string, priceable: Priceable, { running, spreads, totals }: Case, middle: Reckoned) {
  const each = draws.map((draw) => reckon(priceable, running, spreads, draw, draw.own[0]));
  const [lowLife, highLife] = eightOfTen(Float64Array.from(each, ({ lifeHours }) => lifeHours));
  const total = Float64Array.from(each, (reckoned) => reckoned.total);
  totals.set(id, total);
  const [low, high] = eightOfTen(total);
  return {
    lifeHours: { low: lowLife, middle: middle.lifeHours, high: highLife },
    costPerHour: { low, middle: middle.total, high },
  };
}

function figuresOf(of: Case, { id, option }: NamedOption, fit: Fit): Pick<OptionAnswer, 'figures' | 'open'> {
  const { machine, use, tables, pricesFor } = of.input;
  const costCase = {
    machine,
    prices: pricesFor(option.track),
    life: tables.life,
    figures: of.figures,
    needs: fit.needs,
  };
  const cost = costBasis(costCase, option);
  if (!cost.ok) return { figures: undefined, open: cost.error };
  const life = lifeBasis(lifeCaseOf(of), option, use);
  const priceable = { life, cost: cost.value };
  const middle = middleOf(priceable, of);
  const { currency, tracksMinor, fittingMinor, besidesMinor } = cost.value;
  const figures: OptionFigures = {
    currency,
    ...spreadsOf(id, priceable, of, middle),
    perHour: middle.perHour,
    yearlyMinor: yearly(priceable, middle, of.running),
    outlayMinor: tracksMinor + fittingMinor + besidesMinor,
    life,
    cost: cost.value,
    payBack: { kind: 'cheapest-to-buy' },
  };
  return { figures, open: undefined };
}

/** All that is known of one option. */
export function answerOf(of: Case, { id, option }: NamedOption): OptionAnswer {
  const { machine, current, use, tables } = of.input;
  const fit = fitOf(machine, current, option, use, tables, of.figures);
  const mass = massDifference(machine, current, option, of.figures);
  return {
    id,
    option,
    fit,
    ...figuresOf(of, { id, option }, fit),
    mass,
    facts: tables.facts[option.track],
  };
}
