import { callRank } from '../core/calls.ts';
import { damageOf, signsOf, worstOn } from '../core/findings.ts';
import type { Machine, Side } from '../core/machine.ts';
import type { Reason } from '../core/reason.ts';
import type { Damage } from '../core/rental-damage.ts';
import type { ItemOutcome, Scored } from '../core/score.ts';
import { shownCall } from '../core/verdict.ts';
import type { Walk } from '../core/walk.ts';
import { callWords } from './en/calls.ts';
import { componentNames, findingLabel, itemName } from './en/items.ts';
import {
  appraisalVerdict,
  beforeWords,
  handOutVerdict,
  jobsiteVerdict,
  rentalVerdict,
  verdict as shared,
} from './en/verdict.ts';
import type { Formatter } from './format.ts';
import { outcomePlace, wearText } from './outcome-text.ts';

/** What is judged, and how a reason and a number read. */
export interface Judged {
  readonly walk: Walk;
  readonly machine: Machine;
  readonly scored: Scored;
  readonly format: Formatter;
  readonly reasonText: (reason: Reason) => string;
  /** What a hand-out or a return has beside its readings. */
  readonly rental?: RentalFacts | undefined;
}

export interface RentalFacts {
  /** Photos of the sequence that were neither taken nor left out with a reason. */
  readonly missing: readonly unknown[];
  /** Sizes of a hand-out that do not say where their mark is. */
  readonly unmarked: number;
  /** The walk that a return is held against, and the day of it as people read it. */
  readonly handOut?: { readonly day: string };
  readonly damages: readonly Damage[];
}

/** A question that a purpose asks first, and its answer: a sentence, or a list with what is said when it is empty. */
export interface Answer {
  readonly ask: string;
  readonly say: string | readonly string[];
  /** Stands under a list. */
  readonly more?: string;
}

const callWord = ({ scored }: Judged): string => {
  const call = shownCall(scored.verdict);
  return call === 'open' ? shared.openTitle : callWords[call].word;
};

const named = (outcome: ItemOutcome): string =>
  `${itemName(outcome.state.item.id)}, ${outcomePlace(outcome)}`;

const listOr = (lines: readonly string[], none: string): string | readonly string[] =>
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

const openNames = (of: Judged): readonly string[] => {
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

/** Whether the machine may go out. */
function mayGoOut(of: Judged): string {
  const w = rentalVerdict;
  const { atLeast, settled } = of.scored.verdict;
  const out = callRank(atLeast) <= callRank('recheck') ? w.outYes : w.outAfter(callWord(of));
  return atLeast === 'park' ? w.outNo : settled ? out : w.outNotKnown;
}

const openCount = ({ scored: { verdict } }: Judged): number =>
  verdict.openParking.length + verdict.openOther.length;

/** Whether all is read, every photo of the sequence there and every mark described; if not, what is missing. */
function proof(of: Judged): string {
  const w = rentalVerdict;
  const [open, photos, marks] = [openCount(of), of.rental?.missing.length ?? 0, of.rental?.unmarked ?? 0];
  const missing = [
    ...(open > 0 ? [w.proofMissing(open)] : []),
    ...(photos > 0 ? [w.proofPhotos(photos)] : []),
    ...(marks > 0 ? [w.proofMarks(marks)] : []),
  ];
  return missing.length === 0 ? w.proofYes : w.proofNo(missing);
}

function handOut(of: Judged): readonly Answer[] {
  const w = handOutVerdict;
  return [
    { ask: w.fit, say: mayGoOut(of) },
    { ask: w.proof, say: proof(of) },
    {
      ask: w.goesWith,
      say: listOr(
        damageOf(of.scored.outcomes).map(named),
        openCount(of) === 0 ? w.goesSound : w.goesSoundSoFar,
      ),
    },
    { ask: shared.notSeen, say: listOr(openNames(of), shared.nothingOpen) },
  ];
}

/** What of a return is chargeable: with a hand-out only what was sound then. */
function chargeable(of: Judged, damage: readonly ItemOutcome[]): string {
  const w = rentalVerdict;
  if (damage.length === 0) return openCount(of) > 0 ? w.chargeSomeOpen : w.chargeNone;
  if (!of.rental?.handOut) return w.chargeDamage(damage.length);
  const fresh = of.rental.damages.filter(({ before }) => before.kind === 'sound');
  return fresh.length === 0 ? w.chargeOld : w.chargeNew(fresh.length);
}

/** Damage of a return, each with how it was at hand-out. */
const damageLine = (of: Judged, { state: { place, item } }: ItemOutcome, text: string): string => {
  const found = of.rental?.damages.find((each) => each.place === place && each.item === item.id);
  return found && of.rental?.handOut ? `${text}: ${beforeWords[found.before.kind]}` : text;
};

function rental(of: Judged): readonly Answer[] {
  const w = rentalVerdict;
  const damage = damageOf(of.scored.outcomes);
  const day = of.rental?.handOut?.day;
  return [
    { ask: w.outAgain, say: mayGoOut(of) },
    { ask: w.chargeable, say: chargeable(of, damage) },
    { ask: w.proof, say: proof(of) },
    ...(damage.length > 0
      ? [{ ask: shared.reasons, say: damage.map((each) => damageLine(of, each, named(each))) }]
      : []),
    { ask: shared.notSeen, say: listOr(openNames(of), shared.nothingOpen) },
    { ask: '', say: day === undefined ? w.noHandOut : w.handOut(day) },
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

const answersFor = { jobsite, 'hand-out': handOut, 'rental-return': rental, appraisal } as const;

/** The questions that the purpose of a walk asks first, answered. */
export const answersOf = (of: Judged): readonly Answer[] => answersFor[of.walk.purpose](of);
