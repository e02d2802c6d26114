import type { OpenKind } from '../../core/reason.ts';

/** What is not known, and how to mend that. */
export interface OpenWords {
  readonly what: string;
  readonly mend: string;
}

/** Kinds of open whose words never change. */
export const openTexts = {
  'not-counted': {
    what: 'How many, or over how much of the track, was not said.',
    mend: 'Count them, or say over how much of the track.',
  },
  'half-seen': {
    what: 'Only half of the loop was seen.',
    mend: 'Roll the track half a turn and look at the rest.',
  },
  'by-eye': { what: 'Judged by eye, not measured.', mend: 'Measure it where it matters.' },
  'taken-back': { what: 'The reading was taken back.', mend: 'Read it again.' },
  clash: {
    what: 'Two versions of this stand side by side; the more severe one counts.',
    mend: 'Choose the one that is right.',
  },
  'newer-version': {
    what: 'Made by a newer version of the app, which this one cannot read.',
    mend: 'Update the app.',
  },
  'no-rules': { what: 'There is no rule set for this walk.', mend: 'Choose a rule set for the machine.' },
  'newer-rules': {
    what: 'The rule set is written for a newer version of the app.',
    mend: 'Update the app, or choose another set.',
  },
  'not-covered': {
    what: 'The rule set does not cover this item.',
    mend: 'Judge it yourself, or choose a set that covers it.',
  },
  'no-sheet': { what: 'There is no limit sheet for this machine.', mend: 'Choose or write a limit sheet.' },
  'no-limit': {
    what: 'The limit sheet has no new size and limit for this.',
    mend: 'Look them up and enter them on the sheet.',
  },
  'no-sag-value': {
    what: 'The limit sheet has no sag for this machine.',
    mend: 'Look it up with its method and enter it.',
  },
  'clean-first': {
    what: 'The sheet reads this on a clean track.',
    mend: 'Clean it first, then measure. Never ease grease on packed mud.',
  },
  questioned: {
    what: 'The value can hardly be right, and nobody has confirmed it.',
    mend: 'Read it again, or confirm it.',
  },
  'flange-unknown': {
    what: 'The idler’s flange may be worn too, which would hide wear of its tread.',
    mend: 'Look at the flange and say how it is.',
  },
} as const satisfies Partial<Record<OpenKind, OpenWords>>;
