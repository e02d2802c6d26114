import { describe, expect, test } from 'vitest';
import type { Contract } from '../../src/core/contract.ts';
import type { RentalInput, RentalWalk } from '../../src/core/rental-input.ts';
import { chargeList } from '../../src/core/rental.ts';
import { shortParts } from '../../src/core/rental-short.ts';
import { assert } from '../../src/core/result.ts';
import { score } from '../../src/core/score.ts';
import type { PlacedReading } from '../../src/core/states.ts';
import { entered, entryOf, inputOf, machineOf, mm, read, sheetOf, walkOf } from './made.ts';
import { cord, damageIn, hire, lugsBack, standing, type Readings } from './rental-hire.ts';
import { contractOf, cut, hireOf, lugs, sound, tenthSheet, walkedOf } from './rental-made.ts';

describe('[N9] what was read wrongly, differently or elsewhere is no proof', () => {
  const wearOf = (input: RentalInput) => chargeList(input).lines.find(({ kind }) => kind === 'wear');

  test('[RC36] a size that cannot well be right counts only when it was confirmed', () => {
    // 15 typed for 1.5: 185 % worn is possible, −140 % is not.
    const slip = (confirmed: boolean) => [
      ...lugs([20]),
      read('left.track', 'lug-depth', mm(34), { n: 2, spot: 2, uMm: 0, confirmed }),
    ];
    const input = (confirmed: boolean) => hireOf(slip(confirmed), lugs([25, 25]), { hoursCount: 300 });
    expect(wearOf(input(false))?.used?.usedPercent).toBeCloseTo(5, 9);
    expect(wearOf(input(true))?.used?.usedPercent).toBeCloseTo(85, 9);
  });

  test('[RC37] repeats at one spot are averaged, and their scatter is error', () => {
    const twice = [18, 17].map((size, i) =>
      read('left.track', 'lug-depth', mm(size), { n: i + 1, spot: 1, uMm: 0 }),
    );
    const used = wearOf(hireOf(lugs([20]), twice))?.used;
    expect(used?.usedPercent).toBeCloseTo(5, 9);
    // Two readings 1 mm apart: s/√2 = 0.5 mm, 5 % of life.
    expect(used?.u).toBeCloseTo(5, 9);
  });

  test('[RC38] only spots that both walks measured are compared', () => {
    const used = wearOf(hireOf(lugs([20, 10]), lugs([35])))?.used;
    expect(used?.before).toHaveLength(1);
    expect(used?.usedPercent).toBeCloseTo(15, 9);
  });

  test.each<[string, Readings, Readings, string]>([
    ['measured at return alone', [], lugs([35]), 'not-measured-before'],
    ['measured at hand-out alone', lugs([20]), [], 'not-measured-now'],
    [
      'measured at other places',
      lugs([20]),
      [read('left.track', 'lug-depth', mm(16), { n: 5, spot: 5 })],
      'not-measured-before',
    ],
  ])('[RC39] %s stays open', (_, out, back, why) => {
    expect(wearOf(hireOf(out, back))?.standing).toEqual({ kind: 'open', why });
  });

  test('[RC39] without new and limit sizes it stays open', () => {
    const input = hireOf(lugs([20]), lugs([35]));
    const bare = { ...input.returned.input, sheets: {} };
    const returned = { ...input.returned, input: bare, scored: score(bare) };
    expect(wearOf({ ...input, returned })?.standing).toEqual({ kind: 'open', why: 'no-sheet' });
  });

  test('[RC40] sizes so vague that more wear could count for less charge nothing', () => {
    const [entry] = tenthSheet.items;
    assert(entry?.new, 'the sheet has new sizes');
    const vague = sheetOf([{ ...entry, new: { ...entry.new, tolerance: 10 } }]);
    const input = hireOf(lugs([20]), lugs([95]));
    const made = { ...input.returned.input, sheets: { left: vague, right: vague } };
    const returned = { ...input.returned, input: made, scored: score(made) };
    expect(wearOf({ ...input, returned })?.standing).toEqual({ kind: 'open', why: 'vague-sheet' });
  });

  test('[RC41] where two people noted different things, nobody pays until one is right', () => {
    const clashing = (readings: Readings, other: PlacedReading) => {
      const { input } = walkedOf('walk/back', [...readings]);
      const made = { ...input, clashes: [other] };
      return { key: 'walk/back', input: made, scored: score(made), photos: [] };
    };
    const input = hire(sound, cut);
    const damaged = { ...input, returned: clashing([...cut, ...lugsBack], cord('none')) };
    expect(standing(damaged)).toBe('clash');
    const [first] = lugs([26]);
    assert(first, 'a lug');
    const worn = hireOf(lugs([20]), lugs([60]));
    expect(wearOf({ ...worn, returned: clashing(lugs([60]), first) })?.standing).toEqual({
      kind: 'open',
      why: 'clash',
    });
  });
});

