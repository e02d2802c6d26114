import type { Call, Meanwhile } from '../../core/calls.ts';

/** A word and the line that explains it. */
export interface Explained {
  readonly word: string;
  readonly line: string;
}

export const callWords: Readonly<Record<Call, Explained>> = {
  run: { word: 'run', line: 'Nothing to do on this until the next walk.' },
  recheck: { word: 'recheck', line: 'Look again sooner; the reading itself is trusted.' },
  adjust: { word: 'adjust', line: 'Set the tension or travel, then read it again.' },
  repair: { word: 'repair', line: 'Mend it; the part itself can stay.' },
  replace: { word: 'replace', line: 'The part is done: order it and plan the change.' },
  park: { word: 'park', line: 'Stop using the machine until this is done.' },
};

export const meanwhileWords: Readonly<Record<Meanwhile, Explained>> = {
  work: { word: 'work', line: 'It may work as usual until then.' },
  'light-work': {
    word: 'light work',
    line: 'Level, firm ground, no slopes, few turns; look at it every day.',
  },
  'move-only': { word: 'move only', line: 'Straight, level and slow, to the loader; no work.' },
  nothing: { word: 'nothing', line: 'Leave it where it stands; do not drive or move it.' },
};

/** What is shown instead of run while something that could park the machine is not known. */
export const openCall: Explained = {
  word: 'open',
  line: 'Nothing bad was found, but something that could stop it is not known yet.',
};
