import { isPlanned, type Outlook } from '../core/outlook.ts';
import { parseKey } from '../core/keys.ts';
import type { Visit } from '../core/job-plan.ts';
import type { Machine } from '../core/machine.ts';
import type { Reason } from '../core/reason.ts';
import { recheckOf, type Recheck } from '../core/recheck.ts';
import type { Scored } from '../core/score.ts';
import { shownCall } from '../core/verdict.ts';
import type { Walk } from '../core/walk.ts';
import { makeDates } from '../words/dates.ts';
import { ahead, jobWords } from '../words/en/ahead.ts';
import { calendar as words } from '../words/en/calendar.ts';
import { callWords, meanwhileWords, openCall } from '../words/en/calls.ts';
import { placeName, sideNames } from '../words/en/items.ts';
import type { Formatter } from '../words/format.ts';
import { dayIn } from './due-day.ts';
import { icalOf, type DayEvent } from './ical.ts';

/** A scored walk with what lies ahead of its machine. */
export interface CalendarInput {
  readonly walkKey: string;
  readonly walk: Walk;
  readonly machine: Machine;
  readonly scored: Scored;
  readonly outlook: Outlook;
}

/** Who reads the calendar, and when it is made (an instant in UTC). */
export interface CalendarReader {
  readonly format: Formatter;
  readonly locale: string;
  readonly reasonText: (reason: Reason) => string;
  readonly now: string;
}

/** The file with its events, and in sentences what has no day; without an event there is no file. */
export interface Calendar {
  readonly text: string | undefined;
  readonly events: readonly DayEvent[];
  readonly notDated: readonly string[];
}

/** Hours as a person says them, and the pace that made them days. */
function dueLine({ outlook: { week } }: CalendarInput, hours: number, { format }: CalendarReader): string {
  if (hours <= 0 || !week) return words.atWalk;
  return words.due(format.hours(Math.round(hours)), format.hours(Math.round(week.hours)));
}

function aboutWalk({ walk, scored }: CalendarInput, { locale }: CalendarReader): readonly string[] {
  const { verdict } = scored;
  const call = shownCall(verdict);
  const said = call === 'open' ? openCall.word : callWords[call].word;
  const day = walk.startedAt && makeDates(locale).day(walk.startedAt);
  return [
    words.verdict(said, meanwhileWords[verdict.meanwhile].word),
    ...(day === undefined ? [] : [words.walkedOn(day)]),
  ];
}

/** A part as a line names it. */
const placeIn = (side: 'left' | 'right' | 'whole', component: string, number: number | undefined): string =>
  placeName({ side, component, ...(number !== undefined && { number }) });

function recheckText(input: CalendarInput, recheck: Recheck, reader: CalendarReader): string {
  const { format, reasonText } = reader;
  const { watched, first, inHours } = recheck;
  const lines = watched.map(({ state, reasons }) => {
    const place = placeIn(state.side, state.item.component, state.number);
    const [reason] = reasons;
    return words.watched(format.item(state.item.id), place, reason ? reasonText(reason) : '').trim();
  });
  if (first?.left) {
    const { item, side, number } = first.history;
    const hours = format.hours(Math.round(first.left.low));
    lines.push(words.first(format.item(item.id), placeIn(side, item.component, number), hours));
  }
  return [...lines, dueLine(input, inHours, reader), ...aboutWalk(input, reader)].join('\n');
}

const idOf = (key: string): string => {
  const parts = parseKey(key);
  return parts && 'id' in parts ? parts.id : key;
};

function recheckEvent(input: CalendarInput, recheck: Recheck, day: string, reader: CalendarReader): DayEvent {
  return {
    uid: `sagline-recheck-${idOf(input.walk.machine)}`,
    day,
    summary: words.recheck(input.machine.name),
    description: recheckText(input, recheck, reader),
    categories: [words.category, words.recheckCategory],
  };
}

const jobName = ({ job: { kind, side, count } }: Visit['jobs'][number]): string => {
  const name = ahead.counted(jobWords[kind], count);
  return side === 'whole' ? name : ahead.onSide(name, sideNames[side]);
};

function visitEvent(
  input: CalendarInput,
  visit: Visit,
  currency: string,
  day: string,
  reader: CalendarReader,
): DayEvent {
  const { format } = reader;
  const jobs = visit.jobs.map(jobName);
  const meter = visit.hours - input.outlook.meterOffset;
  const machine = idOf(input.walk.machine);
  // Visits lie on a fixed grid of hours, so that a later plan's visit at these hours is the same one.
  const isNow = visit.inHours <= 0;
  return {
    uid: isNow ? `sagline-visit-${idOf(input.walkKey)}-now` : `sagline-visit-${machine}-${visit.hours}`,
    day,
    summary: words.visit(input.machine.name, jobs),
    description: [
      ...jobs,
      words.outlay(format.money(visit.outlayMinor, currency)),
      words.meter(format.hours(Math.round(meter))),
      dueLine(input, visit.inHours, reader),
      ...aboutWalk(input, reader),
    ].join('\n'),
    categories: [words.category, words.visitCategory],
  };
}

/** The re-check and the visits of the job plan as days of a calendar. */
export function calendarOf(input: CalendarInput, reader: CalendarReader): Calendar {
  const { scored, outlook } = input;
  const events: DayEvent[] = [];
  const notDated = new Set<string>();
  const put = (hours: number, event: (day: string) => DayEvent): void => {
    const at = dayIn(input.walk, outlook.week, hours);
    if ('day' in at) events.push(event(at.day));
    else notDated.add(words[at.why]);
  };
  const recheck = recheckOf(scored.outcomes, outlook.hours.parts);
  if (recheck) put(recheck.inHours, (day) => recheckEvent(input, recheck, day, reader));
  const { plan } = outlook;
  if (isPlanned(plan)) {
    for (const visit of plan.visits)
      put(visit.inHours, (day) => visitEvent(input, visit, plan.currency, day, reader));
  }
  const [first, ...rest] = events;
  if (!first && notDated.size === 0) notDated.add(words.nothing);
  return {
    text: first && icalOf([first, ...rest], reader.now),
    events,
    notDated: [...notDated],
  };
}
