import { groupOf, isNeeded, isPassable, numbersOf, passItem, samplesNeeded, type GroupId } from './groups.ts';
import { itemsOf, partsASide, type Component, type Item } from './items.ts';
import { makePlace, type Place, type PlaceSide } from './keys.ts';
import type { Posture } from './limits.ts';
import type { Machine, Side } from './machine.ts';
import type { Corner, Walk } from './walk.ts';

/** Where one stands; the walk goes round the machine once, then each side raised where it has to be. */
export const stopIds = [
  'drive',
  'off',
  'front-left',
  'side-left',
  'rear-left',
  'rear-right',
  'side-right',
  'front-right',
  'raised-left',
  'raised-right',
  'end',
] as const;
export type StopId = (typeof stopIds)[number];

/** How the machine must stand: engine off and blocked, or two people with the track turning or rolling. */
export type Mode = 'engine-off' | 'two-people';

/** One question of the walk. */
export interface Step {
  /** Readable and stable for one machine and walk, used in the address bar. */
  readonly id: string;
  readonly stop: StopId;
  readonly mode: Mode;
  readonly side: PlaceSide;
  readonly component: Component;
  readonly place: Place;
  readonly group: GroupId;
  /** The reading item under which a pass of this step is stored. */
  readonly pass: string;
  /** `look` passes a group by eye; `measure` reads one size at one spot; `sag` reads sag. */
  readonly kind: 'look' | 'measure' | 'sag';
  readonly items: readonly Item[];
  readonly spot: number;
  /** The numbers of the parts that a group covers; empty where they are not counted. */
  readonly numbers: readonly number[];
}

const loop: readonly Corner[] = ['front-left', 'rear-left', 'rear-right', 'front-right'];

/** The ground stops in walking order from a corner, with the long sides between the corners of one side. */
export function groundStops(start: Corner): readonly StopId[] {
  const at = loop.indexOf(start);
  const corners = [...loop.slice(at), ...loop.slice(0, at)];
  const stops: StopId[] = corners.flatMap((corner, i) => {
    const side = corner.endsWith('left') ? 'left' : 'right';
    const next = corners[i + 1];
    return next?.endsWith(side) ? [corner, `side-${side}` as const] : [corner];
  });
  // Starting in the middle of a side leaves its long side to the end of the loop.
  for (const side of ['side-left', 'side-right'] as const) if (!stops.includes(side)) stops.push(side);
  return stops;
}

const stopComponents: Record<'front' | 'side' | 'rear', readonly Component[]> = {
  front: ['idler', 'adjuster'],
  side: ['track', 'carrier-roller', 'slide-plate', 'bottom-roller', 'suspension', 'frame'],
  rear: ['sprocket', 'motor'],
};

/** True for an item read with the side raised: a track that is turned to feel its rollers, a raised sag. */
function isRaised(item: Item, posture: Posture, machine: Machine): boolean {
  if (machine.kind === 'dozer') return false;
  return item.ask.kind === 'sag' ? posture === 'raised' : item.stance === 'raised';
}

interface Spot {
  readonly stop: StopId;
  readonly side: PlaceSide;
  readonly component: Component;
}

function stepsFor(spot: Spot, items: readonly Item[], machine: Machine, walk: Walk): readonly Step[] {
  const parts = partsASide(spot.component, machine.shape);
  const numbers = numbersOf(spot.component, parts).flatMap((number) => number ?? []);
  const base = { ...spot, mode: modeOf(spot.stop), spot: 1 };
  const looks = [...new Set(items.filter(isPassable).map((item) => groupOf(item, machine.shape)))].map(
    (group) => {
      const inGroup = items.filter((item) => isPassable(item) && groupOf(item, machine.shape) === group);
      const place = makePlace({ side: spot.side, component: spot.component });
      return {
        ...base,
        id: `${spot.stop}.${group}`,
        place,
        group,
        pass: passItem(group, spot.stop.startsWith('raised')),
        kind: 'look' as const,
        items: inGroup,
        numbers,
      };
    },
  );
  const sizes = items
    .filter((item) => !isPassable(item))
    .flatMap((item) => sizeSteps(base, item, machine, walk));
  return [...sizes, ...looks];
}

function sizeSteps(
  base: Spot & { mode: Mode; spot: number },
  item: Item,
  machine: Machine,
  walk: Walk,
): readonly Step[] {
  const group = groupOf(item, machine.shape);
  const parts = partsASide(item.component, machine.shape);
  return numbersOf(item.component, parts).flatMap((number): readonly Step[] => {
    const place = makePlace({
      side: base.side,
      component: item.component,
      ...(number !== undefined && { number }),
    });
    const name = [base.stop, item.id, ...(number === undefined ? [] : [number])].join('.');
    const pass = passItem(group, false);
    const common = {
      ...base,
      place,
      group,
      pass,
      items: [item],
      numbers: number === undefined ? [] : [number],
    };
    if (item.ask.kind === 'sag') return [{ ...common, id: name, kind: 'sag' as const }];
    return Array.from({ length: samplesNeeded(item, walk) }, (_, i) => {
      const id = item.ask.kind === 'length' ? `${name}.s${i + 1}` : name;
      return { ...common, id, kind: 'measure' as const, spot: i + 1 };
    });
  });
}

const modeOf = (stop: StopId): Mode =>
  stop === 'drive' || stop === 'raised-left' || stop === 'raised-right' ? 'two-people' : 'engine-off';

function stepsAt(stop: StopId, machine: Machine, walk: Walk, posture: Posture): readonly Step[] {
  const needed = (component: Component, keep: (item: Item) => boolean): readonly Item[] =>
    itemsOf(component, machine.shape).filter((item) => isNeeded(item, walk) && keep(item));
  const group = (item: Item): GroupId => groupOf(item, machine.shape);
  if (stop === 'drive' || stop === 'end') {
    const wanted = stop === 'drive' ? 'drive' : 'machine';
    const items = needed('machine', (item) => group(item) === wanted);
    return stepsFor({ stop, side: 'whole', component: 'machine' }, items, machine, walk);
  }
  if (stop === 'off') {
    const items = needed('track', (item) => group(item) === 'off');
    return (['left', 'right'] as const).flatMap((side) =>
      stepsFor({ stop, side, component: 'track' }, items, machine, walk).map((step) => ({
        ...step,
        id: `${step.id}.${side}`,
      })),
    );
  }
  const side: Side = stop.endsWith('left') ? 'left' : 'right';
  const raised = stop.startsWith('raised');
  const zone = stop.startsWith('front') ? 'front' : stop.startsWith('rear') ? 'rear' : 'side';
  const here = raised
    ? [...stopComponents.front, ...stopComponents.side, ...stopComponents.rear]
    : stopComponents[zone];
  return here.flatMap((component) => {
    const keep = (item: Item) => group(item) !== 'off' && isRaised(item, posture, machine) === raised;
    return stepsFor({ stop, side, component }, needed(component, keep), machine, walk);
  });
}

/**
 * Every question of a walk in the order in which one goes round this machine: drive, once round on the
 * ground from any corner, then left raised, then right raised. Stops without a question are left out.
 * @param posture how the sheet's sag is read, since a raised reading belongs to the raised stop
 */
export function stepsOf(machine: Machine, walk: Walk, posture: Posture): readonly Step[] {
  const stops: readonly StopId[] = [
    'drive',
    'off',
    ...groundStops(walk.corner),
    'raised-left',
    'raised-right',
    'end',
  ];
  return stops.flatMap((stop) => stepsAt(stop, machine, walk, posture));
}
