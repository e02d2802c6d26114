import { describe, expect, test } from 'vitest';
import { score } from '../../src/core/score.ts';
import type { Condition, Rule } from '../../src/core/rules.ts';
import type { PlacedReading } from '../../src/core/states.ts';
import {
  bandOf,
  crack,
  entryOf,
  finding,
  inputOf,
  limitAt,
  mm,
  openKindsOf,
  outcomeAt,
  read,
  ruleOf,
  rulesOf,
  sag,
  sheetOf,
  walkOf,
} from './made.ts';

const cut: Condition = { finding: 'cord', is: ['cut'] };
const edgesCut: Condition = { finding: 'edges', is: ['cut'] };
const sheet = sheetOf([entryOf('lug-depth', 20, 10), entryOf('roller-tread', 200, 160)], [bandOf(10, 20)]);
const cord = (name = 'cut') => read('left.track', 'cord', finding(name));
const edges = (name = 'cut') => read('left.track', 'edges', finding(name));

const scored = (rules: Rule[], readings: PlacedReading[], more: Parameters<typeof inputOf>[0] = {}) =>
  score(inputOf({ sheet, rules: rulesOf(rules), readings, ...more }));
const cordOf = (rules: Rule[], readings: PlacedReading[], more = {}) =>
  outcomeAt(scored(rules, readings, more), 'left.track', 'cord');

describe('[N4] an item’s outcome', () => {
  test('[V60] without a rule that fires it may run and work', () => {
    expect(cordOf([ruleOf('a', 'cord', cut, 'park', 'nothing')], [cord('none')])).toMatchObject({
      atLeast: 'run',
      meanwhile: 'work',
      reasons: [],
      open: [],
    });
  });

  test('[V61] the worst call and the strictest meanwhile of the rules that fire, each with its reason, worst first', () => {
    const rules = [
      ruleOf('b', 'cord', cut, 'recheck', 'light-work'),
      ruleOf('a', 'cord', cut, 'replace', 'work'),
      ruleOf('c', 'cord', cut, 'replace', 'move-only'),
      ruleOf('d', 'cord', cut, 'repair', 'nothing'),
      ruleOf('e', 'cord', { not: cut }, 'park', 'nothing'),
    ];
    const outcome = cordOf(rules, [cord()]);
    expect(outcome).toMatchObject({ atLeast: 'replace', meanwhile: 'nothing' });
    expect(outcome.reasons.map(({ rule }) => rule)).toEqual(['c', 'a', 'd', 'b']);
  });

  test('[V62] a rule counts for each of its items at the place, and for no other', () => {
    const walk = scored([ruleOf('a', ['cord', 'edges'], cut)], [cord(), edges('sound')]);
    expect(outcomeAt(walk, 'left.track', 'edges').atLeast).toBe('repair');
    expect(outcomeAt(walk, 'right.track', 'cord').atLeast).toBe('run');
    expect(outcomeAt(walk, 'left.track', 'bulge').atLeast).toBe('run');
  });

  test('[V63] a rule is asked at each part of its first item', () => {
    const rules = [ruleOf('a', 'roller-leak', { finding: 'roller-leak', is: ['leaking'] })];
    const walk = scored(rules, [read('left.bottom-roller.2', 'roller-leak', finding('leaking'))]);
    expect(
      [1, 2, 3].map((number) => outcomeAt(walk, `left.bottom-roller.${number}`, 'roller-leak').atLeast),
    ).toEqual(['run', 'repair', 'run']);
  });

  test('[V64] a rule over what was neither read nor asked for is not asked', () => {
    const rules = [ruleOf('a', ['kinked-cords', 'cord'], cut)];
    expect(cordOf(rules, [cord()]).atLeast).toBe('run');
    expect(cordOf(rules, [cord()], { walk: walkOf({ opened: ['kinked-cords'] }) }).atLeast).toBe('repair');
  });

  test('[V90] a rule about an item that this version does not know is asked nowhere', () => {
    const rules = [ruleOf('a', ['of-tomorrow', 'cord'], cut), ruleOf('b', 'cord', cut, 'recheck')];
    expect(cordOf(rules, [cord()]).reasons.map(({ rule }) => rule)).toEqual(['b']);
  });

  test('[V65] of several cracks each is asked about, and a reason is said once, with the crack it is about', () => {
    const long: Condition = { reading: 'crack', op: '>=', value: 30, unit: 'mm' };
    const cracks = [crack(5, 1), crack(40, 2), crack(50, 3)].map((what, i) =>
      read('left.track', 'crack', what, { n: i + 1 }),
    );
    const { reasons } = outcomeAt(scored([ruleOf('a', 'crack', long)], cracks), 'left.track', 'crack');
    expect(reasons).toHaveLength(1);
    expect(reasons[0]?.params).toMatchObject({ lengthMm: 40, depthMm: 2 });
  });

  test('[V66] what was neither read, asked for nor lost has no place in the result', () => {
    const { outcomes } = scored([], []);
    expect(outcomes.some(({ state }) => state.item.id === 'kinked-cords')).toBe(false);
    expect(outcomes.some(({ state }) => state.item.id === 'cord')).toBe(true);
    const lost = scored([], [], { takenBack: [{ ...cord(), item: 'kinked-cords' }] });
    expect(lost.outcomes.some(({ state }) => state.item.id === 'kinked-cords')).toBe(true);
  });
});

