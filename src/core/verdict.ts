import { callRank, stricter, worseCall, type Call, type Meanwhile } from './calls.ts';
import type { ItemOutcome } from './score.ts';

/** The calls of a machine put together. */
export interface Verdict {
  /** The worst call that is certain from what is known. */
  readonly atLeast: Call;
  /** The strictest *meanwhile* of the calls. */
  readonly meanwhile: Meanwhile;
  /** False while something that could park the machine is open: then the machine is never shown as `run`. */
  readonly settled: boolean;
  /** Outcomes that make the call, worst first. */
  readonly drivers: readonly ItemOutcome[];
  /** Outcomes with something open that could park the machine, then the others. */
  readonly openParking: readonly ItemOutcome[];
  readonly openOther: readonly ItemOutcome[];
}

/** What is shown as the machine's call: `open` instead of `run` while something that could park it is open. */
export const shownCall = (verdict: Pick<Verdict, 'atLeast' | 'settled'>): Call | 'open' =>
  verdict.atLeast === 'run' && !verdict.settled ? 'open' : verdict.atLeast;

/** Puts the outcomes of a machine together; with none, nothing is settled. */
export function verdictOf(outcomes: readonly ItemOutcome[]): Verdict {
  const atLeast = outcomes.reduce<Call>((worst, each) => worseCall(worst, each.atLeast), 'run');
  const meanwhile = outcomes.reduce<Meanwhile>((worst, each) => stricter(worst, each.meanwhile), 'work');
  const open = outcomes.filter((each) => each.open.length > 0);
  const openParking = open.filter((each) => each.canPark);
  return {
    atLeast,
    meanwhile,
    settled: outcomes.length > 0 && openParking.length === 0,
    drivers: outcomes
      .filter((each) => each.atLeast !== 'run' && (each.atLeast === atLeast || each.meanwhile === meanwhile))
      .sort((a, b) => callRank(b.atLeast) - callRank(a.atLeast)),
    openParking,
    openOther: open.filter((each) => !each.canPark),
  };
}
