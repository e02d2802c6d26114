import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  idSchema,
  isDemo,
  isKind,
  keySchema,
  kindOf,
  kinds,
  makeKey,
  makePlace,
  ownersOf,
  parseKey,
  parsePlace,
  partsOf,
  placeSchema,
  prefixOf,
  type Id,
  type Kind,
  type KeyParts,
  type Place,
  type RecordKey,
} from '../../src/core/keys.ts';

const id = (text: string): Id => idSchema.parse(text);
const place = (text: string): Place => placeSchema.parse(text);
const walk = id('0190a5b2-0000-7000-8000-000000000001');
const hash = 'a'.repeat(64);

const written: readonly (readonly [string, KeyParts])[] = [
  ['machine/digger-1', { kind: 'machine', id: id('digger-1') }],
  ['demo/machine/digger-1', { kind: 'machine', id: id('digger-1'), demo: true }],
  ['limits/1', { kind: 'limits', id: id('1') }],
  ['rules/r', { kind: 'rules', id: id('r') }],
  [`walk/${walk}`, { kind: 'walk', id: walk }],
  [
    `reading/${walk}/left.bottom-roller.3/turns/2`,
    { kind: 'reading', walk, place: place('left.bottom-roller.3'), item: 'turns', n: 2 },
  ],
  [
    `demo/reading/w/whole.frame/cracks/0`,
    { kind: 'reading', walk: id('w'), place: place('whole.frame'), item: 'cracks', n: 0, demo: true },
  ],
  [`photo/w/${hash}`, { kind: 'photo', walk: id('w'), hash }],
  [`seal/w/${hash}`, { kind: 'seal', walk: id('w'), hash }],
  ['verdict/w', { kind: 'verdict', walk: id('w') }],
  ['work/m/1', { kind: 'work', machine: id('m'), id: id('1') }],
  ['contract/1', { kind: 'contract', id: id('1') }],
  ['option/1', { kind: 'option', id: id('1') }],
  ['price/1', { kind: 'price', id: id('1') }],
  ['rate/1', { kind: 'rate', id: id('1') }],
  ['hold/m/track.left-2', { kind: 'hold', machine: id('m'), job: 'track.left-2' }],
  ['same/1', { kind: 'same', id: id('1') }],
  ['person/1', { kind: 'person', id: id('1') }],
];

const noKeys = [
  '',
  'machine',
  'machine/',
  '/machine/1',
  'machine/1/2',
  'machine/A',
  'machine/1 ',
  'machine/1\n',
  'machine/__proto__',
  `machine/${'a'.repeat(65)}`,
  'demo/demo/machine/1',
  'demo/',
  'other/1',
  'toString/1',
  'reading/w/left.track/lug-depth',
  'reading/w/front.track/lug-depth/1',
  'reading/w/left.Track/lug-depth/1',
  'reading/w/left.track.0/lug-depth/1',
  'reading/w/left.track.01/lug-depth/1',
  'reading/w/left.track.1000/lug-depth/1',
  'reading/w/left.track.1.2/lug-depth/1',
  'reading/w/left.-track/lug-depth/1',
  'reading/w/left.track-/lug-depth/1',
  'reading/w/left/lug-depth/1',
  'reading/w/left.track/lug--depth/1',
  'reading/w/left.track/1lug/1',
  'reading/w/left.track/lug-depth/01',
  'reading/w/left.track/lug-depth/-1',
  'reading/w/left.track/lug-depth/10000',
  'reading/w/left.track/lug-depth/1/2',
  `photo/w/${'a'.repeat(63)}`,
  `photo/w/${'A'.repeat(64)}`,
  'verdict/w/1',
  'work/1',
  'hold/m/-x',
  `hold/m/${'x'.repeat(129)}`,
];

