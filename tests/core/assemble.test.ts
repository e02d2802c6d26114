import { describe, expect, test } from 'vitest';
import { assemble, readingKey, valueIn, type BuiltIn, type Shelf } from '../../src/core/assemble.ts';
import { idSchema, keySchema, makeKey, placeSchema, type RecordKey } from '../../src/core/keys.ts';
import { assert } from '../../src/core/result.ts';
import { deviceIdOf, makeStamp, type DeviceId } from '../../src/core/stamp.ts';
import type { RecordValue, Version } from '../../src/core/versions.ts';
import { life } from '../../src/reference/life.ts';
import { finding, machineOf, rulesOf, sheetOf, walkOf } from './made.ts';

const by = idSchema.parse('somebody');
const [here, there]: readonly DeviceId[] = [1, 2].map((byte) => deviceIdOf(new Uint8Array(8).fill(byte)));

interface Left {
  readonly value?: object;
  readonly counter?: number;
  readonly device?: DeviceId | undefined;
}

const demoWork = (id: string): string =>
  makeKey({ kind: 'work', machine: idSchema.parse('m'), id: idSchema.parse(id), demo: true });

/** A version of a record; without a value it is a removal. */
function version(key: string, { value, counter = 1, device = here }: Left): Version {
  assert(device, 'there is a device');
  return {
    key: keySchema.parse(key),
    ...(value && { value: value as RecordValue }),
    stamp: makeStamp(counter, device),
    seen: {},
    by,
  };
}

/** A shelf of records, each with its versions in rank order. */
function shelfOf(records: Readonly<Record<string, object | readonly Left[]>>): Shelf {
  const held = Object.entries(records).map(([key, what]): readonly [RecordKey, readonly Version[]] => {
    const versions: readonly Left[] = Array.isArray(what) ? (what as readonly Left[]) : [{ value: what }];
    return [keySchema.parse(key), versions.map((each) => version(key, each))];
  });
  return {
    get: (key) => held.find(([each]) => each === key)?.[1] ?? [],
    under: (prefix) => held.filter(([key]) => key.startsWith(prefix)),
  };
}

const named = (name: string) => ({ ...sheetOf([]), name });
const set = (name: string) => ({ ...rulesOf([]), name });

const builtIn: BuiltIn = {
  limits: { 'limits/starting': { ...named('built in'), rules: 'rules/starting' } },
  rules: { 'rules/starting': set('built in') },
  prices: {},
  rates: {},
  tools: { rule: 0.5 },
  life,
};

const machine = machineOf('rubber-cored');
const walk = walkOf({ machine: 'machine/m' });
const basic = { 'walk/w': walk, 'machine/m': machine };

function assembled(records: Parameters<typeof shelfOf>[0], walkKey = 'walk/w') {
  const found = assemble(shelfOf({ ...basic, ...records }), builtIn, walkKey);
  assert(found.ok, 'the walk can be assembled');
  return found.value;
}

const errorOf = (records: Parameters<typeof shelfOf>[0], walkKey = 'walk/w') => {
  const found = assemble(shelfOf(records), builtIn, walkKey);
  return found.ok ? undefined : found.error;
};

describe('[A] what a walk needs', () => {
  test('[A1] a walk and its machine; nothing else is there', () => {
    expect(assembled({})).toEqual({
      input: {
        machine,
        walk,
        sheets: { left: undefined, right: undefined },
        rules: undefined,
        readings: [],
        takenBack: [],
        newer: [],
        clashes: [],
        tools: { rule: 0.5 },
        ageYears: {},
      },
      machineKey: 'machine/m',
      sheetKeys: { left: undefined, right: undefined },
      rulesKey: undefined,
      changed: { sheet: false, rules: false },
    });
  });

  test.each([
    ['a walk that is not there', {}, 'walk/w', 'no-walk', 'walk/w'],
    ['a walk that was removed', { 'walk/w': [{}] }, 'walk/w', 'no-walk', 'walk/w'],
    ['a walk of a newer version', { 'walk/w': { v: 2 } }, 'walk/w', 'newer-version', 'walk/w'],
    ['a key that is no walk’s', basic, 'machine/m', 'no-walk', 'machine/m'],
    ['a key that is none', basic, 'walk/', 'no-walk', 'walk/'],
    ['a machine that is not there', { 'walk/w': walk }, 'walk/w', 'no-machine', 'machine/m'],
    [
      'a machine of a newer version',
      { ...basic, 'machine/m': { v: 2 } },
      'walk/w',
      'newer-version',
      'machine/m',
    ],
    [
      'a machine named by another kind’s key',
      { ...basic, 'walk/w': walkOf({ machine: 'walk/w' }) },
      'walk/w',
      'no-machine',
      'walk/w',
    ],
  ])('[A2] %s: %s %s %s %s', (_, records, key, kind, at) => {
    expect(errorOf(records, key)).toEqual({ kind, key: at });
  });

  test('[A3] a value is the displayed one, if it is there and of our version', () => {
    const versions = (...given: readonly Left[]) => given.map((each) => version('machine/m', each));
    expect(
      valueIn(versions({ value: { v: 1, name: 'a' } }, { value: { v: 1, name: 'b' }, counter: 2 })),
    ).toEqual({ v: 1, name: 'b' });
    expect(valueIn(versions({ value: { v: 1 } }, { counter: 2 }))).toBeUndefined();
    expect(valueIn(versions({ value: { v: 2 } }))).toBeUndefined();
    expect(valueIn([])).toBeUndefined();
  });
});

