import { components, isNumbered, itemsOf, type Component, type Item } from './items.ts';
import type { Machine, Shape } from './machine.ts';
import type { Walk } from './walk.ts';

/** Things looked at together and passed in one tap. */
export const groupIds = [
  'drive',
  'off',
  'tread',
  'inner',
  'links',
  'shoes',
  'idler',
  'adjuster',
  'carrier-roller',
  'slide-plate',
  'bottom-roller',
  'sprocket',
  'motor',
  'suspension',
  'frame',
  'machine',
] as const;
export type GroupId = (typeof groupIds)[number];

const inner = new Set(['cores', 'drive-lugs', 'guide-horns', 'roller-path']);
const shoes = new Set(['shoes', 'shoe-bolts', 'bolt-holes', 'pads', 'pad-bolts']);
const off = new Set(['track-off', 'sag-before', 'kinked-cords']);

/** The group that an item is passed with. */
export function groupOf(item: Item, shape: Shape): GroupId {
  if (item.component === 'machine') return item.stance === 'drive' ? 'drive' : 'machine';
  if (item.component !== 'track') return item.component;
  if (off.has(item.id)) return 'off';
  if (inner.has(item.id)) return 'inner';
  if (shoes.has(item.id)) return 'shoes';
  return shape.track === 'rubber-cored' || shape.track === 'rubber-coreless' ? 'tread' : 'links';
}

/** True for what can be passed by eye; a size is always measured. */
export const isPassable = (item: Item): boolean => item.ask.kind === 'finding' || item.ask.kind === 'crack';

const startItems: Record<Walk['start'], (item: Item) => boolean> = {
  walk: () => false,
  'track-off': (item) => off.has(item.id),
  'drive-first': (item) => item.stance === 'drive',
};

/** True when a walk of this depth and start asks for the item. */
export function isNeeded(item: Item, walk: Walk): boolean {
  if (walk.opened?.includes(item.id) || startItems[walk.start](item)) return true;
  return item.depth === 'short' || (item.depth === 'full' && walk.depth === 'full');
}

/** The items that could park the machine and that a walk of this depth does not ask for. */
export const parkingNotAsked = ({ shape }: Machine, walk: Walk): readonly Item[] =>
  components
    .flatMap((component) => itemsOf(component, shape))
    .filter((item) => item.canPark && item.depth !== 'opened' && !isNeeded(item, walk));

/** How many marked samples of a length this walk asks for; one where the item is asked at all. */
export function samplesNeeded(item: Item, walk: Walk): number {
  if (item.ask.kind !== 'length') return 1;
  return Math.max(1, item.ask.samples[walk.depth]);
}

/** The reading item under which the pass of a group is stored. */
export const passItem = (group: GroupId, raised: boolean): string =>
  raised ? `pass-${group}-raised` : `pass-${group}`;

/** The numbers of a component's parts on one side: 1 … n from the idler, or one part without a number. */
export const numbersOf = (component: Component, parts: number): readonly (number | undefined)[] =>
  isNumbered(component) ? Array.from({ length: parts }, (_, i) => i + 1) : [undefined];