describe('keys', () => {
  test.each(written)('[M5] %s is written and taken apart', (text, parts) => {
    expect(makeKey(parts)).toBe(text);
    expect(parseKey(text)).toEqual(parts);
    expect(keySchema.parse(text)).toBe(text);
    expect(isDemo(text)).toBe(parts.demo === true);
    expect(kindOf(text as RecordKey)).toBe(parts.kind);
  });

  test('[M5] every kind is in the table', () => {
    expect([...new Set(written.map(([, parts]) => parts.kind))].sort()).toEqual([...kinds].sort());
  });

  test.each(noKeys)('[M5] %j is no key', (text) => {
    expect(parseKey(text)).toBeUndefined();
    expect(keySchema.safeParse(text).success).toBe(false);
  });

  test('[M5] the longest parts fit', () => {
    const longest = [
      `machine/${'a'.repeat(64)}`,
      'reading/w/right.carrier-roller.999/item/9999',
      `hold/m/${'x'.repeat(128)}`,
    ];
    expect(longest.map((text) => parseKey(text) !== undefined)).toEqual([true, true, true]);
  });

  test('[M5] parts that fit no key are a bug', () => {
    const bad = { kind: 'machine', id: 'Not An Id' as Id } as const;
    expect(() => makeKey(bad)).toThrow('no such key: machine/Not An Id');
  });

  test('[M5] kinds are told apart', () => {
    const key: RecordKey = makeKey({ kind: 'walk', id: walk, demo: true });
    expect([isKind(key, 'walk'), isKind(key, 'reading')]).toEqual([true, false]);
  });

  const prefixes: readonly (readonly [Kind, Parameters<typeof prefixOf>[1], string])[] = [
    ['walk', undefined, 'walk/'],
    ['walk', {}, 'walk/'],
    ['walk', { demo: false }, 'walk/'],
    ['walk', { demo: true }, 'demo/walk/'],
    ['reading', { owner: walk }, `reading/${walk}/`],
    ['reading', { owner: walk, demo: true }, `demo/reading/${walk}/`],
  ];
  test.each(prefixes)('[M6] keys of %s %j begin with %s', (kind, of, text) => {
    expect(prefixOf(kind, of)).toBe(text);
  });

  const owners: readonly (readonly [string, readonly string[]])[] = [
    ['walk/w', ['walk/w']],
    ['reading/w/left.track/sag/1', ['reading/w/left.track/sag/1', 'walk/w']],
    ['demo/reading/w/left.track/sag/1', ['demo/reading/w/left.track/sag/1', 'demo/walk/w']],
    ['verdict/w', ['verdict/w', 'walk/w']],
    [`photo/w/${hash}`, [`photo/w/${hash}`, 'walk/w']],
    ['work/m/1', ['work/m/1', 'machine/m']],
    ['demo/hold/m/j', ['demo/hold/m/j', 'demo/machine/m']],
    ['limits/1', ['limits/1']],
  ];
  test.each(owners)('[M6] a change of %s concerns %j', (key, wanted) => {
    expect(ownersOf(keySchema.parse(key))).toEqual(wanted);
  });
});

describe('places', () => {
  const sides = fc.constantFrom('left' as const, 'right' as const, 'whole' as const);
  const components = fc.stringMatching(/^[a-z][a-z0-9]{0,8}(-[a-z0-9]{1,8}){0,2}$/);
  const numbers = fc.option(fc.integer({ min: 1, max: 999 }), { nil: undefined });

  test('[M7] a place is side, component and number from the idler, there and back', () => {
    expect(makePlace({ side: 'left', component: 'bottom-roller', number: 3 })).toBe('left.bottom-roller.3');
    expect(makePlace({ side: 'whole', component: 'frame' })).toBe('whole.frame');
    fc.assert(
      fc.property(sides, components, numbers, (side, component, number) => {
        const parts = { side, component, ...(number !== undefined && { number }) };
        const text = makePlace(parts);
        expect(parsePlace(text)).toEqual(parts);
        expect(placeSchema.parse(text)).toBe(text);
        const key = makeKey({ kind: 'reading', walk, place: text, item: 'sag', n: 1 });
        expect(partsOf(key).place).toBe(text);
      }),
    );
  });

  test('[M7] what is no place is a bug when made and refused when read', () => {
    const bad = [
      { side: 'left', component: 'Roller' },
      { side: 'left', component: 'roller', number: 0 },
      { side: 'left', component: 'roller', number: 1.5 },
      { side: 'left', component: 'roller', number: 1000 },
    ] as const;
    for (const parts of bad) expect(() => makePlace(parts)).toThrow('no such place');
    for (const text of ['', 'left', 'left.', 'front.track', 'left.track.0', ' left.track', 'left.track\n']) {
      expect(placeSchema.safeParse(text).success).toBe(false);
    }
  });

  test('[M7] ids are up to 64 of 0-9, a-z and hyphen', () => {
    const fine = ['0', 'a-b', '-', 'z'.repeat(64)];
    const bad = ['', 'A', 'a_b', 'a/b', 'z'.repeat(65), 'ä', 'a\n'];
    expect(fine.map((text) => idSchema.safeParse(text).success)).toEqual(fine.map(() => true));
    expect(bad.map((text) => idSchema.safeParse(text).success)).toEqual(bad.map(() => false));
  });
});
