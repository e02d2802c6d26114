import type { Item } from './items.ts';
import type { Place } from './keys.ts';
import { priorOf, lifeFigureFor, type LifeFigure, type LifeTables } from './life.ts';
import { limitsFor, type ItemLimits, type LimitSheet, type Load } from './limits.ts';
import { dayOfWalk } from './days.ts';
import { eventsOf, isMisplaced, loadOf, placeAt, squared, swapsOf, type Gathered } from './part-events.ts';
import { addTo } from './lists.ts';
import type { Machine } from './machine.ts';
import { plausibility } from './plausible.ts';
import type { HoursFault } from './engine-hours.ts';
import { runningHours, type RunningHours } from './running-hours.ts';
import { isSized, sizeOf, type ToolUncertainty } from './sizes.ts';
import { slotsOf, type Slot } from './slots.ts';
import { stateKey, type PlacedReading } from './states.ts';
import type { Walk, Work } from './walk.ts';
import type { RatePrior, WearEvent } from './wear-filter.ts';
import { wear } from './wear.ts';

/** A walk with what was read on it; the readings of rows and looks may be among them and are passed over. */
export interface WalkReadings {
  readonly key: string;
  readonly walk: Walk;
  readonly readings: readonly PlacedReading[];
}

export interface HistoryInput {
  readonly machine: Machine;
  /** In the order of time. */
  readonly walks: readonly WalkReadings[];
  readonly work: readonly Work[];
  /** One pair of sheets for all walks, so that like is compared with like. */
  readonly sheets: { readonly left?: LimitSheet | undefined; readonly right?: LimitSheet | undefined };
  readonly tools: ToolUncertainty;
  readonly life: LifeTables;
  /** What the own fleet has taught, by the id of the life figure that it stands in for. */
  readonly learnt?: ReadonlyMap<string, RatePrior>;
}

/** A reading of a part as the forecast takes it: running hours, percent of wear and its standard uncertainty. */
export interface Point {
  readonly walk: string;
  readonly hours: number;
  readonly percent: number;
  readonly u: number;
  /** Mean size in mm over the spots read. */
  readonly mm: number;
}

/** Why a part has no figure, or what about it needs an answer. */
export type HistoryFault =
  HoursFault | 'no-reading' | 'work-hours' | 'no-life-figure' | 'improved' | 'life-zero';

/** How long a part was on the machine; `broke`: it was taken off because something other than wear ended it. */
export interface PartLife {
  readonly hours: number;
  readonly broke: boolean;
}

/** One measured part of a machine with everything that was read of it and done to it. */
export interface PartHistory {
  readonly item: Item;
  readonly place: Place;
  readonly side: Slot['side'];
  readonly number: number | undefined;
  readonly limits: ItemLimits;
  readonly points: readonly Point[];
  /** Of the part that is there now. */
  readonly events: readonly WearEvent[];
  /** Of those that were there before, as far as something was read of them. */
  readonly earlier: readonly (readonly WearEvent[])[];
  /** Hours that parts lasted whose fitting is known, the one there now among them, still running. */
  readonly lives: readonly PartLife[];
  readonly figure: LifeFigure | undefined;
  readonly prior: RatePrior | undefined;
  readonly isLearnt: boolean;
  /** True when it is known when the part as it is now was fitted. */
  readonly fittedKnown: boolean;
  readonly faults: readonly HistoryFault[];
  /** A drop of wear between two readings, in percent, where one is questioned. */
  readonly droppedBy?: number;
}

export interface Histories {
  readonly hours: RunningHours;
  readonly parts: readonly PartHistory[];
}

const isMeasured = ({ ask }: Item): boolean =>
  ask.kind === 'length' || ask.kind === 'pitch' || ask.kind === 'tread' || ask.kind === 'pair';

/** The histories of every measured part of the machine that has a limit on its sheet. */
export function historiesOf(input: HistoryInput): Histories {
  const hours = runningHours(
    input.walks.map(({ walk }) => walk),
    input.work,
  );
  const sizes = input.walks.map(({ readings }) => {
    const found = new Map<string, PlacedReading[]>();
    for (const each of readings) {
      if (isSized(each.reading.what)) addTo(found, stateKey(each.place, each.item), each);
    }
    return found;
  });
  const days = new Map(input.walks.map(({ key, walk }) => [key, dayOfWalk(walk)]));
  const gathered = { input, hours, days, sizes };
  const parts = slotsOf(input.machine)
    .filter(({ item }) => isMeasured(item))
    .flatMap((slot) => historyOf(slot, gathered) ?? []);
  return { hours, parts };
}

