import type { WeekHours } from '../core/outlook.ts';
import type { Walk } from '../core/walk.ts';
import { addDays, type LocalDate } from '../words/calendar.ts';
import { dayOf } from './iso-moment.ts';

/** A day, or why there is none. */
export type DueDay = { readonly day: LocalDate } | { readonly why: 'noDay' | 'noPace' | 'tooFar' };

/** Nobody plans further; ten years of 365.25 days. */
const farthestDays = 3652;

/** The day on which so many hours from the walk are worked, by the machine's hours in a week. */
export function dayIn({ startedAt }: Walk, week: WeekHours | undefined, hours: number): DueDay {
  const from = dayOf(startedAt);
  if (from === undefined) return { why: 'noDay' };
  if (hours <= 0) return { day: from };
  if (!week) return { why: 'noPace' };
  const days = Math.round((hours / week.hours) * 7);
  const day = days <= farthestDays ? addDays(from, days) : undefined;
  return day === undefined ? { why: 'tooFar' } : { day };
}
