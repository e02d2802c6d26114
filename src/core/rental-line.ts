import type { ContractPart } from './contract.ts';
import type { JobKind } from './job-kinds.ts';
import type { PlaceSide } from './keys.ts';
import type { Damage, OwnerFault } from './rental-damage.ts';
import type { UsedUp } from './rental-wear.ts';
import type { Settled } from './walk.ts';

/** Why a line is not charged. */
export type NotCharged =
  | 'was-there'
  | 'waived'
  /** The contract charges damage alone. */
  | 'wear-not-agreed'
  | 'within-allowance'
  /** More than allowed, by less than the readings can tell. */
  | 'within-uncertainty'
  /** Nothing of the part's life was left. */
  | 'nothing-left'
  | 'settled';

/** Why it is not known whether a line is charged, or how much; nothing is billed for it until somebody settles it. */
export type ChargeOpen =
  | 'no-hand-out'
  | 'not-looked-at'
  | 'got-worse'
  | 'owner-side'
  | 'no-price'
  | 'no-life'
  | 'no-hours'
  | 'value-left'
  /** It was sound at hand-out, and what is found now may be either. */
  | 'wear-or-damage'
  | 'not-measured-before'
  | 'not-measured-now'
  /** By more than both readings can be off: renewed meanwhile, or read at another place. */
  | 'measured-better'
  | 'no-sheet'
  | 'vague-sheet'
  /** Two people noted different things there, and nobody has said which is right. */
  | 'clash';

export type Standing =
  | { readonly kind: 'charged'; readonly by?: Settled }
  | { readonly kind: 'not-charged'; readonly why: NotCharged; readonly by?: Settled }
  | { readonly kind: 'open'; readonly why: ChargeOpen };

/** What was allowed of a part's life and what was used beyond it, percent of life. */
export interface Excess {
  readonly allowedPercent: number;
  readonly excessPercent: number;
  /** The least use that could be charged: allowed, and as much again as the readings may be off. */
  readonly chargeableFromPercent: number;
  /** The hire is so short that usual wear is less than the readings may be off. */
  readonly tooShort: boolean;
}

/** What a share of life left was taken from: readings, or hours since fitting by standard life (an estimate). */
export type LeftFrom = 'readings' | 'hours' | 'repair';

/** One part of one side on the charge list; amounts in minor units of the contract's currency, not rounded. */
export interface ChargeLine {
  /** The same for the same part of the same two walks, so that it can be settled. */
  readonly id: string;
  readonly kind: 'damage' | 'wear';
  readonly job: JobKind;
  readonly side: PlaceSide;
  readonly number: number | undefined;
  readonly damages: readonly Damage[];
  readonly used: UsedUp | undefined;
  readonly excess: Excess | undefined;
  /** Percent of life left just before the damage, and what it is charged by. */
  readonly leftPercent: number | undefined;
  readonly leftFrom: LeftFrom | undefined;
  /** Of wear: what the part was worth at hand-out, which no wear passes. */
  readonly mostMinor: number | undefined;
  readonly price: ContractPart | undefined;
  /** How many are paid for; parts priced by the piece. */
  readonly count: number;
  readonly partMinor: number | undefined;
  readonly labourMinor: number | undefined;
  readonly standing: Standing;
  /** Faults on the owner's side that may have made it. */
  readonly ownerFaults: readonly OwnerFault[];
  /** Pictures of the same place at hand-out and at return, SHA-256. */
  readonly photos: { readonly before: string | undefined; readonly after: string | undefined };
}

/** What may be agreed about by people; a price or a life that is missing is entered instead. */
const forPeople: ReadonlySet<string> = new Set([
  'no-hand-out',
  'not-looked-at',
  'got-worse',
  'owner-side',
  'value-left',
  'wear-or-damage',
] satisfies readonly ChargeOpen[]);

/** Whether a line waits for somebody to settle it. */
export const isToSettle = ({ standing }: Pick<ChargeLine, 'standing'>): boolean =>
  standing.kind === 'open' && forPeople.has(standing.why);

/** The line as somebody settled it: an agreed amount stands where the line has none of its own. */
export function settle(line: ChargeLine, settled: readonly Settled[], currency: string): ChargeLine {
  const by = settled.filter((each) => each.line === line.id).at(-1);
  if (!by) return line;
  if (by.is === 'not-charged') return { ...line, standing: { kind: 'not-charged', why: 'settled', by } };
  if (!isToSettle(line)) return line;
  const agreed = by.currency === currency ? by.minor : undefined;
  const partMinor = line.partMinor ?? agreed;
  return partMinor === undefined ? line : { ...line, partMinor, standing: { kind: 'charged', by } };
}
