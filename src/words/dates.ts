import { dateParts, dayNumber, daysBetween, localMoment, utcMinutes, type LocalDate } from './calendar.ts';
import { safeLocale } from './locale.ts';

/** When something was seen, as records keep it. */
export interface ObservedAt {
  readonly utc: string;
  readonly offsetMinutes: number;
  readonly zone?: string | undefined;
}

export interface Dates {
  /** `Mar 1, 2026`; a text that is no date stays as it is. */
  readonly date: (date: LocalDate) => string;
  /** The day on which it was seen, where it was seen. */
  readonly day: (at: ObservedAt) => string;
  /** Day and time by the clock where it was seen, with its zone. */
  readonly moment: (at: ObservedAt) => string;
  /** `today`, `yesterday`, `12 days ago`, in calendar days. */
  readonly ago: (from: LocalDate, today: LocalDate) => string;
}

const msOfMinute = 60_000;

function offsetName(offsetMinutes: number): string {
  const size = Math.abs(offsetMinutes);
  const two = (value: number) => String(value).padStart(2, '0');
  const clock = `${two(Math.floor(size / 60))}:${two(size % 60)}`;
  return size === 0 ? 'UTC' : `UTC${offsetMinutes < 0 ? '−' : '+'}${clock}`;
}

/** The zone's name at that instant, such as `GMT+1` or `EST`; its offset where this engine lacks the zone. */
function zoneName(locale: string, at: ObservedAt): string {
  const minutes = utcMinutes(at.utc);
  if (at.zone === undefined || minutes === undefined) return offsetName(at.offsetMinutes);
  try {
    const format = new Intl.DateTimeFormat(locale, { timeZone: at.zone, timeZoneName: 'short' });
    const named = format.formatToParts(minutes * msOfMinute).find((part) => part.type === 'timeZoneName');
    return named?.value ?? offsetName(at.offsetMinutes);
  } catch {
    return offsetName(at.offsetMinutes);
  }
}

/**
 * Dates for one person. The clock shown is the instant plus the offset that was noted with it, so it is the
 * same on every phone, whatever zone that phone is in and whatever its zone tables say.
 */
export function makeDates(preferred: string): Dates {
  const locale = safeLocale(preferred);
  const utc = 'UTC';
  const days = new Intl.DateTimeFormat(locale, { dateStyle: 'medium', timeZone: utc });
  const moments = new Intl.DateTimeFormat(locale, { dateStyle: 'medium', timeStyle: 'short', timeZone: utc });
  const ages = new Intl.RelativeTimeFormat('en', { numeric: 'auto' });
  const wallMs = (at: ObservedAt): number | undefined => {
    const local = localMoment(at.utc, at.offsetMinutes);
    return local && (dayNumber(local) * 1440 + local.hour * 60 + local.minute) * msOfMinute;
  };
  return {
    date: (date) => {
      const parts = dateParts(date);
      return parts ? days.format(dayNumber(parts) * 1440 * msOfMinute) : date;
    },
    day: (at) => {
      const wall = wallMs(at);
      return wall === undefined ? at.utc : days.format(wall);
    },
    moment: (at) => {
      const wall = wallMs(at);
      return wall === undefined ? at.utc : `${moments.format(wall)} ${zoneName(locale, at)}`;
    },
    ago: (from, today) => {
      const days = daysBetween(from, today);
      return days === undefined ? from : ages.format(-days, 'day');
    },
  };
}
