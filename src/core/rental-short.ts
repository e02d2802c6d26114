import { contractPart, type Contract } from './contract.ts';
import type { RentalWalk } from './rental-input.ts';
import { usedParts, type WornPart } from './rental-worn.ts';
import { compare } from './quantity.ts';

/** A part of which a hire of its hours cannot tell usual wear. */
export interface ShortPart extends WornPart {
  /** Usual wear of the hire, percent of life. */
  readonly usualPercent: number;
  /** How far two readings like those of the hand-out can be off, percent of life, k = 2. */
  readonly offPercent: number;
}

/**
 * Parts whose usual wear in the agreed hours is less than hand-out and return can be off together: what is to be said
 * before the hire. None where wear is not charged, or the hours are only known by the meter afterwards.
 */
export function shortParts(contract: Contract, handOut: RentalWalk): readonly ShortPart[] {
  const { charges, hours, hoursCount } = contract;
  if (charges === 'damage' || hours === 'meter' || hoursCount === undefined) return [];
  // Held against itself, a walk has used nothing, by as much as two readings can be off.
  return usedParts({ contract, handOut, returned: handOut }).flatMap(({ job, side, number, used }) => {
    const life = contractPart(contract, used.item, job)?.lifeHours;
    if (life === undefined) return [];
    const usualPercent = (100 * hoursCount) / life;
    const isShort = compare(usualPercent, '<', used.expanded);
    return isShort ? [{ job, side, number, usualPercent, offPercent: used.expanded }] : [];
  });
}
