import type { Job } from '../core/jobs.ts';
import type { PartFact } from '../core/part-facts.ts';
import { factAsk } from '../core/part-kinds.ts';
import type { OrderLine } from '../core/parts-to-order.ts';
import { leftText } from './ahead-text.ts';
import { jobWords } from './en/ahead.ts';
import { callWords } from './en/calls.ts';
import { sideNames } from './en/items.ts';
import { doubtWords, factWords, fromWords, howWords, ordering as words, partNames } from './en/ordering.ts';
import { entry } from './entry.ts';
import type { Formatter } from './format.ts';
import { capital, stateText } from './outcome-text.ts';

/** The part with its place: `Bottom roller, left 1, 3`. */
export function partText({ kind, side, numbers }: Pick<OrderLine, 'kind' | 'side' | 'numbers'>): string {
  const name = capital(partNames[kind]);
  if (side === 'whole') return name;
  return numbers.length === 0
    ? words.side(name, sideNames[side])
    : words.sideNumbers(name, sideNames[side], numbers.join(', '));
}

/** How many, or that somebody has to count. */
export const countText = ({ count }: Pick<OrderLine, 'count'>, { number }: Formatter): string =>
  count === undefined ? words.toCount : number(count);

/** Why a job takes the part: what was found, and what wears out. */
function whyJob(job: Job, format: Formatter): string {
  const found = job.outcomes.map(({ state, atLeast }) =>
    words.found(callWords[atLeast].word, format.item(state.item.id), stateText(state, format)),
  );
  const worn = job.worn.flatMap(({ history, left }) =>
    left ? [words.wears(format.item(history.item.id), leftText(left, format))] : [],
  );
  return words.because(jobWords[job.kind], [...new Set([...found, ...worn])].join('; '));
}

export const whyTexts = ({ jobs }: Pick<OrderLine, 'jobs'>, format: Formatter): readonly string[] =>
  jobs.map((job) => whyJob(job, format));

/** A length as parts desks say it, in mm, with what a reader of inches sees beside it. */
function lengthText(valueMm: number, format: Formatter, isInches: boolean): string {
  const mm = format.inUnit(valueMm, 'mm');
  return isInches ? words.alsoIn(mm, format.inUnit(valueMm, 'in')) : mm;
}

/** The value of a fact in words; undefined when it is missing. */
export function factText(fact: PartFact, format: Formatter, isInches: boolean): string | undefined {
  const { name, value, uMm, spaces, again } = fact;
  const { kind } = factAsk(name);
  if (value === undefined) return undefined;
  if (kind === 'choice') return entry<string>(factWords[name].choices ?? {}, String(value)) ?? String(value);
  if (typeof value === 'string') return value;
  if (kind === 'count' || kind === 'twice')
    return again === undefined ? format.number(value) : words.countedTwice(value, again);
  const size = lengthText(value, format, isInches);
  const within = uMm === undefined ? size : words.giveOrTake(size, format.inUnit(2 * uMm, 'mm', 0.01));
  return spaces === undefined ? within : words.overSpaces(within, spaces);
}

/** How a fact is known and where from: `measured on this walk`. */
export const howText = ({ how, from }: PartFact): string =>
  [howWords[how], from === undefined ? '' : fromWords[from]].filter(Boolean).join(' ');

export const doubtTexts = ({ doubts }: PartFact): readonly string[] =>
  doubts.map((doubt) => doubtWords[doubt]);
