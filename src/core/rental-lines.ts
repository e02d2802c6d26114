import { contractPart, valueShare, type Contract, type ContractPart } from './contract.ts';
import { damageOf } from './findings.ts';
import { jobKinds, jobTraits, type JobKind } from './job-kinds.ts';
import { addTo } from './lists.ts';
import type { Shape, Side } from './machine.ts';
import type { RentalInput } from './rental-input.ts';
import { damagesOf, unclearDamages, type Damage, type OwnerFault } from './rental-damage.ts';
import type { ChargeLine, ChargeOpen, LeftFrom, Standing } from './rental-line.ts';
import { harming, pairOf } from './rental-pairs.ts';
import { wornNow } from './rental-worn.ts';

/** Jobs that put an item right, single parts before whole sets. */
function jobsFor(item: string, shape: Shape): readonly JobKind[] {
  const jobs = jobKinds.filter((job) => jobTraits[job].fits(shape) && jobTraits[job].mends.includes(item));
  const isPart = (job: JobKind): number => (jobTraits[job].per === 'part' ? 0 : 1);
  return [...jobs].sort((a, b) => isPart(a) - isPart(b));
}

/** Pieces that are changed or tightened singly: the price of a whole set is not theirs. */
const pieces: ReadonlySet<string> = new Set([
  'links-cracked',
  'bushing-crack',
  'master-joint',
  'pin-walk',
  'bolt-holes',
  'shoes',
  'shoe-bolts',
  'pads',
  'pad-bolts',
  'roller-bolts',
  'sprocket-bolts',
]);

const isSet = (job: JobKind): boolean => job.startsWith('renew-');

/** The job that a damage is charged by: the first that the contract prices, else the first; of a piece never a set. */
function jobOf(contract: Contract, item: string, shape: Shape): JobKind {
  const all = jobsFor(item, shape);
  const small = all.filter((job) => !isSet(job));
  const jobs = pieces.has(item) && small.length > 0 ? small : all;
  const priced = jobs.find((job) => contractPart(contract, job)?.minor !== undefined);
  return priced ?? jobs[0] ?? 'mend-other';
}

interface DamagedPart {
  readonly id: string;
  readonly job: JobKind;
  readonly side: Damage['side'];
  readonly number: number | undefined;
  readonly price: ContractPart | undefined;
  readonly damages: readonly Damage[];
  /** Something of it was damaged when the machine went out. */
  readonly wasDamaged: boolean;
}

type Damaged = Pick<Damage, 'item' | 'side' | 'number'>;

/** The part that is paid for where an item is damaged. */
function payFor({ contract, returned }: RentalInput, { item, side, number: at }: Damaged) {
  const job = jobOf(contract, item, returned.input.machine.shape);
  const single = contractPart(contract, item);
  const number = jobTraits[job].per === 'part' ? at : undefined;
  const id = [single?.what ?? job, side, ...(number === undefined ? [] : [number])].join('.');
  const whole = pieces.has(item) && isSet(job) ? undefined : contractPart(contract, job);
  return { id, job, side, number, price: single ?? whole };
}

/** Damage by the part that is paid for: a track that is cut at two places is one track. */
function damagedParts(input: RentalInput): readonly DamagedPart[] {
  const { handOut, returned } = input;
  const groups = new Map<string, Damage[]>();
  const at = new Map<string, ReturnType<typeof payFor>>();
  const [now, then] = [returned.scored.outcomes, handOut?.scored.outcomes];
  for (const damage of [...damagesOf(now, then), ...unclearDamages(now, then)]) {
    const part = payFor(input, damage);
    at.set(part.id, part);
    addTo(groups, part.id, damage);
  }
  const before = damageOf(then ?? []).map(
    ({ state: { item, side, number } }) => payFor(input, { item: item.id, side, number }).id,
  );
  return [...at].map(([id, part]) => ({
    ...part,
    damages: groups.get(id) ?? [],
    wasDamaged: before.includes(id),
  }));
}

/** How many more of a part priced by the piece are damaged in the same way than when it went out. */
const moreThanBefore = ({ count = 1, finding, before }: Damage): number =>
  before.kind === 'got-worse' && before.finding === finding ? count - (before.count ?? 1) : count;

/** Whether a price is for one of what is counted. */
const isEach = ({ price, damages, job }: DamagedPart): boolean =>
  price !== undefined && (damages.some(({ item }) => item === price.what) || job === 'change-link');

/** Damage without doubt. */
const isPlain = ({ unclear }: Damage): boolean => !unclear;

/** Why it is not proven that a part was sound just before it was damaged; undefined where it is. */
function unproven(part: DamagedPart): ChargeOpen | 'was-there' | undefined {
  if (part.damages.some(({ clash }) => clash)) return 'clash';
  const kinds = part.damages.filter(isPlain).map(({ before }) => before.kind);
  if (kinds.length === 0) return 'wear-or-damage';
  if (kinds.includes('sound')) return part.wasDamaged && !isEach(part) ? 'got-worse' : undefined;
  for (const kind of ['no-hand-out', 'not-looked-at', 'got-worse'] as const)
    if (kinds.includes(kind)) return kind;
  return kinds.length < part.damages.length ? 'wear-or-damage' : 'was-there';
}

