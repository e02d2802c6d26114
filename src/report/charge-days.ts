import type { Contract } from '../core/contract.ts';
import type { ObservedAt } from '../core/readings.ts';
import { addDays, localDate } from '../words/calendar.ts';
import type { Dates } from '../words/dates.ts';
import { charge as words } from '../words/en/charge.ts';
import type { Block } from './blocks.ts';
import { facts, section } from './parts.ts';

/** Until when the renter may object and what was taken off is kept, counted from the day of the return. */
export function chargeDays(contract: Contract, at: ObservedAt | undefined, dates: Dates): readonly Block[] {
  const from = at && localDate(at.utc, at.offsetMinutes);
  const by = (count: number, else_: (count: number) => string): string => {
    const day = from === undefined ? undefined : addDays(from, count);
    return day === undefined ? else_(count) : dates.date(day);
  };
  const { replyDays, keptDays } = contract;
  return section(
    words.dates,
    facts([
      [words.replyBy, replyDays === undefined ? undefined : by(replyDays, words.replyDays)],
      [words.keptUntil, keptDays === undefined ? undefined : by(keptDays, words.keptDays)],
    ]),
  );
}
