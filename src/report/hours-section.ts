import { horizonHours, type Interval, type PartHours } from '../core/hours-left.ts';
import type { Outlook } from '../core/outlook.ts';
import { aboutHours, aheadWhen, partName } from '../words/ahead-text.ts';
import { ahead } from '../words/en/ahead.ts';
import { doubtWords, historyFaultWords } from '../words/en/history.ts';
import { report as words } from '../words/en/report.ts';
import { capital } from '../words/outcome-text.ts';
import { sourceText } from '../words/source-text.ts';
import type { Block } from './blocks.ts';
import { heading, list, section, text } from './parts.ts';
import type { ReportInput } from './report-input.ts';

/** How long each measured part still lasts, and what that rests on. */
export function hoursSection(of: ReportInput): readonly Block[] {
  const { outlook } = of;
  if (!outlook) return section(words.hours, [text(words.noHours)]);
  const { parts } = outlook.hours;
  const figured = parts.flatMap((part) => (part.left ? [{ part, left: part.left }] : []));
  return section(words.hours, [
    ...(figured.length === 0
      ? [text(ahead.noFigures)]
      : [hoursTable(figured, outlook, of), text(words.eightOfTen, 'small')]),
    ...openParts(parts, of),
    ...rests(parts, outlook, of),
  ]);
}

interface Figured {
  readonly part: PartHours;
  readonly left: Interval;
}

function hoursTable(figured: readonly Figured[], outlook: Outlook, of: ReportInput): Block {
  const { format } = of;
  return {
    kind: 'table',
    caption: words.hoursCaption,
    head: [words.part, words.wornNow, words.about, words.range, words.when],
    figures: [1, 2, 3],
    rows: figured.map(({ part, left }) => [
      capital(partName(part, format)),
      format.percent(part.history.points.at(-1)?.percent ?? 0),
      left.middle <= 0 ? words.wornOut : hoursText(left.middle, of),
      ahead.between(hoursText(left.low, of), hoursText(left.high, of)),
      Number.isFinite(left.middle) && left.middle > 0
        ? aheadWhen(of.input.walk, outlook, left.middle, of)
        : '',
    ]),
  };
}

const hoursText = (hours: number, { format }: ReportInput): string =>
  Number.isFinite(hours) ? aboutHours(hours, format) : ahead.beyond(aboutHours(horizonHours, format));

/** Parts without a figure, each reason said once. */
function openParts(parts: readonly PartHours[], { format }: ReportInput): readonly Block[] {
  const faults = new Map<PartHours['open'][number], string[]>();
  for (const part of parts) {
    for (const fault of part.open) faults.set(fault, [...(faults.get(fault) ?? []), partName(part, format)]);
  }
  return list(
    [...faults].map(([fault, names]) => {
      const { what, mend } = historyFaultWords[fault];
      return words.hoursOpen(capital(names.join('; ')), `${what} ${mend}`);
    }),
  );
}

function rests(parts: readonly PartHours[], outlook: Outlook, of: ReportInput): readonly Block[] {
  const figured = parts.filter(({ left }) => left !== undefined);
  if (figured.length === 0) return [];
  return [
    heading(3, words.restsOn),
    ...list(restLines(figured, of)),
    text(ahead.basisModel, 'small'),
    text(clockText(outlook, of), 'small'),
    ...rubberText(outlook, of),
  ];
}

/** What the hours of each part rest on; parts that rest on the same are named together. */
function restLines(parts: readonly PartHours[], of: ReportInput): readonly string[] {
  const alike = new Map<string, string[]>();
  for (const part of parts) {
    const rest = restOf(part, of);
    alike.set(rest, [...(alike.get(rest) ?? []), partName(part, of.format)]);
  }
  const doubts = parts.flatMap((part) =>
    part.doubts.map((doubt) => words.openAt(capital(partName(part, of.format)), doubtWords[doubt].what)),
  );
  return [
    ...[...alike].map(([rest, names]) => words.restsOnPart(capital(rest), names.join('; '))),
    ...doubts,
  ];
}

function restOf({ history }: PartHours, { format }: ReportInput): string {
  const { figure, isLearnt, points } = history;
  const parts = [
    format.plural(points.length, words.oneReading, words.manyReadings),
    isLearnt ? words.learnt : undefined,
    figure &&
      words.lifeFigure(
        format.hours(figure.lowHours),
        format.hours(figure.highHours),
        sourceText(figure.source),
      ),
  ];
  return parts.filter((part) => part !== undefined).join('; ');
}

function clockText({ hours }: Outlook, { format }: ReportInput): string {
  const { clock, travelShare } = hours.hours;
  return clock === 'travel' && travelShare !== undefined
    ? ahead.clockTravel(format.percent(travelShare * 100))
    : ahead.clockEngine;
}

/** What ends rubber besides wear. */
function rubberText({ rubber }: Outlook, { format }: ReportInput): readonly Block[] {
  if (!rubber) return [];
  const { left, right } = rubber;
  const say = left.isLearnt ? ahead.damageLearnt : ahead.damage;
  const years = [left.yearsLeft, right.yearsLeft].flatMap((each) => each ?? []);
  return [
    text(say(format.percent(left.within(1000) * 100), aboutHours(1000, format))),
    text(ahead.age(format.number(left.years)), 'small'),
    ...(years.length === 0 ? [] : [text(ahead.ageLeft(format.number(Math.min(...years))))]),
  ];
}
