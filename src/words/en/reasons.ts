import type { Reason } from '../../core/reason.ts';
import type { Formatter } from '../format.ts';
import { isReason, reasonLine } from './reason-line.ts';
import { reasonTexts } from './reason-texts.ts';

/** True for a message that has a sentence here. */
export const knowsMessage = (message: string): boolean => isReason(message, reasonTexts);

/** The sentence of a reason, where its texts are at hand as code. */
export const reasonSentence = ({ message, params }: Reason, format: Formatter): string =>
  reasonLine(message, params, format, reasonTexts);
