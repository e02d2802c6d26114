import type { Appraisal } from '../core/appraisal.ts';
import type { Spend } from '../core/appraisal-spend.ts';
import type { ValueOpen } from '../core/appraisal-value.ts';
import type { Work } from '../core/appraisal-work.ts';
import { minorDigits } from '../core/currency.ts';
import type { JobKind } from '../core/job-kinds.ts';
import type { ItemOutcome } from '../core/score.ts';
import { aboutMoney, jobText, partPlace, whyOpen } from './ahead-text.ts';
import {
  deductionLines,
  nameOf,
  sideText,
  spendLine,
  statedLines,
  valueLine,
  type AppraisalTextInput,
  type Telling,
  type TextLine,
} from './appraisal-lines.ts';
import { meterTexts, signText } from './appraisal-notes.ts';
import { appraisal as words, askedSignWords } from './en/appraisal.ts';
import { callWords } from './en/calls.ts';
import { sideNames } from './en/items.ts';
import { capital, outcomePlace, wearText } from './outcome-text.ts';

/** A question with its answer and what has to be known with it. */
export interface AppraisalAnswer {
  readonly ask: string;
  readonly say: string;
  readonly more: readonly string[];
}

/** An appraisal in words. */
export interface AppraisalText {
  readonly answers: readonly AppraisalAnswer[];
  readonly worst: readonly (readonly [ask: string, say: string])[];
  readonly deduction: readonly TextLine[];
  readonly value: readonly TextLine[];
  readonly valueOpen: readonly string[];
  readonly stated: readonly string[];
  readonly statedLines: readonly TextLine[];
  readonly spend: readonly TextLine[];
  readonly spendMore: readonly string[];
  readonly meter: readonly string[];
  readonly signs: readonly string[];
  readonly notVerified: readonly string[];
}

const items = (ids: readonly string[], { format }: Telling): string => ids.map(format.item).join(', ');

const namesOf = (outcomes: readonly ItemOutcome[], { format }: Telling): readonly string[] => [
  ...new Set(outcomes.map((each) => `${format.item(each.state.item.id)}, ${outcomePlace(each)}`)),
];

function workSays({ minor, isWhole, lines }: Work, of: Telling): string {
  if (minor === undefined) return words.open;
  if (lines.length === 0) return of.appraisal.notVerified.length > 0 ? words.nothingSoFar : words.nothing;
  return isWhole ? of.money(minor) : words.atLeast(of.money(minor));
}

/** Why there is no sum at all. */
const closedText = ({ closed }: Appraisal): readonly string[] =>
  closed ? [whyOpen({ why: closed, job: { kind: 'mend-other' } })] : [];

function deductAnswer(of: Telling): AppraisalAnswer {
  const { deduction, settings, notVerified } = of.appraisal;
  const unpriced = deduction.lines.filter(({ minor }) => minor === undefined).length;
  return {
    ask: words.deduct,
    say: workSays(deduction, of),
    more: [
      words.deductMeans(of.format.percent(settings.saleable)),
      ...(deduction.minor === undefined ? [...closedText(of.appraisal), words.deductUnread] : []),
      ...(deduction.minor !== undefined && unpriced > 0 ? [words.deductLess(unpriced)] : []),
      ...closeText(of),
      ...(notVerified.length > 0 ? [words.deductUnseen] : []),
    ],
  };
}

/** Parts that a second reading could as well put below what can be sold. */
function closeText({ appraisal: { value, settings }, about, left }: Telling): readonly string[] {
  const close = value.lines.filter(({ isClose }) => isClose);
  if (close.length === 0) return [];
  const more = close.reduce((sum, { installedMinor }) => sum + installedMinor, 0);
  return [words.deductClose(close.length, left(settings.saleable), about(more))];
}

const isKnown = (spend: Appraisal['spend']): spend is Spend => 'minor' in spend;

function spendAnswer(of: Telling): AppraisalAnswer {
  const { spend, settings, deduction } = of.appraisal;
  const ask = words.spend(of.format.hours(settings.hours));
  if (!isKnown(spend))
    return { ask, say: words.open, more: [...closedText(of.appraisal), words.spendUnread] };
  const sum = of.about(spend.minor);
  const isBoth = deduction.lines.some(({ job }) =>
    spend.lines.some(({ costed }) => costed.job.id === job.id),
  );
  return {
    ask,
    say: spend.isWhole ? words.about(sum) : words.atLeast(sum),
    more: [
      words.spendMeans,
      ...(isBoth ? [words.spendBoth] : []),
      ...(spend.isWhole ? [] : [words.spendLess]),
    ],
  };
}

function valueAnswer(of: Telling): AppraisalAnswer {
  const { value } = of.appraisal;
  const less = value.open.length > 0 ? [words.valueLess] : [];
  if (!value.sum) {
    const why = closedText(of.appraisal);
    return { ask: words.value, say: words.open, more: why.length > 0 ? why : [words.valueNone] };
  }
  const { low, middle, high, fromWear, fromPrice } = value.sum;
  const range = (each: typeof fromWear): string => words.between(of.about(each.low), of.about(each.high));
  return {
    ask: words.value,
    say: words.ranged(of.about(middle), of.about(low), of.about(high)),
    more: [words.valueMeans, words.valueFrom(range(fromWear), range(fromPrice)), ...less],
  };
}

