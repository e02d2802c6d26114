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
