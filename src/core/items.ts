import type { Shape } from './machine.ts';
import { isChain, isRubber } from './machine.ts';

export const components = [
  'machine',
  'track',
  'idler',
  'adjuster',
  'carrier-roller',
  'slide-plate',
  'bottom-roller',
  'sprocket',
  'motor',
  'suspension',
  'frame',
] as const;
export type Component = (typeof components)[number];

/**
 * How an item is read. `finding` is one of a list, fine first, each later one at least as severe; `length` is
 * one measured size; `pitch` a length over counted links; `tread` a roller in place, A = 2·(B − C); `pair`
 * the two flanges of an idler; `crack` a length and a depth; `sag` a value with its method.
 */
export type Ask =
  | { readonly kind: 'finding'; readonly findings: readonly string[]; readonly counted?: 'count' | 'share' }
  | { readonly kind: 'length'; readonly samples: { readonly short: number; readonly full: number } }
  | { readonly kind: 'pitch' | 'tread' | 'pair' | 'crack' | 'sag' };

/** The order in which an item's readings grow worse, or none (such items are exempt from the monotone law). */
export type SeverityOrder = 'past-limit' | 'from-range' | 'findings' | 'product' | 'none';

export interface Item {
  readonly id: string;
  readonly component: Component;
  readonly ask: Ask;
  readonly order: SeverityOrder;
  /** True when some finding of it could park the machine; it must be known before a machine may be called `run`. */
  readonly canPark: boolean;
  /** The least walk that asks for it; `opened` is asked only when somebody opens it. */
  readonly depth: 'short' | 'full' | 'opened';
  /** Where the machine stands when it is read. */
  readonly stance: 'drive' | 'ground' | 'raised';
  readonly fits: (shape: Shape) => boolean;
  /** Readings outside these millimetres are asked about. Widest sizes of any tracked machine, an estimate. */
  readonly plausibleMm?: readonly [number, number];
}

type Extra = Partial<Omit<Item, 'id' | 'component' | 'ask'>>;

const always = () => true;
const pads = (shape: Shape) => shape.track === 'steel-pads' || shape.track === 'rubber-shoes';
const cored = (shape: Shape) => shape.track === 'rubber-cored';
const greased = (shape: Shape) => shape.tensioner === 'grease';
const sprung = (shape: Shape) => shape.suspension !== 'rigid';

const orders: Record<Ask['kind'], SeverityOrder> = {
  finding: 'findings',
  length: 'past-limit',
  pitch: 'past-limit',
  tread: 'past-limit',
  pair: 'past-limit',
  crack: 'product',
  sag: 'from-range',
};

function item(component: Component, id: string, ask: Ask, extra: Extra = {}): Item {
  const stance = 'ground';
  return {
    id,
    component,
    ask,
    order: orders[ask.kind],
    canPark: false,
    depth: 'short',
    stance,
    fits: always,
    ...extra,
  };
}

const found = (...findings: string[]): Ask => ({ kind: 'finding', findings });
const counted = (...findings: string[]): Ask => ({ kind: 'finding', findings, counted: 'count' });
const length = (short: number, full: number): Ask => ({ kind: 'length', samples: { short, full } });

const rubberTrack = (id: string, ask: Ask, extra: Extra = {}) =>
  item('track', id, ask, { fits: isRubber, ...extra });
const chain = (id: string, ask: Ask, extra: Extra = {}) =>
  item('track', id, ask, { fits: isChain, ...extra });

