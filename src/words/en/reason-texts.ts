import type { ReasonTexts } from './reason-line.ts';
import { partReasonTexts } from './reason-texts-parts.ts';
import { trackReasonTexts } from './reason-texts-track.ts';

/** Every sentence of a reason that needs no figures. Long, so that the app is sent them as data. */
export const reasonTexts: ReasonTexts = { ...trackReasonTexts, ...partReasonTexts };
