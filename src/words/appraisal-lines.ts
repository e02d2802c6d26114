import type { Appraisal } from '../core/appraisal.ts';
import type { SpendLine } from '../core/appraisal-spend.ts';
import { percentWanted } from '../core/appraisal-settings.ts';
import type { ValueLine } from '../core/appraisal-value.ts';
import type { Work, WorkLine } from '../core/appraisal-work.ts';
import { callRank } from '../core/calls.ts';
import type { JobKind } from '../core/job-kinds.ts';
import type { Side } from '../core/machine.ts';
import type { Outlook } from '../core/outlook.ts';
import type { ItemOutcome } from '../core/score.ts';
import type { Source } from '../core/source.ts';
import { aboutHours, jobText, whyOpen } from './ahead-text.ts';
import { jobWords } from './en/ahead.ts';
import { appraisal as words, partWords } from './en/appraisal.ts';
import { callWords } from './en/calls.ts';
import { sideNames } from './en/items.ts';
import type { Formatter } from './format.ts';
import { capital, outcomePlace } from './outcome-text.ts';

/** A line of a sum: what it is, what it comes to, why, and where its figures are from. */
export interface TextLine {
  readonly id: string;
  readonly title: string;
  readonly amount: string;
  readonly because: readonly string[];
  readonly sources: readonly Source[];
}

export interface AppraisalTextInput {
  readonly appraisal: Appraisal;
  readonly rubber: Outlook['rubber'];
  readonly format: Formatter;
}

export interface Telling extends AppraisalTextInput {
  readonly money: (minor: number) => string;
  readonly about: (minor: number) => string;
  /** Without cents, which no estimate has. */
  readonly whole: (minor: number) => string;
  readonly left: (percent: number) => string;
}

export const nameOf = (kind: JobKind): string => partWords[kind] ?? jobWords[kind];

const callLine = (outcome: ItemOutcome, { format }: Telling): string =>
  capital(
    words.called(format.item(outcome.state.item.id), outcomePlace(outcome), callWords[outcome.atLeast].word),
  );

const leftNow = ({ state }: ItemOutcome, { left }: Telling): string => left(100 - (state.wear?.percent ?? 0));

type ShortText = (outcome: ItemOutcome) => string;

/** Less left than what is wanted of every part. */
const lessThan =
  (wanted: (item: string) => number, of: Telling): ShortText =>
  (outcome) =>
    capital(
      words.shortOf(
        of.format.item(outcome.state.item.id),
        outcomePlace(outcome),
        leftNow(outcome, of),
        of.left(wanted(outcome.state.item.id)),
      ),
    );

function isClose({ state }: ItemOutcome, wanted: number): boolean {
  const { wear } = state;
  return wear !== undefined && Math.abs(100 - wear.percent - wanted) <= 1.2816 * wear.u;
}

function workLine(line: WorkLine, shortText: ShortText, wanted: number, of: Telling): TextLine {
  const { job, because, short, isRow, isInstead, cost, minor } = line;
  const asked = because.filter(
    (each) => !short.includes(each) && callRank(each.atLeast) >= callRank('adjust'),
  );
  const called = short.filter((each) => callRank(each.atLeast) >= callRank('adjust'));
  return {
    id: job.id,
    title: capital(jobText({ job })),
    amount: minor === undefined ? words.noPriceYet : of.money(minor),
    because: [
      ...new Set([...asked, ...called].map((each) => callLine(each, of))),
      ...new Set(short.map(shortText)),
      ...(isRow ? [words.row] : []),
      ...(isInstead ? [words.instead] : []),
      ...(short.some((each) => isClose(each, wanted)) ? [words.close] : []),
      ...(cost.ok
        ? [
            `${words.parts}: ${of.money(cost.value.partsMinor)}. ${words.labour}: ${of.money(cost.value.labourMinor)} (${of.format.hours(cost.value.labourHours)}).`,
          ]
        : [whyOpen({ why: cost.error, job })]),
    ],
    sources: cost.ok ? onceEach(cost.value.sources) : [],
  };
}

const onceEach = (sources: readonly Source[]): readonly Source[] => [
  ...new Map(sources.map((source) => [`${source.mark}${source.text}`, source])).values(),
];

function setUpLine({ setUpMinor, setUpSources }: Work, of: Telling): readonly TextLine[] {
  if (setUpMinor === 0) return [];
  return [
    {
      id: 'set-up',
      title: words.setUp,
      amount: of.money(setUpMinor),
      because: [words.notStanding],
      sources: onceEach(setUpSources),
    },
  ];
}

export function deductionLines(of: Telling): readonly TextLine[] {
  const { deduction, settings } = of.appraisal;
  const short = lessThan(() => settings.saleable, of);
  return [
    ...deduction.lines.map((line) => workLine(line, short, settings.saleable, of)),
    ...setUpLine(deduction, of),
  ];
}

export const sideText = (kind: JobKind, side: Side, count: number): string =>
  capital(words.on(words.counted(nameOf(kind), count), sideNames[side]));

export function valueLine(line: ValueLine, of: Telling): TextLine {
  const { saleable } = of.appraisal.settings;
  const { low, middle, high } = line.left;
  return {
    id: `${line.side}.${line.kind}`,
    title: sideText(line.kind, line.side, line.count),
    amount: of.whole(line.minor.middle),
    because: [
      `${words.leftOf(of.left(middle), of.left(low), of.left(high))}, ${words.byWorst(
        of.format.item(line.worst.state.item.id),
        outcomePlace(line.worst),
      )}`,
      words.asItIs(of.whole(line.installedMinor), of.whole(line.minor.low), of.whole(line.minor.high)),
      ...(line.isDragged ? [words.dragged] : []),
      ...(low < saleable ? [words.worthless(of.left(saleable))] : []),
      ...(line.isClose ? [words.close] : []),
    ],
    sources: onceEach(line.cost.sources),
  };
}

export function statedLines(of: Telling): readonly TextLine[] {
  const { stated, settings } = of.appraisal;
  const wanted = settings.stated;
  const short: ShortText =
    wanted.kind === 'percent'
      ? lessThan((item) => percentWanted(wanted, item), of)
      : (outcome) =>
          capital(
            words.shortHours(
              of.format.item(outcome.state.item.id),
              outcomePlace(outcome),
              of.format.hours(wanted.hours),
            ),
          );
  const near = wanted.kind === 'percent' ? wanted.percent : -Infinity;
  return [...stated.lines.map((line) => workLine(line, short, near, of)), ...setUpLine(stated, of)];
}

export function spendLine({ costed, inHours, chance, minor }: SpendLine, of: Telling): TextLine {
  const share = of.format.percent(Math.max(1, chance * 100));
  const when =
    inHours === undefined || inHours === 0 ? words.spendNow : words.spendIn(aboutHours(inHours, of.format));
  const breaks = chance < 0.005 ? [] : [words.spendBreaks(share)];
  return {
    id: costed.job.id,
    title: capital(jobText(costed)),
    amount: of.about(minor),
    because: inHours === undefined ? [capital(words.spendLater(share))] : [capital(when), ...breaks],
    sources: onceEach(costed.cost.sources),
  };
}
