import type { Contract } from '../core/contract.ts';
import type { ChargeList } from '../core/rental.ts';
import type { Damage, OwnerFault } from '../core/rental-damage.ts';
import type { RentalInput, RentalWalk } from '../core/rental-input.ts';
import type { ChargeLine, Excess } from '../core/rental-line.ts';
import type { SpotReading, UsedUp } from '../core/rental-wear.ts';
import type { Source } from '../core/source.ts';
import { addDays, localDate } from '../words/calendar.ts';
import { hoursText, lineTitle, ownerText, standingText, upFrontTexts } from '../words/charge-text.ts';
import { charge as words } from '../words/en/charge.ts';
import type { Formatter } from '../words/format.ts';
import { rounded } from './rounded.ts';

/** Walk and SHA-256 of each seal of a file. */
export type Seals = readonly (readonly [walk: unknown, hash: string])[];

/** One of the two walks of a hire. */
export interface WalkOfHire {
  readonly walk: string;
  readonly startedAt: string | null;
  readonly finishedAt: string | null;
  readonly meterHours: number | null;
  /** SHA-256 of its seals in the file; whether they hold is told by `sagline check`. */
  readonly seals: readonly string[];
}

/** What a hire used up of a part, percent of life; lengths in mm. */
export interface UsedOfPart {
  readonly place: string;
  readonly item: string;
  readonly handOut: readonly SpotReading[];
  readonly returned: readonly SpotReading[];
  readonly handOutPercent: number;
  readonly returnedPercent: number;
  readonly usedPercent: number;
  readonly plusMinus: number;
}

/** One line of a charge list; amounts in minor units, not rounded to whole ones. */
export interface LineOfReturn {
  readonly id: string;
  readonly kind: 'damage' | 'wear';
  readonly title: string;
  readonly job: string;
  readonly side: string;
  readonly number: number | null;
  readonly standing: 'charged' | 'not-charged' | 'open';
  readonly why: string | null;
  readonly sentence: string | null;
  /** Each with who says that it is damage and not wear. */
  readonly damages: readonly (Damage & { readonly toldBy: Source })[];
  readonly used: UsedOfPart | null;
  readonly excess: Excess | null;
  readonly leftPercent: number | null;
  readonly leftFrom: string | null;
  readonly mostMinor: number | null;
  readonly priceMinor: number | null;
  readonly lifeHours: number | null;
  readonly source: Source | null;
  readonly count: number;
  readonly partMinor: number | null;
  readonly labourMinor: number | null;
  readonly ownerFaults: readonly string[];
  readonly photos: { readonly handOut: string | null; readonly returned: string | null };
}

/** The charge list of one return as plain JSON; money in minor units of the currency. */
export interface ReturnOfMachine {
  readonly machine: { readonly key: string; readonly name: string; readonly pin: string | null };
  readonly contract: {
    readonly number: string | null;
    readonly owner: string | null;
    readonly renter: string | null;
    readonly clause: string | null;
    readonly charges: string;
  };
  readonly handOut: WalkOfHire | null;
  readonly returned: WalkOfHire;
  readonly hours: { readonly basis: string; readonly count: number | null; readonly sentence: string };
  readonly otherGround: string | null;
  readonly currency: string;
  readonly lines: readonly LineOfReturn[];
  readonly haulageMinor: number;
  readonly netMinor: number;
  readonly taxMinor: number;
  readonly grossMinor: number;
  /** The owner's side, as considered. */
  readonly ownerFaults: readonly (Pick<OwnerFault, 'place' | 'item' | 'finding' | 'foundAt'> & {
    readonly sentence: string;
  })[];
  /** What a reader must know first: no hand-out walk, a hire too short to show wear. */
  readonly notes: readonly string[];
  readonly replyBy: string | null;
  readonly keptUntil: string | null;
}

const walkOf = ({ key, input: { walk } }: RentalWalk, seals: Seals): WalkOfHire => ({
  walk: key,
  startedAt: walk.startedAt?.utc ?? null,
  finishedAt: walk.finishedAt?.utc ?? null,
  meterHours: walk.meterHours ?? null,
  seals: seals.filter(([of]) => of === key).map(([, hash]) => hash),
});

