import { contractPart, type ContractPart } from './contract.ts';
import { jobKinds, jobTraits, type JobKind } from './job-kinds.ts';
import { addTo } from './lists.ts';
import { compare } from './quantity.ts';
import type { HiredHours, RentalInput } from './rental-input.ts';
import type { OwnerFault } from './rental-damage.ts';
import type { ChargeLine, Excess, Standing } from './rental-line.ts';
import { harming, pairOf } from './rental-pairs.ts';
import { usedUp, type UsedUp } from './rental-wear.ts';
import { stateKey, type ItemState } from './states.ts';

/** The job that gives a worn item its life back. */
const renewalOf = (item: string): JobKind | undefined =>
  jobKinds.find((job) => job.startsWith('renew-') && jobTraits[job].mends.includes(item));

/** The part that a state speaks for: its job, side and, where parts are priced singly, its number. */
export interface WornPart {
  readonly job: JobKind;
  readonly side: ItemState['side'];
  readonly number: number | undefined;
}

const partId = ({ job, side, number }: WornPart): string =>
  [job, side, ...(number === undefined ? [] : [number])].join('.');

/** How much of each part the hire used, by the items that both walks measured. */
export function usedParts({
  handOut,
  returned,
}: RentalInput): readonly (WornPart & { readonly used: UsedUp })[] {
  if (!handOut) return [];
  return returned.scored.outcomes.flatMap(({ state }) => {
    const job = renewalOf(state.item.id);
    const was = handOut.scored.outcomes.find(
      ({ state: { place, item } }) => stateKey(place, item.id) === stateKey(state.place, state.item.id),
    );
    if (!job || !state.sampled || !was?.state.sampled) return [];
    const sheet = state.side === 'right' ? returned.input.sheets.right : returned.input.sheets.left;
    const used = usedUp(sheet, handOut.input, returned.input, state);
    return used ? [{ job, side: state.side, number: state.number, used }] : [];
  });
}

/** Sized items of the return that cannot be compared, by the part they are of. */
function unmeasured({ handOut, returned }: RentalInput, known: ReadonlySet<string>): readonly WornPart[] {
  const parts = new Map<string, WornPart>();
  for (const { state } of [...(handOut?.scored.outcomes ?? []), ...returned.scored.outcomes]) {
    const job = state.sampled && renewalOf(state.item.id);
    if (!job) continue;
    const part = { job, side: state.side, number: state.number };
    if (!known.has(partId(part))) parts.set(partId(part), part);
  }
  return [...parts.values()];
}

function excessOf(used: UsedUp, price: ContractPart, hours: number, allowance: number): Excess | undefined {
  const { lifeHours } = price;
  if (lifeHours === undefined) return undefined;
  const usual = (100 * hours) / lifeHours;
  const allowedPercent = usual + allowance;
  return {
    allowedPercent,
    excessPercent: used.usedPercent - allowedPercent,
    chargeableFromPercent: allowedPercent + used.expanded,
    tooShort: compare(usual, '<', used.expanded),
  };
}

interface Judged {
  readonly standing: Standing;
  readonly excess?: Excess;
  readonly partMinor?: number;
}

const not = (why: Extract<Standing, { kind: 'not-charged' }>['why']): Judged['standing'] => ({
  kind: 'not-charged',
  why,
});
const open = (why: Extract<Standing, { kind: 'open' }>['why']): Judged => ({
  standing: { kind: 'open', why },
});

/** What is charged for the wear of one item, without the owner's side. */
function judge(
  { contract }: RentalInput,
  hours: HiredHours,
  price: ContractPart | undefined,
  used: UsedUp,
): Judged {
  if (contract.charges === 'damage') return { standing: not('wear-not-agreed') };
  if (used.vague) return open('vague-sheet');
  if (hours.kind === 'open') return open('no-hours');
  if (price?.lifeHours === undefined) return open('no-life');
  const excess = excessOf(used, price, hours.hours, contract.allowancePercent ?? 0);
  if (!excess) return open('no-life');
  if (compare(excess.excessPercent, '<=', 0)) return { standing: not('within-allowance'), excess };
  if (compare(excess.excessPercent, '<=', used.expanded))
    return { standing: not('within-uncertainty'), excess };
  // Never more than the part was worth when it went out.
  const left = Math.max(0, 100 - used.beforePercent);
  if (left === 0) return { standing: not('nothing-left'), excess };
  if (price.minor === undefined) return { ...open('no-price'), excess };
  const share = Math.min(excess.excessPercent, left) / 100;
  return { standing: { kind: 'charged' }, excess, partMinor: price.minor * share };
}

const isWaived = ({ contract }: RentalInput, ...names: readonly string[]): boolean =>
  names.some((name) => contract.waived?.includes(name));

/** The worn parts of a hire, each once: of several items of one part, that which costs most, then that most used. */
export function wearLines(
  input: RentalInput,
  hours: HiredHours,
  faults: readonly OwnerFault[],
): readonly ChargeLine[] {
  const parts = new Map<string, (WornPart & { used: UsedUp })[]>();
  for (const each of usedParts(input)) addTo(parts, partId(each), each);
  const lines = [...parts].map(([id, items]) => {
    const made = items.map((each) => lineOf(input, hours, faults, id, each));
    return made.reduce((most, each) => (isMore(each, most) ? each : most));
  });
  const missing = unmeasured(input, new Set(parts.keys())).map((part) => missingLine(input, part));
  return [...lines, ...missing];
}

function isMore(a: ChargeLine, b: ChargeLine): boolean {
  const [one, other] = [a.partMinor ?? 0, b.partMinor ?? 0];
  return one === other ? (a.used?.usedPercent ?? 0) > (b.used?.usedPercent ?? 0) : one > other;
}

function lineOf(
  input: RentalInput,
  hours: HiredHours,
  faults: readonly OwnerFault[],
  id: string,
  { used, ...part }: WornPart & { readonly used: UsedUp },
): ChargeLine {
  const price = contractPart(input.contract, used.item, part.job);
  const judged = judge(input, hours, price, used);
  const owner = harming(faults, part.side, [used.item]);
  const isCharged = judged.standing.kind === 'charged';
  const standing = isWaived(input, used.item, part.job)
    ? not('waived')
    : isCharged && owner.length > 0
      ? ({ kind: 'open', why: 'owner-side' } as const)
      : judged.standing;
  return {
    ...bare(id, part),
    used,
    excess: judged.excess,
    price,
    partMinor: judged.partMinor,
    standing,
    ownerFaults: owner,
    photos: pairOf(input, used.place, used.item),
  };
}

const bare = (id: string, part: WornPart) => ({
  id: `wear.${id}`,
  kind: 'wear' as const,
  ...part,
  damages: [],
  leftPercent: undefined,
  leftFrom: undefined,
  labourMinor: undefined,
  count: 1,
});

/** A part that one walk measured and the other did not. */
function missingLine(input: RentalInput, part: WornPart): ChargeLine {
  const isNow = input.returned.scored.outcomes.some(
    ({ state }) =>
      state.sampled !== undefined && state.side === part.side && renewalOf(state.item.id) === part.job,
  );
  const why = input.handOut ? (isNow ? 'not-measured-before' : 'not-measured-now') : 'no-hand-out';
  return {
    ...bare(partId(part), part),
    used: undefined,
    excess: undefined,
    price: contractPart(input.contract, part.job),
    partMinor: undefined,
    standing: input.contract.charges === 'damage' ? not('wear-not-agreed') : { kind: 'open', why },
    ownerFaults: [],
    photos: { before: undefined, after: undefined },
  };
}
