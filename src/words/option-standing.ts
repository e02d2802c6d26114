import type { OptionAnswer } from '../core/option-answer.ts';
import type { OptionsResult } from '../core/options.ts';
import { optionAnswer as words } from './en/options.ts';

/** Where an option stands among the others, in a few words. */
export function standingText(answer: OptionAnswer, result: OptionsResult, starting: boolean): string {
  const { ranked, choice } = result;
  const at = ranked.findIndex(({ id }) => id === answer.id);
  const close = choice.kind === 'too-close' && at > 0 && choice.ids.includes(answer.id);
  const place =
    at >= 0 ? words.standing(at + 1) : answer.fit.against.length > 0 ? words.cannot : words.noCost;
  return [place, ...(close ? [words.close1] : []), ...(starting ? [words.starting] : [])].join(', ');
}
