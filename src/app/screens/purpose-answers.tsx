import type { ComponentChildren } from 'preact';
import { callRank } from '../../core/calls.ts';
import type { Side } from '../../core/machine.ts';
import type { ItemOutcome } from '../../core/score.ts';
import { shownCall } from '../../core/verdict.ts';
import { callWords } from '../../words/en/calls.ts';
import { itemName } from '../../words/en/items.ts';
import {
  appraisalVerdict,
  jobsiteVerdict,
  rentalVerdict,
  verdict as shared,
} from '../../words/en/verdict.ts';
import { damageOf, signsOf, toBring } from '../data/findings.ts';
import { outcomePlace, reasonText, wearText } from '../data/describe.ts';
import { formatter } from '../data/format.ts';
import type { WalkModel } from '../data/walk-model.ts';
import styles from './walk.module.css';

interface Answer {
  readonly ask: string;
  readonly say: ComponentChildren;
}

const callWord = (model: WalkModel): string => {
  const call = shownCall(model.scored.verdict);
  return call === 'open' ? shared.openTitle : callWords[call].word;
};

const named = (outcome: ItemOutcome): string =>
  `${itemName(outcome.state.item.id)}, ${outcomePlace(outcome)}`;

const list = (lines: readonly string[], none: string): ComponentChildren =>
  lines.length === 0 ? (
    none
  ) : (
    <ul>
      {lines.map((line) => (
        <li key={line}>{line}</li>
      ))}
    </ul>
  );

const openNames = (model: WalkModel): readonly string[] => {
  const { openParking, openOther } = model.scored.verdict;
  const names = [...openParking, ...openOther].map(({ state }) => itemName(state.item.id));
  return [...new Set(names)];
};

function whyOf(model: WalkModel): string {
  const [driver] = model.scored.verdict.drivers;
  const reason = driver?.reasons[0];
  if (!driver || !reason) return callWords.run.line;
  return `${named(driver)}. ${reasonText(reason, formatter.value)}`;
}

function jobsite(model: WalkModel): readonly Answer[] {
  const w = jobsiteVerdict;
  const { meanwhile, settled, atLeast } = model.scored.verdict;
  const move = { work: w.moveYes, 'light-work': w.moveYes, 'move-only': w.moveOnly, nothing: w.moveNo }[
    meanwhile
  ];
  const stopped = meanwhile === 'move-only' || meanwhile === 'nothing' || atLeast === 'park';
  const light = meanwhile === 'light-work' ? w.workLight : w.workYes;
  const known = settled ? light : w.workNotKnown;
  const until = atLeast === 'run' ? w.untilNext : w.untilDone(callWord(model));
  return [
    { ask: w.mayMove, say: !settled && move === w.moveYes ? w.workNotKnown : move },
    { ask: w.mayWork, say: stopped ? w.workNo : known },
    { ask: w.untilWhen, say: stopped ? w.stopNow : until },
    { ask: shared.theReason, say: whyOf(model) },
    { ask: w.bring, say: list(toBring(model), w.bringNothing) },
    { ask: w.notSeen, say: list(openNames(model), shared.nothingOpen) },
  ];
}

function rental(model: WalkModel): readonly Answer[] {
  const w = rentalVerdict;
  const { atLeast, settled, openParking, openOther } = model.scored.verdict;
  const damage = damageOf(model);
  const open = openParking.length + openOther.length;
  const out = callRank(atLeast) <= callRank('recheck') ? w.outYes : w.outAfter(callWord(model));
  return [
    { ask: w.outAgain, say: atLeast === 'park' ? w.outNo : settled ? out : w.outNotKnown },
    {
      ask: w.chargeable,
      say: damage.length === 0 ? (open > 0 ? w.chargeSomeOpen : w.chargeNone) : w.chargeDamage(damage.length),
    },
    { ask: w.proof, say: open === 0 ? w.proofYes : w.proofMissing(open) },
    ...(damage.length > 0 ? [{ ask: shared.reasons, say: list(damage.map(named), '') }] : []),
    { ask: shared.notSeen, say: list(openNames(model), shared.nothingOpen) },
    { ask: '', say: w.noHandOut },
  ];
}

function worstOn(model: WalkModel, side: Side): string {
  const sized = model.scored.outcomes.filter(({ state }) => state.side === side && state.known);
  const [worst] = [...sized].sort(
    (a, b) =>
      callRank(b.atLeast) - callRank(a.atLeast) ||
      (b.state.wear?.percent ?? 0) - (a.state.wear?.percent ?? 0),
  );
  if (!worst) return appraisalVerdict.worstNone;
  const worn = wearText(worst.state, formatter.value);
  return [named(worst), ...(worn === undefined ? [] : [worn]), callWords[worst.atLeast].word].join(', ');
}

function appraisal(model: WalkModel): readonly Answer[] {
  const w = appraisalVerdict;
  const due = model.scored.outcomes.filter(({ atLeast }) => callRank(atLeast) >= callRank('repair'));
  return [
    {
      ask: w.deduct,
      say: (
        <>
          {list(due.map(named), w.deductNothing)}
          {due.length > 0 && w.deductNeedsPrices}
        </>
      ),
    },
    { ask: w.worstLeft, say: worstOn(model, 'left') },
    { ask: w.worstRight, say: worstOn(model, 'right') },
    { ask: w.signs, say: list(signsOf(model), w.signsNone) },
    { ask: w.notVerified, say: list(openNames(model), w.allVerified) },
  ];
}

const answersFor = { jobsite, 'rental-return': rental, appraisal } as const;

/** The questions that each purpose asks first, answered. */
export function PurposeAnswers({ model }: { model: WalkModel }) {
  return (
    <dl class={styles.answers}>
      {answersFor[model.walk.purpose](model).map(({ ask, say }) => (
        <div key={ask}>
          <dt>{ask}</dt>
          <dd>{say}</dd>
        </div>
      ))}
    </dl>
  );
}
