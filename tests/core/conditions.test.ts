import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  anyOf,
  everyOf,
  holds,
  itemsIn,
  statesAt,
  unansweredIn,
  type Truth,
  type Where,
} from '../../src/core/conditions.ts';
import type { PlaceSide } from '../../src/core/keys.ts';
import type { Condition } from '../../src/core/rules.ts';
import { factsOf } from '../../src/core/score.ts';
import type { PlacedReading } from '../../src/core/states.ts';
import { law } from './law.ts';
import {
  bandOf,
  componentOf,
  crack,
  entryOf,
  finding,
  inputOf,
  limitAt,
  machineOf,
  mm,
  read,
  sag,
  sheetOf,
  walkOf,
} from './made.ts';

const truths: readonly Truth[] = [true, undefined, false];
const not = (truth: Truth): Truth => (truth === undefined ? undefined : !truth);

/** A place as a rule is asked there. */
function at(place: string, crackIndex = 0): Where {
  const [side, , number] = place.split('.');
  return {
    side: side as PlaceSide,
    component: componentOf(place),
    number: number === undefined ? undefined : Number(number),
    crack: crackIndex,
  };
}

const sheet = sheetOf(
  [
    entryOf('lug-depth', 20, [limitAt(10), limitAt(5, { means: 'destruction', hundred: false })]),
    entryOf('roller-tread', 200, 160),
  ],
  [bandOf(10, 20, { derailAbove: 40 })],
);

interface Asking {
  readonly readings?: PlacedReading[];
  readonly place?: string;
  readonly crackIndex?: number;
  readonly input?: Parameters<typeof inputOf>[0];
}

function answer(
  condition: Condition,
  { readings = [], place = 'left.track', crackIndex, input }: Asking = {},
): Truth {
  return holds(condition, factsOf(inputOf({ sheet, readings, ...input })), at(place, crackIndex));
}

describe('[N4] three-valued logic', () => {
  const lists = fc.array(fc.constantFrom(...truths), { maxLength: 6 });

  test('[R50] is Kleene’s: not known is between no and yes, all is the least, any the most', () => {
    const rank = (truth: Truth): number => truths.indexOf(truth);
    for (const a of truths)
      for (const b of truths) {
        expect(rank(everyOf([a, b]))).toBe(Math.max(rank(a), rank(b)));
        expect(rank(anyOf([a, b]))).toBe(Math.min(rank(a), rank(b)));
      }
    expect([everyOf([]), anyOf([])]).toEqual([true, false]);
  });

  test('[R51] De Morgan: not all is any not, and the other way about', () => {
    law(
      fc.property(lists, (list) => {
        expect(not(everyOf(list))).toBe(anyOf(list.map(not)));
        expect(not(anyOf(list))).toBe(everyOf(list.map(not)));
      }),
    );
  });

  test('[R52] neither order nor grouping matters', () => {
    law(
      fc.property(lists, lists, (a, b) => {
        for (const join of [everyOf, anyOf]) {
          expect(join([...a, ...b])).toBe(join([...b, ...a]));
          expect(join([...a, ...b])).toBe(join([join(a), join(b)]));
        }
      }),
    );
  });

  test('[R53] an answer stays whatever becomes known', () => {
    law(
      fc.property(lists, fc.array(fc.boolean(), { minLength: 6, maxLength: 6 }), (list, known) => {
        const filled = list.map((each, i) => each ?? known[i]);
        for (const join of [everyOf, anyOf]) {
          const before = join(list);
          if (before !== undefined) expect(join(filled)).toBe(before);
        }
      }),
    );
  });

  test('[R54] conditions are joined by it', () => {
    // Yes, no and not known at one place.
    const [yes, no, unknown]: Condition[] = [
      { track: ['rubber-cored'] },
      { track: ['steel'] },
      { finding: 'cord', is: ['cut'] },
    ];
    const of = (truth: Truth): Condition =>
      (truth === undefined ? unknown : truth ? yes : no) ?? { track: [] };
    for (const a of truths) {
      expect(answer({ not: of(a) })).toBe(not(a));
      for (const b of truths) {
        expect(answer({ all: [of(a), of(b)] })).toBe(everyOf([a, b]));
        expect(answer({ any: [of(a), of(b)] })).toBe(anyOf([a, b]));
      }
    }
  });
});

