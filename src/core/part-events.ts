import { makePlace, parsePlace, type Place } from './keys.ts';
import type { HistoryInput, PartHistory, PartLife, Point } from './history.ts';
import type { ItemLimits, Load } from './limits.ts';
import { toMm } from './quantity.ts';
import { dayOfWork } from './days.ts';
import type { WorkHours } from './engine-hours.ts';
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
  /** Days of the walks, by their keys. */
  readonly days: ReadonlyMap<string, number | undefined>;
  /** Readings of sizes by place and item, for each walk. */
  readonly sizes: readonly ReadonlyMap<string, readonly PlacedReading[]>[];
}

export const squared = (value: number): number => value * value;

/** The load of the last walk, by which all are judged: like is compared with like. */
export const loadOf = ({ walks }: HistoryInput): Load | undefined => walks.at(-1)?.walk.load;

/** A moment in the life of a machine; the day tells what came first at the same hours. */
interface Moment {
  /** Running hours. */
  readonly hours: number;
  readonly day: number | undefined;
}

const isSwap =
  ({ item }: Slot) =>
  ({ kind, component }: Work): boolean =>
    kind === 'swapped' && (component ?? 'track') === item.component;

/** When such parts changed sides; one record a side or one for both is one swap. */
export function swapsOf(slot: Slot, { input, hours }: Gathered): readonly Moment[] {
  const swaps = new Map<number, Moment>();
  for (const work of input.work.filter(isSwap(slot))) {
    const at = hours.ofWork(work);
    if (at !== undefined && !swaps.has(at)) swaps.set(at, { hours: at, day: dayOfWork(work) });
  }
  return [...swaps.values()];
}

const other = { left: 'right', right: 'left', whole: 'whole' } as const;

/** At the same hours only a later day comes after; what happened on the day itself came before. */
const isAfter = (swap: Moment, { hours, day }: Moment): boolean =>
  swap.hours > hours ||
  (swap.hours === hours && !(day !== undefined && swap.day !== undefined && day > swap.day));

/** The side on which the part of a place was then. */
const sideAt = ({ side }: Slot, moment: Moment, swaps: readonly Moment[]): Slot['side'] =>
  swaps.filter((swap) => isAfter(swap, moment)).length % 2 === 1 ? other[side] : side;

/** Where the part of a place was then. */
export function placeAt(slot: Slot, moment: Moment, swaps: readonly Moment[]): Place {
  const side = sideAt(slot, moment, swaps);
  return side === slot.side ? slot.place : makePlace({ ...parsePlace(slot.place), side });
}

interface Happened {
  readonly event: WearEvent;
  /** Day on which it happened, to tell what came first at the same hours; -Infinity where not known. */
  readonly day: number;
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
  const happened = points.map((point): Happened => ({
    event: { kind: 'read', hours: point.hours, percent: point.percent, u: point.u },
    day: gathered.days.get(point.walk) ?? -Infinity,
    isWork: false,
  }));
  happened.push(...workOn(slot, limits, gathered));
  happened.sort(
    (a, b) =>
      a.event.hours - b.event.hours ||
      (a.day < b.day ? -1 : a.day > b.day ? 1 : 0) ||
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

/** Work on record that concerns the part, whichever side it was on then. */
const worksOn = (slot: Slot, { input, hours }: Gathered, swaps: readonly Moment[]): readonly Work[] =>
  input.work.filter((work) => {
    const at = hours.ofWork(work);
    return at !== undefined && concerns(work, sideAt(slot, { hours: at, day: dayOfWork(work) }, swaps), slot);
  });

/**
 * Hours at which the machine itself says that its tracks were fitted, which is older than any swap. It may name the
 * meter that is on or the first one: the one it is not ahead of.
 */
function fittedAtOf(slot: Slot, { input, hours }: Gathered, swaps: readonly Moment[]): WorkHours | undefined {
  const side = sideAt(slot, { hours: 0, day: undefined }, swaps);
  const isTrack = slot.item.component === 'track' && side !== 'whole';
  const meterHours = isTrack ? input.machine[side]?.fittedAtHours : undefined;
  if (meterHours === undefined) return undefined;
  const now = hours.ofWalks.flatMap((each) => each ?? []).at(-1);
  const at = hours.ofWork({ meterHours });
  const isAhead = at !== undefined && now !== undefined && at > now;
  return isAhead && hours.isChanged ? { meterHours, on: longAgo } : { meterHours };
}

const longAgo = '0001-01-01';

/** What the kind of work makes of a part's wear, if anything. */
const isTelling = (slot: Slot, { kind }: Work): boolean =>
  kind === 'fitted' || steppedBy[kind]?.includes(slot.item.id) === true;

/** True when work that the history of the part leans on is noted at hours that cannot be those of its day. */
export function isMisplaced(slot: Slot, gathered: Gathered): boolean {
  const { input, hours } = gathered;
  const swaps = swapsOf(slot, gathered);
  const works = worksOn(slot, gathered, swaps).filter((work) => isTelling(slot, work));
  const fittedAt = fittedAtOf(slot, gathered, swaps);
  return [...works, ...input.work.filter(isSwap(slot)), ...(fittedAt ? [fittedAt] : [])].some(
    (each) => !hours.fits(each),
  );
}

function workOn(slot: Slot, limits: ItemLimits, gathered: Gathered): readonly Happened[] {
  const { input, hours } = gathered;
  const fresh = freshOf(limits, input);
  const swaps = swapsOf(slot, gathered);
  const onRecord = worksOn(slot, gathered, swaps).flatMap((work): readonly Happened[] => {
    const at = hours.ofWork(work);
    if (at === undefined || !isTelling(slot, work)) return [];
    const event: WearEvent =
      work.kind === 'fitted'
        ? { kind: 'fitted', hours: at, ...fresh(work.newMm) }
        : { kind: 'stepped', hours: at };
    return [{ event, day: dayOfWork(work) ?? -Infinity, isWork: true, why: work.why }];
  });
  const own = fittedAtOf(slot, gathered, swaps);
  const fittedAt = own && hours.ofWork(own);
  if (fittedAt === undefined) return onRecord;
  return [
    ...onRecord,
    { event: { kind: 'fitted', hours: fittedAt, ...fresh() }, day: -Infinity, isWork: true },
  ];
}
