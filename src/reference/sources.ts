import type { Source } from '../core/source.ts';

/** A figure or a call that a maker, a standard or a handbook prints. */
export const published = (text: string): Source => ({ mark: 'published', text });

/** Our own estimate: wide, and never to pass as a maker's limit. */
export const estimate = (text: string): Source => ({ mark: 'estimate', text });

/** Printed somewhere, but not where one would lean on it. */
export const weakly = (text: string): Source => ({ mark: 'weak', text });

/** Remembered from the trade and not looked up. */
export const fromMemory = (text: string): Source => ({ mark: 'from-memory', text });

/** A call that the trade commonly makes; the text names what is printed about the fact behind it. */
export const practice = (text: string): Source => ({ mark: 'common-practice', text });

/** What the trade does and no source was found for. */
export const common = practice('Common practice, no source');