describe('[N2] a finding', () => {
  const cord = (name: string) => ({ readings: [read('left.track', 'cord', finding(name))] });

  test.each([
    [{ is: ['cut', 'parted'] }, 'cut', true],
    [{ is: ['cut', 'parted'] }, 'showing', false],
    [{ atLeast: 'cut' }, 'cut', true],
    [{ atLeast: 'cut' }, 'parted', true],
    [{ atLeast: 'cut' }, 'showing', false],
    [{ is: ['showing'], atLeast: 'parted' }, 'showing', true],
    [{ is: ['showing'], atLeast: 'parted' }, 'parted', true],
    [{ is: ['showing'], atLeast: 'parted' }, 'cut', false],
    [{ atLeast: 'none' }, 'none', true],
    [{ atLeast: 'never-heard-of' }, 'parted', false],
    [{}, 'parted', false],
  ])('[R55] %j of a cord that is %s: %s', (condition, name, truth) => {
    expect(answer({ finding: 'cord', ...condition }, cord(name))).toBe(truth);
  });

  test('[R56] that was not read is not known; an item that the machine does not have answers no', () => {
    expect(answer({ finding: 'cord', is: ['cut'] })).toBeUndefined();
    expect(answer({ finding: 'master-joint', is: ['open'] })).toBe(false);
  });

  test('[R57] of an item that this version does not know is not known', () => {
    expect(answer({ finding: 'of-tomorrow', is: ['cut'] })).toBeUndefined();
    expect(answer({ count: 'of-tomorrow', atLeast: 'cut', op: '>', value: 1 })).toBeUndefined();
  });

  test.each([
    [{ is: ['cord-visible'] }, true, true],
    [{ atLeast: 'cord-visible' }, true, true],
    [{ is: ['deep'], atLeast: 'cord-visible' }, true, true],
    [{ is: ['deep'] }, true, false],
    [{}, true, false],
    [{ is: ['cord-visible'] }, false, false],
  ])('[R58] %j of a crack that shows cord (%s): %s', (condition, visible, truth) => {
    const readings = [
      read('left.track', 'crack', crack(5, 5)),
      read('left.track', 'crack', crack(9, 9, visible), { n: 2 }),
    ];
    expect(answer({ finding: 'crack', ...condition }, { readings })).toBe(truth);
  });
});