describe('[A] sheets and rules', () => {
  const sheets = { 'limits/a': named('a'), 'limits/b': named('b'), 'limits/c': named('c') };
  const sheetsOf = (records: Parameters<typeof shelfOf>[0]) => {
    const { input, sheetKeys } = assembled({ ...sheets, ...records });
    return [input.sheets.left?.name, input.sheets.right?.name, sheetKeys.left, sheetKeys.right];
  };

  test('[A4] a fitted part’s own sheet goes before the walk’s, and that before the machine’s', () => {
    const withSheet = { ...machine, sheet: 'limits/a' };
    expect(sheetsOf({ 'machine/m': withSheet })).toEqual(['a', 'a', 'limits/a', 'limits/a']);
    expect(sheetsOf({ 'machine/m': withSheet, 'walk/w': { ...walk, sheet: { key: 'limits/b' } } })).toEqual([
      'b',
      'b',
      'limits/b',
      'limits/b',
    ]);
    expect(
      sheetsOf({
        'machine/m': { ...withSheet, right: { sheet: 'limits/c' } },
        'walk/w': { ...walk, sheet: { key: 'limits/b' } },
      }),
    ).toEqual(['b', 'c', 'limits/b', 'limits/c']);
  });

  const sheetFrom = (key: string, records = {}) =>
    sheetsOf({ ...records, 'machine/m': { ...machine, sheet: key } })[0];

  test('[A5] what is not stored may come with the app; what is stored stands', () => {
    expect(sheetFrom('limits/starting')).toBe('built in');
    expect(sheetFrom('limits/starting', { 'limits/starting': named('own') })).toBe('own');
    expect(sheetFrom('limits/nowhere')).toBeUndefined();
  });

  test('[A6] what a newer version stored is not replaced by what comes with the app', () => {
    expect(sheetFrom('limits/starting', { 'limits/starting': { ...named('later'), v: 2 } })).toBeUndefined();
  });

  test('[A7] a key of another kind names no sheet and no rules', () => {
    expect(sheetFrom('machine/m')).toBeUndefined();
    expect(sheetFrom('constructor')).toBeUndefined();
    expect(assembled({ 'machine/m': { ...machine, rules: 'limits/starting' } }).input.rules).toBeUndefined();
  });

  test('[A8] the walk’s set goes before the sheet’s, left before right, and those before the machine’s', () => {
    const rules = { 'rules/w': set('w'), 'rules/l': set('l'), 'rules/r': set('r'), 'rules/m': set('m') };
    const books = {
      'limits/l': { ...named('l'), rules: 'rules/l' },
      'limits/r': { ...named('r'), rules: 'rules/r' },
      'limits/none': named('none'),
    };
    const rulesOfWalk = (left: string, right: string, pinned?: string) => {
      const own = { ...machine, rules: 'rules/m', left: { sheet: left }, right: { sheet: right } };
      const { input, rulesKey } = assembled({
        ...rules,
        ...books,
        'machine/m': own,
        'walk/w': { ...walk, ...(pinned && { rules: { key: pinned } }) },
      });
      expect(rulesKey).toBe(input.rules && `rules/${input.rules.name}`);
      return input.rules?.name;
    };
    expect(rulesOfWalk('limits/l', 'limits/r', 'rules/w')).toBe('w');
    expect(rulesOfWalk('limits/l', 'limits/r')).toBe('l');
    expect(rulesOfWalk('limits/none', 'limits/r')).toBe('r');
    expect(rulesOfWalk('limits/none', 'limits/none')).toBe('m');
  });

  test('[A9] a set may come with the app', () => {
    const { input, rulesKey } = assembled({ 'machine/m': { ...machine, sheet: 'limits/starting' } });
    expect([input.rules?.name, rulesKey]).toEqual(['built in', 'rules/starting']);
  });

  test('[A10] a pin tells when its sheet or set has been edited since', () => {
    const stamp = (counter: number) => makeStamp(counter, here ?? deviceIdOf(new Uint8Array(8)));
    const pinned = (sheetCounter?: number, rulesCounter?: number) =>
      assembled({
        'limits/a': [{ value: named('a'), counter: 3 }],
        'rules/r': [{ value: set('r'), counter: 4 }],
        'walk/w': {
          ...walk,
          sheet: { key: 'limits/a', ...(sheetCounter && { stamp: stamp(sheetCounter) }) },
          rules: { key: 'rules/r', ...(rulesCounter && { stamp: stamp(rulesCounter) }) },
        },
      }).changed;
    expect(pinned()).toEqual({ sheet: false, rules: false });
    expect(pinned(3, 4)).toEqual({ sheet: false, rules: false });
    expect(pinned(2, 4)).toEqual({ sheet: true, rules: false });
    expect(pinned(3, 3)).toEqual({ sheet: false, rules: true });
  });

  test('[A11] a pin of what is gone has changed', () => {
    const gone = { key: 'limits/gone', stamp: makeStamp(1, deviceIdOf(new Uint8Array(8))) };
    expect(assembled({ 'walk/w': { ...walk, sheet: gone } }).changed.sheet).toBe(true);
  });
});

