import type { PartHours } from './hours-left.ts';
import { visitStepHours } from './job-plan.ts';
import type { ItemOutcome } from './score.ts';

/** When a machine is to be looked at again, in hours from the walk, and for what. */
export interface Recheck {
  readonly inHours: number;
  /** What is to be watched sooner; if any, within a service interval. */
  readonly watched: readonly ItemOutcome[];
  /** The part that may be worn out first; where nothing is watched it sets the hours. */
  readonly first: PartHours | undefined;
}

const lowOf = ({ left }: PartHours): number => left?.low ?? Infinity;

/**
 * A re-check is due before one in ten parts like the first one to wear out is worn out, and within one service
 * interval of 250 h where a call says to look again sooner (common practice, no source). Parts that may be worn out
 * already are for the job plan. Undefined where nothing is watched and no hours are known.
 */
export function recheckOf(
  outcomes: readonly ItemOutcome[],
  parts: readonly PartHours[],
): Recheck | undefined {
  const watched = outcomes.filter(({ atLeast }) => atLeast === 'recheck');
  const first = [...parts]
    .filter((part) => lowOf(part) > 0 && Number.isFinite(lowOf(part)))
    .sort((a, b) => lowOf(a) - lowOf(b))[0];
  const inHours = Math.min(watched.length > 0 ? visitStepHours : Infinity, first ? lowOf(first) : Infinity);
  return Number.isFinite(inHours) ? { inHours, watched, first } : undefined;
}
