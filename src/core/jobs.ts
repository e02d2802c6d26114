import { callRank, worseCall, type Call } from './calls.ts';
import { jobId, jobKindsFor, jobTraits, type JobKind } from './job-kinds.ts';
import type { PartHours } from './hours-left.ts';
import type { PlaceSide } from './keys.ts';
import type { Shape } from './machine.ts';
import type { ItemOutcome } from './score.ts';

/** Work that the machine needs now or will need: what is done at one go on one side. */
export interface Job {
  readonly id: string;
  readonly kind: JobKind;
  readonly side: PlaceSide;
  /** How many parts, or 1 for a side or both. */
  readonly count: number;
  /** The worst call that asks for it; `run` where only wear to come does. */
  readonly call: Call;
  /** What asks for it now, worst first. */
  readonly outcomes: readonly ItemOutcome[];
  /** Worn parts that it renews, the one that is due first leading. */
  readonly worn: readonly PartHours[];
}

/** What renews a part that is worn out, by what is measured of it. */
const renews: Readonly<Record<string, JobKind>> = {
  'lug-depth': 'renew-track',
  'link-height': 'renew-chain',
  pitch: 'renew-chain',
  'bushing-od': 'renew-chain',
  grouser: 'renew-shoes',
  'pad-height': 'renew-pads',
  'idler-tread': 'renew-idler',
  'roller-tread': 'renew-bottom-roller',
};

/** What mends an item where the call is to repair or adjust it and nothing has to be renewed. */
const mends: Readonly<Record<string, JobKind>> = {
  pitch: 'turn-bushings',
  'bushing-od': 'turn-bushings',
  'links-cracked': 'change-link',
  'bolt-holes': 'change-link',
  'master-joint': 'change-link',
  sag: 'adjust-sag',
  'sag-by-eye': 'adjust-sag',
  'shoe-bolts': 'tighten-bolts',
  'pad-bolts': 'tighten-bolts',
  'roller-bolts': 'tighten-bolts',
  'sprocket-bolts': 'tighten-bolts',
  'motor-bolts': 'tighten-bolts',
  shoes: 'mend-other',
  pads: 'mend-other',
  'idler-play': 'mend-other',
};

/** Parts of a rubber track that a repair leaves on the machine. */
const patched = new Set([
  'crack',
  'edges',
  'lug-damage',
  'cord',
  'cores',
  'drive-lugs',
  'roller-path',
  'bulge',
]);

/** The kind of job that an outcome asks for. */
function kindFor({ state, atLeast }: ItemOutcome, kinds: readonly JobKind[]): JobKind {
  const { id } = state.item;
  const isMild = callRank(atLeast) <= callRank('repair');
  const mild = patched.has(id) ? 'mend-other' : mends[id];
  // Bolts are put right even where the machine is parked for them.
  if (mild !== undefined && (isMild || mild === 'tighten-bolts' || mild === 'adjust-sag')) return mild;
  const renewal = renews[id];
  if (renewal !== undefined && kinds.includes(renewal)) return renewal;
  const others = kinds.filter((kind) => kind !== 'turn-bushings' && kind !== 'regrouser');
  return others.find((kind) => jobTraits[kind].mends.includes(id)) ?? 'mend-other';
}

/** Half of a chain's life has to be left for its bushings to be worth turning (common practice, no source). */
const halfLife = 0.5;

/** Why the pins and bushings of a side are not turned. */
export type NotTurned = 'turned-before' | 'turned-unknown' | 'joints-dry' | 'bushing-cracked' | 'links-short';

/** Why turning is not open on a side, from what was found there; undefined where it is. */
export function notTurned(
  side: PlaceSide,
  outcomes: readonly ItemOutcome[],
  parts: readonly PartHours[],
): NotTurned | undefined {
  const finding = (item: string): string | undefined =>
    outcomes.find(({ state }) => state.side === side && state.item.id === item)?.state.finding;
  const turned = finding('bushing-turned');
  if (turned === 'yes') return 'turned-before';
  if (turned === undefined) return 'turned-unknown';
  if (finding('joints') === 'dry') return 'joints-dry';
  if (finding('bushing-crack') === 'cracked') return 'bushing-cracked';
  const links = parts.find(({ history }) => history.side === side && history.item.id === 'link-height');
  const whole = links && newLifeHours(links);
  const left = links?.left?.middle;
  return left !== undefined && whole !== undefined && left < halfLife * whole ? 'links-short' : undefined;
}

