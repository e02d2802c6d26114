import type { Walk, Work } from './walk.ts';

const isoMoment = /^(\d{4})-(\d{2})-(\d{2})(?:T(\d{2}):(\d{2}))?/;
const minutesADay = 1440;

/** Days of the Gregorian calendar since some day long ago (days_from_civil, H. Hinnant, 2013). */
function dayNumber(moment: string, offsetMinutes: number): number | undefined {
  const [, years, months, days, hours, minutes] = (isoMoment.exec(moment) ?? []).map(Number);
  if (years === undefined || months === undefined || days === undefined) return undefined;
  const year = months <= 2 ? years - 1 : years;
  const month = months <= 2 ? months + 9 : months - 3;
  const leaps = Math.floor(year / 4) - Math.floor(year / 100) + Math.floor(year / 400);
  const local = (hours || 0) * 60 + (minutes || 0) + offsetMinutes;
  return 365 * year + leaps + Math.floor((153 * month + 2) / 5) + days + Math.floor(local / minutesADay);
}

/** The day of a walk where it was made, as a number that grows by 1 a day; undefined for one without a date. */
export const dayOfWalk = ({ startedAt }: Walk): number | undefined =>
  startedAt && dayNumber(startedAt.utc, startedAt.offsetMinutes);

/** The day of work, which is written as it was where it was done; undefined for work without one. */
export const dayOfWork = ({ on }: Pick<Work, 'on'>): number | undefined =>
  on === undefined ? undefined : dayNumber(on, 0);

/** Whole days from one walk to another; undefined where either has no date. */
export function daysBetween(a: Walk, b: Walk): number | undefined {
  const [from, to] = [dayOfWalk(a), dayOfWalk(b)];
  return from === undefined || to === undefined ? undefined : to - from;
}