describe('[N2] a size', () => {
  const lugs = (...sizes: number[]) => ({
    readings: sizes.map((value, i) => read('left.track', 'lug-depth', mm(value), { n: i + 1 })),
  });

  test.each([
    ['<', 12, false],
    ['<=', 12, true],
    ['=', 12, true],
    ['>=', 12, true],
    ['>', 12, false],
    ['<', 12.1, true],
  ] as const)('[R59] 12 mm %s %d mm: %s', (op, value, truth) => {
    expect(answer({ reading: 'lug-depth', op, value, unit: 'mm' }, lugs(12))).toBe(truth);
  });

  test('[R60] is compared in the unit of the rule', () => {
    expect(answer({ reading: 'lug-depth', op: '=', value: 16, unit: 'in/32' }, lugs(12.7))).toBe(true);
    expect(answer({ reading: 'lug-depth', op: '<', value: 0.5, unit: 'in' }, lugs(12.7))).toBe(false);
  });

  test('[R61] is the worst of its samples', () => {
    expect(answer({ reading: 'lug-depth', op: '=', value: 3, unit: 'mm' }, lugs(12, 11, 3))).toBe(true);
  });

  test('[R62] of a crack is its length, or its depth where the rule says so', () => {
    const readings = [read('left.track', 'crack', crack(30, 8))];
    const isMm = (value: number, field?: 'length' | 'depth'): Truth =>
      answer({ reading: 'crack', op: '=', value, unit: 'mm', ...(field && { field }) }, { readings });
    expect([isMm(30), isMm(30, 'length'), isMm(8, 'depth'), isMm(30, 'depth')]).toEqual([
      true,
      true,
      true,
      false,
    ]);
  });

  test('[R63] of several cracks is that of the one which is asked about', () => {
    const readings = [
      read('left.track', 'crack', crack(30, 2)),
      read('left.track', 'crack', crack(5, 9), { n: 2 }),
    ];
    const long: Condition = { reading: 'crack', op: '>=', value: 30, unit: 'mm' };
    expect([0, 1, 2].map((crackIndex) => answer(long, { readings, crackIndex }))).toEqual([
      true,
      false,
      true,
    ]);
  });

  test('[R64] of sag is its value', () => {
    const readings = [read('left.track', 'sag', sag([10, 20]))];
    expect(answer({ reading: 'sag', op: '=', value: 15, unit: 'mm' }, { readings })).toBe(true);
  });

  test('[R65] a finding has none', () => {
    const readings = [read('left.track', 'cord', finding('cut'))];
    expect(answer({ reading: 'cord', op: '>', value: 0, unit: 'mm' }, { readings })).toBeUndefined();
    expect(answer({ worn: 'cord', op: '>', percent: 0 }, { readings })).toBeUndefined();
  });

  test.each([
    [{ op: '>=', percent: 80 }, true],
    [{ op: '>', percent: 80 }, false],
    [{ op: '<', percent: 80.1 }, true],
    [{ op: '>=', percent: 53.4, of: 'destruction' }, false],
    [{ op: '>=', percent: 53.3, of: 'destruction' }, true],
    [{ op: '>=', percent: 80, of: 'replace' }, true],
    [{ op: '>=', percent: 1, of: 'turn' }, undefined],
  ] as const)('[R66] 12 mm on 20 → 10 mm, destroyed at 5 mm: worn %j is %s', (condition, truth) => {
    expect(answer({ worn: 'lug-depth', ...condition }, lugs(12))).toBe(truth);
  });

  test('[R67] without a limit wear is not known', () => {
    const input = { sheet: sheetOf([]) };
    expect(answer({ worn: 'lug-depth', op: '>', percent: 0 }, { ...lugs(12), input })).toBeUndefined();
    expect(answer({ worn: 'lug-depth', op: '>', percent: 0 })).toBeUndefined();
  });

  test('[R68] wear is towards the limit of the walk’s load', () => {
    const loaded = sheetOf([
      entryOf('lug-depth', 20, [limitAt(10, { loads: ['heavy'] }), limitAt(4, { loads: ['light'] })]),
    ]);
    const worn = (load: 'light' | 'heavy', of?: 'replace'): Truth =>
      answer(
        { worn: 'lug-depth', op: '=', percent: 50, ...(of && { of }) },
        { ...lugs(12), input: { sheet: loaded, walk: walkOf({ load }) } },
      );
    expect([worn('light'), worn('heavy'), worn('light', 'replace'), worn('heavy', 'replace')]).toEqual([
      true,
      false,
      true,
      false,
    ]);
  });
});

describe('[N2] sag', () => {
  const sagOf = (value: number) => ({ readings: [read('left.track', 'sag', sag(value))] });

  test.each([
    [5, 'tight', true],
    [15, 'right', true],
    [15, 'tight', false],
    [30, 'loose', true],
    [30, 'derailing', false],
    [50, 'derailing', true],
    [50, 'loose', true],
    [50, 'tight', false],
    [5, 'loose', false],
    [15, 'loose', false],
  ] as const)('[R69] of %d mm is %s: %s', (value, state, truth) => {
    expect(answer({ sag: state }, sagOf(value))).toBe(truth);
  });

  test('[R70] that was not measured is not known', () => {
    expect(answer({ sag: 'loose' })).toBeUndefined();
  });
});

const rollers = (...names: readonly (string | undefined)[]): PlacedReading[] =>
  names.flatMap((name, i) =>
    name === undefined ? [] : [read(`left.bottom-roller.${i + 1}`, 'roller-leak', finding(name))],
  );

