import fc from 'fast-check';
import ICAL from 'ical.js';
import { describe, expect, test } from 'vitest';
import { demoFile } from '../../src/cli/demo.ts';
import { visitStepHours } from '../../src/core/job-plan.ts';
import { isPlanned } from '../../src/core/outlook.ts';
import { recheckOf } from '../../src/core/recheck.ts';
import { calendarOf, type CalendarInput, type CalendarReader } from '../../src/files/calendar.ts';
import { folded, icalOf, type DayEvent } from '../../src/files/ical.ts';
import { daysBetween } from '../../src/words/calendar.ts';
import { calendar as words } from '../../src/words/en/calendar.ts';
import { reasonSentence } from '../../src/words/en/reasons.ts';
import { makeFormatter } from '../../src/words/formatter.ts';
import { walksOf } from './scored-walks.ts';

const format = makeFormatter({ locale: 'en', depth: 'mm', length: 'mm', mass: 'kg' });
const now = '2026-03-05T07:08:09.123Z';
const reader: CalendarReader = {
  format,
  locale: 'en',
  reasonText: (reason) => reasonSentence(reason, format),
  now,
};

/** What a general parser of iCalendar finds. */
function parsed(text: string): readonly ICAL.Event[] {
  const calendar = new ICAL.Component(ICAL.parse(text) as unknown[]);
  expect(calendar.name).toBe('vcalendar');
  expect(calendar.getFirstPropertyValue('version')).toBe('2.0');
  return calendar.getAllSubcomponents('vevent').map((each) => new ICAL.Event(each));
}

const categoriesOf = (event: ICAL.Event): unknown =>
  event.component.getFirstProperty('categories')?.getValues();

const asFound = (event: ICAL.Event) => ({
  uid: event.uid,
  day: event.startDate.toString(),
  isDate: event.startDate.isDate,
  summary: event.summary,
  description: event.description,
  categories: categoriesOf(event),
  stamp: event.component.getFirstPropertyValue('dtstamp')?.toString(),
});

async function demoInputs(): Promise<readonly CalendarInput[]> {
  return walksOf(await demoFile()).flatMap(({ key, outlook, ...rest }) =>
    outlook ? [{ walkKey: key, outlook, ...rest }] : [],
  );
}

describe('iCalendar', () => {
  // Controls and half surrogates cannot be written; all else must come back as it was.
  const text = fc
    .string({ unit: 'binary', maxLength: 120 })
    .map((each) => each.replace(/[\p{Cc}]/gu, (char) => (char === '\n' || char === '\t' ? char : '')));
  const plainText = fc.oneof(
    text,
    fc
      .array(fc.constantFrom('\\', ';', ',', '\n', ':', '"', 'ä', '語', '😀', 'n', ' '), { maxLength: 90 })
      .map((all) => all.join('')),
  );
  const event: fc.Arbitrary<DayEvent> = fc.record({
    uid: fc.stringMatching(/^[0-9a-z-]{1,90}$/),
    day: fc
      .date({ min: new Date('1900-01-01'), max: new Date('2999-12-31'), noInvalidDate: true })
      .map((date) => date.toISOString().slice(0, 10)),
    summary: plainText,
    description: plainText,
    // This parser cuts a list behind an escaped backslash wrongly; our categories are words of ours.
    categories: fc.array(
      plainText.map((each) => each.replaceAll('\\', '')).filter((each) => each !== ''),
      { minLength: 1, maxLength: 3 },
    ),
  });

  test('[HO14] a general parser reads back every event as it was', () => {
    fc.assert(
      fc.property(event, fc.array(event, { maxLength: 3 }), (first, rest) => {
        const found = parsed(icalOf([first, ...rest], now)).map(asFound);
        expect(found).toEqual(
          [first, ...rest].map((each) => ({ ...each, isDate: true, stamp: '2026-03-05T07:08:09Z' })),
        );
      }),
      { numRuns: 500 },
    );
  });

  test('[HO14] no line has more than 75 octets, none cuts a character, and unfolding gives the line', () => {
    fc.assert(
      fc.property(
        fc
          .string({ unit: 'grapheme', maxLength: 300, size: 'max' })
          .map((each) => each.replace(/[\r\n]/g, '')),
        (line) => {
          const lines = folded(line).split('\r\n');
          expect(lines.pop()).toBe('');
          for (const each of lines) {
            const bytes = new TextEncoder().encode(each);
            expect(bytes.length).toBeLessThanOrEqual(75);
            expect(new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes)).toBe(each);
          }
          expect(lines.map((each, at) => (at === 0 ? each : each.slice(1))).join('')).toBe(line);
        },
      ),
      { numRuns: 1000 },
    );
  });

  test('[HO14] what no calendar can hold is left out of its text', () => {
    const sent = {
      uid: 'a',
      day: '2026-03-01',
      summary: 'a\u0000b\u0007',
      description: 'x\ud800y\r\nz',
      categories: ['c'],
    };
    const [found] = parsed(icalOf([sent], now));
    expect(found?.summary).toBe('ab');
    expect(found?.description).toBe('x\ufffdy\nz');
    expect(icalOf([sent], now).replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
  });
});