describe('[N9] hours, terms and the sum', () => {
  const wearOf = (input: RentalInput) => chargeList(input).lines[0];
  const worn = (more: Partial<Contract>) => hireOf(lugs([20]), lugs([35]), more);

  test.each<[string, Partial<Contract>, object]>([
    ['damage alone', { charges: 'damage' }, { kind: 'not-charged', why: 'wear-not-agreed' }],
    [
      'hours not entered',
      { hours: 'included', hoursCount: undefined } as Partial<Contract>,
      { kind: 'open', why: 'no-hours' },
    ],
    ['the meter not read', { hours: 'meter' }, { kind: 'open', why: 'no-hours' }],
    [
      'no standard life',
      { parts: [{ what: 'renew-track', minor: 1, source: entered }] },
      { kind: 'open', why: 'no-life' },
    ],
    [
      'no price',
      { parts: [{ what: 'renew-track', lifeHours: 3000, source: entered }] },
      { kind: 'open', why: 'no-price' },
    ],
    [
      'an allowance as large as the wear',
      { allowancePercent: 9 },
      { kind: 'not-charged', why: 'within-allowance' },
    ],
    ['no more than the hours allow', { hoursCount: 450 }, { kind: 'not-charged', why: 'within-allowance' }],
    [
      'nothing of its value left at hand-out',
      { cutOffPercent: 85 },
      { kind: 'not-charged', why: 'nothing-left' },
    ],
  ])('[RC42] %s', (_, more, expected) => {
    expect(wearOf(worn(more))?.standing).toEqual(expected);
  });

  test('[RC43] a meter that went back allows nothing to be said', () => {
    const base = worn({ hours: 'meter' });
    const handOut = walkedOf('walk/out', lugs([20]), { meterHours: 900 });
    const returned = walkedOf('walk/back', lugs([35]), { meterHours: 400 });
    expect(chargeList({ ...base, handOut, returned }).hours).toEqual({
      kind: 'open',
      why: 'meter-went-back',
    });
  });

  test('[RC44] a hire too short to tell usual wear says so, whatever is charged', () => {
    const short = hireOf(lugs([20], 0.2), lugs([35], 0.2), { hoursCount: 100 });
    expect(wearOf(short)).toMatchObject({ excess: { tooShort: true }, standing: { kind: 'charged' } });
    const long = hireOf(lugs([20], 0.2), lugs([35], 0.2), { hoursCount: 180 });
    expect(wearOf(long)).toMatchObject({
      excess: { tooShort: false, chargeableFromPercent: 6 + 2 * Math.sqrt(8) },
    });
  });

  test('[RC45] haulage is charged once where anything is, and tax on the unrounded sum', () => {
    const list = chargeList(worn({ haulageMinor: 10_000, taxPercent: 20 }));
    expect(list).toMatchObject({
      haulageMinor: 10_000,
      netMinor: 64_000,
      taxMinor: 12_800,
      grossMinor: 76_800,
    });
    expect(chargeList(worn({ haulageMinor: 10_000, hoursCount: 450 }))).toMatchObject({
      haulageMinor: 0,
      grossMinor: 0,
    });
  });

  test('[RC46] wear beyond what the part was worth at hand-out is charged by that', () => {
    const list = chargeList(hireOf(lugs([90]), lugs([140]), { hoursCount: 0 }));
    expect(list.netMinor).toBe(60_000);
  });

  test('[RC47] wear and a cut cord together come to what the part was worth, and not to more', () => {
    const parts = [{ what: 'renew-track', lifeHours: 3000, minor: 600_000, source: entered }];
    const list = chargeList(
      hireOf([...sound, ...lugs([20])], [...cut, ...lugs([60])], { hoursCount: 0, parts }),
    );
    expect(list.lines.map(({ partMinor }) => Math.round(partMinor ?? 0))).toEqual([240_000, 240_000]);
    expect(list.netMinor).toBe(480_000);
  });

  test('[RC48] a line is settled by people alone, an agreed amount standing where it has none', () => {
    const settledAs = (settled: NonNullable<RentalInput['returned']['input']['walk']['settled']>) => {
      const input = hire([], cut);
      const walk = { ...input.returned.input.walk, settled };
      return chargeList({
        ...input,
        returned: { ...input.returned, input: { ...input.returned.input, walk } },
      });
    };
    const id = damageIn(hire([], cut)).id;
    expect(settledAs([{ line: id, is: 'charged' }]).netMinor).toBe(240_000);
    expect(settledAs([{ line: id, is: 'charged', minor: 1 }]).netMinor).toBe(240_000);
    expect(settledAs([{ line: id, is: 'not-charged' }]).netMinor).toBe(0);
    expect(settledAs([{ line: 'damage.other', is: 'charged' }]).netMinor).toBe(0);
    expect(
      settledAs([
        { line: id, is: 'charged' },
        { line: id, is: 'not-charged' },
      ]).netMinor,
    ).toBe(0);
  });

  test('[RC48] what people cannot agree on is not settled by them: a missing price stays missing', () => {
    const input = hire(sound, cut, { parts: [] });
    const walk = {
      ...input.returned.input.walk,
      settled: [{ line: damageIn(input).id, is: 'charged' as const, minor: 5 }],
    };
    const list = chargeList({
      ...input,
      returned: { ...input.returned, input: { ...input.returned.input, walk } },
    });
    expect(list.netMinor).toBe(0);
  });

  test('[RC49] ground that the contract does not permit is named', () => {
    const on = (grounds: Contract['grounds']) =>
      chargeList(hireOf([], [], { ...(grounds && { grounds }) }, { ground: 'rock' })).otherGround;
    expect([on(['mixed']), on(['rock']), on(undefined)]).toEqual(['rock', undefined, undefined]);
  });
});

