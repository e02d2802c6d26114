import type { SourceMark } from '../../core/source.ts';

/** How far a figure can be trusted, as a few words beside it. */
export const sourceMarkWords: Readonly<Record<SourceMark, string>> = {
  published: 'published',
  derived: 'worked out from published figures',
  weak: 'weakly published',
  'from-memory': 'from memory',
  'common-practice': 'common practice',
  estimate: 'estimate',
  entered: 'entered by a person',
  measured: 'measured when new',
};

export const softSource =
  'This leans on a starting value that is an estimate. Look the figure up in the machine’s manual and enter it on the limit sheet.';

export const printContradicts = 'The print contradicts itself in its two units; the stricter one is used.';
export const loadAssumed = 'The load is not known, so the strictest load’s limit is used.';
