import { describe, expect, test } from 'vitest';
import type { Contract } from '../../src/core/contract.ts';
import type { Photo } from '../../src/core/photo.ts';
import type { RentalInput } from '../../src/core/rental-input.ts';
import { chargeList } from '../../src/core/rental.ts';
import { score } from '../../src/core/score.ts';
import type { ScoreInput } from '../../src/core/states.ts';
import { placeSchema } from '../../src/core/keys.ts';
import { crack, entered, finding, machineOf, pass, read, sag, bandOf, sheetOf, entryOf } from './made.ts';
import { cord, damageIn, hire, lugsOut, standing, terms, track, type Readings } from './rental-hire.ts';
import { cut, hireOf, lugs, sound, walkedOf } from './rental-made.ts';

describe('[N9] damage is charged where the part was sound and is broken now', () => {
  test.each<[string, Readings, Readings, string]>([
    ['sound then, cut now', sound, cut, 'charged'],
    ['cut then as now', cut, cut, 'was-there'],
    ['cut at one place then, at three now', [cord('cut', 1)], [cord('cut', 3)], 'got-worse'],
    ['cut then, half cut now', [cord('cut')], [cord('half-cut')], 'got-worse'],
    ['half cut then, called cut now', [cord('half-cut')], [cord('cut')], 'was-there'],
    ['cords showing then, cut now', [cord('showing')], [cord('cut')], 'got-worse'],
    ['rust under the rubber then, cut now', [cord('rust-under')], [cord('cut')], 'got-worse'],
    ['nobody looked then', [], cut, 'not-looked-at'],
    [
      'passed by half of the loop then',
      [read('left.track', 'pass-tread', pass(['cord'], { seen: 'half' }))],
      cut,
      'not-looked-at',
    ],
    ['passed all round then', [read('left.track', 'pass-tread', pass(['cord']))], cut, 'charged'],
    [
      'lugs nicked then, torn out now',
      [track('lug-damage', 'nicked')],
      [track('lug-damage', 'torn-out')],
      'charged',
    ],
    [
      'a crack without cord then, with cord now',
      [read('left.track', 'crack', crack(20, 3))],
      [read('left.track', 'crack', crack(60, 12, true))],
      'got-worse',
    ],
    [
      'a crack with cord then and now',
      [read('left.track', 'crack', crack(20, 3, true))],
      [read('left.track', 'crack', crack(60, 12, true))],
      'was-there',
    ],
    [
      'edge cut then and cord sound; cord cut now: the track was no sound one',
      [...sound, track('edges', 'cut')],
      [...cut, track('edges', 'cut')],
      'got-worse',
    ],
    [
      'edge cut then, which nobody looked at now; cord cut now',
      [...sound, track('edges', 'cut')],
      cut,
      'got-worse',
    ],
    [
      'edges not looked at then, cord sound; both broken now',
      sound,
      [...cut, track('edges', 'cut')],
      'charged',
    ],
  ])('[RC24] %s', (_, out, back, expected) => {
    expect(standing(hire(out, back))).toBe(expected);
  });

  test('[RC25] one track cut in two ways is charged once, and labour by the share that was left', () => {
    const fine = [...sound, track('edges', 'sound')];
    const list = chargeList(hire(fine, [...cut, track('edges', 'cut')]));
    const lines = list.lines.filter(({ kind }) => kind === 'damage');
    expect(lines).toHaveLength(1);
    expect(lines[0]).toMatchObject({ leftPercent: 75, partMinor: 225_000, labourMinor: 15_000 });
    expect(list.netMinor).toBe(240_000);
  });

  test.each([
    ['share', 15_000],
    ['whole', 20_000],
    ['none', 0],
  ] as const)('[RC26] labour charged as %s comes to %s', (labour, minor) => {
    expect(damageIn(hire(sound, cut, { labour })).labourMinor).toBe(minor);
  });

  test('[RC27] a part below the cut-off is worth nothing', () => {
    expect(standing(hire(sound, cut, { cutOffPercent: 75 }))).toBe('nothing-left');
    expect(damageIn(hire(sound, cut, { cutOffPercent: 50 })).partMinor).toBeCloseTo(150_000, 6);
  });

  test('[RC28] what the contract leaves out is not charged, and takes nothing else along', () => {
    const fine = [...sound, track('edges', 'sound')];
    const broken = [...cut, track('edges', 'cut')];
    expect(standing(hire(fine, broken, { waived: ['edges'] }))).toBe('charged');
    expect(standing(hire(fine, broken, { waived: ['edges', 'cord'] }))).toBe('waived');
    expect(standing(hire(fine, broken, { waived: ['renew-track'] }))).toBe('waived');
    const wear = chargeList(hireOf(lugs([0]), lugs([60]), { waived: ['renew-track'] }));
    expect(wear.lines.map(({ standing: of }) => of)).toEqual([{ kind: 'not-charged', why: 'waived' }]);
    const lone = chargeList(hireOf([], lugs([60]), { waived: ['renew-track'] }));
    expect(lone.lines.map(({ standing: of }) => of)).toEqual([{ kind: 'not-charged', why: 'waived' }]);
  });

  test('[RC29] without a price, or with its life left unknown, it stays open', () => {
    expect(standing(hire(sound, cut, { parts: [] }))).toBe('no-price');
    const unread = hireOf(sound, cut, terms);
    expect(standing(unread)).toBe('value-left');
  });

  test('[RC30] a track without readings is valued by its hours since it was fitted', () => {
    const fitted = { ...machineOf('rubber-cored'), left: { fittedAtHours: 1000 } };
    const unread = hireOf(sound, cut, terms);
    const { input } = walkedOf('walk/back', cut, { meterHours: 1600 });
    const returned = { ...unread.returned, input: { ...input, machine: fitted }, scored: score(input) };
    expect(damageIn({ ...unread, returned })).toMatchObject({ leftPercent: 80, leftFrom: 'hours' });
  });

  test('[RC31] a piece priced by itself is paid for as often as it is newly broken', () => {
    const machine = machineOf('steel');
    const shoes = (count: number) => [read('left.track', 'shoes', finding('bent', { count }))];
    const steel = (readings: Readings): ScoreInput => ({
      ...walkedOf('walk/x', []).input,
      machine,
      readings,
    });
    const walk = (key: string, readings: Readings) => ({
      key,
      input: steel(readings),
      scored: score(steel(readings)),
      photos: [],
    });
    const parts = [{ what: 'shoes', minor: 8_000, source: entered }];
    const base = hireOf([], [], { ...terms, parts });
    const line = damageIn({
      ...base,
      handOut: walk('walk/out', shoes(2)),
      returned: walk('walk/back', shoes(5)),
    });
    expect(line).toMatchObject({ count: 3, standing: { kind: 'open', why: 'got-worse' } });
  });

  const steelWalk = (key: string, readings: Readings, machine = machineOf('steel-pads')) => {
    const walked = walkedOf(key, []);
    const input: ScoreInput = { ...walked.input, machine, readings: [...readings] };
    return { ...walked, input, scored: score(input) };
  };
  const steelHire = (item: string, was: string, is: string, parts: Contract['parts']): RentalInput => ({
    ...hireOf([], [], { ...terms, parts }),
    handOut: steelWalk('walk/out', [track(item, was)]),
    returned: steelWalk('walk/back', [track(item, is, 1)]),
  });

  test.each([
    ['shoes', 'sound', 'bent', 'renew-shoes'],
    ['shoes', 'sound', 'cracked', 'renew-shoes'],
    ['pads', 'sound', 'torn', 'renew-pads'],
    ['links-cracked', 'none', 'one', 'renew-chain'],
  ])('[RC80] %s: one that is not %s but %s is not billed by the price of %s', (item, was, is, set) => {
    const list = chargeList(steelHire(item, was, is, [{ what: set, minor: 500_000, source: entered }]));
    expect(list.lines.filter(({ kind }) => kind === 'damage')).toMatchObject([
      { standing: { kind: 'open', why: 'no-price' }, partMinor: undefined },
    ]);
  });

  test.each<[string, Readings, Readings]>([
    ['a bulge', [track('bulge', 'none')], [track('bulge', 'bulge')]],
    ['cords showing', [cord('none')], [cord('showing')]],
    [
      'a crack without cord',
      [read('left.track', 'crack', crack(0, 0))],
      [read('left.track', 'crack', crack(9, 2))],
    ],
  ])('[RC81] %s that was not there is open, and what people agree on is charged', (_, out, back) => {
    const input = hire(out, back);
    const line = damageIn(input);
    expect(line).toMatchObject({ standing: { kind: 'open', why: 'wear-or-damage' }, partMinor: undefined });
    const settled = [{ line: line.id, is: 'charged' as const, minor: 700, currency: 'EUR' }];
    const walk = { ...input.returned.input.walk, settled };
    const returned = { ...input.returned, input: { ...input.returned.input, walk } };
    expect(chargeList({ ...input, returned }).netMinor).toBe(700);
  });

  test('[RC81] one that was there, dirt, tension and plain wear make no line; beside damage it changes nothing', () => {
    const none: readonly [Readings, Readings][] = [
      [[track('bulge', 'bulge')], [track('bulge', 'bulge')]],
      [[], [track('bulge', 'bulge')]],
      [[track('drive-lugs', 'sound')], [track('drive-lugs', 'worn')]],
      [[track('sag-by-eye', 'right')], [track('sag-by-eye', 'slack')]],
    ];
    for (const [out, back] of none)
      expect(chargeList(hire(out, back)).lines.filter(({ kind }) => kind === 'damage')).toEqual([]);
    const fine = [...sound, track('bulge', 'none')];
    const bulged = track('bulge', 'bulge');
    expect(damageIn(hire(fine, [...cut, bulged]))).toMatchObject({
      standing: { kind: 'charged' },
      partMinor: 225_000,
    });
    expect(standing(hire([...cut, track('bulge', 'none')], [...cut, bulged]))).toBe('wear-or-damage');
  });

  test('[RC32] the value left is that of the marked places together, not of the worst', () => {
    const line = damageIn(hireOf([...sound, ...lugs([20, 20])], [...cut, ...lugs([20, 40])], terms));
    expect(line.leftPercent).toBeCloseTo(70, 9);
  });

  test('[RC33] a hand-out walk of another machine is none', () => {
    const input = hire(sound, cut);
    const handOut = walkedOf('walk/out', [...sound, ...lugsOut], { machine: 'machine/other' });
    expect(standing({ ...input, handOut })).toBe('no-hand-out');
    expect(chargeList({ ...input, handOut }).handOut).toBeUndefined();
  });
});