/** Every item of the walk, in the order in which a stop lists them. */
export const items: readonly Item[] = [
  item('machine', 'drift', found('straight', 'drifts'), { stance: 'drive', depth: 'opened' }),
  item('machine', 'jumping', found('none', 'jumps'), { stance: 'drive', depth: 'opened', canPark: true }),
  item('machine', 'drive-noise', found('normal', 'popping', 'grinding'), {
    stance: 'drive',
    depth: 'opened',
  }),
  item('machine', 'heat', found('even', 'one-hot'), { stance: 'drive', depth: 'opened' }),

  item('machine', 'tracks-alike', found('alike', 'different'), { depth: 'full' }),

  item('track', 'track-off', found('on', 'off-inside', 'off-outside'), {
    depth: 'opened',
    canPark: true,
    order: 'none',
  }),
  item('track', 'sag-before', found('right', 'slack', 'tight'), { depth: 'opened', order: 'none' }),
  rubberTrack('kinked-cords', found('none', 'kinked'), { depth: 'opened', canPark: true }),

  item('track', 'sag', { kind: 'sag' }, { canPark: true, plausibleMm: [0, 700] }),
  item('track', 'sag-by-eye', found('right', 'slack', 'very-slack', 'tight'), {
    depth: 'opened',
    order: 'none',
    canPark: true,
  }),
  rubberTrack('lug-depth', length(2, 3), { plausibleMm: [0, 90] }),
  rubberTrack('cord', counted('none', 'showing', 'cut', 'half-cut', 'rust-under', 'parted'), {
    canPark: true,
  }),
  rubberTrack('crack', { kind: 'crack' }, { plausibleMm: [0, 1000] }),
  rubberTrack('bulge', found('none', 'bulge')),
  rubberTrack('lug-damage', counted('sound', 'nicked', 'chunked', 'torn-out')),
  rubberTrack('edges', found('sound', 'nicked', 'cut', 'cord-showing')),
  rubberTrack('cores', counted('sound', 'rusty', 'bent', 'loose', 'missing', 'neighbours-gone'), {
    canPark: true,
    fits: cored,
  }),
  rubberTrack('drive-lugs', counted('sound', 'worn', 'chipped', 'missing', 'neighbours-gone'), {
    canPark: true,
  }),
  rubberTrack('guide-horns', counted('sound', 'worn', 'broken', 'neighbours-gone'), { canPark: true }),
  rubberTrack('roller-path', {
    kind: 'finding',
    findings: ['sound', 'worn', 'core-exposed'],
    counted: 'share',
  }),
  rubberTrack('swelling', found('none', 'soft', 'swollen')),
  rubberTrack('tread-way', found('right', 'reversed'), { depth: 'full' }),

  chain('link-height', length(0, 2), { depth: 'full', plausibleMm: [20, 300] }),
  chain('pitch', { kind: 'pitch' }, { depth: 'full', plausibleMm: [60, 450] }),
  chain('bushing-od', length(0, 2), { depth: 'full', plausibleMm: [15, 130] }),
  chain('grouser', length(1, 1), { plausibleMm: [0, 150] }),
  chain('pad-height', length(1, 1), { fits: pads, plausibleMm: [0, 150] }),
  chain('link-sides', found('sound', 'scalloped', 'peened'), { depth: 'full' }),
  chain('pin-bosses', found('clear', 'touching'), { depth: 'full' }),
  chain('links-cracked', counted('none', 'one', 'several'), { canPark: true }),
  chain('bushing-crack', counted('sound', 'cracked')),
  chain('bushing-turned', found('no', 'yes'), { depth: 'full', order: 'none' }),
  chain('master-joint', found('tight', 'loose', 'open'), { canPark: true }),
  chain('pin-walk', counted('none', 'walking'), { canPark: true }),
  chain('joints', counted('oiled', 'dry'), { depth: 'full' }),
  chain('shoes', counted('sound', 'bent', 'cracked', 'missing'), { canPark: true }),
  chain('shoe-bolts', counted('tight', 'one-loose', 'too-few'), { canPark: true }),
  chain('bolt-holes', found('round', 'ovalled'), { depth: 'full' }),
  chain('pads', counted('sound', 'torn', 'missing'), { fits: pads }),
  chain('pad-bolts', counted('tight', 'loose', 'missing'), { fits: pads }),
  chain('chain-way', found('right', 'reversed'), { depth: 'full' }),
  chain('snaking', found('straight', 'snaking'), { depth: 'full' }),

  item('idler', 'idler-rim', found('sound', 'worn', 'cracked'), { canPark: true }),
  item('idler', 'idler-play', found('tight', 'play', 'track-climbs'), { canPark: true }),
  item('idler', 'idler-leak', found('dry', 'weeping', 'leaking')),
  item('idler', 'idler-mount', found('sound', 'cracked'), { canPark: true }),
  item('idler', 'idler-flange', found('sound', 'worn', 'broken'), {
    depth: 'full',
    fits: isChain,
    canPark: true,
  }),
  item('idler', 'idler-tread', { kind: 'pair' }, { depth: 'opened', fits: isChain, plausibleMm: [0, 80] }),

  item('adjuster', 'adjuster-travel', found('plenty', 'little', 'end')),
  item('adjuster', 'adjuster-leak', found('dry', 'weeping', 'valve-damaged'), {
    canPark: true,
    fits: greased,
  }),
  item('adjuster', 'recoil-spring', found('sound', 'broken'), { canPark: true }),
  item('adjuster', 'packing', found('clear', 'packed')),

  item('carrier-roller', 'carrier-turn', found('turns', 'rough', 'seized')),
  item('carrier-roller', 'carrier-leak', found('dry', 'weeping', 'leaking')),
  item('carrier-roller', 'carrier-flat', found('round', 'flat')),
  item('slide-plate', 'slide-wear', found('sound', 'worn', 'worn-through')),

  item('bottom-roller', 'roller-turn', found('turns', 'rough', 'seized'), {
    stance: 'raised',
    depth: 'full',
  }),
  item('bottom-roller', 'roller-leak', found('dry', 'weeping', 'leaking')),
  item('bottom-roller', 'roller-flat', found('round', 'flat')),
  item('bottom-roller', 'roller-flange', found('sound', 'worn', 'broken', 'missing', 'track-climbs'), {
    canPark: true,
  }),
  item('bottom-roller', 'roller-bolts', found('tight', 'loose', 'missing'), { canPark: true }),
  item('bottom-roller', 'roller-wire', found('clear', 'wrapped')),
  item('bottom-roller', 'roller-tread', { kind: 'tread' }, { depth: 'opened', plausibleMm: [60, 400] }),

  item('sprocket', 'sprocket-teeth', found('good', 'worn', 'hooked', 'broken'), { canPark: true }),
  item('sprocket', 'sprocket-bolts', found('tight', 'loose', 'missing'), { canPark: true }),
  item('motor', 'motor-oil', found('dry', 'weeping', 'leaking')),
  item('motor', 'motor-bolts', found('tight', 'loose', 'missing'), { canPark: true }),

  item('suspension', 'suspension-arms', found('sound', 'worn', 'cracked'), { canPark: true, fits: sprung }),
  item('frame', 'track-frame', found('sound', 'bent', 'cracked'), { canPark: true }),
  item('frame', 'guards', found('sound', 'bent', 'missing')),
  item('frame', 'alignment', found('straight', 'toed'), { depth: 'full', fits: isChain }),
];

const byId = new Map(items.map((each) => [each.id, each]));

/** The item of that id, or undefined for one that this version does not know. */
export const itemById = (id: string): Item | undefined => byId.get(id);

/** How many parts of a component one side has; 1 where the part is not numbered, 0 where there is none. */
export function partsASide(component: Component, shape: Shape): number {
  if (component === 'idler') return shape.idlers;
  if (component === 'bottom-roller') return shape.bottomRollers;
  if (component === 'carrier-roller') return shape.carrierRollers;
  if (component === 'slide-plate') return shape.slidePlate ? 1 : 0;
  return 1;
}

/** True for a component whose parts are counted from the idler. */
export const isNumbered = (component: Component): boolean =>
  component === 'idler' || component === 'bottom-roller' || component === 'carrier-roller';

/** The items of one component that a machine of this shape has. */
export const itemsOf = (component: Component, shape: Shape): readonly Item[] =>
  partsASide(component, shape) === 0
    ? []
    : items.filter((each) => each.component === component && each.fits(shape));
