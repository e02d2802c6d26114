import type { OptionAnswer } from '../core/option-answer.ts';
import type { OptionsResult } from '../core/options.ts';
import { optionAnswer as words } from './en/options.ts';

/** Where an option stands among the others, in a few words. */
export function standingText(answer: OptionAnswer, result: OptionsResult, starting: boolean): string {
  const { ranked, choice } = result;
  const at = ranked.findIndex(({ id }) => id === answer.id);
  const close = choice.kind === 'too-close' && choice.ids.includes(answer.id);
  const unranked = answer.fit.against.length > 0 ? words.cannot : words.noCost;
  const place = close ? words.close1 : at >= 0 ? words.standing(at + 1) : unranked;
  return [place, ...(starting ? [words.starting] : [])].join(', ');
}