describe('[N4] a reason', () => {
  const reasonOf = (rule: Rule, reading: PlacedReading, id: string) =>
    outcomeAt(scored([rule], [reading]), reading.place, id).reasons[0];

  test('[V67] names its rule, its message, its source and what was found', () => {
    const rule = ruleOf('a', 'cord', cut, 'park', 'nothing', {
      reason: { message: 'cord.cut' },
      source: { mark: 'published', text: 'a page' },
    });
    expect(
      reasonOf(rule, read('left.track', 'cord', finding('cut', { count: 3, share: 0.25 })), 'cord'),
    ).toStrictEqual({
      rule: 'a',
      message: 'cord.cut',
      params: {
        item: 'cord',
        side: 'left',
        component: 'track',
        tensioner: 'grease',
        finding: 'cut',
        count: 3,
        share: 0.25,
      },
      source: { mark: 'published', text: 'a page' },
    });
  });

  test('[V68] brings the author’s own text', () => {
    const rule = ruleOf('a', 'cord', cut, 'park', 'nothing', {
      reason: { message: 'written', text: 'Our own' },
    });
    expect(reasonOf(rule, cord(), 'cord')?.params).toMatchObject({ text: 'Our own' });
    expect(reasonOf(ruleOf('a', 'cord', cut), cord(), 'cord')?.params).not.toHaveProperty('text');
  });

  test('[V69] of a size brings its wear, and the number of its part', () => {
    const what = {
      kind: 'tread' as const,
      centreMm: 185,
      linkMm: 100,
      typed: ['185', '100'],
      unit: 'mm' as const,
    };
    const rule = ruleOf('a', 'roller-tread', { worn: 'roller-tread', op: '>', percent: 1 });
    const params = reasonOf(
      rule,
      read('left.bottom-roller.2', 'roller-tread', what, { uMm: 0 }),
      'roller-tread',
    )?.params;
    expect(params).toStrictEqual({
      item: 'roller-tread',
      side: 'left',
      component: 'bottom-roller',
      tensioner: 'grease',
      number: 2,
      mm: 170,
      percent: 75,
      expanded: 0,
      newMm: 200,
      limitMm: 160,
    });
  });

  test('[V70] of sag brings its band and method', () => {
    const params = reasonOf(
      ruleOf('a', 'sag', { sag: 'loose' }, 'adjust'),
      read('left.track', 'sag', sag(26)),
      'sag',
    )?.params;
    expect(params).toStrictEqual({
      item: 'sag',
      side: 'left',
      component: 'track',
      tensioner: 'grease',
      mm: 26,
      byMm: 6,
      lowMm: 10,
      highMm: 20,
      method: 'straightedge-shoe',
    });
  });

  test('[V71] of one crack brings its length and depth', () => {
    const rule = ruleOf('a', 'crack', { reading: 'crack', op: '>', value: 1, unit: 'mm' });
    expect(reasonOf(rule, read('left.track', 'crack', crack(30, 8)), 'crack')?.params).toMatchObject({
      lengthMm: 30,
      depthMm: 8,
    });
  });
});