describe('what a machine puts into a calendar', () => {
  test('[HO15] the re-check and each visit of the plan have a day, by the hours a week', async () => {
    const inputs = await demoInputs();
    expect(inputs.length).toBeGreaterThan(0);
    let visits = 0;
    for (const input of inputs) {
      const { text, events, notDated } = calendarOf(input, reader);
      const { plan, week, hours } = input.outlook;
      expect(week).toBeDefined();
      expect(notDated).toEqual([]);
      const found = parsed(text ?? '').map(asFound);
      expect(found).toMatchObject(events);
      const recheck = recheckOf(input.scored.outcomes, hours.parts);
      const planned = isPlanned(plan) ? plan.visits : [];
      expect(found.length).toBe(planned.length + (recheck ? 1 : 0));
      visits += planned.length;
      const from = input.walk.startedAt?.utc.slice(0, 10) ?? '';
      const due = [...(recheck ? [recheck.inHours] : []), ...planned.map(({ inHours }) => inHours)];
      for (const [at, inHours] of due.entries()) {
        const days = daysBetween(from, found[at]?.day ?? '') ?? NaN;
        expect(Math.abs(days - (inHours / (week?.hours ?? NaN)) * 7)).toBeLessThanOrEqual(1.5);
        expect(found[at]?.summary).toContain(input.machine.name);
      }
    }
    expect(visits).toBeGreaterThan(0);
  });

  test('[HO15] made twice the events have the same names, and no two of a file share one', async () => {
    for (const input of await demoInputs()) {
      const uids = calendarOf(input, reader).events.map(({ uid }) => uid);
      const again = calendarOf(input, { ...reader, now: '2027-01-01T00:00:00.000Z' });
      expect(again.events.map(({ uid }) => uid)).toEqual(uids);
      expect(new Set(uids).size).toBe(uids.length);
    }
  });

  test('[HO15] without a pace there is no event but what is due now, and a sentence says why', async () => {
    for (const input of await demoInputs()) {
      const { week: _week, ...rest } = input.outlook;
      const { events, notDated } = calendarOf({ ...input, outlook: { ...rest, week: undefined } }, reader);
      expect(notDated).toEqual([words.noPace]);
      for (const { day } of events) expect(day).toBe(input.walk.startedAt?.utc.slice(0, 10));
    }
  });

  test('[HO15] without a date of the walk nothing has a day', async () => {
    for (const input of await demoInputs()) {
      const { startedAt: _at, ...walk } = input.walk;
      expect(calendarOf({ ...input, walk }, reader)).toEqual({
        text: undefined,
        events: [],
        notDated: [words.noDay],
      });
    }
  });

  test('[HO15] a machine that hardly works gets no day beyond ten years', async () => {
    for (const input of await demoInputs()) {
      const outlook = { ...input.outlook, week: { hours: 1e-9, from: 'machine' as const } };
      expect(calendarOf({ ...input, outlook }, reader).notDated).toEqual([words.tooFar]);
    }
  });
});

describe('when to look again', () => {
  test('[HO16] what is watched is looked at within a service interval, else before the first part may be worn out', async () => {
    for (const { scored, outlook } of await demoInputs()) {
      const { parts } = outlook.hours;
      const calm = scored.outcomes.filter(({ atLeast }) => atLeast !== 'recheck');
      const [other] = scored.outcomes;
      const watched = other ? [{ ...other, atLeast: 'recheck' as const }] : [];
      expect(recheckOf(calm, [])).toBeUndefined();
      expect(recheckOf([...calm, ...watched], [])?.inHours).toBe(visitStepHours);
      const lows = parts.flatMap(({ left }) =>
        left && left.low > 0 && left.low < Infinity ? [left.low] : [],
      );
      expect(recheckOf(calm, parts)?.inHours).toBe(lows.length > 0 ? Math.min(...lows) : undefined);
    }
  });
});
