import { unreachable } from '../../core/result.ts';
import type { Formatter } from '../format.ts';

/** Why a reading is asked about before it is taken; values are base units. */
export type Question =
  | {
      readonly kind: 'out-of-range';
      readonly item: string;
      readonly mm: number;
      readonly lowMm: number;
      readonly highMm: number;
    }
  | { readonly kind: 'negative'; readonly item: string; readonly mm: number }
  | { readonly kind: 'thicker-than-new'; readonly item: string; readonly mm: number; readonly newMm: number }
  | { readonly kind: 'far-past-limit'; readonly item: string; readonly percent: number }
  | { readonly kind: 'better-than-last'; readonly item: string; readonly mm: number; readonly lastMm: number }
  | {
      readonly kind: 'wrong-pitch';
      readonly pitchMm: number;
      readonly nominalMm: number;
      readonly links: number;
      readonly likelyLinks?: number;
    }
  | { readonly kind: 'meter-back'; readonly hours: number; readonly lastHours: number };

/** What to ask about an implausible value. */
export function questionLine(question: Question, format: Formatter): string {
  switch (question.kind) {
    case 'out-of-range':
      return `${format.depth(question.mm)} of ${format.item(question.item)} would be outside anything known (${format.depth(question.lowMm)} to ${format.depth(question.highMm)}). Is the unit right?`;
    case 'negative':
      return `${format.item(question.item)} cannot well be below nothing. Is ${format.depth(question.mm)} right?`;
    case 'thicker-than-new':
      return `${format.depth(question.mm)} would be better than new (${format.depth(question.newMm)}). Right place, right sheet, right unit?`;
    case 'far-past-limit':
      return `That would be ${format.percent(question.percent)} worn. Right place, right sheet, right unit?`;
    case 'better-than-last':
      return `Last walk it read ${format.depth(question.lastMm)}; parts do not grow back. Was it changed or turned, or is this another place?`;
    case 'wrong-pitch': {
      const hint =
        question.likelyLinks === undefined
          ? 'Count the links again: five pins span four links.'
          : `Did the tape span ${format.plural(question.likelyLinks, 'link', 'links')}, not ${format.number(question.links)}? Five pins span four links.`;
      return `A pitch of ${format.length(question.pitchMm)} does not fit this chain (${format.length(question.nominalMm)}). ${hint}`;
    }
    case 'meter-back':
      return `The hour meter shows ${format.hours(question.hours)}, but it showed ${format.hours(question.lastHours)} before. Was the meter changed?`;
    default:
      return unreachable(question);
  }
}

export const questionAnswers = {
  right: 'It is right',
  again: 'Read again',
  other: 'Type another value',
} as const;