describe('[N4] what the rules leave open', () => {
  test('[V72] no set, a set in a later language, an item that it does not cover', () => {
    const open = (rules: ReturnType<typeof rulesOf> | undefined) =>
      outcomeAt(score(inputOf({ sheet, rules, readings: [cord()] })), 'left.track', 'cord').open;
    const set = rulesOf([ruleOf('a', 'cord', cut)]);
    expect(open(undefined)).toEqual([{ kind: 'no-rules', params: {} }]);
    expect(open({ ...set, language: 2 })).toEqual([{ kind: 'newer-rules', params: { language: 2 } }]);
    expect(open({ ...set, covers: {} })).toEqual([{ kind: 'not-covered', params: { set: 'made up' } }]);
    expect(open({ ...set, rules: [] })).toEqual([{ kind: 'not-covered', params: { set: 'made up' } }]);
    expect(open(set)).toEqual([]);
  });

  test('[V73] a set in a later language fires no rule', () => {
    const set = rulesOf([ruleOf('a', 'cord', cut, 'park', 'nothing')], { language: 2 });
    const walk = score(inputOf({ sheet, rules: set, readings: [cord()] }));
    expect(outcomeAt(walk, 'left.track', 'cord').atLeast).toBe('run');
    expect(walk.verdict.settled).toBe(false);
  });

  test('[V74] of an item that was not read only that', () => {
    expect(openKindsOf(cordOf([ruleOf('a', 'cord', cut)], []))).toEqual(['not-read']);
    expect(openKindsOf(outcomeAt(score(inputOf()), 'left.track', 'cord'))).toEqual(['not-read']);
  });

  const both = (call: Rule['call'], meanwhile: Rule['meanwhile']) => [
    ruleOf('sure', 'cord', cut, 'repair', 'light-work'),
    ruleOf('perhaps', 'cord', { all: [cut, edgesCut] }, call, meanwhile),
  ];

  test.each([
    ['replace', 'light-work', ['needs']],
    ['repair', 'move-only', ['needs']],
    ['repair', 'light-work', []],
    ['recheck', 'work', []],
  ] as const)(
    '[V75] a rule of %s and %s whose answer waits for another item: %j',
    (call, meanwhile, open) => {
      const outcome = cordOf(both(call, meanwhile), [cord()]);
      expect(openKindsOf(outcome)).toEqual(open);
      if (open.length > 0) expect(outcome.open).toEqual([{ kind: 'needs', params: { item: 'edges' } }]);
    },
  );

  test('[V76] nothing, where the answer does not hang on what is missing', () => {
    const rule = ruleOf(
      'a',
      'cord',
      { all: [{ finding: 'cord', is: ['parted'] }, edgesCut] },
      'park',
      'nothing',
    );
    expect(cordOf([rule], [cord()]).open).toEqual([]);
  });

  test('[V77] an item that is needed by several rules is named once', () => {
    const rules = [
      ruleOf('a', 'cord', { all: [cut, edgesCut] }),
      ruleOf('b', 'cord', { any: [edgesCut, { finding: 'edges', is: ['nicked'] }] }),
    ];
    expect(cordOf(rules, [cord()]).open).toEqual([{ kind: 'needs', params: { item: 'edges' } }]);
  });

  test('[V78] another item of which the sheet has no limit', () => {
    const rule = ruleOf(
      'a',
      'cord',
      { all: [cut, { worn: 'lug-depth', op: '>=', percent: 100 }] },
      'replace',
    );
    const readings = [cord(), ...[1, 2, 3].map((n) => read('left.track', 'lug-depth', mm(9), { n }))];
    expect(cordOf([rule], readings).atLeast).toBe('replace');
    expect(cordOf([rule], readings, { sheet: sheetOf([]) }).open).toEqual([
      { kind: 'needs', params: { item: 'lug-depth' } },
    ]);
  });

  test('[V79] a limit that the rule asks for and the sheet does not have', () => {
    const rule = (percent: number) =>
      ruleOf('a', 'lug-depth', { worn: 'lug-depth', op: '>=', percent, of: 'destruction' });
    const readings = [1, 2, 3].map((n) => read('left.track', 'lug-depth', mm(9), { n }));
    const open = (more = {}) =>
      outcomeAt(scored([rule(100)], readings, more), 'left.track', 'lug-depth').open;
    expect(open()).toEqual([{ kind: 'no-limit', params: { means: 'destruction' } }]);
    expect(open({ sheet: sheetOf([]) })).toEqual([{ kind: 'no-limit', params: { sheet: 'made up' } }]);
    expect(
      open({
        sheet: sheetOf([
          entryOf('lug-depth', 20, [limitAt(10), limitAt(5, { means: 'destruction', hundred: false })]),
        ]),
      }),
    ).toEqual([]);
  });

  test('[V80] how many, or over how much, where the rule asks and nobody said', () => {
    const many = ruleOf('a', 'lug-damage', { count: 'lug-damage', atLeast: 'torn-out', op: '>=', value: 6 });
    const over = ruleOf('b', 'roller-path', {
      share: 'roller-path',
      atLeast: 'core-exposed',
      op: '>',
      value: 0.5,
    });
    const open = (id: string, what: PlacedReading['reading']['what']) =>
      openKindsOf(outcomeAt(scored([many, over], [read('left.track', id, what)]), 'left.track', id));
    expect(open('lug-damage', finding('torn-out'))).toEqual(['not-counted']);
    expect(open('lug-damage', finding('torn-out', { count: 2 }))).toEqual([]);
    expect(open('lug-damage', finding('chunked'))).toEqual([]);
    expect(open('roller-path', finding('core-exposed'))).toEqual(['not-counted']);
    expect(open('roller-path', finding('core-exposed', { share: 0.2 }))).toEqual([]);
  });

  test('[V81] not the parts that are open themselves', () => {
    const rule = ruleOf('a', 'roller-leak', { count: 'roller-leak', atLeast: 'weeping', op: '>=', value: 2 });
    const walk = scored([rule], [read('left.bottom-roller.1', 'roller-leak', finding('weeping'))]);
    expect(openKindsOf(outcomeAt(walk, 'left.bottom-roller.1', 'roller-leak'))).toEqual([]);
    expect(openKindsOf(outcomeAt(walk, 'left.bottom-roller.2', 'roller-leak'))).toEqual(['not-read']);
  });

  test('[V82] an age that nobody knows is named by no item', () => {
    const rule = ruleOf('a', 'cord', { age: 'track', op: '>=', years: 8 });
    expect(cordOf([rule], [cord()]).open).toEqual([]);
    expect(cordOf([rule], [cord()], { ageYears: { left: 8 } }).atLeast).toBe('repair');
  });
});

