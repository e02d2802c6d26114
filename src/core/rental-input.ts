import type { Contract, hourBases } from './contract.ts';
import type { Photo } from './photo.ts';
import type { Scored } from './score.ts';
import type { ScoreInput } from './states.ts';

/** One of the two walks of a hire, scored, with its pictures. */
export interface RentalWalk {
  readonly key: string;
  readonly input: ScoreInput;
  readonly scored: Scored;
  readonly photos: readonly { readonly sha256: string; readonly photo: Photo }[];
}

export interface RentalInput {
  readonly contract: Contract;
  readonly handOut: RentalWalk | undefined;
  readonly returned: RentalWalk;
}

/** The hours that wear is allowed for, or why they are not known. */
export type HiredHours =
  | { readonly kind: 'known'; readonly basis: (typeof hourBases)[number]; readonly hours: number }
  | { readonly kind: 'open'; readonly why: 'not-entered' | 'no-meter' | 'meter-went-back' };
