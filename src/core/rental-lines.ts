import { contractPart, type Contract, type ContractPart } from './contract.ts';
import { jobKinds, jobTraits, type JobKind } from './job-kinds.ts';
import { addTo } from './lists.ts';
import type { Shape, Side } from './machine.ts';
import type { RentalInput } from './rental-input.ts';
import { damagesOf, type Damage, type OwnerFault } from './rental-damage.ts';
import type { ChargeLine, ChargeOpen, LeftFrom, Standing } from './rental-line.ts';
import { harming, pairOf } from './rental-pairs.ts';

/** Jobs that put an item right, single parts before whole sets. */
function jobsFor(item: string, shape: Shape): readonly JobKind[] {
  const jobs = jobKinds.filter((job) => jobTraits[job].fits(shape) && jobTraits[job].mends.includes(item));
  const isPart = (job: JobKind): number => (jobTraits[job].per === 'part' ? 0 : 1);
  return [...jobs].sort((a, b) => isPart(a) - isPart(b));
}

/** The job that a damage is charged by: the first that the contract prices, else the first. */
function jobOf(contract: Contract, item: string, shape: Shape): JobKind {
  const jobs = jobsFor(item, shape);
  const priced = jobs.find((job) => contractPart(contract, job)?.minor !== undefined);
  return priced ?? jobs[0] ?? 'mend-other';
}

interface DamagedPart {
  readonly job: JobKind;
  readonly side: Damage['side'];
  readonly number: number | undefined;
  readonly price: ContractPart | undefined;
  readonly damages: readonly Damage[];
}

/** Damage by the part that is paid for: a track that is cut at two places is one track. */
function damagedParts(input: RentalInput): readonly DamagedPart[] {
  const { contract, handOut, returned } = input;
  const groups = new Map<string, Damage[]>();
  const at = new Map<string, Omit<DamagedPart, 'damages'>>();
  for (const damage of damagesOf(returned.scored.outcomes, handOut?.scored.outcomes)) {
    const job = jobOf(contract, damage.item, returned.input.machine.shape);
    const single = contractPart(contract, damage.item);
    const number = jobTraits[job].per === 'part' ? damage.number : undefined;
    const id = [single?.what ?? job, damage.side, ...(number === undefined ? [] : [number])].join('.');
    at.set(id, { job, side: damage.side, number, price: single ?? contractPart(contract, job) });
    addTo(groups, id, damage);
  }
  return [...at].map(([id, part]) => ({ ...part, damages: groups.get(id) ?? [] }));
}

/** How a part was before it was damaged: what counts is the best proof that it was sound. */
function provenBy(damages: readonly Damage[]): ChargeOpen | 'was-there' | undefined {
  const kinds = damages.map(({ before }) => before.kind);
  if (kinds.includes('sound')) return undefined;
  for (const kind of ['no-hand-out', 'not-looked-at', 'got-worse'] as const)
    if (kinds.includes(kind)) return kind;
  return 'was-there';
}

/** Items by whose wear the life left of a part is told; single links and shoes have that of their set. */
function wearItems(job: JobKind): readonly string[] {
  const set: Partial<Record<JobKind, JobKind>> = { 'change-link': 'renew-chain' };
  return jobTraits[set[job] ?? job].mends;
}

interface Left {
  readonly percent: number;
  readonly from: LeftFrom;
}

const isRepair = (job: JobKind): boolean => !job.startsWith('renew-') && job !== 'change-link';

