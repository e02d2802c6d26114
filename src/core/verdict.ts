import { callRank, stricter, worseCall, type Call, type Meanwhile } from './calls.ts';
import type { Judged } from './judge.ts';
import type { ItemOutcome } from './score.ts';

/** What a machine as a whole needs. */
export interface MachineCall {
  /** The worst call that is certain from what is known. */
  readonly atLeast: Call;
  /** The strictest *meanwhile* of the calls. */
  readonly meanwhile: Meanwhile;
  /** False while something that could park the machine is open: then the machine is never shown as `run`. */
  readonly settled: boolean;
}

/** The calls of a machine put together. */
export interface Verdict extends MachineCall {
  /** Outcomes that make the call or the *meanwhile*, worst first; none for a machine that may run and work. */
  readonly drivers: readonly ItemOutcome[];
  /** Outcomes with something open that could park the machine, then the others. */
  readonly openParking: readonly ItemOutcome[];
  readonly openOther: readonly ItemOutcome[];
}

/** What is shown as the machine's call: `open` instead of `run` while something that could park it is open. */
export const shownCall = (verdict: Pick<MachineCall, 'atLeast' | 'settled'>): Call | 'open' =>
  verdict.atLeast === 'run' && !verdict.settled ? 'open' : verdict.atLeast;

/** The machine's call and *meanwhile* from those of its items; with none, nothing is settled. */
export function callOf(outcomes: readonly Judged[]): MachineCall {
  return {
    atLeast: outcomes.reduce<Call>((worst, each) => worseCall(worst, each.atLeast), 'run'),
    meanwhile: outcomes.reduce<Meanwhile>((worst, each) => stricter(worst, each.meanwhile), 'work'),
    settled: outcomes.length > 0 && !outcomes.some(({ canPark, open }) => canPark && open.length > 0),
  };
}

/** Puts the outcomes of a machine together. */
export function verdictOf(outcomes: readonly ItemOutcome[]): Verdict {
  const { atLeast, meanwhile, settled } = callOf(outcomes);
  const isDriver = (each: ItemOutcome): boolean =>
    (atLeast !== 'run' && each.atLeast === atLeast) || (meanwhile !== 'work' && each.meanwhile === meanwhile);
  const open = outcomes.filter((each) => each.open.length > 0);
  return {
    atLeast,
    meanwhile,
    settled,
    drivers: outcomes.filter(isDriver).sort((a, b) => callRank(b.atLeast) - callRank(a.atLeast)),
    openParking: open.filter((each) => each.canPark),
    openOther: open.filter((each) => !each.canPark),
  };
}
