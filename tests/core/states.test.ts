import { describe, expect, test } from 'vitest';
import type { LimitSheet } from '../../src/core/limits.ts';
import {
  gatherStates,
  stateKey,
  type ItemState,
  type PlacedReading,
  type ScoreInput,
} from '../../src/core/states.ts';
import { assert } from '../../src/core/result.ts';
import { placeSchema } from '../../src/core/keys.ts';
import {
  bandOf,
  crack,
  entryOf,
  finding,
  inputOf,
  limitAt,
  machineOf,
  mm,
  pass,
  read,
  sag,
  sheetOf,
  unseen,
  walkOf,
} from './made.ts';

const sheet = sheetOf(
  [
    entryOf('lug-depth', 20, 10),
    entryOf('roller-tread', 200, 160),
    entryOf('roller-tread', 220, 180, { positions: 'ends' }),
  ],
  [bandOf(10, 20)],
);

function stateAt(place: string, itemId: string, more: Parameters<typeof inputOf>[0] = {}): ItemState {
  const state = gatherStates(inputOf({ sheet, ...more })).get(stateKey(placeSchema.parse(place), itemId));
  assert(state, `no state for ${itemId} at ${place}`);
  return state;
}

const gone = (place: string, item: string, n = 1) => ({ place: placeSchema.parse(place), item, n });
const kindsOf = ({ open }: ItemState): readonly string[] => open.map(({ kind }) => kind);

describe('[N4] every item at every place', () => {
  test('[V10] of each part of each side, and of the machine as a whole', () => {
    const places = [...gatherStates(inputOf()).values()].filter(({ item }) =>
      ['roller-leak', 'cord', 'tracks-alike'].includes(item.id),
    );
    expect(places.map(({ place, side, number, parts }) => [place, side, number, parts])).toEqual([
      ['whole.machine', 'whole', undefined, 1],
      ['left.track', 'left', undefined, 1],
      ['right.track', 'right', undefined, 1],
      ['left.bottom-roller.1', 'left', 1, 3],
      ['left.bottom-roller.2', 'left', 2, 3],
      ['left.bottom-roller.3', 'left', 3, 3],
      ['right.bottom-roller.1', 'right', 1, 3],
      ['right.bottom-roller.2', 'right', 2, 3],
      ['right.bottom-roller.3', 'right', 3, 3],
    ]);
  });

  test('[V11] a part that the machine does not have has no place', () => {
    const states = gatherStates(
      inputOf({ machine: machineOf('steel', { carrierRollers: 0, bottomRollers: 1 }) }),
    );
    const all = [...states.values()];
    expect(
      all.some(({ item }) => item.component === 'carrier-roller' || item.component === 'slide-plate'),
    ).toBe(false);
    expect(all.some(({ item }) => item.id === 'cord')).toBe(false);
    expect(all.filter(({ item }) => item.id === 'roller-leak')).toHaveLength(2);
  });

  test('[V12] that the walk needs and nobody read is open', () => {
    const state = stateAt('left.track', 'cord');
    expect(state).toMatchObject({ needed: true, known: false, passed: false, cracks: [] });
    expect(state.open).toEqual([{ kind: 'not-read', params: {} }]);
    expect(stateAt('left.track', 'kinked-cords')).toMatchObject({ needed: false, known: false, open: [] });
  });

  test('[V13] was opened, then it is needed', () => {
    const opened = { walk: walkOf({ opened: ['kinked-cords'] }) };
    expect(stateAt('left.track', 'kinked-cords', opened)).toMatchObject({ needed: true });
  });
});

