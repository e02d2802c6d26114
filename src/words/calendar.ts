/**
 * Calendar days as `YYYY-MM-DD` strings. No Date takes part: one made from such a string is midnight in
 * Greenwich and shows the day before west of it, and a day of 23 hours breaks arithmetic in milliseconds.
 */
export type LocalDate = string;

export interface Ymd {
  readonly year: number;
  readonly month: number;
  readonly day: number;
}

const isLeap = (year: number): boolean => (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;

const monthDays = (year: number, month: number): number =>
  month === 2 ? (isLeap(year) ? 29 : 28) : [4, 6, 9, 11].includes(month) ? 30 : 31;

/** The parts of a date, or undefined for a text that is no day of the calendar. */
export function dateParts(date: string): Ymd | undefined {
  const match = /^(\d{4})-(\d\d)-(\d\d)$/.exec(date);
  if (!match) return undefined;
  const [year, month, day] = [Number(match[1]), Number(match[2]), Number(match[3])];
  if (month < 1 || month > 12 || day < 1 || day > monthDays(year, month)) return undefined;
  return { year, month, day };
}

const pad = (value: number, width: number): string => String(value).padStart(width, '0');

export const dateOf = ({ year, month, day }: Ymd): LocalDate =>
  `${pad(year, 4)}-${pad(month, 2)}-${pad(day, 2)}`;

// Days and dates in 400-year eras that begin in March, after the leap day: Richards' algorithm as given in
// the Explanatory Supplement to the Astronomical Almanac, in the shifted form that is common since.
const eraDays = 146_097;

/** Days since 1970-01-01. */
export function dayNumber({ year, month, day }: Ymd): number {
  const shifted = month <= 2 ? year - 1 : year;
  const era = Math.floor(shifted / 400);
  const yearOfEra = shifted - era * 400;
  const dayOfYear = Math.floor((153 * ((month + 9) % 12) + 2) / 5) + day - 1;
  const leaps = Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100);
  return era * eraDays + yearOfEra * 365 + leaps + dayOfYear - 719_468;
}

export function dayOfNumber(days: number): Ymd {
  const shifted = days + 719_468;
  const era = Math.floor(shifted / eraDays);
  const dayOfEra = shifted - era * eraDays;
  const leaps = Math.floor(dayOfEra / 1460) - Math.floor(dayOfEra / 36_524) + Math.floor(dayOfEra / 146_096);
  const yearOfEra = Math.floor((dayOfEra - leaps) / 365);
  const dayOfYear = dayOfEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100));
  const monthFromMarch = Math.floor((5 * dayOfYear + 2) / 153);
  const month = ((monthFromMarch + 2) % 12) + 1;
  return {
    year: yearOfEra + era * 400 + (month <= 2 ? 1 : 0),
    month,
    day: dayOfYear - Math.floor((153 * monthFromMarch + 2) / 5) + 1,
  };
}

/** The day that many days later; undefined for what is no date. */
export function addDays(date: LocalDate, days: number): LocalDate | undefined {
  const parts = dateParts(date);
  return parts && dateOf(dayOfNumber(dayNumber(parts) + days));
}

/** Calendar days from one date to another, negative when it lies before; undefined for what is no date. */
export function daysBetween(from: LocalDate, to: LocalDate): number | undefined {
  const [start, end] = [dateParts(from), dateParts(to)];
  return start && end && dayNumber(end) - dayNumber(start);
}

export interface LocalMoment extends Ymd {
  readonly hour: number;
  readonly minute: number;
}

/** Minutes since 1970 of an instant in UTC (`2026-03-01T23:30:00.000Z`); undefined for anything else. */
export function utcMinutes(utc: string): number | undefined {
  const match = /^(\d{4}-\d\d-\d\d)T(\d\d):(\d\d)(?::\d\d(?:\.\d+)?)?Z$/.exec(utc);
  const parts = match?.[1] === undefined ? undefined : dateParts(match[1]);
  const [hour, minute] = [Number(match?.[2]), Number(match?.[3])];
  if (!parts || hour > 23 || minute > 59) return undefined;
  return dayNumber(parts) * 1440 + hour * 60 + minute;
}

/** What the clock on the wall showed at an instant, from the offset noted with it. */
export function localMoment(utc: string, offsetMinutes: number): LocalMoment | undefined {
  const minutes = utcMinutes(utc);
  if (minutes === undefined) return undefined;
  const local = minutes + offsetMinutes;
  const days = Math.floor(local / 1440);
  const ofDay = local - days * 1440;
  return { ...dayOfNumber(days), hour: Math.floor(ofDay / 60), minute: ofDay % 60 };
}

/** The calendar day on which something was seen, where it was seen. */
export function localDate(utc: string, offsetMinutes: number): LocalDate | undefined {
  const moment = localMoment(utc, offsetMinutes);
  return moment && dateOf(moment);
}