function worstText(outcome: ItemOutcome | undefined, { format }: Telling): string {
  if (!outcome) return words.worstNone;
  const name = `${format.item(outcome.state.item.id)}, ${outcomePlace(outcome)}`;
  const worn = wearText(outcome.state, format);
  return [capital(name), ...(worn === undefined ? [] : [worn]), callWords[outcome.atLeast].word].join(', ');
}

function valueOpenText(open: ValueOpen, of: Telling): string {
  const { why } = open;
  switch (why.kind) {
    case 'by-eye':
      return words.byEye;
    case 'no-reading':
      return words.unread(items(why.items, of));
    case 'no-limit':
      return words.noLimit(items(why.items, of));
    default:
      return whyOpen({ why, job: open });
  }
}

/** Parts without a value, those with the same reason said together. */
function valueOpenLines(of: Telling): readonly string[] {
  const reasons = new Map<string, string[]>();
  for (const open of of.appraisal.value.open) {
    const why = valueOpenText(open, of);
    reasons.set(why, [...(reasons.get(why) ?? []), sideText(open.kind, open.side, open.count)]);
  }
  return [...reasons].map(([why, names]) => `${names.join('; ')}. ${why}`);
}

function statedWhat({ appraisal: { settings }, format, left }: Telling): string {
  const { stated } = settings;
  if (stated.kind === 'hours') return words.statedHours(format.hours(stated.hours));
  const own = Object.entries(stated.of ?? {}).map(([kind, percent]) =>
    words.statedKind(nameOf(kind as JobKind), left(percent)),
  );
  return [words.statedPercent(left(stated.percent)), ...own].join('; ');
}

function statedTexts(of: Telling): readonly string[] {
  const { stated, deduction, value } = of.appraisal;
  const never = stated.never.map((part) => `${of.format.item(part.history.item.id)}, ${partPlace(part)}`);
  const unread = value.open
    .filter(({ why }) => why.kind === 'no-reading' || why.kind === 'no-limit')
    .map(({ kind, side, count }) => sideText(kind, side, count).toLowerCase());
  const unknown = [...new Set([...namesOf(stated.unknown, of), ...unread])];
  const none = unknown.length > 0 ? words.statedSoFar : words.statedNothing;
  const isNone = stated.minor !== undefined && stated.lines.length === 0;
  return [
    words.statedSays(statedWhat(of), isNone ? none : workSays(stated, of)),
    ...(deduction.lines.length > 0 && stated.lines.length > 0 ? [words.statedIn] : []),
    ...(never.length > 0 ? [words.statedNever(never.join('; '))] : []),
    ...(unknown.length > 0 ? [words.statedUnknown(unknown.join('; '))] : []),
  ];
}

function spendMore({ appraisal: { spend, settings }, rubber, format, about }: Telling): readonly string[] {
  const cuts = rubber
    ? [
        words.spendCuts(
          format.percent(
            Math.max(rubber.left.within(settings.hours), rubber.right.within(settings.hours)) * 100,
          ),
        ),
      ]
    : [];
  const open = spend.open.map((each) => `${capital(jobText(each))}. ${whyOpen(each)}`);
  if (!isKnown(spend)) return [...open, ...cuts];
  const { plannedMinor, breakdownMinor, setUpMinor, lines } = spend;
  const planned = about(plannedMinor);
  return [
    ...(lines.length === 0
      ? [words.spendNone]
      : [
          breakdownMinor > 0
            ? words.spendPlanned(planned, about(breakdownMinor))
            : words.spendLessRisk(planned),
        ]),
    ...(setUpMinor > 0 ? [`${words.setUp}: ${about(setUpMinor)}.`] : []),
    ...open,
    ...cuts,
  ];
}

/** An appraisal in the words of its screen and its page. */
export function appraisalText(input: AppraisalTextInput): AppraisalText {
  const { appraisal, format } = input;
  const currency = appraisal.currency ?? '';
  const unit = 10 ** minorDigits(currency);
  const of: Telling = {
    ...input,
    money: (minor) => format.money(minor, currency),
    whole: (minor) => format.money(Math.round(minor / unit) * unit, currency),
    about: (minor) => aboutMoney(minor, currency, format),
    left: (percent) => format.percent(Math.max(0, percent)),
  };
  return {
    answers: [deductAnswer(of), spendAnswer(of), valueAnswer(of)],
    worst: (['left', 'right'] as const).map((side) => [
      words.worst(sideNames[side]),
      worstText(appraisal.worst[side], of),
    ]),
    deduction: deductionLines(of),
    value: appraisal.value.lines.map((line) => valueLine(line, of)),
    valueOpen: valueOpenLines(of),
    stated: statedTexts(of),
    statedLines: statedLines(of),
    spend: isKnown(appraisal.spend) ? appraisal.spend.lines.map((line) => spendLine(line, of)) : [],
    spendMore: spendMore(of),
    meter: meterTexts(of),
    signs: appraisal.signs.map((sign) => signText(sign, of)),
    notVerified: [
      ...namesOf(appraisal.notVerified, of).map(capital),
      ...(appraisal.notLooked.length > 0
        ? [words.notLooked(appraisal.notLooked.map((each) => askedSignWords[each]).join('; '))]
        : []),
    ],
  };
}
