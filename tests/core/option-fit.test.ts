import { describe, expect, test } from 'vitest';
import { currentTrack, fitFromSize, knownUse } from '../../src/core/option-current.ts';
import { fitOf, type Fit } from '../../src/core/option-fit.ts';
import type { OptionMachine } from '../../src/core/option-life.ts';
import { massDifference } from '../../src/core/option-mass.ts';
import type { CurrentTrack } from '../../src/core/option-match.ts';
import { figuresFor } from '../../src/core/option-tables.ts';
import type { FitFacts, Option } from '../../src/core/option.ts';
import type { Use } from '../../src/core/use.ts';
import { optionTables } from '../../src/reference/option-tables.ts';
import { machineOf, shapeOf } from './made.ts';
import { mini, optionOf } from './options-made.ts';

interface Case {
  readonly machine?: OptionMachine;
  readonly current?: CurrentTrack;
  readonly use?: Use;
}

const fitted = (option: Option, { machine = mini, current, use = {} }: Case = {}): Fit =>
  fitOf(machine, current, option, use, optionTables, figuresFor(optionTables, machine.kind, use.own));

const read = <T>(value: T) => ({ value, how: 'read' as const });
const assumed = <T>(value: T) => ({ value, how: 'assumed' as const });
const facts: FitFacts = {
  widthMm: read(300),
  pitchMm: read(52.5),
  links: read(84),
  guide: read('centre' as const),
  hornWidthMm: read(30),
  hornHeightMm: read(40),
  rollersOn: read('core' as const),
};
const on = (fit: FitFacts = facts): Case => ({ current: { track: 'rubber-cored', fit } });
const option = (fit: FitFacts): Option => optionOf('rubber-cored', { fit });

describe('[N11] what has to match', () => {
  test('[OP30] a track like the one that is on fits, with nothing to settle', () => {
    expect(fitted(option(facts), on())).toEqual({ against: [], toSettle: [], needs: [] });
  });

  test.each<[keyof FitFacts, FitFacts]>([
    ['pitchMm', { pitchMm: read(55) }],
    ['links', { links: read(83) }],
    ['guide', { guide: read('outer' as const) }],
    ['hornWidthMm', { hornWidthMm: read(38) }],
    ['hornHeightMm', { hornHeightMm: read(50) }],
    ['rollersOn', { rollersOn: read('rubber' as const) }],
  ])('[OP31] another %s rules a track out', (field, other) => {
    const { against } = fitted(option({ ...facts, ...other }), on());
    expect(against).toMatchObject([{ kind: 'mismatch', field }]);
  });

  test('[OP32] a millimetre of tape is no other horn; one link more is another track', () => {
    const near = { ...facts, hornWidthMm: read(32), hornHeightMm: read(44), pitchMm: read(52.6) };
    expect(fitted(option(near), on()).against).toEqual([]);
    expect(fitted(option({ ...facts, links: read(85) }), on()).against).toHaveLength(1);
  });

  test('[OP33] what is only assumed rules nothing out, and is asked', () => {
    for (const [now, then] of [
      [facts, { ...facts, links: assumed(83) }],
      [
        { ...facts, links: assumed(84) },
        { ...facts, links: read(83) },
      ],
    ] as const) {
      const { against, toSettle } = fitted(option(then), on(now));
      expect(against).toEqual([]);
      expect(toSettle[0]).toMatchObject({ kind: 'may-not-match', field: 'links', option: 83 });
    }
  });

  test('[OP34] what is not known is asked once for the machine and once for the option', () => {
    const { toSettle } = fitted(option({ links: read(84), pitchMm: assumed(52.5) }), on({ links: read(84) }));
    expect(toSettle).toEqual([
      {
        kind: 'not-known',
        of: 'machine',
        fields: ['pitchMm', 'guide', 'hornWidthMm', 'hornHeightMm', 'rollersOn', 'widthMm'],
      },
      {
        kind: 'not-known',
        of: 'option',
        fields: ['guide', 'hornWidthMm', 'hornHeightMm', 'rollersOn', 'widthMm'],
      },
      { kind: 'assumed', of: 'option', fields: ['pitchMm'] },
    ]);
  });

  test('[OP35] another width is asked about and rules nothing out', () => {
    const { against, toSettle } = fitted(option({ ...facts, widthMm: read(350) }), on());
    expect(against).toEqual([]);
    expect(toSettle).toEqual([{ kind: 'width-differs', now: 300, option: 350 }]);
  });

  test('[OP36] steel is asked for pitch and links, not for horns', () => {
    const { toSettle } = fitted(optionOf('steel'), { current: { track: 'steel' } });
    expect(toSettle).toMatchObject([
      { of: 'machine', fields: ['pitchMm', 'links', 'widthMm'] },
      { of: 'option', fields: ['pitchMm', 'links', 'widthMm'] },
    ]);
  });

  test.each(['sprocketBolts', 'boltCircleMm', 'boreMm', 'offsetMm'] as const)(
    '[OP37] a sprocket with another %s cannot be bolted on, even where the kind of track changes',
    (field) => {
      const now = { ...facts, [field]: read(9) };
      const other = optionOf('steel', { fit: { [field]: read(12) } });
      const { against } = fitted(other, { ...on(now), use: { takesSteel: true } });
      expect(against).toMatchObject([{ kind: 'sprocket-differs', field, now: 9, option: 12 }]);
    },
  );

  test('[OP38] other teeth need another sprocket', () => {
    const now = { ...facts, sprocketTeeth: read(21) };
    expect(fitted(option({ ...facts, sprocketTeeth: read(23) }), on(now)).needs).toEqual(['sprocket']);
    expect(fitted(option({ ...facts, sprocketTeeth: read(21) }), on(now)).needs).toEqual([]);
  });
});

