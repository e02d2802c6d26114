import type { Message } from '../format.ts';
import { partReasons } from './reasons-parts.ts';
import { trackReasons } from './reasons-track.ts';

/** The sentence of every reason that a rule may give, by message id. */
export const reasons: Readonly<Record<string, Message>> = { ...trackReasons, ...partReasons };
