import { isRubberTrack } from '../core/option-life.ts';
import type { OptionFlip } from '../core/option-flips.ts';
import type { OptionAnswer, OptionFigures } from '../core/option-answer.ts';
import type { Choice, OptionsResult } from '../core/options.ts';
import { aboutHours, aboutMoney } from './ahead-text.ts';
import { trackKindWords } from './en/choices.ts';
import { optionAnswer as words } from './en/options.ts';
import type { Formatter } from './format.ts';
import { capital } from './outcome-text.ts';

/** Which tracks to put on, in sentences. */
export interface AnswerText {
  /** The one sentence that answers. */
  readonly answer: string;
  /** Why, how sure that is, and the runner-up. */
  readonly why: readonly string[];
  /** What would decide what is too close to call. */
  readonly decides: readonly string[];
  /** What would put the first two the other way round, the likeliest first. */
  readonly flips: readonly string[];
  /** The usual choice, labelled as such, where it is not itself the answer. */
  readonly usual: readonly string[];
}

export interface AnswerOf {
  readonly result: OptionsResult;
  readonly nameOf: (id: string) => string;
  /** True where the ground is given. */
  readonly groundKnown: boolean;
  readonly format: Formatter;
}

type Figured = OptionAnswer & { readonly figures: OptionFigures };

const figured = ({ result }: AnswerOf, id: string): Figured | undefined =>
  result.ranked.find((each): each is Figured => each.id === id && each.figures !== undefined);

/** Money an hour, of which cents count. */
const hourly = (minor: number, currency: string, format: Formatter): string =>
  format.money(Math.round(Math.abs(minor)), currency);

const costOf = ({ figures }: Figured, { format }: AnswerOf): string =>
  hourly(figures.costPerHour.middle, figures.currency, format);

function againstOther(first: Figured, other: Figured, { format, nameOf }: AnswerOf): string {
  const more = first.figures.outlayMinor - other.figures.outlayMinor;
  const about = aboutMoney(Math.abs(more), first.figures.currency, format);
  // Less than one whole unit is no difference at all.
  const same = Math.abs(more) < 100;
  const [name, than] = [capital(nameOf(first.id)), nameOf(other.id)];
  const outlay = same
    ? words.sameAtOnce(name, than)
    : (more > 0 ? words.moreAtOnce : words.lessAtOnce)(name, about, than);
  const [mine, theirs] = [first, other].map(({ figures }) => aboutHours(figures.lifeHours.middle, format));
  const lasts = mine === theirs ? words.lastsAsLong(mine ?? '') : words.lasts(mine ?? '', theirs ?? '');
  return words.whyBoth(outlay, lasts);
}

function firstText(of: AnswerOf, first: Figured, runnerUp: Figured | undefined): AnswerText {
  const { result, nameOf, format } = of;
  const name = capital(nameOf(first.id));
  if (!runnerUp) return onlyText(of, first);
  const compared = result.comparisons.find(({ second }) => second === runnerUp.id);
  const { currency } = first.figures;
  return said(words.first(name, costOf(first, of)), [
    words.runnerUp(nameOf(runnerUp.id), costOf(runnerUp, of)),
    againstOther(first, runnerUp, of),
    ...(compared
      ? [
          words.sure(
            nameOf(first.id),
            nameOf(runnerUp.id),
            hourly(compared.difference.high, currency, format),
            hourly(compared.difference.low, currency, format),
          ),
        ]
      : []),
    ...otherKind(of, first, runnerUp),
  ]);
}

/** Rubber or steel is what most ask: where first and runner-up are of one kind, the best of the other is named too. */
function otherKind(of: AnswerOf, first: Figured, runnerUp: Figured): readonly string[] {
  const isRubber = (each: OptionAnswer): boolean => isRubberTrack(each.option.track);
  if (isRubber(first) !== isRubber(runnerUp)) return [];
  const other = of.result.ranked.find((each) => isRubber(each) !== isRubber(first));
  const found = other && figured(of, other.id);
  return found ? [words.otherKind(of.nameOf(found.id), costOf(found, of))] : [];
}

/** Of others that would fit it is open what they cost: that they are no choice must not look like an answer. */
function onlyText(of: AnswerOf, first: Figured): AnswerText {
  const open = of.result.others.filter(({ fit, figures }) => fit.against.length === 0 && !figures);
  const [name, cost] = [capital(of.nameOf(first.id)), costOf(first, of)];
  if (open.length === 0) return said(words.only(name, cost));
  return said(words.onlyPriced(name, cost, words.and(open.map(({ id }) => of.nameOf(id)))));
}