describe('[N2] counting', () => {
  const leaking = (op: '>=' | '<' | '=', value: number, more = {}): Condition => ({
    count: 'roller-leak',
    atLeast: 'weeping',
    op,
    value,
    ...more,
  });
  const asked = (condition: Condition, ...names: readonly (string | undefined)[]): Truth =>
    answer(condition, { readings: rollers(...names), place: 'left.bottom-roller.1' });

  test.each([
    [['weeping', 'dry', 'leaking'], true],
    [['weeping', 'dry', 'dry'], false],
    [['weeping', 'leaking', undefined], true],
    [['weeping', 'dry', undefined], undefined],
    [['dry', 'dry', undefined], false],
    [[], undefined],
  ])('[R71] rollers %j: two or more weep %s', (names, truth) => {
    expect(asked(leaking('>=', 2), ...names)).toBe(truth);
  });

  test.each([
    [1, ['weeping', 'dry', 'dry'], true],
    [1, ['weeping', 'weeping', 'dry'], false],
    [1, ['weeping', undefined, 'dry'], undefined],
    [1, ['weeping', 'weeping', undefined], false],
    [1, ['dry', 'dry', 'dry'], false],
    [3, ['dry', 'dry', undefined], false],
  ])('[R72] exactly %d of rollers %j weep: %s', (value, names, truth) => {
    expect(asked(leaking('=', value), ...names)).toBe(truth);
  });

  test.each([
    [['weeping', 'weeping', 'dry'], true],
    [['dry', 'weeping', 'weeping'], true],
    [['weeping', 'dry', 'weeping'], false],
    [['weeping', undefined, 'weeping'], undefined],
    [['weeping', 'dry', undefined], false],
    [[undefined, undefined, 'dry'], undefined],
  ])('[R73] rollers %j: two neighbours weep %s', (names, truth) => {
    expect(asked(leaking('>=', 2, { neighbours: true }), ...names)).toBe(truth);
  });

  test('[R74] a run is as long as it goes, wherever it stands', () => {
    const machine = machineOf('rubber-cored', { bottomRollers: 7 });
    const readings = rollers('weeping', 'dry', 'weeping', 'weeping', 'weeping', 'dry', 'weeping');
    const run = (value: number): Truth =>
      answer(leaking('=', value, { neighbours: true }), {
        readings,
        place: 'left.bottom-roller.7',
        input: { machine },
      });
    expect([2, 3, 4].map(run)).toEqual([false, true, false]);
  });

  test('[R75] the other side does not count', () => {
    const readings = [
      ...rollers('weeping', 'dry', 'dry'),
      read('right.bottom-roller.1', 'roller-leak', finding('leaking')),
    ];
    expect(answer(leaking('>=', 2), { readings, place: 'left.bottom-roller.1' })).toBe(false);
  });

  test('[R76] an item that the machine does not have is there no times', () => {
    expect(asked({ count: 'pin-walk', atLeast: 'walking', op: '=', value: 0 })).toBe(false);
  });

  const torn = (op: '>=' | '<' | '=', value: number): Condition => ({
    count: 'lug-damage',
    atLeast: 'torn-out',
    op,
    value,
  });
  const lugs = (name: string, count?: number) => ({
    readings: [read('left.track', 'lug-damage', finding(name, count === undefined ? {} : { count }))],
  });

  test.each([
    ['torn-out', 6, '>=', 6, true],
    ['torn-out', 5, '>=', 6, false],
    ['chunked', 9, '>=', 6, false],
    ['chunked', 9, '=', 0, true],
    ['chunked', 9, '<', 1, true],
    ['torn-out', undefined, '>=', 1, true],
    ['torn-out', undefined, '>=', 2, undefined],
    ['torn-out', undefined, '<', 1, false],
    ['torn-out', undefined, '=', 0, false],
    ['torn-out', undefined, '=', 3, undefined],
  ] as const)('[R77] lugs %s, counted %s: %s %d is %s', (name, count, op, value, truth) => {
    expect(answer(torn(op, value), lugs(name, count))).toBe(truth);
  });

  test('[R78] marks of one part that were not read are not known', () => {
    expect(answer(torn('>=', 1))).toBeUndefined();
  });

  test('[R91] what is no finding has no marks to count and no share', () => {
    const readings = [
      read('left.track', 'lug-depth', mm(12)),
      read('left.track', 'crack', crack(5, 5, true)),
    ];
    const count = (id: string): Condition => ({ count: id, atLeast: 'cord-visible', op: '<', value: 5 });
    const part = (id: string): Condition => ({ share: id, atLeast: 'cord-visible', op: '<', value: 5 });
    expect([answer(count('lug-depth'), { readings }), answer(part('lug-depth'), { readings })]).toEqual([
      undefined,
      undefined,
    ]);
    expect(answer({ finding: 'lug-depth', is: ['cord-visible'] }, { readings })).toBeUndefined();
    expect(answer(count('crack'))).toBeUndefined();
    expect(
      answer({ ...count('crack'), value: 1 } as Condition, { readings: [readings[1] ?? []].flat() }),
    ).toBe(false);
  });

  test('[R92] from the machine as a whole sides are counted, not marks', () => {
    const torn = (side: string) => read(`${side}.track`, 'lug-damage', finding('torn-out', { count: 9 }));
    const sides = (value: number, readings: PlacedReading[]): Truth =>
      answer(
        { count: 'lug-damage', atLeast: 'torn-out', op: '=', value },
        { readings, place: 'whole.machine' },
      );
    expect(sides(2, [torn('left'), torn('right')])).toBe(true);
    expect(sides(1, [torn('left'), read('right.track', 'lug-damage', finding('sound'))])).toBe(true);
    expect(sides(9, [torn('left')])).toBe(false);
  });

  test('[R79] a single numbered part is counted as a part', () => {
    const readings = [read('left.idler.1', 'idler-leak', finding('leaking', { count: 4 }))];
    const condition: Condition = { count: 'idler-leak', atLeast: 'weeping', op: '=', value: 1 };
    expect(answer(condition, { readings })).toBe(true);
  });
});