describe('[A] readings', () => {
  const key = 'reading/w/left.track/cord/1';
  const at = { place: 'left.track', item: 'cord', n: 1 };
  const cord = (name: string) => ({ v: 1, what: finding(name) });
  const sorted = (...versions: readonly Left[]) => {
    const { readings, takenBack, newer, clashes } = assembled({ [key]: versions }).input;
    return { readings, takenBack, newer, clashes };
  };
  const nothing = { readings: [], takenBack: [], newer: [], clashes: [] };

  test('[A12] of the walk, and of no other', () => {
    const { readings } = assembled({
      [key]: cord('cut'),
      'reading/other/left.track/cord/1': cord('none'),
    }).input;
    expect(readings).toEqual([{ ...at, reading: cord('cut') }]);
  });

  test('[A13] that were removed are taken back', () => {
    expect(sorted({})).toEqual({ ...nothing, takenBack: [at] });
  });

  test('[A14] of a newer version are known as such', () => {
    expect(sorted({ value: { v: 2 } })).toEqual({ ...nothing, newer: [at] });
  });

  test('[A15] that clash: the last is displayed, each other that differs is a side', () => {
    const sides = [
      { value: cord('none') },
      { value: cord('showing'), counter: 2 },
      { value: cord('cut'), counter: 2, device: there },
    ];
    expect(sorted(...sides)).toEqual({
      ...nothing,
      readings: [{ ...at, reading: cord('cut') }],
      clashes: [
        { ...at, reading: cord('none') },
        { ...at, reading: cord('showing') },
      ],
    });
  });

  test('[A16] that say the same do not clash', () => {
    expect(sorted({ value: cord('cut') }, { value: cord('cut'), device: there }).clashes).toEqual([]);
  });

  test('[A17] a removal is a side, displayed or not', () => {
    expect(sorted({ value: cord('cut') }, { counter: 2 })).toEqual({
      ...nothing,
      takenBack: [at],
      clashes: [{ ...at, reading: cord('cut') }],
    });
    expect(sorted({}, { value: cord('cut'), counter: 2 })).toEqual({
      ...nothing,
      readings: [{ ...at, reading: cord('cut') }],
      clashes: [at],
    });
  });

  test('[A18] what a newer version wrote is a side that cannot be read', () => {
    expect(sorted({ value: { v: 2 } }, { value: cord('cut'), counter: 2 })).toEqual({
      ...nothing,
      readings: [{ ...at, reading: cord('cut') }],
      clashes: [at],
    });
    expect(sorted({ value: cord('cut') }, { value: { v: 2 }, counter: 2 })).toEqual({
      ...nothing,
      newer: [at],
      clashes: [{ ...at, reading: cord('cut') }],
    });
  });

  test('[A19] of the demo belong to the demo’s walk', () => {
    const demo = {
      'demo/walk/w': { ...walk, machine: 'demo/machine/m' },
      'demo/machine/m': machine,
      'demo/reading/w/left.track/cord/1': cord('none'),
      [demoWork('x')]: { v: 1, kind: 'fitted', component: 'track', side: 'left', on: '2020-01-01' },
      [key]: cord('cut'),
    };
    const finds = (walkKey: string) =>
      assembled(demo, walkKey).input.readings.map(({ reading }) => reading.what);
    expect([finds('demo/walk/w'), finds('walk/w')]).toEqual([[finding('none')], [finding('cut')]]);
  });

  test('[A20] have the key of their walk', () => {
    const place = { place: placeSchema.parse('left.bottom-roller.3'), item: 'roller-leak', n: 2 };
    expect(readingKey('walk/w', place)).toBe('reading/w/left.bottom-roller.3/roller-leak/2');
    expect(readingKey('demo/walk/w', place)).toBe('demo/reading/w/left.bottom-roller.3/roller-leak/2');
    expect(readingKey('machine/m', place)).toBeUndefined();
    expect(readingKey('nonsense', place)).toBeUndefined();
  });
});

