import { contractPart, valueShare, type ContractPart } from './contract.ts';
import { jobKinds, jobTraits, type JobKind } from './job-kinds.ts';
import { addTo } from './lists.ts';
import { compare } from './quantity.ts';
import type { HiredHours, RentalInput, RentalWalk } from './rental-input.ts';
import { isClashing, sameIn, type OwnerFault } from './rental-damage.ts';
import type { ChargeLine, ChargeOpen, Excess, Standing } from './rental-line.ts';
import { harming, pairOf } from './rental-pairs.ts';
import { usedUp, type UsedUp } from './rental-wear.ts';
import type { ItemState } from './states.ts';
import { wear } from './wear.ts';

/** The job that gives a worn item its life back. */
const renewalOf = (item: string): JobKind | undefined =>
  jobKinds.find((job) => job.startsWith('renew-') && jobTraits[job].mends.includes(item));

/** The part that a state speaks for: its job, side and, where parts are priced singly, its number. */
export interface WornPart {
  readonly job: JobKind;
  readonly side: ItemState['side'];
  readonly number: number | undefined;
}

interface UsedPart extends WornPart {
  readonly used: UsedUp;
  /** Versions of its readings clash in one of the walks. */
  readonly clash: boolean;
}

const partId = ({ job, side, number }: WornPart): string =>
  [job, side, ...(number === undefined ? [] : [number])].join('.');

/** How much of each part the hire used, by the items that both walks measured. */
export function usedParts({ handOut, returned }: RentalInput): readonly UsedPart[] {
  if (!handOut) return [];
  return returned.scored.outcomes.flatMap(({ state }) => {
    const job = renewalOf(state.item.id);
    const was = sameIn(handOut.scored.outcomes, state)?.state;
    if (!job || !state.sampled || !was?.sampled) return [];
    const sheet = state.side === 'right' ? returned.input.sheets.right : returned.input.sheets.left;
    const used = usedUp(sheet, handOut.input, returned.input, state);
    const clash = isClashing(state) || isClashing(was);
    return used ? [{ job, side: state.side, number: state.number, used, clash }] : [];
  });
}

const isOf = (state: ItemState, { side, number }: Pick<WornPart, 'side' | 'number'>): boolean =>
  state.side === side && (number === undefined || state.number === number);