describe('[N4] notes', () => {
  const lug = [1, 2, 3].map((n) => read('left.track', 'lug-depth', mm(12), { n }));
  const notesWith = (more: Parameters<typeof inputOf>[0], rules: Rule[] = []) =>
    outcomeAt(scored(rules, lug, more), 'left.track', 'lug-depth').notes;

  test('[V83] none for what is entered and clear', () => {
    expect(notesWith({})).toEqual([]);
  });

  test('[V84] a verdict that leans on an estimate says so', () => {
    const soft = { mark: 'estimate' as const, text: '' };
    const entry = entryOf('lug-depth', 20, [limitAt(10, { source: soft })]);
    expect(notesWith({ sheet: sheetOf([entry]) })).toEqual([
      { kind: 'estimate', params: { newMm: 20, limitMm: 10 } },
    ]);
  });

  test('[V85] a print that contradicts itself says so, of a size and of sag', () => {
    const entry = entryOf('lug-depth', 20, [limitAt(10, { also: { at: 0.5, unit: 'in' } })]);
    expect(notesWith({ sheet: sheetOf([entry]) })).toEqual([{ kind: 'print-contradicts', params: {} }]);
    const twice = sheetOf([], [bandOf(10, 20, { also: { low: 0.4, high: 0.6, unit: 'in' } })]);
    const walk = scored([], [read('left.track', 'sag', sag(12))], { sheet: twice });
    expect(outcomeAt(walk, 'left.track', 'sag').notes).toEqual([{ kind: 'print-contradicts', params: {} }]);
  });

  test('[V86] a load that was taken for the strictest says so', () => {
    const entry = entryOf('lug-depth', 20, [limitAt(10, { loads: ['heavy'] })]);
    expect(notesWith({ sheet: sheetOf([entry]) })).toEqual([
      { kind: 'load-assumed', params: { limitMm: 10 } },
    ]);
    expect(notesWith({ sheet: sheetOf([entry]), walk: walkOf({ load: 'heavy' }) })).toEqual([]);
  });

  test('[V87] a gap between two bands of a print says so, where its rule fired', () => {
    const gap = (percent: number) => [
      ruleOf('a', 'lug-depth', { worn: 'lug-depth', op: '>=', percent }, 'recheck', 'work', { gap: true }),
    ];
    expect(notesWith({}, gap(50))).toEqual([{ kind: 'band-gap', params: {} }]);
    expect(notesWith({}, gap(90))).toEqual([]);
    const waiting = ruleOf('a', 'lug-depth', edgesCut, 'recheck', 'work', { gap: true });
    expect(notesWith({}, [waiting])).toEqual([]);
    expect(notesWith({}, [ruleOf('a', 'lug-depth', { worn: 'lug-depth', op: '>=', percent: 50 })])).toEqual(
      [],
    );
  });
});

describe('[N4] what could park the machine', () => {
  test('[V88] by its nature, or because a rule of the set could stop it', () => {
    const canPark = (rules: Rule[], id: string) => outcomeAt(scored(rules, []), 'left.track', id).canPark;
    expect(canPark([], 'cord')).toBe(true);
    expect(canPark([], 'edges')).toBe(false);
    expect(canPark([ruleOf('a', 'edges', edgesCut, 'repair', 'move-only')], 'edges')).toBe(true);
    expect(canPark([ruleOf('a', 'cord', edgesCut, 'repair', 'move-only')], 'edges')).toBe(false);
    expect(canPark([ruleOf('a', 'edges', edgesCut, 'replace', 'light-work')], 'edges')).toBe(false);
  });
});

test('[V89] a walk under no rules, sheets and readings is open and nothing more', () => {
  const { outcomes, verdict } = score(inputOf());
  expect(verdict).toMatchObject({ atLeast: 'run', meanwhile: 'work', settled: false, drivers: [] });
  expect(outcomes.every(({ open, reasons }) => open.length === 1 && reasons.length === 0)).toBe(true);
});