describe('[N4] findings', () => {
  const cords = (...readings: PlacedReading[]) => stateAt('left.track', 'cord', { readings });
  const cord = (name: string, n = 1, more = {}) => read('left.track', 'cord', finding(name, more), { n });

  test('[V14] the worst of several counts, and nothing is open', () => {
    expect(cords(cord('showing'), cord('parted', 2), cord('cut', 3))).toMatchObject({
      known: true,
      finding: 'parted',
      open: [],
    });
  });

  test('[V15] the largest number and the largest share that were told', () => {
    const state = cords(
      cord('cut', 1, { count: 2 }),
      cord('showing', 2, { count: 7, share: 0.2 }),
      cord('cut', 3, { share: 0.1 }),
    );
    expect(state).toMatchObject({ finding: 'cut', count: 7, share: 0.2 });
    expect(cords(cord('cut'))).not.toHaveProperty('count');
    expect(cords(cord('cut'))).not.toHaveProperty('share');
  });

  test('[V16] one that the item does not have is open, and known ones still count', () => {
    expect(cords(cord('of-tomorrow'))).toMatchObject({
      known: false,
      open: [{ kind: 'newer-version', params: {} }],
    });
    const both = cords(cord('of-tomorrow', 1, { count: 9 }), cord('showing', 2));
    expect(both).toMatchObject({
      known: true,
      finding: 'showing',
      open: [{ kind: 'newer-version', params: {} }],
    });
    expect(both).not.toHaveProperty('count');
  });

  test('[V17] a reading of another kind says nothing of the item', () => {
    expect(cords(read('left.track', 'cord', mm(3)))).toMatchObject({
      known: false,
      open: [{ kind: 'not-read', params: {} }],
    });
    expect(
      stateAt('left.track', 'lug-depth', { readings: [read('left.track', 'lug-depth', finding('cut'))] })
        .known,
    ).toBe(false);
    expect(stateAt('left.track', 'sag', { readings: [read('left.track', 'sag', mm(3))] }).known).toBe(false);
    expect(stateAt('left.track', 'crack', { readings: [read('left.track', 'crack', mm(3))] }).known).toBe(
      false,
    );
  });
});