const said = (answer: string, why: readonly string[] = []): AnswerText => ({
  answer,
  why,
  decides: [],
  flips: [],
  usual: [],
});

/** What is not known and could tell apart what cannot be told apart now. */
function decidesText(of: AnswerOf, close: readonly Figured[]): readonly string[] {
  const named = (all: readonly Figured[]): string => words.and(all.map(({ id }) => of.nameOf(id)));
  const prices = close.filter(({ figures }) => figures.cost.priceSpread > 0);
  const lives = close.filter(({ figures }) => figures.life.from === 'starting');
  return [
    ...(of.groundKnown ? [] : [words.decidesGround]),
    ...(prices.length > 0 ? [words.decidesPrices(named(prices))] : []),
    ...(lives.length > 0 ? [words.decidesLives(named(lives))] : []),
  ];
}

function closeText(of: AnswerOf, ids: readonly string[]): AnswerText {
  const { result, nameOf, format } = of;
  const close = ids.flatMap((id) => figured(of, id) ?? []);
  const [first, second] = close;
  const names = words.and(close.map(({ id }) => nameOf(id)));
  const compared = result.comparisons.find((each) => each.second === second?.id);
  if (!first || !second || !compared) return said(words.tooClose(names));
  const { currency } = first.figures;
  const { low, middle, high } = compared.difference;
  return {
    ...said(words.tooClose(names), [
      words.closeAtMiddle(nameOf(first.id), hourly(middle, currency, format)),
      words.close(
        nameOf(first.id),
        nameOf(second.id),
        hourly(low, currency, format),
        hourly(high, currency, format),
      ),
      againstOther(first, second, of),
    ]),
    decides: decidesText(of, close),
  };
}

function choiceText(of: AnswerOf, choice: Choice): AnswerText {
  const { result } = of;
  switch (choice.kind) {
    case 'none-fits':
      return said(words.noneFits);
    case 'no-figures':
      return said(result.others.length === 0 ? words.none : words.noFigures);
    case 'default':
      return defaultText(result);
    case 'too-close':
      return closeText(of, choice.ids);
    case 'only':
    case 'first': {
      const first = figured(of, choice.id);
      const runnerUp = choice.kind === 'first' ? figured(of, choice.runnerUp) : undefined;
      return first ? firstText(of, first, runnerUp) : said(words.noFigures);
    }
  }
}

/** So many of them are enough to see what it hangs on. */
const mostFlips = 4;

function flipText({ input, option = '', now, at }: OptionFlip, of: AnswerOf): string {
  const { format, nameOf } = of;
  switch (input) {
    case 'life':
      return words.flipLife(nameOf(option), aboutHours(at, format), aboutHours(now, format));
    case 'price': {
      const currency = figured(of, option)?.figures.currency ?? '';
      const [would, is] = [aboutMoney(at, currency, format), aboutMoney(now, currency, format)];
      return words.flipPrice(nameOf(option), would, is);
    }
    case 'hours-a-year':
      return words.flipHours(aboutHours(at, format), aboutHours(now, format));
    case 'rock-share':
      return words.flipRock(format.percent(at), format.percent(now));
  }
}

function flipsText(of: AnswerOf): readonly string[] {
  const { choice, flips } = of.result;
  if (choice.kind !== 'first' && choice.kind !== 'too-close') return [];
  if (flips.length === 0) return choice.kind === 'first' ? [words.noFlip] : [];
  return flips.slice(0, mostFlips).map((flip) => flipText(flip, of));
}

const trackName = ({ default: usual }: OptionsResult): string =>
  usual ? trackKindWords[usual.track].label : '';

const defaultText = (result: OptionsResult): AnswerText =>
  said(words.default(trackName(result)), [words.defaultNothing, words.usualOnCompact]);

/** The answer in sentences, the usual choice beside it. */
export function answerText(of: AnswerOf): AnswerText {
  const { choice, default: usual } = of.result;
  const text = { ...choiceText(of, choice), flips: flipsText(of) };
  if (!usual || choice.kind === 'default') return text;
  return { ...text, usual: [words.defaultBeside(trackName(of.result)), words.usualOnCompact] };
}
