import type { Params } from '../../core/reason.ts';
import { entry } from '../entry.ts';
import type { Formatter } from '../format.ts';
import { reasonMessages } from './reason-messages.ts';

/** Sentences that are the same for every reading, by message id. */
export type ReasonTexts = Readonly<Record<string, string>>;

/** True for a message that has a sentence. */
export const isReason = (message: string, texts: ReasonTexts): boolean =>
  entry(texts, message) !== undefined || entry(reasonMessages, message) !== undefined;

/** The sentence of a reason; a rule of one's own brings its own text, one of a newer version only its message. */
export function reasonLine(message: string, params: Params, format: Formatter, texts: ReasonTexts): string {
  if (typeof params['text'] === 'string') return params['text'];
  return entry(texts, message) ?? entry(reasonMessages, message)?.(params, format) ?? message;
}