/** Middle life of a new part of this kind in hours; undefined without a life figure. */
export const newLifeHours = ({ history: { prior } }: PartHours): number | undefined =>
  prior && 100 / Math.exp(prior.centre);

const turnable = new Set(['pitch', 'bushing-od']);

/** The kind of job that renews a worn part. */
function renewalOf(part: PartHours, outcomes: readonly ItemOutcome[], parts: readonly PartHours[]): JobKind {
  const { item, side } = part.history;
  const isTurned = turnable.has(item.id) && notTurned(side, outcomes, parts) === undefined;
  return isTurned ? 'turn-bushings' : (renews[item.id] ?? 'mend-other');
}

/** From this chance on that a part is worn out within the horizon its renewal is planned. */
const worthPlanning = 0.05;

interface Draft {
  readonly outcomes: ItemOutcome[];
  readonly worn: PartHours[];
}

/**
 * The jobs of a machine: one for each kind and side, whatever asks for it. Identical parts of one side are one job.
 * @param horizonHours how far ahead wear is looked for
 */
export function jobsOf(
  shape: Shape,
  outcomes: readonly ItemOutcome[],
  parts: readonly PartHours[],
  horizonHours: number,
): readonly Job[] {
  const kinds = jobKindsFor(shape);
  const drafts = new Map<string, Draft & { readonly kind: JobKind; readonly side: PlaceSide }>();
  const draft = (side: PlaceSide, kind: JobKind): Draft => {
    const id = jobId(side, kind);
    const known = drafts.get(id) ?? { kind, side, outcomes: [], worn: [] };
    drafts.set(id, known);
    return known;
  };
  for (const outcome of outcomes) {
    if (callRank(outcome.atLeast) < callRank('adjust')) continue;
    draft(outcome.state.side, kindFor(outcome, kinds)).outcomes.push(outcome);
  }
  for (const part of parts) {
    const isDue = part.passage !== undefined && part.passage.within(horizonHours) >= worthPlanning;
    if (isDue) draft(part.history.side, renewalOf(part, outcomes, parts)).worn.push(part);
  }
  return withoutDoubles([...drafts].map(([id, each]) => jobOf(id, each)));
}

function jobOf(id: string, { kind, side, outcomes, worn }: Draft & Pick<Job, 'kind' | 'side'>): Job {
  const sorted = [...outcomes].sort((a, b) => callRank(b.atLeast) - callRank(a.atLeast));
  const places = new Set([
    ...outcomes.map(({ state }) => state.place),
    ...worn.map(({ history }) => history.place),
  ]);
  return {
    id,
    kind,
    side,
    count: jobTraits[kind].per === 'part' ? places.size : 1,
    call: outcomes.reduce<Call>((worst, each) => worseCall(worst, each.atLeast), 'run'),
    outcomes: sorted,
    worn: [...worn].sort((a, b) => (a.left?.middle ?? 0) - (b.left?.middle ?? 0)),
  };
}

/** A chain or track that has to be replaced takes the smaller jobs on it along. */
function withoutDoubles(jobs: readonly Job[]): readonly Job[] {
  const renewals = jobs.filter(
    ({ kind, call }) => jobTraits[kind].component === 'track' && callRank(call) >= callRank('replace'),
  );
  return jobs.filter((job) => {
    const items = [
      ...job.outcomes.map(({ state }) => state.item.id),
      ...job.worn.map(({ history }) => history.item.id),
    ];
    const isCovered = renewals.some(
      ({ id, kind, side }) =>
        id !== job.id && side === job.side && items.every((item) => jobTraits[kind].mends.includes(item)),
    );
    return !isCovered;
  });
}