describe('[N9] the owner’s side is considered and recorded', () => {
  const sagSheet = { ...sheetOf([entryOf('lug-depth', 20, 10)], [bandOf(10, 15)]) };

  const withSag = (input: RentalInput): RentalInput => {
    const on = ({ key, input: of }: RentalInput['returned']) => {
      const made = { ...of, sheets: { left: sagSheet, right: sagSheet } };
      return { key, input: made, scored: score(made), photos: [] };
    };
    return { ...input, handOut: input.handOut && on(input.handOut), returned: on(input.returned) };
  };

  const hooked = read('left.sprocket', 'sprocket-teeth', finding('hooked'));
  const seized = read('left.bottom-roller.2', 'roller-turn', finding('seized'));

  test.each<[string, Readings, Readings, string, number]>([
    ['a sprocket hooked at hand-out', [...sound, hooked], cut, 'owner-side', 1],
    ['a sprocket hooked at return', sound, [...cut, hooked], 'owner-side', 1],
    ['hooked in both walks, once', [...sound, hooked], [...cut, hooked], 'owner-side', 1],
    [
      'a hooked sprocket on the other side',
      [...sound, read('right.sprocket', 'sprocket-teeth', finding('hooked'))],
      cut,
      'charged',
      1,
    ],
    ['a seized roller, which cuts no cord', [...sound, seized], cut, 'charged', 1],
    ['a track handed out tight', [...sound, read('left.track', 'sag', sag(5))], cut, 'owner-side', 1],
    [
      'a track handed out right and returned tight',
      [...sound, read('left.track', 'sag', sag(12))],
      [...cut, read('left.track', 'sag', sag(5))],
      'charged',
      0,
    ],
    ['rusty cores at return', sound, [...cut, track('cores', 'rusty')], 'owner-side', 1],
  ])('[RC34] %s', (_, out, back, expected, faults) => {
    const input = withSag(hire(out, back));
    expect(standing(input)).toBe(expected);
    expect(chargeList(input).ownerFaults).toHaveLength(faults);
  });

  test('[RC35] wear that a fault of the owner’s may have made waits for people too, and nothing is billed for it', () => {
    const list = chargeList(hireOf([hooked, ...lugs([20])], lugs([60])));
    expect(list.lines).toMatchObject([{ standing: { kind: 'open', why: 'owner-side' } }]);
    expect(list.grossMinor).toBe(0);
  });
});

describe('[N9] pictures of the same place', () => {
  const photo = (sha256: string, shows: Photo['shows'], scale?: Photo['scale']) => ({
    sha256,
    photo: {
      v: 1 as const,
      type: 'image/jpeg' as const,
      bytes: 1,
      width: 1,
      height: 1,
      original: { sha256, bytes: 1 },
      from: 'camera' as const,
      shows,
      ...(scale && { scale }),
    },
  });
  const at = (place: string, item?: string) => ({
    place: placeSchema.parse(place),
    ...(item !== undefined && { item }),
  });

  test('[RC53] of each walk the one that shows the item counts before one of the place alone', () => {
    const input = hire(sound, cut);
    const taken = [
      photo('b'.repeat(64), [at('left.track', 'cord')]),
      photo('a'.repeat(64), [at('left.track')]),
      photo('c'.repeat(64), [at('right.track', 'cord')]),
    ];
    const list = chargeList({
      ...input,
      handOut: input.handOut && { ...input.handOut, photos: taken.slice(1) },
      returned: { ...input.returned, photos: taken },
    });
    expect(list.lines[0]?.photos).toEqual({ before: 'a'.repeat(64), after: 'b'.repeat(64) });
  });
});