const usedOf = (used: UsedUp): UsedOfPart => ({
  place: used.place,
  item: used.item,
  handOut: used.before,
  returned: used.after,
  handOutPercent: used.beforePercent,
  returnedPercent: used.afterPercent,
  usedPercent: used.usedPercent,
  plusMinus: used.expanded,
});

function lineOf(line: ChargeLine, { format, toldBy }: Telling): LineOfReturn {
  const { standing, price, photos } = line;
  return {
    id: line.id,
    kind: line.kind,
    title: lineTitle(line),
    job: line.job,
    side: line.side,
    number: line.number ?? null,
    standing: standing.kind,
    why: standing.kind === 'charged' ? null : standing.why,
    sentence: standingText(line) || null,
    damages: line.damages.map((each) => ({ ...each, toldBy: toldBy(each) })),
    used: line.used ? usedOf(line.used) : null,
    excess: line.excess ?? null,
    leftPercent: line.leftPercent ?? null,
    leftFrom: line.leftFrom ?? null,
    mostMinor: line.mostMinor ?? null,
    priceMinor: price?.minor ?? null,
    lifeHours: price?.lifeHours ?? null,
    source: price?.source ?? null,
    count: line.count,
    partMinor: line.partMinor ?? null,
    labourMinor: line.labourMinor ?? null,
    ownerFaults: line.ownerFaults.map((fault) => ownerText(fault, format)),
    photos: { handOut: photos.before ?? null, returned: photos.after ?? null },
  };
}

/** The words of one reader, and who says that a finding is damage. */
export interface Telling {
  readonly format: Formatter;
  readonly toldBy: (damage: Damage) => Source;
}

/** The day so many days after the return; null where either is not known. */
function dayAfter({ input: { walk } }: RentalWalk, days: number | undefined): string | null {
  const at = walk.finishedAt ?? walk.startedAt;
  const from = at && localDate(at.utc, at.offsetMinutes);
  return from === undefined || days === undefined ? null : (addDays(from, days) ?? null);
}

const agreedOf = ({ number, owner, renter, clause, charges }: Contract): ReturnOfMachine['contract'] => ({
  number: number ?? null,
  owner: owner ?? null,
  renter: renter ?? null,
  clause: clause ?? null,
  charges,
});

const faultOf = (fault: OwnerFault, format: Formatter): ReturnOfMachine['ownerFaults'][number] => ({
  place: fault.place,
  item: fault.item,
  finding: fault.finding,
  foundAt: fault.foundAt,
  sentence: ownerText(fault, format),
});

/** Puts a charge list into plain JSON, with the sentences of one reader. */
export function returnOf(
  { contract, handOut, returned }: RentalInput,
  list: ChargeList,
  seals: Seals,
  telling: Telling,
): ReturnOfMachine {
  const { format } = telling;
  const { machine, walk } = returned.input;
  const hours = list.hours.kind === 'known' ? list.hours.hours : null;
  return rounded({
    machine: { key: walk.machine, name: machine.name, pin: machine.pin ?? null },
    contract: agreedOf(contract),
    handOut: handOut ? walkOf(handOut, seals) : null,
    returned: walkOf(returned, seals),
    hours: { basis: contract.hours, count: hours, sentence: hoursText(list, format) },
    otherGround: list.otherGround ?? null,
    currency: list.currency,
    lines: list.lines.map((line) => lineOf(line, telling)),
    haulageMinor: list.haulageMinor,
    netMinor: list.netMinor,
    taxMinor: list.taxMinor,
    grossMinor: list.grossMinor,
    ownerFaults: list.ownerFaults.map((fault) => faultOf(fault, format)),
    notes: [...(handOut ? [] : [words.noHandOutInFile]), ...upFrontTexts(list, format)],
    replyBy: dayAfter(returned, contract.replyDays),
    keptUntil: dayAfter(returned, contract.keptDays),
  });
}