/** Percent of life that a part had left just before it was damaged: by its worst reading, else by its hours. */
function leftOf({ returned }: RentalInput, { job, side, number, price }: DamagedPart): Left | undefined {
  if (isRepair(job)) return { percent: 100, from: 'repair' };
  const items = wearItems(job);
  const worn = returned.scored.outcomes.flatMap(({ state }) => {
    const isOf = state.side === side && (number === undefined || state.number === number);
    return isOf && items.includes(state.item.id) && state.wear ? [state.wear.percent] : [];
  });
  if (worn.length > 0) return { percent: clamp(100 - Math.max(...worn)), from: 'readings' };
  const { machine, walk } = returned.input;
  const fitted = side === 'whole' ? undefined : machine[side satisfies Side]?.fittedAtHours;
  const ran = fitted !== undefined && walk.meterHours !== undefined ? walk.meterHours - fitted : undefined;
  if (jobTraits[job].component !== 'track' || ran === undefined || ran < 0) return undefined;
  if (price?.lifeHours === undefined) return undefined;
  return { percent: clamp(100 - (100 * ran) / price.lifeHours), from: 'hours' };
}

const clamp = (percent: number): number => Math.min(100, Math.max(0, percent));

/**
 * Share of the price that a part with so much of its life left is worth, when it counts as worth nothing at a
 * cut-off: (left − cut-off)/(100 − cut-off), and 0 below it.
 */
export const valueShare = (leftPercent: number, cutOffPercent: number): number =>
  Math.max(0, (leftPercent - cutOffPercent) / (100 - cutOffPercent));

/** The damaged parts of a hire, each once. */
export const damageLines = (input: RentalInput, faults: readonly OwnerFault[]): readonly ChargeLine[] =>
  damagedParts(input).map((part) => lineOf(input, part, faults));

function standingOf(
  { contract }: RentalInput,
  { damages, job, price }: DamagedPart,
  left: Left | undefined,
  owner: readonly OwnerFault[],
): Standing {
  const names = [job, ...damages.map(({ item }) => item)];
  if (names.some((name) => contract.waived?.includes(name))) return { kind: 'not-charged', why: 'waived' };
  const proven = provenBy(damages);
  if (proven === 'was-there') return { kind: 'not-charged', why: proven };
  if (proven !== undefined) return { kind: 'open', why: proven };
  if (owner.length > 0) return { kind: 'open', why: 'owner-side' };
  if (price?.minor === undefined) return { kind: 'open', why: 'no-price' };
  if (!left) return { kind: 'open', why: 'value-left' };
  const isWorthless = left.from !== 'repair' && valueShare(left.percent, contract.cutOffPercent ?? 0) === 0;
  return isWorthless ? { kind: 'not-charged', why: 'nothing-left' } : { kind: 'charged' };
}

function lineOf(input: RentalInput, part: DamagedPart, faults: readonly OwnerFault[]): ChargeLine {
  const { contract } = input;
  const { job, side, number, price, damages } = part;
  const owner = harming(
    faults,
    side,
    damages.map(({ item }) => item),
  );
  const left = leftOf(input, part);
  const cutOff = left?.from === 'repair' ? 0 : (contract.cutOffPercent ?? 0);
  const share = left && valueShare(left.percent, cutOff);
  const count = priceCount(part);
  const labour = { share: share ?? 0, whole: 1, none: 0 }[contract.labour ?? 'share'];
  const [first] = damages;
  return {
    id: ['damage', price?.what ?? job, side, ...(number === undefined ? [] : [number])].join('.'),
    kind: 'damage',
    job,
    side,
    number,
    damages,
    used: undefined,
    excess: undefined,
    leftPercent: left?.from === 'repair' ? undefined : left?.percent,
    leftFrom: left?.from,
    price,
    count,
    partMinor: share === undefined || price?.minor === undefined ? undefined : price.minor * count * share,
    labourMinor:
      share === undefined || price?.labourMinor === undefined
        ? undefined
        : price.labourMinor * count * labour,
    standing: standingOf(input, part, left, owner),
    ownerFaults: owner,
    photos: first ? pairOf(input, first.place, first.item) : { before: undefined, after: undefined },
  };
}

/** How many a price is paid for: as many as were counted, where it is for one of them. */
function priceCount({ price, damages, job }: DamagedPart): number {
  const isEach =
    price !== undefined && (damages.some(({ item }) => item === price.what) || job === 'change-link');
  return isEach ? Math.max(1, ...damages.map(({ count }) => count ?? 1)) : 1;
}
