import type { LocalDate } from '../words/calendar.ts';

/** Something that is due on a day, for a calendar of any maker. */
export interface DayEvent {
  /** The same for the same thing in every file, so that a calendar replaces it. */
  readonly uid: string;
  readonly day: LocalDate;
  readonly summary: string;
  readonly description: string;
  readonly categories: readonly string[];
}

const encoder = new TextEncoder();

/** What a text property may not hold, RFC 5545, 3.3.11; half of a surrogate pair has no UTF-8. */
const cleaned = (text: string): string =>
  text
    .replace(/\r\n?/g, '\n')
    .replace(/(?![\n\t])\p{Cc}/gu, '')
    .replace(/\p{Cs}/gu, '\ufffd');

const escaped = (text: string): string =>
  cleaned(text)
    .replace(/[\\;,]/g, (mark) => `\\${mark}`)
    .replaceAll('\n', '\\n');

/** Octets in a line without its end, RFC 5545, 3.1. */
const mostOctets = 75;

/** A content line with its end; a long one goes on behind a space, and no character is cut in two. */
export function folded(line: string): string {
  let out = '';
  let octets = 0;
  for (const char of line) {
    const size = encoder.encode(char).length;
    if (octets + size > mostOctets) {
      out += '\r\n ';
      octets = 1;
    }
    out += char;
    octets += size;
  }
  return `${out}\r\n`;
}

const compact = (day: LocalDate): string => day.replaceAll('-', '');

const eventLines = (event: DayEvent, stamp: string): readonly string[] => [
  'BEGIN:VEVENT',
  `UID:${escaped(event.uid)}`,
  `DTSTAMP:${stamp}`,
  `DTSTART;VALUE=DATE:${compact(event.day)}`,
  `SUMMARY:${escaped(event.summary)}`,
  `DESCRIPTION:${escaped(event.description)}`,
  `CATEGORIES:${event.categories.map(escaped).join(',')}`,
  // A machine that is due keeps nobody from other appointments.
  'TRANSP:TRANSPARENT',
  'END:VEVENT',
];

/**
 * Events as an iCalendar file (RFC 5545); there is none without an event.
 * @param now when the file is made: an instant in UTC, as `2026-03-01T23:30:00.000Z`
 */
export function icalOf(events: readonly [DayEvent, ...DayEvent[]], now: string): string {
  const stamp = `${now.slice(0, 19).replace(/[-:]/g, '')}Z`;
  const lines = [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    'PRODID:-//Sagline//Sagline//EN',
    'CALSCALE:GREGORIAN',
    'METHOD:PUBLISH',
    ...events.flatMap((event) => eventLines(event, stamp)),
    'END:VCALENDAR',
  ];
  return lines.map(folded).join('');
}