/** Percent of life used up at the return, by the most worn of these items of a part; means over the marked places. */
export function wornNow(
  input: RentalInput,
  part: Pick<WornPart, 'side' | 'number'>,
  items: readonly string[],
): number | undefined {
  const used = usedParts(input);
  const percents = input.returned.scored.outcomes.flatMap(({ state }) => {
    if (!isOf(state, part) || !items.includes(state.item.id) || !state.sampled || !state.limits) return [];
    const both = used.find(({ used: { place, item } }) => place === state.place && item === state.item.id);
    const mean = { mm: state.sampled.meanMm, uMm: 0 };
    // No part gains life on a hire: what measures better at return is worth what it was worth at hand-out.
    if (both) return Math.max(both.used.beforePercent, both.used.afterPercent);
    return wear(state.limits, mean, input.returned.input.walk.load)?.percent ?? [];
  });
  return percents.length === 0 ? undefined : Math.max(...percents);
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

function excessOf(used: UsedUp, lifeHours: number, hours: number, allowance: number): Excess {
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
  { used, clash }: UsedPart,
  /** Share of the price that the part was worth when it went out: no wear costs more. */
  share: number,
): Judged {
  if (contract.charges === 'damage') return { standing: not('wear-not-agreed') };
  if (clash) return open('clash');
  if (used.vague) return open('vague-sheet');
  if (compare(used.usedPercent, '<', -used.expanded)) return open('measured-better');
  if (hours.kind === 'open') return open('no-hours');
  if (price?.lifeHours === undefined) return open('no-life');
  const excess = excessOf(used, price.lifeHours, hours.hours, contract.allowancePercent ?? 0);
  if (compare(excess.excessPercent, '<=', 0)) return { standing: not('within-allowance'), excess };
  if (compare(excess.excessPercent, '<=', used.expanded))
    return { standing: not('within-uncertainty'), excess };
  if (share === 0) return { standing: not('nothing-left'), excess };
  if (price.minor === undefined) return { ...open('no-price'), excess };
  // Damage of the same part is charged at the life left now, so that both together stay within that too.
  const partMinor = price.minor * Math.min(excess.excessPercent / 100, share);
  return { standing: { kind: 'charged' }, excess, partMinor };
}

const isWaived = ({ contract }: RentalInput, ...names: readonly string[]): boolean =>
  names.some((name) => contract.waived?.includes(name));

/** The worn parts of a hire, each once: of several items of one part, that which costs most, then that most used. */
export function wearLines(
  input: RentalInput,
  hours: HiredHours,
  faults: readonly OwnerFault[],
): readonly ChargeLine[] {
  const parts = new Map<string, UsedPart[]>();
  for (const each of usedParts(input)) addTo(parts, partId(each), each);
  const lines = [...parts].map(([id, items]) => {
    // The most worn item drags the part.
    const left = 100 - Math.max(...items.map(({ used }) => used.beforePercent));
    const share = Math.min(1, valueShare(left, input.contract.cutOffPercent ?? 0));
    const made = items.map((each) => lineOf(input, hours, faults, { id, share }, each));
    return made.reduce((most, each) => (isMore(each, most) ? each : most));
  });
  const missing = unmeasured(input, new Set(parts.keys())).map((part) => missingLine(input, part));
  return [...lines, ...missing];
}

const atStake = ({ standing, partMinor = 0 }: ChargeLine): number =>
  standing.kind === 'not-charged' ? 0 : partMinor;

function isMore(a: ChargeLine, b: ChargeLine): boolean {
  const [one, other] = [atStake(a), atStake(b)];
  return one === other ? (a.used?.usedPercent ?? 0) > (b.used?.usedPercent ?? 0) : one > other;
}

function lineOf(
  input: RentalInput,
  hours: HiredHours,
  faults: readonly OwnerFault[],
  { id, share }: { readonly id: string; readonly share: number },
  part: UsedPart,
): ChargeLine {
  const { used, job, side, number } = part;
  const price = contractPart(input.contract, used.item, job);
  const judged = judge(input, hours, price, part, share);
  const owner = harming(faults, side, [used.item]);
  const isCharged = judged.standing.kind === 'charged';
  const standing = isWaived(input, used.item, job)
    ? not('waived')
    : isCharged && owner.length > 0
      ? ({ kind: 'open', why: 'owner-side' } as const)
      : judged.standing;
  return {
    ...bare(id, { job, side, number }),
    used,
    excess: judged.excess,
    price,
    mostMinor: price?.minor === undefined ? undefined : price.minor * share,
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

/** What keeps the readings of both walks from being compared. */
function whyMissing({ handOut, returned }: RentalInput, part: WornPart): ChargeOpen {
  const measured = (walk: RentalWalk | undefined): readonly ItemState[] =>
    (walk?.scored.outcomes ?? []).flatMap(({ state }) =>
      state.sampled !== undefined && isOf(state, part) && renewalOf(state.item.id) === part.job
        ? [state]
        : [],
    );
  const now = measured(returned);
  if (now.length === 0) return 'not-measured-now';
  return measured(handOut).length > 0 && now.every((state) => !state.wear)
    ? 'no-sheet'
    : 'not-measured-before';
}

/** A part that one walk measured and the other did not. */
function missingLine(input: RentalInput, part: WornPart): ChargeLine {
  const why = input.handOut ? whyMissing(input, part) : 'no-hand-out';
  return {
    ...bare(partId(part), part),
    used: undefined,
    excess: undefined,
    price: contractPart(input.contract, part.job),
    mostMinor: undefined,
    partMinor: undefined,
    standing: isWaived(input, part.job)
      ? not('waived')
      : input.contract.charges === 'damage'
        ? not('wear-not-agreed')
        : { kind: 'open', why },
    ownerFaults: [],
    photos: { before: undefined, after: undefined },
  };
}
