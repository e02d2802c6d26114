import { callRank } from '../core/calls.ts';
import { signsOf, worstOn } from '../core/findings.ts';
import type { Machine, Side } from '../core/machine.ts';
import type { Reason } from '../core/reason.ts';
import type { ItemOutcome, Scored } from '../core/score.ts';
import { shownCall } from '../core/verdict.ts';
import type { Walk } from '../core/walk.ts';
import { callWords } from './en/calls.ts';
import { componentNames, findingLabel, itemName } from './en/items.ts';
import { appraisalVerdict, jobsiteVerdict, verdict as shared } from './en/verdict.ts';
import type { Formatter } from './format.ts';
import { outcomePlace, wearText } from './outcome-text.ts';

/** What is judged, and how a reason and a number read. */
export interface Judged {
  readonly walk: Walk;
  readonly machine: Machine;
  readonly scored: Scored;
  readonly format: Formatter;
  readonly reasonText: (reason: Reason) => string;
  /** Of a hand-out or a return: its own questions, which are loaded with it. */
  readonly rental?: { readonly answers: (of: Judged) => readonly Answer[] } | undefined;
}

/** A question that a purpose asks first, and its answer: a sentence, or a list with what is said when it is empty. */
export interface Answer {
  readonly ask: string;
  readonly say: string | readonly string[];
  /** Stands under a list. */
  readonly more?: string;
}

export const callWord = ({ scored }: Judged): string => {
  const call = shownCall(scored.verdict);
  return call === 'open' ? shared.openTitle : callWords[call].word;
};

export const named = (outcome: ItemOutcome): string =>
  `${itemName(outcome.state.item.id)}, ${outcomePlace(outcome)}`;

export const listOr = (lines: readonly string[], none: string): string | readonly string[] =>
  lines.length === 0 ? none : lines;

/** What a visit to do the calls needs: the parts, and what the work itself asks for. */
function toBring(of: Judged): readonly string[] {
  const due = of.scored.outcomes.filter(({ atLeast }) => callRank(atLeast) >= callRank('adjust'));
  const parts = due
    .filter(({ atLeast }) => atLeast === 'replace' || atLeast === 'park')
    .map(
      ({ state }) =>
        `${jobsiteVerdict.bringParts}: ${componentNames[state.item.component].one}, ${itemName(state.item.id)}`,
    );
  const adjusts = due.some(({ atLeast }) => atLeast === 'adjust');
  const grease = of.machine.shape.tensioner === 'grease';
  return [
    ...new Set(parts),
    ...(adjusts && grease ? [jobsiteVerdict.bringGrease] : []),
    ...(due.length > 0 ? [jobsiteVerdict.bringBlocks, jobsiteVerdict.bringSecond] : []),
  ];
}

/** Warning signs, each once. */
function signLines({ scored }: Judged): readonly string[] {
  const lines = signsOf(scored.outcomes).map(
    ({ state }) => `${itemName(state.item.id)}: ${findingLabel(state.item.id, state.finding ?? '')}`,
  );
  return [...new Set(lines)];
}

export const openNames = (of: Judged): readonly string[] => {
  const { openParking, openOther } = of.scored.verdict;
  const names = [...openParking, ...openOther].map(({ state }) => itemName(state.item.id));
  return [...new Set(names)];
};

function whyOf(of: Judged): string {
  const [driver] = of.scored.verdict.drivers;
  const reason = driver?.reasons[0];
  if (!driver || !reason) return callWords.run.line;
  return `${named(driver)}. ${of.reasonText(reason)}`;
}

function jobsite(of: Judged): readonly Answer[] {
  const w = jobsiteVerdict;
  const { meanwhile, settled, atLeast } = of.scored.verdict;
  const move = { work: w.moveYes, 'light-work': w.moveYes, 'move-only': w.moveOnly, nothing: w.moveNo }[
    meanwhile
  ];
  const stopped = meanwhile === 'move-only' || meanwhile === 'nothing' || atLeast === 'park';
  const light = meanwhile === 'light-work' ? w.workLight : w.workYes;
  const known = settled ? light : w.workNotKnown;
  const until = atLeast === 'run' ? w.untilNext : w.untilDone(callWord(of));
  return [
    { ask: w.mayMove, say: !settled && move === w.moveYes ? w.workNotKnown : move },
    { ask: w.mayWork, say: stopped ? w.workNo : known },
    { ask: w.untilWhen, say: stopped ? w.stopNow : until },
    { ask: shared.theReason, say: whyOf(of) },
    { ask: w.bring, say: listOr(toBring(of), w.bringNothing) },
    { ask: w.notSeen, say: listOr(openNames(of), shared.nothingOpen) },
  ];
}

function worstText(of: Judged, side: Side): string {
  const worst = worstOn(of.scored.outcomes, side);
  if (!worst) return appraisalVerdict.worstNone;
  const worn = wearText(worst.state, of.format);
  return [named(worst), ...(worn === undefined ? [] : [worn]), callWords[worst.atLeast].word].join(', ');
}

function appraisal(of: Judged): readonly Answer[] {
  const w = appraisalVerdict;
  const due = of.scored.outcomes.filter(({ atLeast }) => callRank(atLeast) >= callRank('repair'));
  return [
    {
      ask: w.deduct,
      say: listOr(due.map(named), w.deductNothing),
      more: w.sums,
    },
    { ask: w.worstLeft, say: worstText(of, 'left') },
    { ask: w.worstRight, say: worstText(of, 'right') },
    { ask: w.signs, say: listOr(signLines(of), w.signsNone) },
    { ask: w.notVerified, say: listOr(openNames(of), w.allVerified) },
  ];
}

/** The questions that the purpose of a walk asks first, answered. */
export const answersOf = (of: Judged): readonly Answer[] =>
  of.rental?.answers(of) ?? (of.walk.purpose === 'appraisal' ? appraisal : jobsite)(of);
