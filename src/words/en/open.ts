import { sagMethods, type SagMethod } from '../../core/limits.ts';
import type { Open, OpenKind, Params } from '../../core/reason.ts';
import { unseenReasons, type UnseenReason } from '../../core/readings.ts';
import type { Formatter } from '../format.ts';
import { unseenWords } from './choices.ts';
import { cleanlinessWords, postureWords, sagMethodWords } from './sag.ts';

/** What is not known, and how to mend that. */
export interface OpenWords {
  readonly what: string;
  readonly mend: string;
}

type Say = (params: Params, format: Formatter) => OpenWords;

const unseenOf = (why: unknown): UnseenReason | undefined => unseenReasons.find((each) => each === why);
const methodOf = (method: unknown): SagMethod | undefined => sagMethods.find((each) => each === method);

function needs(params: Params, format: Formatter): OpenWords {
  const name = params.item === undefined ? 'another reading' : format.item(String(params.item));
  return { what: `It depends on ${name}, which is not known.`, mend: `Read ${name}.` };
}

/** A print that wants the track in working dirt, and the track was clean. */
const otherDirt: OpenWords = {
  what: `Not comparable: this sheet measures ${cleanlinessWords['working-dirt']}, and the track was clean.`,
  mend: 'Work it a while, then measure as it runs.',
};

function notComparable(params: Params): OpenWords {
  if (params.clean === 'working-dirt') return otherDirt;
  const [method, wanted] = [methodOf(params.method), methodOf(params.wanted)];
  const posture =
    params.wantedPosture === 'raised' || params.wantedPosture === 'ground' ? params.wantedPosture : undefined;
  const from = wanted ? sagMethodWords[wanted].reads : 'another datum';
  if (method === wanted && posture) {
    return {
      what: `Not comparable: this sheet measures with the machine ${postureWords[posture]}, or under another load.`,
      mend: 'Measure again in the sheet’s way.',
    };
  }
  return {
    what: `Not comparable: this sheet measures from ${from}${posture ? `, ${postureWords[posture]}` : ''}.`,
    mend: 'Measure again in the sheet’s way, or take a sheet that measures your way.',
  };
}

function notRead(params: Params): OpenWords {
  if (typeof params.have !== 'number' || typeof params.want !== 'number') {
    return { what: 'Not read yet.', mend: 'Read it, pass it, or say why it could not be reached.' };
  }
  const left = params.want - params.have;
  return {
    what: `Read at ${params.have} of ${params.want} spots.`,
    mend: left === 1 ? 'Read one more spot.' : `Read ${left} more spots.`,
  };
}

function notSeen(params: Params): OpenWords {
  const why = unseenOf(params.why);
  return {
    what: why ? `Not seen: ${unseenWords[why]}.` : 'Not seen.',
    mend: why === 'mud' ? 'Clean it and look again.' : 'Come back to it when it can be reached.',
  };
}

const fixed = (what: string, mend: string): Say => {
  const words = { what, mend };
  return () => words;
};

const sayings: Readonly<Record<OpenKind, Say>> = {
  'not-read': notRead,
  'not-counted': fixed(
    'How many, or over how much of the track, was not said.',
    'Count them, or say over how much of the track.',
  ),
  'not-seen': notSeen,
  'half-seen': fixed('Only half of the loop was seen.', 'Roll the track half a turn and look at the rest.'),
  'by-eye': fixed('Judged by eye, not measured.', 'Measure it where it matters.'),
  'taken-back': fixed('The reading was taken back.', 'Read it again.'),
  clash: fixed(
    'Two versions of this stand side by side; the more severe one counts.',
    'Choose the one that is right.',
  ),
  'newer-version': fixed(
    'Made by a newer version of the app, which this one cannot read.',
    'Update the app.',
  ),
  'no-rules': fixed('There is no rule set for this walk.', 'Choose a rule set for the machine.'),
  'newer-rules': fixed(
    'The rule set is written for a newer version of the app.',
    'Update the app, or choose another set.',
  ),
  'not-covered': fixed(
    'The rule set does not cover this item.',
    'Judge it yourself, or choose a set that covers it.',
  ),
  'no-sheet': fixed('There is no limit sheet for this machine.', 'Choose or write a limit sheet.'),
  'no-limit': fixed(
    'The limit sheet has no new size and limit for this.',
    'Look them up and enter them on the sheet.',
  ),
  'not-comparable': notComparable,
  'no-sag-value': fixed(
    'The limit sheet has no sag for this machine.',
    'Look it up with its method and enter it.',
  ),
  'clean-first': fixed(
    'The sheet reads this on a clean track.',
    'Clean it first, then measure. Never ease grease on packed mud.',
  ),
  questioned: fixed(
    'The value can hardly be right, and nobody has confirmed it.',
    'Read it again, or confirm it.',
  ),
  needs,
  'flange-unknown': fixed(
    'The idler’s flange may be worn too, which would hide wear of its tread.',
    'Look at the flange and say how it is.',
  ),
};

/** The words for something open. */
export const openWords = (open: Open, format: Formatter): OpenWords =>
  sayings[open.kind](open.params, format);

/** The same in one line. */
export function openLine(open: Open, format: Formatter): string {
  const { what, mend } = openWords(open, format);
  return `${what} ${mend}`;
}