describe('[N3] sizes', () => {
  const lug = (value: number, n: number, more = {}) =>
    read('left.track', 'lug-depth', mm(value), { n, ...more });
  const lugs = (readings: PlacedReading[], more: Parameters<typeof inputOf>[0] = {}) =>
    stateAt('left.track', 'lug-depth', { readings, ...more });

  test('[V18] have their samples, their limits and their wear', () => {
    const state = lugs([lug(12, 1), lug(11, 2), lug(15, 3)]);
    expect(state).toMatchObject({
      known: true,
      open: [],
      wear: { percent: 90 },
      limits: { item: 'lug-depth' },
    });
    expect(state.sampled).toMatchObject({ samples: 3, worst: { mm: 11, spot: 2 } });
  });

  test('[V19] fewer samples than the walk asks for are known and open', () => {
    expect(lugs([lug(12, 1)]).open).toEqual([{ kind: 'not-read', params: { have: 1, want: 3 } }]);
    expect(lugs([lug(12, 1), lug(13, 2, { spot: 1 })]).open).toEqual([
      { kind: 'not-read', params: { have: 1, want: 3 } },
    ]);
    expect(lugs([lug(12, 1), lug(12, 2)], { walk: walkOf({ depth: 'short' }) }).open).toEqual([]);
  });

  test('[V20] the spot is that of the reading, else its number', () => {
    expect(lugs([lug(12, 4)]).sampled?.worst.spot).toBe(4);
    expect(lugs([lug(12, 4, { spot: 2 })]).sampled?.worst.spot).toBe(2);
  });

  test('[V21] without a sheet, or a limit on it, they are known, and what lacks is open', () => {
    const readings = [lug(12, 1), lug(12, 2), lug(12, 3)];
    const bare = stateAt('left.track', 'lug-depth', { sheets: {}, readings });
    expect(bare).toMatchObject({ known: true, open: [{ kind: 'no-sheet', params: {} }] });
    expect(bare).not.toHaveProperty('wear');
    const empty = lugs(readings, { sheet: sheetOf([]) });
    expect(empty.open).toEqual([{ kind: 'no-limit', params: { sheet: 'made up' } }]);
    expect(empty).not.toHaveProperty('limits');
    const halfThere = lugs(readings, { sheet: sheetOf([entryOf('lug-depth', 20, [])]) });
    expect(halfThere.open).toEqual([{ kind: 'no-limit', params: { sheet: 'made up' } }]);
    expect(halfThere.limits?.item).toBe('lug-depth');
  });

  test('[V22] each side has the sheet of its own track', () => {
    const right: LimitSheet = sheetOf([entryOf('lug-depth', 30, 10)]);
    const readings = ['left', 'right'].map((side) => read(`${side}.track`, 'lug-depth', mm(15)));
    const percentOf = (side: string) =>
      stateAt(`${side}.track`, 'lug-depth', { sheets: { left: sheet, right }, readings }).wear?.percent;
    expect([percentOf('left'), percentOf('right')]).toEqual([50, 75]);
  });

  test('[V23] a numbered part has the limits of its position', () => {
    const tread = (number: number) => {
      const place = `left.bottom-roller.${number}`;
      const what = { kind: 'tread' as const, centreMm: 200, linkMm: 100, typed: [], unit: 'mm' as const };
      return stateAt(place, 'roller-tread', { readings: [read(place, 'roller-tread', what)] }).wear?.percent;
    };
    expect([tread(1), tread(2), tread(3)]).toEqual([50, 0, 50]);
  });

  test('[V24] the load of the walk chooses the limit', () => {
    const loaded = sheetOf([
      entryOf('lug-depth', 20, [limitAt(10, { loads: ['heavy'] }), limitAt(4, { loads: ['light'] })]),
    ]);
    const percent = (load?: 'light' | 'heavy') =>
      lugs([lug(12, 1)], { sheet: loaded, walk: walkOf({ ...(load && { load }) }) }).wear?.percent;
    expect([percent('light'), percent('heavy'), percent()]).toEqual([50, 80, 80]);
  });

  test('[V25] what the tools resolve is known', () => {
    const u = (tools?: Record<string, number>) =>
      lugs([lug(12, 1, { tool: 'rule' })], tools ? { tools } : {}).sampled?.worst.uMm;
    expect(u({ rule: 1 })).toBeCloseTo(Math.sqrt(1 + 1 / 12), 12);
    expect(u()).toBeCloseTo(Math.sqrt(1 / 12), 12);
  });
});

describe('[N5] sag', () => {
  const sags = (...readings: PlacedReading[]) => stateAt('left.track', 'sag', { readings });

  test('[V26] is judged by its sheet', () => {
    expect(sags(read('left.track', 'sag', sag(15)))).toMatchObject({
      known: true,
      open: [],
      sag: { state: 'right' },
    });
  });

  test('[V27] of several readings the latest stands, whatever order they come in', () => {
    const [first, later] = [
      read('left.track', 'sag', sag(30), { n: 2 }),
      read('left.track', 'sag', sag(15), { n: 11 }),
    ];
    expect(sags(first, later).sag?.state).toBe('right');
    expect(sags(later, first).sag?.state).toBe('right');
    expect(sags(first, read('left.track', 'sag', unseen(), { n: 3 })).sag?.state).toBe('loose');
  });

  test('[V28] without a sheet, or not comparable, it is open and not known', () => {
    const reading = read('left.track', 'sag', sag(15, { method: 'string' }));
    expect(stateAt('left.track', 'sag', { sheets: {}, readings: [reading] })).toMatchObject({
      known: false,
      open: [{ kind: 'no-sheet', params: {} }],
    });
    expect(kindsOf(sags(reading))).toEqual(['not-comparable']);
  });
});

