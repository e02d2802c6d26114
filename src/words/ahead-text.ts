import type { Interval, PartHours } from '../core/hours-left.ts';
import { horizonHours } from '../core/hours-left.ts';
import type { CostedJob } from '../core/job-costs.ts';
import type { OpenJob } from '../core/job-plan.ts';
import type { Outlook } from '../core/outlook.ts';
import type { Formatter } from './format.ts';
import { ahead as words, jobWords } from './en/ahead.ts';
import { placeName, sideNames } from './en/items.ts';
import { addDays, localDate } from './calendar.ts';
import type { Walk } from '../core/walk.ts';
import type { Dates } from './dates.ts';

/** Hours as a person says them: to 5 below 50, to 10 below 1,000, to 50 beyond. */
export function aboutHours(hours: number, format: Formatter): string {
  const step = hours < 50 ? 5 : hours < 1000 ? 10 : 50;
  return format.hours(Math.round(hours / step) * step);
}

/** Money as a person says it: three figures of it, in whole units. */
export function aboutMoney(minor: number, currency: string, format: Formatter): string {
  const step = Math.max(100, 10 ** (Math.floor(Math.log10(Math.max(1, Math.abs(minor)))) - 1));
  return format.money(Math.round(minor / step) * step, currency);
}

/** `about 620 h, 450 h to 860 h`, or what of it lies beyond what anybody plans. */
export function leftText({ low, middle, high }: Interval, format: Formatter): string {
  const about = (hours: number): string => aboutHours(hours, format);
  if (!Number.isFinite(low)) return words.beyond(about(horizonHours));
  if (!Number.isFinite(middle)) return words.openAbove(about(low), about(horizonHours));
  if (middle <= 0 && high <= 0) return words.worn;
  const range = Number.isFinite(high)
    ? words.between(about(low), about(high))
    : words.openAbove(about(low), about(horizonHours));
  return `${words.about(about(middle))} (${range})`;
}

export const partPlace = ({ history: { side, item, number } }: PartHours): string =>
  placeName({ side, component: item.component, ...(number !== undefined && { number }) });

/** The part as a line names it: `lug depth, left track`. */
export const partName = (part: PartHours, format: Formatter): string =>
  `${format.item(part.history.item.id)}, ${partPlace(part)}`;

/** The day on which so many hours from the walk are worked, where hours a week are known. */
function dayAfter(walk: Walk, { week }: Outlook, hours: number): string | undefined {
  const { startedAt } = walk;
  const from = startedAt && localDate(startedAt.utc, startedAt.offsetMinutes);
  if (from === undefined || !week || !Number.isFinite(hours)) return undefined;
  return addDays(from, Math.round((hours / week.hours) * 7));
}

/** The meter reading and the day of something so many hours from the walk. */
export function aheadWhen(
  walk: Walk,
  outlook: Outlook,
  inHours: number,
  { format, dates }: { readonly format: Formatter; readonly dates: Dates },
): string {
  const { meterHours } = walk;
  const day = dayAfter(walk, outlook, inHours);
  const parts = [
    ...(meterHours === undefined ? [] : [words.atMeter(aboutHours(meterHours + inHours, format))]),
    words.inHours(aboutHours(inHours, format)),
    ...(day === undefined ? [] : [words.onDate(dates.date(day))]),
  ];
  return parts.join(', ');
}

const named = ({ job }: Pick<CostedJob, 'job'>): string => words.counted(jobWords[job.kind], job.count);

/** What is done at a visit: the same job on both sides is said once. */
export function jobsText(jobs: readonly Pick<CostedJob, 'job'>[]): string {
  const sides = new Map<string, string[]>();
  for (const each of jobs) {
    const name = named(each);
    const { side } = each.job;
    sides.set(name, [...(sides.get(name) ?? []), side === 'whole' ? '' : sideNames[side]]);
  }
  return words.joined(
    [...sides].map(([name, on]) => {
      if (on.length > 1) return words.both(name);
      return on[0] === '' || on[0] === undefined ? name : words.onSide(name, on[0]);
    }),
  );
}

export const jobText = (each: Pick<CostedJob, 'job'>): string => jobsText([each]);

/** Why a job is not in the plan or has no price, in a sentence. */
export function whyOpen({
  why,
  job,
}: Pick<OpenJob, 'why'> & { readonly job: Pick<OpenJob['job'], 'kind'> }): string {
  switch (why.kind) {
    case 'held-off':
      return words.heldOff;
    case 'no-visit':
      return words.noVisit;
    case 'no-price':
      return words.noPrice(jobWords[job.kind]);
    case 'no-prices':
      return words.noPrices;
    case 'no-rates':
      return words.noRates;
    case 'two-currencies':
      return words.twoCurrencies(why.prices, why.rates);
    case 'not-here':
      return words.notHere;
    case 'newer-version':
      return words.newerPrices;
  }
}