describe('[N2] share of the circumference', () => {
  const path = (name: string, share?: number) => ({
    readings: [read('left.track', 'roller-path', finding(name, share === undefined ? {} : { share }))],
  });
  const over = (op: '>' | '<', value: number): Condition => ({
    share: 'roller-path',
    atLeast: 'core-exposed',
    op,
    value,
  });

  test.each([
    ['core-exposed', 0.6, '>', 0.5, true],
    ['core-exposed', 0.5, '>', 0.5, false],
    ['worn', 0.9, '>', 0.5, false],
    ['worn', 0.9, '<', 0.1, true],
    ['core-exposed', undefined, '>', 0.5, undefined],
    ['core-exposed', undefined, '>', 1, false],
    ['core-exposed', undefined, '<', 1.1, true],
  ] as const)('[R80] %s over %s of it: %s %d is %s', (name, share, op, value, truth) => {
    expect(answer(over(op, value), path(name, share))).toBe(truth);
  });

  test('[R81] that was not read is not known', () => {
    expect(answer(over('>', 0.5))).toBeUndefined();
  });
});

describe('[N2] age, track and what is unknown', () => {
  const old: Condition = { age: 'track', op: '>=', years: 8 };

  test('[R82] age is that of the side, and not known without a date', () => {
    const input = { ageYears: { left: 9, right: 2 } };
    expect(['left', 'right'].map((side) => answer(old, { place: `${side}.track`, input }))).toEqual([
      true,
      false,
    ]);
    expect(answer(old)).toBeUndefined();
    expect(answer(old, { place: 'right.track', input: { ageYears: { left: 9 } } })).toBeUndefined();
  });

  test('[R83] the kind of track is one of a list', () => {
    expect([answer({ track: ['steel', 'rubber-cored'] }), answer({ track: ['steel'] })]).toEqual([
      true,
      false,
    ]);
  });

  test('[R84] unknown is true until it is read, and false of what the machine does not have', () => {
    const readings = [read('left.track', 'cord', finding('none'))];
    expect([
      answer({ unknown: 'cord' }),
      answer({ unknown: 'cord' }, { readings }),
      answer({ unknown: 'pitch' }),
    ]).toEqual([true, false, false]);
  });

  test('[R85] one unknown roller makes them unknown', () => {
    expect(answer({ unknown: 'roller-leak' }, { readings: rollers('dry', 'dry') })).toBe(true);
    expect(answer({ unknown: 'roller-leak' }, { readings: rollers('dry', 'dry', 'dry') })).toBe(false);
  });
});

