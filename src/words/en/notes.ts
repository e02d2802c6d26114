import type { Note } from '../../core/score.ts';

/** What a call leans on, beside it. */
export const noteWords: Readonly<Record<Note['kind'], string>> = {
  estimate:
    'Leans on a starting value that is an estimate. Look the figure up in the machine’s manual and enter it on the sheet.',
  'print-contradicts': 'The print contradicts itself in its two units; the stricter one is used.',
  'load-assumed': 'How hard the work is was not said, so the strictest limit is used.',
  'band-gap': 'The print leaves a gap between two bands; the more severe one is used.',
  'by-eye': 'Judged by eye, not measured.',
};
