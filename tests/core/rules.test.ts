import { describe, expect, test } from 'vitest';
import {
  conditionSchema,
  coveredItems,
  isCovered,
  isReadable,
  ruleLanguage,
  ruleSchema,
  ruleSetSchema,
  stoppingItems,
  type Condition,
} from '../../src/core/rules.ts';
import { ruleOf, rulesOf } from './made.ts';

const cut: Condition = { finding: 'cord', is: ['cut'] };

const leaves: readonly Condition[] = [
  { reading: 'crack', field: 'depth', op: '>=', value: 8, unit: 'mm' },
  { reading: 'lug-depth', op: '<', value: 1, unit: 'in/32' },
  { finding: 'cord', is: ['cut', 'parted'] },
  { finding: 'cord', atLeast: 'cut' },
  { count: 'cores', atLeast: 'missing', op: '=', value: 2, neighbours: true },
  { share: 'roller-path', atLeast: 'worn', op: '>', value: 0.5 },
  { worn: 'pitch', op: '<=', percent: 75, of: 'destruction' },
  { sag: 'derailing' },
  { age: 'track', op: '>', years: 8 },
  { track: ['steel', 'steel-pads'] },
  { unknown: 'pitch' },
];

const nested = (levels: number): Condition => (levels === 0 ? cut : { not: nested(levels - 1) });

describe('[N2] the closed language', () => {
  test.each(leaves.map((leaf) => [leaf]))('[R30] %j is a condition', (leaf) => {
    expect(conditionSchema.parse(leaf)).toEqual(leaf);
  });

  test('[R31] all, any and not hold conditions', () => {
    const whole: Condition = { all: [{ any: [...leaves] }, { not: cut }] };
    expect(conditionSchema.parse(whole)).toEqual(whole);
  });

  test.each([
    ['a field of tomorrow', { finding: 'cord', is: ['cut'], often: true }],
    ['a comparison of its own', { reading: 'sag', op: '!=', value: 1, unit: 'mm' }],
    ['an unknown unit', { reading: 'sag', op: '<', value: 1, unit: 'cm' }],
    ['an unknown limit', { worn: 'pitch', op: '<', percent: 1, of: 'hundred' }],
    ['an unknown state of sag', { sag: 'tightish' }],
    ['nothing', {}],
    ['an empty list', { all: [] }],
    ['a list of 31', { any: Array(31).fill(cut) }],
    ['21 findings', { finding: 'cord', is: Array(21).fill('cut') }],
    ['six kinds of track', { track: Array(6).fill('steel') }],
    ['a name of 61 letters', { unknown: 'a'.repeat(61) }],
    ['code', { eval: '1' }],
  ])('[R32] %s is refused', (_, value) => {
    expect(conditionSchema.safeParse(value).success).toBe(false);
  });

  test('[R33] eight levels are read, nine are not, however deep a hostile file nests', () => {
    expect(conditionSchema.safeParse(nested(8)).success).toBe(true);
    expect(conditionSchema.safeParse(nested(9)).success).toBe(false);
    expect(conditionSchema.safeParse(nested(2000)).success).toBe(false);
  });

  test('[R34] lists hold up to thirty, names up to sixty', () => {
    expect(conditionSchema.safeParse({ all: Array(30).fill(cut) }).success).toBe(true);
    expect(conditionSchema.safeParse({ unknown: 'a'.repeat(60) }).success).toBe(true);
    expect(conditionSchema.safeParse({ finding: 'cord', is: Array(20).fill('cut') }).success).toBe(true);
  });
});

describe('[N2] a rule set', () => {
  const rule = ruleOf('cord.cut', 'cord', cut, 'park', 'move-only', { gap: true });

  test('[R35] is read as it is, unknown fields too', () => {
    const set = rulesOf([rule], {
      about: 'made up',
      origin: { key: 'rules/starting', version: '1' },
      version: '2',
    });
    expect(ruleSetSchema.parse({ ...set, tomorrow: [1] })).toEqual({ ...set, tomorrow: [1] });
  });

  test.each([
    ['an id with a space', { id: 'a b' }],
    ['an id of nothing', { id: '' }],
    ['an id of 81 letters', { id: 'a'.repeat(81) }],
    ['no items', { items: [] }],
    ['21 items', { items: Array(21).fill('cord') }],
    ['another call', { call: 'sell' }],
    ['another meanwhile', { meanwhile: 'sometimes' }],
    ['no source', { source: undefined }],
    ['a text of 1001 letters', { reason: { message: 'written', text: 'a'.repeat(1001) } }],
  ])('[R36] a rule with %s is refused', (_, more) => {
    expect(ruleSchema.safeParse({ ...rule, ...more }).success).toBe(false);
  });

  test.each([
    ['another version', { v: 2 }],
    ['half a language', { language: 1.5 }],
    ['401 rules', { rules: Array(401).fill(rule) }],
    ['61 rules that cover one item', { covers: { cord: Array(61).fill('cord.cut') } }],
    ['a name of 161 letters', { name: 'a'.repeat(161) }],
  ])('[R37] a set of %s is refused', (_, more) => {
    expect(ruleSetSchema.safeParse({ ...rulesOf([rule]), ...more }).success).toBe(false);
  });

  test('[R38] covers an item while it holds every rule that it names for it', () => {
    const set = rulesOf([rule, ruleOf('cord.rust', ['cord', 'edges'], cut)], {
      covers: { cord: ['cord.cut', 'cord.rust'], edges: ['cord.rust'], pitch: [] },
    });
    expect([...coveredItems(set)]).toEqual(['cord', 'edges', 'pitch']);
    expect([...coveredItems({ ...set, rules: [rule] })]).toEqual(['pitch']);
    expect([...coveredItems({ ...set, rules: [] })]).toEqual(['pitch']);
    expect([isCovered(set, 'cord'), isCovered(set, 'grouser')]).toEqual([true, false]);
  });

  test('[R39] in a later language is not read and covers nothing', () => {
    const set = rulesOf([rule]);
    const later = { ...set, language: ruleLanguage + 1 };
    expect([isReadable(set), isReadable({ ...set, language: 0 }), isReadable(later)]).toEqual([
      true,
      true,
      false,
    ]);
    expect(coveredItems(later).size).toBe(0);
  });

  test.each([
    ['park', 'work', true],
    ['repair', 'move-only', true],
    ['recheck', 'nothing', true],
    ['replace', 'light-work', false],
    ['run', 'work', false],
  ] as const)('[R40] a rule of %s and %s can stop the machine: %s', (call, meanwhile, stops) => {
    const set = rulesOf([ruleOf('a', ['cord', 'edges'], cut, call, meanwhile), ruleOf('b', 'pitch', cut)]);
    expect([...stoppingItems(set)]).toEqual(stops ? ['cord', 'edges'] : []);
  });
});
