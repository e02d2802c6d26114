import type { Source } from '../core/source.ts';
import { sourceMarkWords } from './en/sources.ts';

/** Where a figure is from and how far it can be trusted. */
export function sourceText({ mark, text: from }: Source): string {
  const word = sourceMarkWords[mark];
  // Some texts say it themselves.
  return from === '' ? word : from.toLowerCase().startsWith(word) ? from : `${word}: ${from}`;
}