describe('[N11] what the frame takes', () => {
  const steel = optionOf('steel');

  test('[OP40] a change of kind needs sprocket, rollers and idlers, unless both have one pitch', () => {
    const use = { takesSteel: true };
    expect(fitted(steel, { ...on(), use }).needs).toEqual(['sprocket', 'bottom-roller', 'idler']);
    const same = optionOf('steel', { fit: { pitchMm: read(52.5) } });
    expect(fitted(same, { ...on(), use }).needs).toEqual([]);
    expect(fitted(optionOf('steel-pads'), { current: { track: 'steel' } }).needs).toEqual([]);
    expect(fitted(steel).needs).toEqual([]);
  });

  test('[OP98] a pitch that is only assumed of either keeps no wheels', () => {
    const use = { takesSteel: true };
    const [known, guessed] = [{ pitchMm: read(52.5) }, { pitchMm: assumed(52.5) }];
    for (const [now, then] of [
      [known, guessed],
      [guessed, known],
    ] as const)
      expect(fitted(optionOf('steel', { fit: then }), { ...on(now), use }).needs).toHaveLength(3);
  });

  test('[OP41] a frame said to take no steel takes none, one said to take it does', () => {
    expect(fitted(steel, { ...on(), use: { takesSteel: false } }).against).toMatchObject([
      { kind: 'frame-takes-no-steel', why: 'said' },
    ]);
    const pitch = { ...facts, pitchMm: read(86) };
    expect(fitted(steel, { ...on(pitch), use: { takesSteel: true } }).against).toEqual([]);
  });

  test('[OP42] a pitch made for rubber alone speaks against steel, if it was read', () => {
    const { against } = fitted(steel, on({ ...facts, pitchMm: read(86) }));
    expect(against).toMatchObject([{ kind: 'frame-takes-no-steel', why: 'pitch' }]);
    const { against: none, toSettle } = fitted(steel, on({ ...facts, pitchMm: assumed(86) }));
    expect([none, toSettle]).toEqual([[], [{ kind: 'frame-not-known' }]]);
  });

  test('[OP43] where nobody knows if the frame takes steel, that is asked; a pitch shared with steel answers it', () => {
    expect(fitted(steel, on({})).toSettle).toEqual([{ kind: 'frame-not-known' }]);
    expect(fitted(steel).toSettle).toEqual([{ kind: 'frame-not-known' }]);
    expect(fitted(steel, on()).toSettle).toEqual([]);
    expect(fitted(steel, { machine: { ...mini, shape: shapeOf('steel') } }).toSettle).toEqual([]);
  });

  test.each([
    ['rubber-coreless', 'steel', 'frame-takes-no-steel'],
    ['rubber-coreless', 'rubber-cored', 'belt-needs-its-frame'],
    ['rubber-cored', 'rubber-coreless', 'belt-needs-its-frame'],
    ['steel', 'rubber-coreless', 'belt-needs-its-frame'],
  ] as const)('[OP44] from %s to %s: %s', (from, to, kind) => {
    expect(fitted(optionOf(to), { current: { track: from } }).against[0]).toMatchObject({ kind });
  });

  test.each([
    ['excavator', 15_000, 15_001],
    ['track-loader', 10_000, 10_001],
    ['dozer', 6000, 6001],
  ] as const)('[OP45] whole rubber is not made for %s over %i kg; pads are', (kind, last, over) => {
    const at = (massKg: number, track: 'rubber-cored' | 'steel-pads') =>
      fitted(optionOf(track), { machine: { ...mini, kind, massKg }, use: { takesSteel: true } }).against;
    expect(at(last, 'rubber-cored')).toEqual([]);
    expect(at(over, 'rubber-cored')).toMatchObject([
      { kind: 'whole-rubber-not-made', massKg: over, mostKg: last },
    ]);
    expect(at(over, 'steel-pads')).toEqual([]);
  });

  test('[OP46] where whole rubber ends is a figure that anybody can change', () => {
    const machine = { ...mini, massKg: 18_000 };
    const use = { own: { wholeRubberMostKg: 20_000 } };
    expect(fitted(optionOf('rubber-cored'), { machine, use }).against).toEqual([]);
  });
});