describe('[N2] where a condition is asked', () => {
  const readings = [
    ...rollers('dry', 'weeping', 'dry'),
    read('left.track', 'cord', finding('none')),
    read('right.track', 'cord', finding('cut')),
    read('whole.machine', 'drift', finding('drifts')),
  ];
  const facts = factsOf(inputOf({ readings, walk: walkOf({ opened: ['drift'] }) }));
  const placesOf = (id: string, place: string) => statesAt(facts, id, at(place)).map((state) => state.place);

  test.each([
    ['roller-leak', 'left.bottom-roller.2', ['left.bottom-roller.2']],
    ['roller-leak', 'left.track', ['left.bottom-roller.1', 'left.bottom-roller.2', 'left.bottom-roller.3']],
    ['cord', 'left.bottom-roller.2', ['left.track']],
    ['cord', 'right.track', ['right.track']],
    ['cord', 'whole.machine', ['left.track', 'right.track']],
    ['drift', 'right.track', ['whole.machine']],
    ['pitch', 'left.track', []],
    ['of-tomorrow', 'left.track', []],
  ])('[R86] %s from %s is %j', (id, place, expected) => {
    expect(placesOf(id, place)).toEqual(expected);
  });

  test('[R87] one yes is enough, a no needs all, else it is not known', () => {
    const weeps: Condition = { finding: 'roller-leak', is: ['weeping'] };
    const from = (...names: (string | undefined)[]) => answer(weeps, { readings: rollers(...names) });
    expect([
      from('dry', 'weeping', undefined),
      from('dry', 'dry', 'dry'),
      from('dry', undefined, 'dry'),
    ]).toEqual([true, false, undefined]);
  });
});

describe('[N4] what is missing for an answer', () => {
  const missing = (condition: Condition, readings: PlacedReading[] = []) =>
    unansweredIn(condition, factsOf(inputOf({ sheet, readings })), at('left.track'));
  const cord: Condition = { finding: 'cord', is: ['cut'] };
  const edges: Condition = { finding: 'edges', is: ['cut'] };
  const rubber: Condition = { track: ['rubber-cored'] };

  test('[R88] is every leaf that has none', () => {
    expect(missing({ all: [cord, { not: edges }, rubber] })).toEqual([cord, edges]);
    expect(missing({ any: [cord, edges] })).toEqual([cord, edges]);
    expect(missing(cord)).toEqual([cord]);
  });

  test('[R89] is nothing once there is an answer, in parts too', () => {
    expect(missing({ any: [cord, rubber] })).toEqual([]);
    expect(missing({ all: [{ any: [cord, rubber] }, edges] })).toEqual([edges]);
    expect(missing({ all: [cord, edges] }, [read('left.track', 'cord', finding('none'))])).toEqual([]);
  });
});

test('[R90] the items of a condition are those that its leaves name', () => {
  const condition: Condition = {
    all: [
      { any: [{ reading: 'a', op: '<', value: 1, unit: 'mm' }, { finding: 'b' }] },
      { not: { count: 'c', atLeast: 'x', op: '<', value: 1 } },
      { share: 'd', atLeast: 'x', op: '<', value: 1 },
      { worn: 'e', op: '<', percent: 1 },
      { sag: 'tight' },
      { unknown: 'f' },
      { age: 'track', op: '<', years: 1 },
      { track: ['steel'] },
    ],
  };
  expect(itemsIn(condition)).toEqual(['a', 'b', 'c', 'd', 'e', 'sag', 'f']);
});