describe('[N4] cracks', () => {
  test('[V29] are all kept, in their order', () => {
    const readings = [
      read('left.track', 'crack', crack(5, 1), { n: 2 }),
      read('left.track', 'crack', crack(30, 8, true)),
    ];
    expect(stateAt('left.track', 'crack', { readings })).toMatchObject({
      known: true,
      open: [],
      cracks: [
        { lengthMm: 30, depthMm: 8, cordVisible: true },
        { lengthMm: 5, depthMm: 1, cordVisible: false },
      ],
    });
  });
});

describe('[N4] a pass', () => {
  const passed = (
    what: Parameters<typeof pass>,
    place = 'left.bottom-roller',
    more: Partial<ScoreInput> = {},
  ) => ({
    ...more,
    readings: [read(place, 'pass-bottom-roller', pass(...what)), ...(more.readings ?? [])],
  });
  const leak = (number: number, made: Parameters<typeof inputOf>[0]) =>
    stateAt(`left.bottom-roller.${number}`, 'roller-leak', made);

  test('[V30] says that each of its items is fine at every part', () => {
    const made = passed([['roller-leak']]);
    for (const number of [1, 2, 3])
      expect(leak(number, made)).toMatchObject({ known: true, passed: true, finding: 'dry', open: [] });
    expect(stateAt('left.bottom-roller.1', 'roller-flat', made)).toMatchObject({
      known: false,
      passed: false,
    });
    expect(stateAt('right.bottom-roller.1', 'roller-leak', made).known).toBe(false);
  });

  test('[V31] does not speak for its exceptions', () => {
    const made = passed([['roller-leak'], { except: [2] }]);
    expect([1, 2, 3].map((number) => leak(number, made).known)).toEqual([true, false, true]);
  });

  test('[V32] of one part speaks for that part alone', () => {
    const made = passed([['roller-leak']], 'left.bottom-roller.2');
    expect([1, 2, 3].map((number) => leak(number, made).known)).toEqual([false, true, false]);
  });

  test('[V33] gives way to a reading of its own, and to one that was taken back', () => {
    const own = passed([['roller-leak']], undefined, {
      readings: [read('left.bottom-roller.2', 'roller-leak', finding('leaking'))],
    });
    expect(leak(2, own)).toMatchObject({ passed: false, finding: 'leaking' });
    const back = passed([['roller-leak']], undefined, {
      takenBack: [gone('left.bottom-roller.2', 'roller-leak')],
    });
    expect(leak(2, back)).toMatchObject({ passed: false, known: false });
    expect(leak(1, back)).toMatchObject({ passed: true });
  });

  test('[V34] of a crack says that there is none', () => {
    const readings = [read('left.track', 'pass-tread', pass(['crack', 'cord']))];
    expect(stateAt('left.track', 'crack', { readings })).toMatchObject({
      known: true,
      passed: true,
      cracks: [{ lengthMm: 0, depthMm: 0, cordVisible: false }],
    });
  });

  test('[V35] never stands for a size', () => {
    const readings = [read('left.track', 'pass-tread', pass(['lug-depth', 'sag']))];
    expect(stateAt('left.track', 'lug-depth', { readings })).toMatchObject({ known: false, passed: false });
    expect(stateAt('left.track', 'sag', { readings })).toMatchObject({ known: false, passed: false });
  });

  test('[V36] of half the loop leaves a full walk open, and a short one not', () => {
    const readings = [read('left.track', 'pass-tread', pass(['cord'], { seen: 'half' }))];
    const state = (depth: 'short' | 'full') =>
      stateAt('left.track', 'cord', { readings, walk: walkOf({ depth }) });
    expect(state('full')).toMatchObject({ known: true, open: [{ kind: 'half-seen', params: {} }] });
    expect(state('short')).toMatchObject({ known: true, open: [] });
  });

  test('[V37] of two of one group the latest stands, whatever order they come in', () => {
    const early = read('left.bottom-roller', 'pass-bottom-roller', pass(['roller-leak']), { n: 2 });
    const late = read('left.bottom-roller', 'pass-bottom-roller', pass(['roller-leak'], { except: [3] }), {
      n: 10,
    });
    for (const readings of [
      [early, late],
      [late, early],
    ])
      expect(leak(3, { readings }).known).toBe(false);
  });

  test('[V38] of another group adds to it', () => {
    const other = [read('left.bottom-roller', 'pass-bottom-roller-raised', pass(['roller-turn']), { n: 1 })];
    const made = passed([['roller-leak']], undefined, { readings: other });
    expect(leak(1, made).known).toBe(true);
    expect(stateAt('left.bottom-roller.1', 'roller-turn', made)).toMatchObject({
      known: true,
      finding: 'turns',
    });
  });

  test('[V44] of two groups that speak for one item the same one counts, whatever order they come in', () => {
    const [whole, half] = [
      read('left.bottom-roller', 'pass-b', pass(['roller-leak'])),
      read('left.bottom-roller', 'pass-a', pass(['roller-leak'], { seen: 'half' })),
    ];
    for (const readings of [
      [whole, half],
      [half, whole],
    ])
      expect(kindsOf(leak(1, { readings }))).toEqual(['half-seen']);
  });

  test('[V39] that clashes, or that a newer version wrote, leaves what it speaks for open', () => {
    const clash = passed([['roller-leak']], undefined, {
      clashes: [gone('left.bottom-roller', 'pass-bottom-roller')],
    });
    expect(leak(1, clash)).toMatchObject({ known: true, open: [{ kind: 'clash', params: {} }] });
    const back = passed([['roller-leak']], undefined, {
      takenBack: [gone('left.bottom-roller', 'pass-bottom-roller', 2)],
    });
    expect(kindsOf(leak(1, back))).toEqual(['taken-back']);
  });
});

