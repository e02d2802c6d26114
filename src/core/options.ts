import {
  answerOf,
  lifeCaseOf,
  type Case,
  type OptionAnswer,
  type OptionFigures,
  type OptionsInput,
} from './option-answer.ts';
import { commonSpreads, type Priceable } from './option-reckon.ts';
import { eightOfTen, swapped, type Spread } from './option-draws.ts';
import { optionFlips, type OptionFlip } from './option-flips.ts';
import { isRubberTrack, lifeBasis, rockShare, withRock } from './option-life.ts';
import { figuresFor, type Figures } from './option-tables.ts';
import type { TrackKind } from './machine.ts';
import { assert } from './result.ts';
import { compareBytewise } from './stamp.ts';
import type { Use } from './use.ts';

/** How the first of two options compares with the second in cost per hour. */
export interface Comparison {
  readonly first: string;
  readonly second: string;
  /** Minor units an hour that the first costs more; below 0 it is the cheaper. */
  readonly difference: Spread;
  readonly tooClose: boolean;
}

/** Which tracks to put on. */
export type Choice =
  | { readonly kind: 'none-fits' | 'no-figures' }
  | { readonly kind: 'only'; readonly id: string }
  | { readonly kind: 'first'; readonly id: string; readonly runnerUp: string }
  /** The first of the ranking and those that it cannot be told from. */
  | { readonly kind: 'too-close'; readonly ids: readonly string[] }
  /** Nothing is known of the work or the prices. */
  | { readonly kind: 'default' };

/** What is commonly chosen where nothing speaks against it. */
export interface DefaultChoice {
  readonly track: TrackKind;
  readonly why: 'usual-on-compact';
  readonly ids: readonly string[];
}

export interface OptionsResult {
  /** Options that fit and have figures, the cheapest per hour first. */
  readonly ranked: readonly OptionAnswer[];
  /** Options that do not fit, or have no figures. */
  readonly others: readonly OptionAnswer[];
  readonly choice: Choice;
  /** How the first compares with each other one of the ranking. */
  readonly comparisons: readonly Comparison[];
  /** What would put the first two the other way round; the input that decides stands first. */
  readonly flips: readonly OptionFlip[];
  readonly default: DefaultChoice | undefined;
  readonly figures: Figures;
}

type WithFigures = OptionAnswer & { readonly figures: OptionFigures };

const hasFigures = (answer: OptionAnswer): answer is WithFigures => answer.figures !== undefined;

/** Cheapest per hour first; of equals the one to be paid less for at once, then by id, so that the order is one. */
const compareCost = (a: WithFigures, b: WithFigures): number =>
  a.figures.costPerHour.middle - b.figures.costPerHour.middle ||
  a.figures.outlayMinor - b.figures.outlayMinor ||
  compareBytewise(a.id, b.id);

function withPayBack(ranked: readonly WithFigures[]): readonly WithFigures[] {
  const [cheapest] = [...ranked].sort(
    (a, b) => a.figures.outlayMinor - b.figures.outlayMinor || compareCost(a, b),
  );
  if (!cheapest) return [];
  const than = cheapest.id;
  // What is put in besides counts as laid out at once, and not by the hour again.
  const hourly = ({ figures }: WithFigures): number => figures.costPerHour.middle - figures.perHour.besides;
  return ranked.map((each) => {
    const more = each.figures.outlayMinor - cheapest.figures.outlayMinor;
    if (each === cheapest || more <= 0) return each;
    const saved = hourly(cheapest) - hourly(each);
    const payBack =
      saved > 0
        ? ({ kind: 'after', hours: more / saved, than } as const)
        : ({ kind: 'never', than } as const);
    return { ...each, figures: { ...each.figures, payBack } };
  });
}

/** How two options compare, what is not known drawn together for both: the cases come in pairs that change places. */
function compared(of: Case, first: WithFigures, second: WithFigures): Comparison {
  const [mine, theirs] = [of.totals.get(first.id), of.totals.get(second.id)];
  assert(mine && theirs, 'options with figures were drawn');
  const [low, high] = eightOfTen(mine.map((each, at) => each - (theirs[swapped(at)] ?? 0)));
  const middle = first.figures.costPerHour.middle - second.figures.costPerHour.middle;
  return {
    first: first.id,
    second: second.id,
    difference: { low, middle, high },
    tooClose: low <= 0 && high >= 0,
  };
}

