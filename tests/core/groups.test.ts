import { describe, expect, test } from 'vitest';
import {
  groupIds,
  groupOf,
  isNeeded,
  isPassable,
  numbersOf,
  parkingNotAsked,
  passItem,
  samplesNeeded,
} from '../../src/core/groups.ts';
import { components, isNumbered, itemById, items, itemsOf, partsASide } from '../../src/core/items.ts';
import { isChain, isRubber, machineSchema, trackKinds } from '../../src/core/machine.ts';
import { item, machineOf, shapeOf, walkOf } from './made.ts';

const rubber = shapeOf('rubber-cored');
const steel = shapeOf('steel');

describe('the catalogue', () => {
  test('[K1] every item has its id, a component of the walk and a plausible range that is one', () => {
    expect(new Set(items.map(({ id }) => id)).size).toBe(items.length);
    for (const each of items) {
      expect(components).toContain(each.component);
      expect(itemById(each.id)).toBe(each);
      const [least, most] = each.plausibleMm ?? [0, 1];
      expect(least).toBeLessThan(most);
      if (each.ask.kind === 'finding') expect(new Set(each.ask.findings).size).toBe(each.ask.findings.length);
    }
    expect(itemById('of-tomorrow')).toBeUndefined();
  });

  test.each([
    ['rubber-cored', ['cores', 'cord', 'lug-depth'], ['pitch', 'pads', 'alignment', 'idler-flange']],
    ['rubber-coreless', ['cord', 'drive-lugs'], ['cores', 'pitch']],
    ['steel', ['pitch', 'grouser', 'idler-flange'], ['cord', 'pads', 'pad-height']],
    ['steel-pads', ['pitch', 'pads', 'pad-height', 'pad-bolts'], ['cord']],
    ['rubber-shoes', ['pitch', 'pads'], ['cord']],
  ] as const)('[K2] %s has %j and not %j', (track, has, hasNot) => {
    const shape = shapeOf(track);
    const ids = components.flatMap((component) => itemsOf(component, shape).map(({ id }) => id));
    expect(ids).toEqual(expect.arrayContaining([...has]));
    for (const id of hasNot) expect(ids).not.toContain(id);
  });

  test('[K3] a greased tensioner can leak, a sprung suspension has arms', () => {
    const has = (id: string, more: Parameters<typeof shapeOf>[1]) => item(id).fits(shapeOf('steel', more));
    expect([
      has('adjuster-leak', { tensioner: 'grease' }),
      has('adjuster-leak', { tensioner: 'spring' }),
    ]).toEqual([true, false]);
    expect(
      ['rigid', 'bogie', 'torsion'].map((suspension) =>
        has('suspension-arms', { suspension: suspension as 'rigid' }),
      ),
    ).toEqual([false, true, true]);
  });

  test('[K4] parts of a side are those of its shape; there is one of what is not counted', () => {
    const shape = shapeOf('steel', { idlers: 2, bottomRollers: 7, carrierRollers: 0, slidePlate: true });
    expect(components.map((component) => partsASide(component, shape))).toEqual([
      1, 1, 2, 1, 0, 1, 7, 1, 1, 1, 1,
    ]);
    expect(partsASide('slide-plate', shapeOf('steel'))).toBe(0);
    expect(itemsOf('carrier-roller', shape)).toEqual([]);
    expect(components.filter(isNumbered)).toEqual(['idler', 'carrier-roller', 'bottom-roller']);
  });

  test('[K5] a track is of rubber or a chain', () => {
    expect(trackKinds.map((track) => [isRubber(shapeOf(track)), isChain(shapeOf(track))])).toEqual([
      [true, false],
      [true, false],
      [false, true],
      [false, true],
      [false, true],
    ]);
  });

  test.each([
    ['no idler', { idlers: 0 }],
    ['four idlers', { idlers: 4 }],
    ['25 rollers', { bottomRollers: 25 }],
    ['five carrier rollers', { carrierRollers: 5 }],
    ['half a roller', { bottomRollers: 2.5 }],
  ])('[K6] a machine with %s a side is refused', (_, more) => {
    const machine = machineOf('steel', more);
    expect(machineSchema.safeParse(machine).success).toBe(false);
    expect(machineSchema.safeParse({ ...machineOf('steel'), massKg: 20_000, meterHours: 0 }).success).toBe(
      true,
    );
    expect(machineSchema.safeParse({ ...machineOf('steel'), massKg: 0 }).success).toBe(false);
    expect(machineSchema.safeParse({ ...machineOf('steel'), meterHours: -1 }).success).toBe(false);
  });

  test('[K7] severity orders follow the way of reading, but for what has none', () => {
    const orders = Object.fromEntries(items.map(({ id, order }) => [id, order]));
    expect([
      orders['lug-depth'],
      orders['pitch'],
      orders['crack'],
      orders['sag'],
      orders['cord'],
      orders['roller-tread'],
      orders['idler-tread'],
    ]).toEqual(['past-limit', 'past-limit', 'product', 'from-range', 'findings', 'past-limit', 'past-limit']);
    expect(items.filter(({ order }) => order === 'none').map(({ id }) => id)).toEqual(
      expect.arrayContaining(['track-off', 'sag-by-eye', 'bushing-turned']),
    );
  });
});

