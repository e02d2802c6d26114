import { sagMethods, type SagMethod } from '../../core/limits.ts';
import type { Open, OpenKind, Params } from '../../core/reason.ts';
import { unseenReasons, type UnseenReason } from '../../core/readings.ts';
import type { Formatter } from '../format.ts';
import { unseenWords } from './choices.ts';
import { openTexts, type OpenWords } from './open-texts.ts';
import { cleanlinessWords, postureWords, sagMethodWords } from './sag.ts';

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

/** Kinds of open whose words depend on the case. */
const sayings: Readonly<Record<Exclude<OpenKind, keyof typeof openTexts>, Say>> = {
  'not-read': notRead,
  'not-seen': notSeen,
  'not-comparable': notComparable,
  needs,
};

const isFixed = (kind: OpenKind): kind is keyof typeof openTexts => kind in openTexts;

/** The words for something open. */
export const openWords = ({ kind, params }: Open, format: Formatter): OpenWords =>
  isFixed(kind) ? openTexts[kind] : sayings[kind](params, format);

/** The same in one line. */
export function openLine(open: Open, format: Formatter): string {
  const { what, mend } = openWords(open, format);
  return `${what} ${mend}`;
}
