import type { Params } from '../../core/reason.ts';
import type { Formatter } from '../format.ts';
import { sizeOf } from '../size-of.ts';

const mm = (params: Params, name: string): number => Number(params[name] ?? 0);

/** A pitch that is short by one link in so many was divided by one too many. */
function linksHint(params: Params, links: number | undefined): string {
  const wasFive =
    links !== undefined &&
    Math.abs((mm(params, 'mm') * links) / (links - 1) / mm(params, 'newMm') - 1) < 0.05;
  return wasFive
    ? `Did the tape span ${links - 1} links, not ${links}? Five pins span four links.`
    : 'Count the links again: five pins span four links.';
}

/**
 * What to ask about a value that cannot well be right; `params` are those of core/plausible.ts, `links` is how
 * many links a pitch was divided by.
 */
export function questionLine(itemId: string, params: Params, format: Formatter, links?: number): string {
  const size = (name: string): string => sizeOf(itemId, mm(params, name), format);
  const value = size('mm');
  switch (params.why) {
    case 'negative':
      return `${value} is below nothing. Is the minus right?`;
    case 'range': {
      const range = `${size('leastMm')} to ${size('mostMm')}`;
      return `${value} of ${format.item(itemId)}? Known machines have ${range}. Right place, right unit, point where it belongs?`;
    }
    case 'pitch':
      return `A pitch of ${format.length(mm(params, 'mm'))} does not fit this chain, new ${format.length(mm(params, 'newMm'))}. ${linksHint(params, links)}`;
    case 'percent':
      return mm(params, 'percent') < 0
        ? `${value} would be better than new (${size('newMm')}). Right place, right sheet, right unit?`
        : `${value} would be ${format.percent(mm(params, 'percent'))} worn. Right place, right sheet, right unit?`;
    default:
      return `${value} of ${format.item(itemId)}: is that right?`;
  }
}

export const meterWentBack = (now: string, last: string): string =>
  `The hour meter shows ${now}, but it showed ${last} before. Was the meter changed?`;

export const questionAnswers = {
  right: 'It is right',
  again: 'Read again',
  other: 'Type another value',
} as const;