describe('[N9] parts of several items, and sides with sheets of their own', () => {
  const steelSheet = sheetOf([entryOf('link-height', 100, 90), entryOf('bushing-od', 60, 50)]);

  /** A chain whose links and bushings are worn by so many percent. */
  const chain = (key: string, links: number, bushings: number): RentalWalk => {
    const readings = [
      read('left.track', 'link-height', mm(100 - links / 10), { uMm: 0 }),
      read('left.track', 'bushing-od', mm(60 - bushings / 10), { uMm: 0 }),
    ];
    const input = inputOf({
      machine: machineOf('steel'),
      sheet: steelSheet,
      readings,
      walk: walkOf({ purpose: 'rental-return' }),
    });
    return { key, input, scored: score(input), photos: [] };
  };
  const parts = [{ what: 'renew-chain', lifeHours: 4000, minor: 1_000_000, source: entered }];

  test('[RC54] of several items the one that costs most is charged, by no more than the most worn left', () => {
    const terms = contractOf({ hoursCount: 0, parts });
    const handOut = chain('walk/out', 10, 80);
    const one = chargeList({ contract: terms, handOut, returned: chain('walk/back', 25, 85) });
    expect(one.lines.map(({ used, partMinor }) => [used?.item, Math.round(partMinor ?? 0)])).toEqual([
      ['link-height', 150_000],
    ]);
    const capped = chargeList({ contract: terms, handOut, returned: chain('walk/back', 50, 85) });
    expect(capped.lines.map(({ partMinor }) => Math.round(partMinor ?? 0))).toEqual([200_000]);
  });

  test('[RC54] an item that is not charged never hides one that is', () => {
    const returned = chain('walk/back', 25, 99);
    const terms = contractOf({ hoursCount: 0, parts, waived: ['bushing-od'] });
    const list = chargeList({ contract: terms, handOut: chain('walk/out', 10, 80), returned });
    expect(list.lines.map(({ used, standing }) => [used?.item, standing.kind])).toEqual([
      ['link-height', 'charged'],
    ]);
  });

  test('[RC55] each side is reckoned by its own sheet', () => {
    const wide = sheetOf([entryOf('lug-depth', 20, 0)]);
    const on = (walk: RentalWalk): RentalWalk => {
      const input = { ...walk.input, sheets: { left: tenthSheet, right: wide } };
      return { ...walk, input, scored: score(input) };
    };
    const both = (percent: number) => [...lugs([percent]), ...lugs([percent], 0, 'right.track')];
    const list = chargeList({
      contract: contractOf({ hoursCount: 0 }),
      handOut: on(walkedOf('walk/out', both(20))),
      returned: on(walkedOf('walk/back', both(40))),
    });
    const used = list.lines.map((line) => [line.side, Math.round(line.used?.usedPercent ?? 0)]);
    expect(used).toEqual([
      ['left', 20],
      ['right', 10],
    ]);
  });

  test('[RC56] what measures better at return is worth what it was worth at hand-out', () => {
    const terms: Partial<Contract> = { charges: 'damage' };
    const list = chargeList(hireOf([...sound, ...lugs([40])], [...cut, ...lugs([20])], terms));
    expect(list.lines[0]?.leftPercent).toBeCloseTo(60, 9);
  });

  test.each([
    ['the same sheet', 'limits/a', 'x', 'limits/a', 'x', false],
    ['another sheet', 'limits/a', 'x', 'limits/b', 'x', true],
    ['the same one, edited since', 'limits/a', 'x', 'limits/a', 'y', true],
  ])(
    '[RC57] %s at both walks is told from one that was changed',
    (_, key, stamp, keyNow, stampNow, isOther) => {
      const list = chargeList({
        contract: contractOf(),
        handOut: walkedOf('walk/out', [], { sheet: { key, stamp } }),
        returned: walkedOf('walk/back', [], { sheet: { key: keyNow, stamp: stampNow } }),
      });
      expect(list.otherSheet).toBe(isOther);
    },
  );

  test('[RC58] before a hire it is told of which parts so few hours cannot tell usual wear', () => {
    const handOut = walkedOf('walk/out', lugs([20, 20], 0.2));
    const terms = (more: Partial<Contract>) => shortParts(contractOf(more), handOut);
    // Two readings off by 2 % each: 2·√8 = 5.66 % together; 180 h of 3,000 are 6 %.
    expect(terms({ hoursCount: 180 })).toEqual([]);
    expect(terms({ hoursCount: 160 })).toMatchObject([
      { job: 'renew-track', side: 'left', number: undefined },
    ]);
    expect(terms({ hoursCount: 160 })[0]?.usualPercent).toBeCloseTo(16 / 3, 9);
    expect(terms({ hoursCount: 160 })[0]?.offPercent).toBeCloseTo(2 * Math.sqrt(8), 9);
    const nones: readonly Partial<Contract>[] = [{ charges: 'damage' }, { hours: 'meter' }, { parts: [] }];
    for (const none of nones) expect(terms({ hoursCount: 10, ...none })).toEqual([]);
  });
});