/** The other way round for the first two, if anything does it. */
function flipsOf(of: Case, [first, second]: readonly WithFigures[]): readonly OptionFlip[] {
  if (!first || !second) return [];
  const { running, spreads } = of;
  const { use } = of.input;
  const at = (changed: Use): readonly [Priceable, Priceable] => {
    const priceable = ({ option, figures: { cost } }: WithFigures): Priceable => ({
      cost,
      life: lifeBasis(lifeCaseOf(of), option, changed),
    });
    return [priceable(first), priceable(second)];
  };
  return optionFlips({
    first: { id: first.id, ...first.figures },
    second: { id: second.id, ...second.figures },
    running,
    spreads,
    rockShare: rockShare(use.ground),
    rubberYears: of.figures.rubberYears.value,
    atRockShare: (percent) => at({ ...use, ground: withRock(use.ground, percent) }),
  });
}

const isGroundKnown = ({ ground }: Use): boolean => Object.values(ground ?? {}).some((share) => share > 0);

/** True while neither the work nor any price or life is known: whatever came out would be made of starting values. */
const nothingKnown = ({ use, options, learnt }: OptionsInput): boolean =>
  !isGroundKnown(use) &&
  use.sharp !== true &&
  learnt === undefined &&
  use.noMarks !== true &&
  options.every(({ option }) => option.price === undefined && option.life === undefined);

function defaultOf({ input, figures }: Case, fitting: readonly OptionAnswer[]): DefaultChoice | undefined {
  const { machine, current } = input;
  if (current && !isRubberTrack(current.track)) return undefined;
  const isCompact =
    machine.massKg === undefined ? current !== undefined : machine.massKg <= figures.usualRubberMostKg.value;
  const ids = fitting.filter(({ option }) => isRubberTrack(option.track)).map(({ id }) => id);
  if (!isCompact || machine.kind === 'dozer') return undefined;
  if (ids.length === 0 && input.options.length > 0) return undefined;
  return {
    track: current?.track === 'rubber-coreless' ? 'rubber-coreless' : 'rubber-cored',
    why: 'usual-on-compact',
    ids,
  };
}

function choiceOf(ranked: readonly WithFigures[], comparisons: readonly Comparison[], fits: boolean): Choice {
  const [first, second] = ranked;
  if (!first) return { kind: fits ? 'no-figures' : 'none-fits' };
  if (!second) return { kind: 'only', id: first.id };
  const close = comparisons.filter(({ tooClose }) => tooClose).map((each) => each.second);
  return close.length > 0
    ? { kind: 'too-close', ids: [first.id, ...close] }
    : { kind: 'first', id: first.id, runnerUp: second.id };
}

/** Which tracks to put on: what fits, what it costs, how sure that is, and what is commonly chosen beside it. */
export function optionsFor(input: OptionsInput): OptionsResult {
  const figures = figuresFor(input.tables, input.machine.kind, input.use.own);
  const running = {
    hoursAYear: input.use.hoursAYear ?? figures.hoursAYear.value,
    horizonYears: figures.horizonYears.value,
    rate: figures.ratePercent.value / 100,
  };
  const of: Case = { input, figures, running, spreads: commonSpreads(figures), totals: new Map() };
  const answers = [...input.options]
    .sort((a, b) => compareBytewise(a.id, b.id))
    .map((each) => answerOf(of, each));
  const fitting = answers.filter(({ fit }) => fit.against.length === 0);
  const ranked = withPayBack(fitting.filter(hasFigures).sort(compareCost));
  const [first, ...rest] = ranked;
  const comparisons = first ? rest.map((each) => compared(of, first, each)) : [];
  const usual = defaultOf(of, fitting);
  const ids = new Set(ranked.map(({ id }) => id));
  const isDefault = usual !== undefined && nothingKnown(input);
  return {
    ranked,
    others: answers.filter(({ id }) => !ids.has(id)),
    choice: isDefault
      ? { kind: 'default' }
      : choiceOf(ranked, comparisons, fitting.length > 0 || answers.length === 0),
    comparisons,
    flips: flipsOf(of, ranked),
    default: usual,
    figures,
  };
}