describe('groups', () => {
  test.each([
    ['drift', rubber, 'drive'],
    ['tracks-alike', rubber, 'machine'],
    ['track-off', rubber, 'off'],
    ['kinked-cords', rubber, 'off'],
    ['cord', rubber, 'tread'],
    ['cores', rubber, 'inner'],
    ['drive-lugs', rubber, 'inner'],
    ['guide-horns', rubber, 'inner'],
    ['roller-path', rubber, 'inner'],
    ['cord', shapeOf('rubber-coreless'), 'tread'],
    ['sag-by-eye', steel, 'links'],
    ['pitch', steel, 'links'],
    ['shoes', steel, 'shoes'],
    ['shoe-bolts', steel, 'shoes'],
    ['bolt-holes', steel, 'shoes'],
    ['pads', steel, 'shoes'],
    ['pad-bolts', steel, 'shoes'],
    ['roller-leak', steel, 'bottom-roller'],
    ['sprocket-teeth', steel, 'sprocket'],
  ])('[K8] %s is passed with its group', (id, shape, group) => {
    expect(groupOf(item(id), shape)).toBe(group);
    expect(groupIds).toContain(group);
  });

  test('[K9] what is seen by eye can be passed; a size is always measured', () => {
    expect(
      items
        .filter((each) => !isPassable(each))
        .every(({ ask }) => ['length', 'pitch', 'tread', 'pair', 'sag'].includes(ask.kind)),
    ).toBe(true);
    expect([isPassable(item('cord')), isPassable(item('crack')), isPassable(item('sag'))]).toEqual([
      true,
      true,
      false,
    ]);
  });

  test('[K11] passes on the ground and raised are kept apart', () => {
    expect([passItem('bottom-roller', false), passItem('bottom-roller', true)]).toEqual([
      'pass-bottom-roller',
      'pass-bottom-roller-raised',
    ]);
  });

  test('[K12] numbered parts count from one, others have no number', () => {
    expect([numbersOf('bottom-roller', 3), numbersOf('bottom-roller', 0), numbersOf('track', 1)]).toEqual([
      [1, 2, 3],
      [],
      [undefined],
    ]);
  });
});

describe('what a walk asks for', () => {
  test.each([
    ['lug-depth', 'short', true, true],
    ['pitch', 'full', false, true],
    ['idler-tread', 'opened', false, false],
  ])('[K13] %s (%s): short %s, full %s', (id, depth, short, full) => {
    expect(item(id).depth).toBe(depth);
    expect([
      isNeeded(item(id), walkOf({ depth: 'short' })),
      isNeeded(item(id), walkOf({ depth: 'full' })),
    ]).toEqual([short, full]);
  });

  test('[K14] what was opened is asked for at either depth', () => {
    expect(isNeeded(item('idler-tread'), walkOf({ depth: 'short', opened: ['idler-tread'] }))).toBe(true);
    expect(isNeeded(item('roller-tread'), walkOf({ opened: ['idler-tread'] }))).toBe(false);
  });

  test('[K15] a walk that starts with a track off asks about that, one that starts with a drive about the drive', () => {
    const asked = (start: 'walk' | 'track-off' | 'drive-first') =>
      ['track-off', 'kinked-cords', 'drift', 'heat'].filter((id) => isNeeded(item(id), walkOf({ start })));
    expect(asked('walk')).toEqual([]);
    expect(asked('track-off')).toEqual(['track-off', 'kinked-cords']);
    expect(asked('drive-first')).toEqual(['drift', 'heat']);
  });

  test('[K17] what could park the machine and this depth does not ask for is known, but not what is only opened', () => {
    const left = (track: 'steel' | 'rubber-cored', more: Parameters<typeof walkOf>[0]) =>
      parkingNotAsked(machineOf(track), walkOf(more)).map(({ id }) => id);
    expect(left('steel', { depth: 'short' })).toEqual(['idler-flange']);
    expect(left('steel', { depth: 'short', opened: ['idler-flange'] })).toEqual([]);
    expect([left('steel', { depth: 'full' }), left('rubber-cored', { depth: 'short' })]).toEqual([[], []]);
  });

  test('[K16] lengths are sampled as the depth says, at least once; all else once', () => {
    const samples = (id: string) =>
      (['short', 'full'] as const).map((depth) => samplesNeeded(item(id), walkOf({ depth })));
    expect([
      samples('lug-depth'),
      samples('link-height'),
      samples('grouser'),
      samples('pitch'),
      samples('cord'),
    ]).toEqual([
      [2, 3],
      [1, 2],
      [1, 1],
      [1, 1],
      [1, 1],
    ]);
  });
});