describe('[N4] what is not to be had', () => {
  const at = ['left.track', 'cord'] as const;

  test('[V40] was not seen: with why', () => {
    const readings = [read('left.track', 'cord', unseen('guarded'))];
    expect(stateAt(...at, { readings }).open).toEqual([{ kind: 'not-seen', params: { why: 'guarded' } }]);
    const opened = [read('left.track', 'kinked-cords', unseen('mud'))];
    expect(stateAt('left.track', 'kinked-cords', { readings: opened }).open).toEqual([
      { kind: 'not-seen', params: { why: 'mud' } },
    ]);
  });

  test('[V41] a whole row is marked at its place without a number, where a part has nothing of its own', () => {
    const readings = [
      read('left.bottom-roller', 'roller-leak', unseen('mud')),
      read('left.bottom-roller', 'roller-leak', finding('leaking'), { n: 2 }),
      read('left.bottom-roller.2', 'roller-leak', finding('dry')),
    ];
    expect(stateAt('left.bottom-roller.1', 'roller-leak', { readings })).toMatchObject({
      known: false,
      open: [{ kind: 'not-seen', params: { why: 'mud' } }],
    });
    expect(stateAt('left.bottom-roller.2', 'roller-leak', { readings })).toMatchObject({
      finding: 'dry',
      open: [],
    });
    expect(kindsOf(stateAt('right.bottom-roller.1', 'roller-leak', { readings }))).toEqual(['not-read']);
  });

  test('[V42] was taken back: once for each reading, and not also not read', () => {
    const takenBack = [gone(...at), gone(...at, 2)];
    expect(stateAt(...at, { takenBack }).open).toEqual([
      { kind: 'taken-back', params: { n: 1 } },
      { kind: 'taken-back', params: { n: 2 } },
    ]);
  });

  test('[V43] was written by a newer version, or clashes: once', () => {
    const twice = [gone(...at), gone(...at, 2)];
    expect(stateAt(...at, { newer: twice }).open).toEqual([{ kind: 'newer-version', params: {} }]);
    const readings = [read('left.track', 'cord', finding('cut'))];
    expect(stateAt(...at, { clashes: twice, readings })).toMatchObject({
      known: true,
      finding: 'cut',
      open: [{ kind: 'clash', params: {} }],
    });
  });
});
