import type { Reason } from '../../core/reason.ts';
import { entry } from '../entry.ts';
import type { Formatter, Message } from '../format.ts';
import { partReasons } from './reasons-parts.ts';
import { trackReasons } from './reasons-track.ts';

/** The sentence of every reason that a rule may give, by message id. */
export const reasons: Readonly<Record<string, Message>> = { ...trackReasons, ...partReasons };

/** True for a message that has a sentence here. */
export const knowsMessage = (message: string): boolean => entry(reasons, message) !== undefined;

/** The sentence of a reason; a rule of one's own brings its own text, one of a newer version only its message. */
export function reasonSentence({ message, params }: Reason, format: Formatter): string {
  if (typeof params['text'] === 'string') return params['text'];
  return entry(reasons, message)?.(params, format) ?? message;
}
