import type { ObservedAt } from '../core/readings.ts';
import { dateOf, localDate, localMoment, type LocalDate } from '../words/calendar.ts';

const two = (value: number): string => String(value).padStart(2, '0');

function offsetText(minutes: number): string {
  const size = Math.abs(minutes);
  return `${minutes < 0 ? '-' : '+'}${two(Math.floor(size / 60))}:${two(size % 60)}`;
}

/** A moment as its clock showed it, with the offset noted with it: `2026-03-01T08:30+01:00` (ISO 8601). */
export function isoMoment(at: ObservedAt | undefined): string | undefined {
  const local = at && localMoment(at.utc, at.offsetMinutes);
  return local && `${dateOf(local)}T${two(local.hour)}:${two(local.minute)}${offsetText(at.offsetMinutes)}`;
}

/** The calendar day of a moment where it was noted. */
export const dayOf = (at: ObservedAt | undefined): LocalDate | undefined =>
  at && localDate(at.utc, at.offsetMinutes);
