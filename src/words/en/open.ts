import type { SagMethod } from '../../core/limits.ts';
import type { Open, OpenKind, Params } from '../../core/reason.ts';
import type { UnseenReason } from '../../core/readings.ts';
import type { Formatter } from '../format.ts';
import { unseenWords } from './choices.ts';
import { sagMethodWords } from './sag.ts';

/** What is not known, and how to mend that. */
export interface OpenWords {
  readonly what: string;
  readonly mend: string;
}

type Say = (params: Params, format: Formatter) => OpenWords;

const isUnseen = (why: unknown): why is UnseenReason => typeof why === 'string' && why in unseenWords;
const isMethod = (method: unknown): method is SagMethod =>
  typeof method === 'string' && method in sagMethodWords;

/** How the sheet reads the sag, as the end of a sentence; `methods` may hold several, parted by commas. */
const sheetReads = (methods: unknown): string =>
  String(methods ?? '')
    .split(',')
    .map((method) => (isMethod(method) ? sagMethodWords[method].reads : undefined))
    .filter((reads) => reads !== undefined)
    .join(', or ');

function needs(params: Params, format: Formatter): OpenWords {
  const needed = params.needs ?? params.item;
  const name = needed === undefined ? 'another reading' : format.item(String(needed));
  return { what: `It depends on ${name}, which is not known.`, mend: `Read ${name}.` };
}

function notComparable(params: Params): OpenWords {
  const reads = sheetReads(params.sheet ?? params.methods);
  const was = isMethod(params.method) ? `This was read ${sagMethodWords[params.method].reads}. ` : '';
  const from = reads === '' ? 'in another way' : `from ${reads}`;
  return {
    what: `Not comparable: ${was}This sheet measures ${from}.`,
    mend: 'Measure again in the sheet’s way, or take a sheet that measures your way.',
  };
}

const fixed = (what: string, mend: string): Say => {
  const words = { what, mend };
  return () => words;
};

const sayings: Readonly<Record<OpenKind, Say>> = {
  'not-read': fixed('Not read yet.', 'Read it, pass it, or say why it could not be reached.'),
  'not-seen': (params) => ({
    what: isUnseen(params.why) ? `Not seen: ${unseenWords[params.why]}.` : 'Not seen.',
    mend: params.why === 'mud' ? 'Clean it and look again.' : 'Come back to it when it can be reached.',
  }),
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
    'The limit sheet has no new value and limit for this.',
    'Look it up and enter it on the sheet.',
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
    'The value is hardly possible and nobody has confirmed it.',
    'Read it again, or confirm it.',
  ),
  needs,
  'flange-unknown': fixed(
    'The idler’s flange may be worn too, which would hide wear of its tread.',
    'Look at the flange and say how it is.',
  ),
};

/** The words for something open; params used when present: `why`, `method`, `sheet`, `needs`. */
export const openWords = (open: Open, format: Formatter): OpenWords =>
  sayings[open.kind](open.params, format);

/** The same in one line. */
export function openLine(open: Open, format: Formatter): string {
  const { what, mend } = openWords(open, format);
  return `${what} ${mend}`;
}
