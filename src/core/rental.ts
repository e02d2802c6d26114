import { wholeMinor } from './money.ts';
import { ownerFaults, type OwnerFault } from './rental-damage.ts';
import { damageLines, setOf } from './rental-lines.ts';
import { settle, type ChargeLine } from './rental-line.ts';
import { wearLines } from './rental-worn.ts';
import type { HiredHours, RentalInput, RentalWalk } from './rental-input.ts';
import type { Walk } from './walk.ts';

/** What a hire is billed for, and what it is not, each line with its reason. */
export interface ChargeList {
  readonly currency: string;
  readonly hours: HiredHours;
  readonly handOut: string | undefined;
  readonly returned: string;
  readonly lines: readonly ChargeLine[];
  readonly ownerFaults: readonly OwnerFault[];
  /** The machine worked on ground that the contract does not permit. */
  readonly otherGround: Walk['ground'];
  /** The limit sheet is another one, or was edited, since the machine went out; that of the return counts for both. */
  readonly otherSheet: boolean;
  /** Whole minor units, rounded once; `gross` is `net` and `tax`. */
  readonly netMinor: number;
  readonly haulageMinor: number;
  readonly taxMinor: number;
  readonly grossMinor: number;
}

/** Hours of the hire by the basis that the contract names. */
export function hiredHours({ contract, handOut, returned }: RentalInput): HiredHours {
  const { hours: basis, hoursCount } = contract;
  if (basis !== 'meter') {
    if (hoursCount === undefined) return { kind: 'open', why: 'not-entered' };
    return { kind: 'known', basis, hours: hoursCount };
  }
  const [from, to] = [handOut?.input.walk.meterHours, returned.input.walk.meterHours];
  if (from === undefined || to === undefined) return { kind: 'open', why: 'no-meter' };
  return to < from ? { kind: 'open', why: 'meter-went-back' } : { kind: 'known', basis, hours: to - from };
}

function otherGround({ contract, returned }: RentalInput): Walk['ground'] {
  const { ground } = returned.input.walk;
  return ground !== undefined && contract.grounds?.includes(ground) === false ? ground : undefined;
}

const pinOf = ({ input: { walk } }: RentalWalk): string =>
  [walk.sheet?.key, walk.sheet?.stamp].filter((part) => part !== undefined).join(' ');

const isOtherSheet = ({ handOut, returned }: RentalInput): boolean =>
  handOut !== undefined && pinOf(handOut) !== pinOf(returned);

const isCharged = ({ standing }: ChargeLine): boolean => standing.kind === 'charged';

/** A hand-out walk of another machine proves nothing. */
function ofOneMachine(input: RentalInput): RentalInput {
  const isSame = input.handOut?.input.walk.machine === input.returned.input.walk.machine;
  return isSame ? input : { ...input, handOut: undefined };
}

/**
 * Wear of a part beside damage of it or of its pieces: together they come to no more than it was worth at hand-out.
 * Of a chain other items may tell the wear than the one by which the life left is told.
 */
function withinValue(line: ChargeLine, all: readonly ChargeLine[]): ChargeLine {
  if (line.kind !== 'wear' || line.partMinor === undefined || line.mostMinor === undefined) return line;
  const isSame = (each: ChargeLine): boolean =>
    each.kind === 'damage' &&
    isCharged(each) &&
    each.leftPercent !== undefined &&
    setOf(each.job) === line.job &&
    each.side === line.side &&
    each.number === line.number;
  const damage = all.filter(isSame).reduce((sum, each) => sum + (each.partMinor ?? 0), 0);
  return { ...line, partMinor: Math.min(line.partMinor, Math.max(0, line.mostMinor - damage)) };
}

/** The charge list of a hire. Amounts of lines are not rounded; the sums are, once. */
export function chargeList(given: RentalInput): ChargeList {
  const input = ofOneMachine(given);
  const { contract, handOut, returned } = input;
  const hours = hiredHours(input);
  const faults = ownerFaults(returned.scored.outcomes, handOut?.scored.outcomes);
  const settled = [...damageLines(input, faults), ...wearLines(input, hours, faults)].map((line) =>
    settle(line, returned.input.walk.settled ?? [], contract.currency),
  );
  const lines = settled.map((line) => withinValue(line, settled));
  const charged = lines.filter(isCharged);
  const haulage = charged.length > 0 ? (contract.haulageMinor ?? 0) : 0;
  const sum = charged.reduce(
    (total, line) => total + (line.partMinor ?? 0) + (line.labourMinor ?? 0),
    haulage,
  );
  const net = wholeMinor(sum);
  const gross = wholeMinor(sum * (1 + (contract.taxPercent ?? 0) / 100));
  return {
    currency: contract.currency,
    hours,
    handOut: handOut?.key,
    returned: returned.key,
    lines,
    ownerFaults: faults,
    otherGround: otherGround(input),
    otherSheet: isOtherSheet(input),
    netMinor: net,
    haulageMinor: haulage,
    taxMinor: gross - net,
    grossMinor: gross,
  };
}
