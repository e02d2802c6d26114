import type { Component } from './items.ts';
import type { Shape } from './machine.ts';

/** How a fact of a part is found out: `spaces` is a pitch over counted spaces, `twice` a count made two times. */
export type FactAsk =
  | { readonly kind: 'text' | 'length' | 'count' | 'twice' | 'spaces' }
  | { readonly kind: 'choice'; readonly choices: readonly string[] };

const text = { kind: 'text' } as const;
const length = { kind: 'length' } as const;
const count = { kind: 'count' } as const;
const choice = (...choices: readonly string[]): FactAsk => ({ kind: 'choice', choices });

/**
 * What a parts desk has to know of a part. Guides and what the rollers run on: a fourth thing that must match besides
 * width, pitch and links (newrubbertrack.com guide); the rest is common practice, no source.
 */
export const factAsks = {
  moulding: text,
  width: length,
  pitch: { kind: 'spaces' },
  'pitch-new': length,
  links: { kind: 'twice' },
  guide: choice('inner', 'outer', 'offset', 'none'),
  'across-guides': length,
  'rollers-on': choice('core', 'rubber'),
  cored: choice('cored', 'coreless'),
  tread: choice('blocks', 'c-lugs', 'zig-zag', 'straight-bars', 'multi-bars', 'turf', 'smooth', 'other'),
  joint: choice('sealed', 'greased', 'dry'),
  bushing: length,
  'bushing-new': length,
  master: choice('pin', 'split-link', 'none'),
  handed: choice('handed', 'either'),
  'shoe-width': length,
  'shoe-holes': count,
  'shoe-bolt': text,
  grousers: choice('one', 'two', 'three', 'flat'),
  'pad-fixing': choice('bolted', 'clipped', 'bonded'),
  'pad-bolt': text,
  teeth: count,
  'one-piece': choice('one-piece', 'segments'),
  bolts: count,
  circle: length,
  'bolt-size': text,
  diameter: length,
  flange: choice('single', 'double', 'none'),
  bore: length,
  mark: text,
} as const satisfies Record<string, FactAsk>;
export type FactName = keyof typeof factAsks;

export const isFactName = (name: string): name is FactName => Object.hasOwn(factAsks, name);

/** What a fact is called to ask after it, seen as one of all. */
export const factAsk = (name: FactName): FactAsk => factAsks[name];

/** How many of a part a job takes: one, one for each place, one for each link, or a set that has to be counted. */
export type Counted = 'one' | 'places' | 'links' | 'found' | 'bolts';

interface PartTraits {
  /** The component that its facts belong to. */
  readonly component: Component;
  readonly counted: Counted;
  readonly facts: readonly FactName[];
}

const part = (component: Component, counted: Counted, ...facts: readonly FactName[]): PartTraits => ({
  component,
  counted,
  facts,
});

const joint = ['pitch', 'pitch-new', 'bushing', 'bushing-new', 'joint'] as const;
const bolt = ['bolts', 'bolt-size'] as const;
const shoe = ['shoe-width', 'shoe-holes', 'shoe-bolt'] as const;

/** Every kind of part that can be ordered, with what has to be known of it. */
export const partTraits = {
  'rubber-track': part(
    'track',
    'one',
    ...(['moulding', 'width', 'pitch', 'links', 'guide', 'across-guides'] as const),
    ...(['rollers-on', 'cored', 'tread'] as const),
  ),
  chain: part('track', 'one', 'moulding', 'links', ...joint, 'master', 'handed'),
  'chain-link': part('track', 'found', 'moulding', ...joint, 'handed'),
  'master-joint': part('track', 'one', 'moulding', 'master', ...joint, 'handed'),
  'joint-seals': part('track', 'one', 'moulding', 'links', ...joint),
  shoe: part('track', 'found', ...shoe, 'grousers', 'pitch', 'pitch-new'),
  shoes: part('track', 'links', ...shoe, 'grousers', 'pitch', 'pitch-new', 'links'),
  'shoe-bolts': part('track', 'bolts', 'shoe-holes', 'shoe-bolt', 'links'),
  pad: part('track', 'found', 'shoe-width', 'pad-fixing', 'pad-bolt'),
  pads: part('track', 'links', 'shoe-width', 'pad-fixing', 'pad-bolt', 'links'),
  'pad-bolts': part('track', 'found', 'pad-fixing', 'pad-bolt'),
  sprocket: part('sprocket', 'one', 'teeth', 'one-piece', ...bolt, 'circle', 'mark'),
  'sprocket-bolts': part('sprocket', 'bolts', ...bolt),
  idler: part('idler', 'places', 'diameter', 'width', 'mark'),
  'idler-guides': part('idler', 'places', 'mark'),
  'bottom-roller': part('bottom-roller', 'places', 'flange', ...bolt, 'diameter', 'mark'),
  'roller-bolts': part('bottom-roller', 'bolts', ...bolt),
  'carrier-roller': part('carrier-roller', 'places', 'flange', ...bolt, 'diameter', 'mark'),
  'slide-plate': part('slide-plate', 'one', ...bolt, 'mark'),
  'adjuster-seals': part('adjuster', 'one', 'bore', 'mark'),
  'grease-valve': part('adjuster', 'one', 'mark'),
  'recoil-spring': part('adjuster', 'one', 'mark'),
  'motor-seals': part('motor', 'one', 'mark'),
  'motor-bolts': part('motor', 'bolts', ...bolt),
  'suspension-arm': part('suspension', 'found', 'mark'),
  guard: part('frame', 'found', 'mark'),
  other: part('machine', 'found', 'mark'),
} as const satisfies Record<string, PartTraits>;
export type PartKind = keyof typeof partTraits;

export const traitsOfPart = (kind: PartKind): PartTraits => partTraits[kind];

/** Flanges that may differ from roller to roller, and so belong to the one at its number. */
export const isOfOnePart = (kind: PartKind, name: FactName, { flanges }: Shape): boolean =>
  kind === 'bottom-roller' && name === 'flange' && flanges === 'mixed';