describe('[N11] mass on the trailer', () => {
  const figures = figuresFor(optionTables, 'excavator');
  const rubber: CurrentTrack = { track: 'rubber-cored' };
  const steel = optionOf('steel');

  test.each([
    [5000, 100, 300],
    [10_000, 100, 300],
    [2500, 50, 150],
    [20_000, 200, 600],
  ])(
    '[OP47] on a machine of %i kg a steel outfit weighs %i to %i kg more: common practice, no source',
    (massKg, low, high) => {
      const more = massDifference({ ...mini, massKg }, rubber, steel, figures);
      expect(more).toEqual({ lowKg: low, highKg: high, from: 'starting' });
      const less = massDifference({ ...mini, massKg }, { track: 'steel' }, optionOf('rubber-cored'), figures);
      expect(less).toEqual({ lowKg: -high, highKg: -low, from: 'starting' });
    },
  );

  test('[OP48] masses that are known count instead, for both sides', () => {
    const heavy = optionOf('steel', { massKg: { value: 310, how: 'read' } });
    expect(massDifference(mini, { ...rubber, massKg: 250 }, heavy, figures)).toEqual({
      lowKg: 120,
      highKg: 120,
      from: 'own',
    });
  });

  test.each([
    [5599, 'against', 'over-trailer'],
    [5600, 'toSettle', 'near-trailer'],
    [5799, 'toSettle', 'near-trailer'],
  ] as const)(
    '[OP49] with at most %i kg on the trailer steel stands under %s: %s',
    (mostMassKg, where, kind) => {
      const fit = fitted(steel, { ...on(), use: { mostMassKg, takesSteel: true } });
      expect(fit[where]).toMatchObject([{ kind, mostKg: mostMassKg }]);
    },
  );

  test('[OP50] a trailer with room says nothing, a mass that is not known is asked', () => {
    expect(fitted(steel, { ...on(), use: { mostMassKg: 5800, takesSteel: true } }).toSettle).toEqual([]);
    const { massKg: _, ...machine } = mini;
    const { toSettle } = fitted(steel, { ...on(), machine, use: { mostMassKg: 5800 } });
    expect(toSettle).toEqual([{ kind: 'mass-not-known' }]);
  });
});

describe('[N11] what is on the machine now', () => {
  const machine = { ...machineOf('rubber-cored'), left: { size: '300x52.5x84 W' } };
  const known = { widthMm: read(300), pitchMm: read(52.5), links: read(84) };

  test('[OP51] is read from its size, or known by its kind alone', () => {
    expect(currentTrack(machine, [])).toEqual({ track: 'rubber-cored', fit: known });
    expect(currentTrack(machineOf('steel'), [])).toEqual({ track: 'steel', fit: undefined });
    expect(currentTrack({ ...machine, left: {}, right: { size: '300x52.5x84' } }, [])?.fit).toEqual(known);
    expect(fitFromSize('no size')).toBeUndefined();
  });

  test('[OP52] is the option that is marked as fitted, which knows better than the size', () => {
    const fit = { links: { value: 82, how: 'measured' as const } };
    const fittedOption = optionOf('rubber-cored', { fitted: true, fit, massKg: read(210) });
    expect(currentTrack(machine, [{ id: 'a', option: fittedOption }])).toEqual({
      track: 'rubber-cored',
      fit: { ...known, ...fit },
      massKg: 210,
    });
  });

  test('[OP53] is nothing on a machine that has yet to get its tracks', () => {
    expect(currentTrack({ ...machine, use: { noTracksYet: true } }, [])).toBeUndefined();
  });

  test('[OP54] and what it works on is what its record says, else its last walk and its hours a week', () => {
    const walk = { ground: 'rock', turning: 'much' } as const;
    expect(knownUse({ hoursPerWeek: 10 }, walk)).toEqual({
      ground: { rock: 10 },
      turning: 'much',
      hoursAYear: 520,
    });
    const use = { ground: { mixed: 1 }, hoursAYear: 900 };
    expect(knownUse({ hoursPerWeek: 10, use }, walk)).toEqual({ ...use, turning: 'much' });
    expect(knownUse({ hoursPerWeek: 0 }, undefined)).toEqual({});
    expect(knownUse({ hoursPerWeek: 168 }, {})).toEqual({ hoursAYear: 8736 });
  });
});