describe('[A] age from work', () => {
  const walkedAt = (utc: string) => ({ 'walk/w': { ...walk, startedAt: { utc, offsetMinutes: 0 } } });
  const fitted = (on: string | undefined, more = {}) => ({
    v: 1,
    kind: 'fitted',
    component: 'track',
    side: 'left',
    ...(on && { on }),
    ...more,
  });
  const ages = (works: readonly object[], utc = '2026-06-15T08:00:00Z', machineKey = 'machine/m') =>
    assembled({
      ...walkedAt(utc),
      ...Object.fromEntries(works.map((each, i) => [`work/m/${i}`, each])),
      'work/other/0': fitted('2000-01-01'),
      [machineKey]: machine,
    }).input.ageYears;

  test.each([
    ['2020-06-15', 6],
    ['2020-06-16', 5],
    ['2020-06-14', 6],
    ['2020-07-01', 5],
    ['2020-05-31', 6],
    ['2026-06-15', 0],
    ['2025-12-31', 0],
  ])('[A21] fitted on %s, walked on 15 June 2026: %d whole years', (on, years) => {
    expect(ages([fitted(on)])).toEqual({ left: years });
  });

  test('[A22] the newest fitting of a side counts, each side for itself', () => {
    const works = [
      fitted('2022-01-01'),
      fitted('2024-01-01'),
      fitted('2019-01-01'),
      fitted('2016-01-01', { side: 'right' }),
    ];
    expect(ages(works)).toEqual({ left: 2, right: 10 });
  });

  test('[A22] what was fitted on the whole machine counts for both sides', () => {
    expect(ages([fitted('2020-01-01', { side: 'whole' })])).toEqual({ left: 6, right: 6 });
  });

  test('[A23] what was fitted after the walk is no part of it', () => {
    expect(ages([fitted('2020-01-01'), fitted('2026-06-16')])).toEqual({ left: 6 });
    expect(ages([fitted('2026-06-16')])).toEqual({});
  });

  test.each([
    ['no date', fitted(undefined)],
    ['a date that is none', fitted('long ago')],
    ['half a date', fitted('2020-01')],
    ['other work', fitted('2020-01-01', { kind: 'turned' })],
    ['another part', fitted('2020-01-01', { component: 'idler' })],
    ['no side', fitted('2020-01-01', { side: undefined })],
    ['a newer version', fitted('2020-01-01', { v: 2 })],
  ])('[A24] %s tells no age', (_, work) => {
    expect(ages([work])).toEqual({});
  });

  test('[A25] without the day of the walk there is none', () => {
    expect(ages([fitted('2020-01-01')], 'yesterday')).toEqual({});
    expect(assembled({ 'work/m/0': fitted('2020-01-01') }).input.ageYears).toEqual({});
  });

  test('[A26] work that was removed is not there', () => {
    expect(assembled({ ...walkedAt('2026-06-15T08:00:00Z'), 'work/m/0': [{}] }).input.ageYears).toEqual({});
  });

  test('[A27] the demo’s machine has the demo’s work', () => {
    const records = {
      'walk/w': {
        ...walk,
        machine: 'demo/machine/m',
        startedAt: { utc: '2026-06-15T08:00:00Z', offsetMinutes: 0 },
      },
      'demo/machine/m': machine,
      [demoWork('0')]: fitted('2020-01-01'),
      'work/m/0': fitted('2010-01-01'),
    };
    expect(assembled(records).input.ageYears).toEqual({ left: 6 });
  });
});
