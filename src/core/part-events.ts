import { makePlace, parsePlace, type Place } from './keys.ts';
import type { HistoryInput, PartHistory, PartLife, Point } from './history.ts';
import type { ItemLimits, Load } from './limits.ts';
import { toMm } from './quantity.ts';
import type { RunningHours } from './running-hours.ts';
import type { Slot } from './slots.ts';
import type { PlacedReading } from './states.ts';
import type { Work } from './walk.ts';
import type { WearEvent } from './wear-filter.ts';
import { wear } from './wear.ts';

/** What turning pins and bushings, building up a grouser and such make unknown, by the kind of work. */
const steppedBy: Readonly<Partial<Record<Work['kind'], readonly string[]>>> = {
  turned: ['bushing-od', 'pitch'],
  repaired: ['grouser', 'pad-height', 'roller-tread', 'idler-tread'],
};

/** A machine's records with its running hours. */
export interface Gathered {
  readonly input: HistoryInput;
  readonly hours: RunningHours;
  /** Readings of sizes by place and item, for each walk. */
  readonly sizes: readonly ReadonlyMap<string, readonly PlacedReading[]>[];
}

export const squared = (value: number): number => value * value;

/** The load of the last walk, by which all are judged: like is compared with like. */
export const loadOf = ({ walks }: HistoryInput): Load | undefined => walks.at(-1)?.walk.load;

/** Running hours at which such parts changed sides; one record a side or one for both is one swap. */
export function swapsOf({ item }: Slot, { input, hours }: Gathered): readonly number[] {
  const swapped = input.work.filter(
    ({ kind, component }) => kind === 'swapped' && (component ?? 'track') === item.component,
  );
  return [...new Set(swapped.flatMap((work) => hours.ofWork(work) ?? []))];
}

const other = { left: 'right', right: 'left', whole: 'whole' } as const;

/** The side on which the part of a place was then. */
const sideAt = ({ side }: Slot, hours: number, swaps: readonly number[]): Slot['side'] =>
  swaps.filter((at) => at >= hours).length % 2 === 1 ? other[side] : side;

/** Where the part of a place was then. */
export function placeAt(slot: Slot, hours: number, swaps: readonly number[]): Place {
  const side = sideAt(slot, hours, swaps);
  return side === slot.side ? slot.place : makePlace({ ...parsePlace(slot.place), side });
}

interface Happened {
  readonly event: WearEvent;
  /** Day on which it happened, to tell what came first at the same hours. */
  readonly on: string;
  readonly isWork: boolean;
  readonly why?: Work['why'];
}

/** From one fitting to the next, or until the last walk. */
function lifeOf(
  fitted: Happened | undefined,
  next: Happened | undefined,
  { ofWalks }: RunningHours,
): readonly PartLife[] {
  const last = ofWalks.flatMap((each) => each ?? []).at(-1);
  const end = next?.event.hours ?? last;
  const hours = fitted === undefined || end === undefined ? 0 : end - fitted.event.hours;
  return hours > 0 ? [{ hours, broke: next?.why === 'damaged' }] : [];
}

const concerns = (work: Work, side: Slot['side'], { number, item }: Slot): boolean =>
  (work.side === side || work.side === 'whole') &&
  (work.component === undefined || work.component === item.component) &&
  (work.number === undefined || number === undefined || work.number === number) &&
  (work.item === undefined || work.item === item.id);

/** The readings of a part, cut and stepped by the work on it; sides that were swapped swap what came before. */
export function eventsOf(
  slot: Slot,
  limits: ItemLimits,
  points: readonly Point[],
  gathered: Gathered,
): Pick<PartHistory, 'events' | 'earlier' | 'fittedKnown' | 'lives'> {
  const { input } = gathered;
  const happened = points.map((point): Happened => ({
    event: { kind: 'read', hours: point.hours, percent: point.percent, u: point.u },
    on: input.walks.find(({ key }) => key === point.walk)?.walk.startedAt?.utc.slice(0, 10) ?? '',
    isWork: false,
  }));
  happened.push(...workOn(slot, limits, gathered));
  happened.sort(
    (a, b) =>
      a.event.hours - b.event.hours ||
      (a.on < b.on ? -1 : a.on > b.on ? 1 : 0) ||
      Number(a.isWork) - Number(b.isWork),
  );
  const cuts = happened.flatMap(({ event }, at) => (event.kind === 'fitted' ? [at] : []));
  const starts = cuts[0] === 0 ? cuts : [0, ...cuts];
  const segments = starts.map((from, at) => happened.slice(from, starts[at + 1]).map(({ event }) => event));
  return {
    events: segments.at(-1) ?? [],
    earlier: segments.slice(0, -1).filter((events) => events.some(({ kind }) => kind === 'read')),
    fittedKnown: cuts.length > 0,
    lives: cuts.flatMap((at, n) => lifeOf(happened[at], happened[cuts[n + 1] ?? -1], gathered.hours)),
  };
}

/** Wear of a part just fitted: by its size where that was measured, else that of a new one, which may be off. */
const freshOf =
  (limits: ItemLimits, input: HistoryInput) =>
  (newMm?: number): { readonly percent: number; readonly u: number } => {
    const nominal = limits.new && toMm(limits.new.at, limits.unit);
    const mm = newMm ?? nominal;
    const worn = mm === undefined ? undefined : wear(limits, { mm, uMm: 0 }, loadOf(input));
    const tolerance = newMm === undefined ? (worn?.u ?? 0) : 0;
    const { value } = input.life.newError;
    return { percent: worn?.percent ?? 0, u: Math.sqrt(squared(value) + squared(tolerance)) };
  };

function workOn(slot: Slot, limits: ItemLimits, gathered: Gathered): readonly Happened[] {
  const { input, hours } = gathered;
  const fresh = freshOf(limits, input);
  const swaps = swapsOf(slot, gathered);
  const onRecord = input.work.flatMap((work): readonly Happened[] => {
    const at = hours.ofWork(work);
    if (at === undefined || !concerns(work, sideAt(slot, at, swaps), slot)) return [];
    const done = (event: WearEvent): readonly Happened[] => [
      { event, on: work.on ?? '', isWork: true, why: work.why },
    ];
    if (work.kind === 'fitted') return done({ kind: 'fitted', hours: at, ...fresh(work.newMm) });
    return steppedBy[work.kind]?.includes(slot.item.id) ? done({ kind: 'stepped', hours: at }) : [];
  });
  // What the machine itself says of its tracks is older than any swap.
  const side = sideAt(slot, 0, swaps);
  const isTrack = slot.item.component === 'track' && side !== 'whole';
  const fittedAt = isTrack ? input.machine[side]?.fittedAtHours : undefined;
  if (fittedAt === undefined) return onRecord;
  return [...onRecord, { event: { kind: 'fitted', hours: fittedAt, ...fresh() }, on: '', isWork: true }];
}
