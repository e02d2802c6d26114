import { callRank } from '../core/calls.ts';
import { damageOf } from '../core/findings.ts';
import { jobTraits } from '../core/job-kinds.ts';
import type { Damage } from '../core/rental-damage.ts';
import type { ShortPart } from '../core/rental-short.ts';
import type { ItemOutcome } from '../core/score.ts';
import { charge } from './en/charge.ts';
import { placeName } from './en/items.ts';
import { beforeWords, handOutVerdict, rentalVerdict } from './en/rental-verdict.ts';
import { verdict as shared } from './en/verdict.ts';
import { capital } from './outcome-text.ts';
import { callWord, listOr, named, openNames, type Answer, type Judged } from './purpose-answers.ts';

/** What a hand-out or a return is judged by beside its readings. */
export interface RentalFacts {
  /** Photos of the sequence that were neither taken nor left out with a reason. */
  readonly missing: readonly unknown[];
  /** Sizes of a hand-out that do not say where their mark is. */
  readonly unmarked: number;
  /** The walk that a return is held against, and the day of it as people read it. */
  readonly handOut?: { readonly day: string };
  readonly damages: readonly Damage[];
  /** Of a hand-out: parts of which so short a hire cannot tell usual wear. */
  readonly shortHire: readonly ShortPart[];
}

const partOf = ({ job, side, number }: ShortPart): string =>
  capital(placeName({ side, component: jobTraits[job].component, ...(number !== undefined && { number }) }));

/** What is said before the hire of wear that it cannot tell. */
const shortLines = ({ format }: Judged, { shortHire }: RentalFacts): readonly string[] =>
  shortHire.map((part) =>
    charge.tooShort(partOf(part), format.percent(part.usualPercent), format.percent(part.offPercent)),
  );

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
function proof(of: Judged, { missing: photos, unmarked }: RentalFacts): string {
  const w = rentalVerdict;
  const open = openCount(of);
  const missing = [
    ...(open > 0 ? [w.proofMissing(open)] : []),
    ...(photos.length > 0 ? [w.proofPhotos(photos.length)] : []),
    ...(unmarked > 0 ? [w.proofMarks(unmarked)] : []),
  ];
  return missing.length === 0 ? w.proofYes : w.proofNo(missing);
}

function handOut(of: Judged, facts: RentalFacts): readonly Answer[] {
  const w = handOutVerdict;
  return [
    { ask: w.fit, say: mayGoOut(of) },
    { ask: w.proof, say: proof(of, facts) },
    {
      ask: w.goesWith,
      say: listOr(
        damageOf(of.scored.outcomes).map(named),
        openCount(of) === 0 ? w.goesSound : w.goesSoundSoFar,
      ),
    },
    ...(facts.shortHire.length > 0 ? [{ ask: w.shortHire, say: shortLines(of, facts) }] : []),
    { ask: shared.notSeen, say: listOr(openNames(of), shared.nothingOpen) },
  ];
}

/** What of a return is chargeable: with a hand-out only what was sound then. */
function chargeable(of: Judged, facts: RentalFacts, damage: readonly ItemOutcome[]): string {
  const w = rentalVerdict;
  if (damage.length === 0) return openCount(of) > 0 ? w.chargeSomeOpen : w.chargeNone;
  if (!facts.handOut) return w.chargeDamage(damage.length);
  const fresh = facts.damages.filter(({ before }) => before.kind === 'sound');
  return fresh.length === 0 ? w.chargeOld : w.chargeNew(fresh.length);
}

/** Damage of a return and, where there is a hand-out, how it was then. */
function damageLine({ handOut: then, damages }: RentalFacts, outcome: ItemOutcome): string {
  const { place, item } = outcome.state;
  const found = damages.find((each) => each.place === place && each.item === item.id);
  return found && then ? `${named(outcome)}: ${beforeWords[found.before.kind]}` : named(outcome);
}

function returned(of: Judged, facts: RentalFacts): readonly Answer[] {
  const w = rentalVerdict;
  const damage = damageOf(of.scored.outcomes);
  const day = facts.handOut?.day;
  return [
    { ask: w.outAgain, say: mayGoOut(of) },
    { ask: w.chargeable, say: chargeable(of, facts, damage) },
    { ask: w.proof, say: proof(of, facts) },
    ...(damage.length > 0
      ? [{ ask: shared.reasons, say: damage.map((each) => damageLine(facts, each)) }]
      : []),
    { ask: shared.notSeen, say: listOr(openNames(of), shared.nothingOpen) },
    { ask: '', say: day === undefined ? w.noHandOut : w.handOut(day) },
  ];
}

/** The questions that a hand-out or a return asks first, answered. */
export const rentalAnswers = (of: Judged, facts: RentalFacts): readonly Answer[] =>
  (of.walk.purpose === 'hand-out' ? handOut : returned)(of, facts);
