import fc from 'fast-check';
import { afterEach, describe, expect, test } from 'vitest';
import { addDays, dateParts, daysBetween, localDate } from '../../src/words/calendar.ts';
import { makeDates } from '../../src/words/dates.ts';

/** With what `getTimezoneOffset` answers there on 1 March 2026, to see that the zone took effect. */
const offsets = {
  UTC: 0,
  'America/New_York': 300,
  'Asia/Kolkata': -330,
  'Pacific/Kiritimati': -840,
  'Pacific/Pago_Pago': 660,
};
const zones = Object.keys(offsets) as readonly (keyof typeof offsets)[];
const home = process.env.TZ;

afterEach(() => {
  if (home === undefined) delete process.env.TZ;
  else process.env.TZ = home;
});

const dates = makeDates('en-US');
const seen = (text: string): string => text.replaceAll('\u202f', ' ').replaceAll('\u00a0', ' ');
const date = fc.integer({ min: -50_000, max: 50_000 }).map((days) => addDays('2000-01-01', days) ?? '');

describe('calendar days', () => {
  test.each(zones)('[D1] a date is the same day on a phone in %s', (zone) => {
    process.env.TZ = zone;
    expect(new Date(2026, 2, 1).getTimezoneOffset()).toBe(offsets[zone]);
    expect(makeDates('en-US').date('2026-03-01')).toBe('Mar 1, 2026');
    expect(addDays('2026-02-28', 1)).toBe('2026-03-01');
    expect(makeDates('en-US').day({ utc: '2026-02-28T23:30:00.000Z', offsetMinutes: 60 })).toBe(
      'Mar 1, 2026',
    );
  });

  test.each(zones)('[D2] 20 years of days are stepped one by one across every clock change of %s', (zone) => {
    process.env.TZ = zone;
    let day = '2020-01-01';
    for (let n = 0; n < 20 * 366; n += 1) {
      const next = addDays(day, 1) ?? '';
      expect(daysBetween(day, next)).toBe(1);
      const utc = new Date(
        Date.UTC(Number(day.slice(0, 4)), Number(day.slice(5, 7)) - 1, Number(day.slice(8)) + 1),
      );
      expect(next).toBe(utc.toISOString().slice(0, 10));
      day = next;
    }
  });

  test('[D3] adding days and counting them are inverse', () => {
    fc.assert(
      fc.property(date, fc.integer({ min: -40_000, max: 40_000 }), (from, days) => {
        const to = addDays(from, days) ?? '';
        expect(daysBetween(from, to)).toBe(days);
        expect(addDays(to, -days)).toBe(from);
      }),
    );
  });

  test.each(['2026-02-29', '2026-13-01', '2026-00-10', '2026-04-31', '26-1-1', '', '2026-03-01T00:00Z'])(
    '[D4] %j is no day of the calendar',
    (text) => {
      expect(dateParts(text)).toBeUndefined();
      expect(addDays(text, 1)).toBeUndefined();
      expect(daysBetween(text, '2026-01-01')).toBeUndefined();
      expect(dates.date(text)).toBe(text);
    },
  );

  test('[D5] 29 February is there in leap years only', () => {
    expect(dateParts('2024-02-29')).toEqual({ year: 2024, month: 2, day: 29 });
    expect(dateParts('2000-02-29')).toBeDefined();
    expect(dateParts('1900-02-29')).toBeUndefined();
  });
});

describe('when something was seen', () => {
  test.each([
    ['2026-03-01T04:30:00Z', -300, '2026-02-28'],
    ['2026-02-28T23:30:00.000Z', 330, '2026-03-01'],
    ['2026-12-31T12:00:00Z', 840, '2027-01-01'],
    ['2027-01-01T10:59:00Z', -660, '2026-12-31'],
    ['1969-12-31T23:59:00Z', 0, '1969-12-31'],
  ])('[D6] %s seen at an offset of %d minutes was on %s', (utc, offset, day) => {
    expect(localDate(utc, offset)).toBe(day);
  });

  test.each(zones)('[D7] a moment shows the clock where it was seen, read on a phone in %s', (zone) => {
    process.env.TZ = zone;
    const here = makeDates('en-US');
    const at = { utc: '2026-03-01T04:30:00.000Z', offsetMinutes: -300, zone: 'America/New_York' };
    expect(seen(here.moment(at))).toBe('Feb 28, 2026, 11:30 PM EST');
    expect(seen(here.moment({ utc: at.utc, offsetMinutes: 330 }))).toBe('Mar 1, 2026, 10:00 AM UTC+05:30');
    expect(seen(here.moment({ ...at, offsetMinutes: 0, zone: 'Mars/Olympus' }))).toBe(
      'Mar 1, 2026, 4:30 AM UTC',
    );
  });

  test('[D8] a text that is no instant stays as it is', () => {
    expect(dates.moment({ utc: 'yesterday', offsetMinutes: 0 })).toBe('yesterday');
    expect(dates.day({ utc: '2026-03-01T25:00:00Z', offsetMinutes: 0 })).toBe('2026-03-01T25:00:00Z');
  });

  test.each([
    ['2026-03-01', '2026-03-01', 'today'],
    ['2026-02-28', '2026-03-01', 'yesterday'],
    ['2026-02-17', '2026-03-01', '12 days ago'],
  ])('[D9] %s seen on %s is %s', (from, today, text) => {
    expect(dates.ago(from, today)).toBe(text);
  });

  test('[D10] a locale that the engine refuses falls back instead of failing', () => {
    expect(makeDates('en_US@posix').date('2026-03-01')).toBe('Mar 1, 2026');
  });
});