/** The job that renews the whole set of which a job changes a piece. */
export const setOf = (job: JobKind): JobKind => (job === 'change-link' ? 'renew-chain' : job);

/** Items by whose wear the life left of a part is told; single links and shoes have that of their set. */
const wearItems = (job: JobKind): readonly string[] => jobTraits[setOf(job)].mends;

interface Left {
  readonly percent: number;
  readonly from: LeftFrom;
}

const isRepair = (job: JobKind): boolean => !job.startsWith('renew-') && job !== 'change-link';

/** Percent of life that a part had left just before it was damaged: by its most worn item, else by its hours. */
function leftOf(input: RentalInput, part: DamagedPart): Left | undefined {
  const { job, side, price } = part;
  if (isRepair(job)) return { percent: 100, from: 'repair' };
  const worn = wornNow(input, part, wearItems(job));
  if (worn !== undefined) return { percent: clamp(100 - worn), from: 'readings' };
  const { machine, walk } = input.returned.input;
  const fitted = side === 'whole' ? undefined : machine[side satisfies Side]?.fittedAtHours;
  const ran = fitted !== undefined && walk.meterHours !== undefined ? walk.meterHours - fitted : undefined;
  if (jobTraits[job].component !== 'track' || ran === undefined || ran < 0) return undefined;
  if (price?.lifeHours === undefined) return undefined;
  return { percent: clamp(100 - (100 * ran) / price.lifeHours), from: 'hours' };
}

const clamp = (percent: number): number => Math.min(100, Math.max(0, percent));

/** The damaged parts of a hire, each once. */
export const damageLines = (input: RentalInput, faults: readonly OwnerFault[]): readonly ChargeLine[] =>
  damagedParts(input).map((part) => lineOf(input, part, faults));

function standingOf(
  { contract }: RentalInput,
  part: DamagedPart,
  left: Left | undefined,
  owner: readonly OwnerFault[],
): Standing {
  if (part.damages.length === 0) return { kind: 'not-charged', why: 'waived' };
  const why = unproven(part);
  if (why === 'was-there') return { kind: 'not-charged', why };
  if (why !== undefined) return { kind: 'open', why };
  if (owner.length > 0) return { kind: 'open', why: 'owner-side' };
  if (part.price?.minor === undefined) return { kind: 'open', why: 'no-price' };
  if (!left) return { kind: 'open', why: 'value-left' };
  const isWorthless = left.from !== 'repair' && valueShare(left.percent, contract.cutOffPercent ?? 0) === 0;
  return isWorthless ? { kind: 'not-charged', why: 'nothing-left' } : { kind: 'charged' };
}

/** A part without the damage that the contract leaves out; with none where it leaves out the part. */
function notWaived({ contract: { waived = [] } }: RentalInput, part: DamagedPart): DamagedPart {
  const damages = waived.includes(part.job) ? [] : part.damages;
  return { ...part, damages: damages.filter(({ item }) => !waived.includes(item)) };
}

const noAmounts = { partMinor: undefined, labourMinor: undefined } as const;

/** Part and labour by the share of life that was left, as far as they have a price. */
function amountsOf(
  price: ContractPart | undefined,
  count: number,
  share: number,
  by: Contract['labour'],
): Pick<ChargeLine, 'partMinor' | 'labourMinor'> {
  const labour = { share, whole: 1, none: 0 }[by ?? 'share'];
  return {
    partMinor: price?.minor === undefined ? undefined : price.minor * count * share,
    labourMinor: price?.labourMinor === undefined ? undefined : price.labourMinor * count * labour,
  };
}

function lineOf(input: RentalInput, part: DamagedPart, faults: readonly OwnerFault[]): ChargeLine {
  const { contract } = input;
  const { id, job, side, number, price, damages } = part;
  const counted = notWaived(input, part);
  const items = counted.damages.map(({ item }) => item);
  const owner = harming(faults, side, items);
  const left = leftOf(input, part);
  const cutOff = left?.from === 'repair' ? 0 : (contract.cutOffPercent ?? 0);
  const share = left && valueShare(left.percent, cutOff);
  const count = isEach(part) ? Math.max(1, ...counted.damages.filter(isPlain).map(moreThanBefore)) : 1;
  const standing = standingOf(input, counted, left, owner);
  // What may be wear as well has no amount until people agree on one.
  const isUnclear = standing.kind === 'open' && standing.why === 'wear-or-damage';
  const priced = isUnclear ? undefined : price;
  const [first] = damages;
  return {
    id: `damage.${id}`,
    kind: 'damage',
    job,
    side,
    number,
    damages,
    used: undefined,
    excess: undefined,
    leftPercent: left?.from === 'repair' ? undefined : left?.percent,
    leftFrom: left?.from,
    mostMinor: undefined,
    price,
    count,
    ...(share === undefined ? noAmounts : amountsOf(priced, count, share, contract.labour)),
    standing,
    ownerFaults: owner,
    photos: first ? pairOf(input, first.place, first.item) : { before: undefined, after: undefined },
  };
}