function historyOf(slot: Slot, gathered: Gathered): PartHistory | undefined {
  const { input, hours } = gathered;
  const sheet = slot.side === 'right' ? input.sheets.right : input.sheets.left;
  const position = slot.number === undefined ? undefined : { number: slot.number, of: slot.parts };
  const limits = sheet && limitsFor(sheet, slot.item.id, position);
  if (!limits) return undefined;
  const points = pointsOf(slot, limits, gathered);
  const last = input.walks.at(-1)?.walk;
  const { kind, shape } = input.machine;
  const of = { item: slot.item.id, kind, track: shape.track, ground: last?.ground, turning: last?.turning };
  const figure = lifeFigureFor(input.life, of);
  const learnt = figure && input.learnt?.get(figure.id);
  const factor = of.turning === undefined ? 1 : input.life.turning[of.turning].value;
  const isLifeZero = figure !== undefined && !(figure.lowHours > 0 && figure.highHours > figure.lowHours);
  const prior = learnt ?? (figure && !isLifeZero ? priorOf(figure, factor) : undefined);
  const worked = eventsOf(slot, limits, points, gathered);
  const { events } = worked;
  const droppedBy = hours.fault === undefined ? dropOf(events) : undefined;
  const faults: HistoryFault[] = [];
  if (hours.fault !== undefined) faults.push(hours.fault);
  else if (points.length === 0) faults.push('no-reading');
  else if (isMisplaced(slot, gathered)) faults.push('work-hours');
  if (isLifeZero) faults.push('life-zero');
  else if (prior === undefined) faults.push('no-life-figure');
  if (droppedBy !== undefined) faults.push('improved');
  return {
    item: slot.item,
    place: slot.place,
    side: slot.side,
    number: slot.number,
    limits,
    points,
    ...worked,
    figure,
    prior,
    isLearnt: learnt !== undefined,
    faults,
    ...(droppedBy !== undefined && { droppedBy }),
  };
}

/** The mean of the marked spots of a part on each walk; what is questioned and not confirmed is passed over. */
function pointsOf(slot: Slot, limits: ItemLimits, gathered: Gathered): readonly Point[] {
  const { input, hours, sizes } = gathered;
  const swaps = swapsOf(slot, gathered);
  const load = loadOf(input);
  return input.walks.flatMap(({ key }, at): readonly Point[] => {
    const running = hours.ofWalks[at];
    if (running === undefined) return [];
    const moment = { hours: running, day: gathered.days.get(key) };
    const found = sizes[at]?.get(stateKey(placeAt(slot, moment, swaps), slot.item.id));
    if (!found) return [];
    const size = meanOf(slot.item, found, limits, load, input.tools);
    const worn = size && wear(limits, size, load);
    if (!size || !worn) return [];
    // The reading's own error alone: what new and limit may be off is the same at every walk, and no noise.
    const shifted = wear(limits, { mm: size.mm + size.uMm, uMm: 0 }, load);
    const own = (shifted?.percent ?? worn.percent) - worn.percent;
    const u = Math.sqrt(squared(own) + squared(input.life.readingError.value));
    return [{ walk: key, hours: running, percent: worn.percent, u, mm: size.mm }];
  });
}

function meanOf(
  item: Item,
  found: readonly PlacedReading[],
  limits: ItemLimits,
  load: Load | undefined,
  tools: ToolUncertainty,
): { readonly mm: number; readonly uMm: number } | undefined {
  const spots = new Map<number, { mm: number; uMm: number }[]>();
  for (const { n, reading } of found) {
    if (!isSized(reading.what)) continue;
    const size = sizeOf(reading, reading.what, tools);
    const isAsked = !reading.confirmed && plausibility(item, size, limits, load) !== undefined;
    if (!isAsked) spots.set(reading.spot ?? n, [...(spots.get(reading.spot ?? n) ?? []), size]);
  }
  if (spots.size === 0) return undefined;
  let mm = 0;
  let square = 0;
  for (const repeats of spots.values()) {
    mm += repeats.reduce((sum, each) => sum + each.mm, 0) / repeats.length;
    square += squared(Math.max(...repeats.map(({ uMm }) => uMm)));
  }
  return { mm: mm / spots.size, uMm: Math.sqrt(square) / spots.size };
}

/**
 * The largest drop of wear below the most that was read before, in percent, that the readings' own errors do not
 * explain: several small ones are as telling as one large one.
 */
function dropOf(events: readonly WearEvent[]): number | undefined {
  let highest: Exclude<WearEvent, { kind: 'stepped' }> | undefined;
  let worst: number | undefined;
  for (const event of events) {
    if (event.kind === 'stepped') {
      highest = undefined;
      continue;
    }
    const drop = (highest?.percent ?? -Infinity) - event.percent;
    const sure = 3 * Math.sqrt(squared(highest?.u ?? 0) + squared(event.u));
    if (event.kind === 'read' && drop > sure && drop > (worst ?? 0)) worst = drop;
    if (drop < 0) highest = event;
  }
  return worst;
}
