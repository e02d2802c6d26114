import { describe, expect, test } from 'vitest';
import { checkRules, type RulesProblem } from '../../src/core/check-rules.ts';
import type { Condition, Rule, RuleSet } from '../../src/core/rules.ts';
import { builtIn } from '../../src/reference/built-in.ts';
import { rulesProblemLine } from '../../src/words/en/check-lines.ts';
import { knowsMessage } from '../../src/words/en/reasons.ts';

const showing: Condition = { finding: 'cord', is: ['showing'] };
const rule = (more: Partial<Rule> = {}): Rule => ({
  id: 'cord.one',
  items: ['cord'],
  when: showing,
  call: 'replace',
  meanwhile: 'work',
  reason: { message: 'cord.showing' },
  source: { mark: 'entered', text: 'test' },
  ...more,
});
const setOf = (rules: readonly Rule[], more: Partial<RuleSet> = {}): RuleSet => ({
  v: 1,
  language: 1,
  name: 'test',
  covers: { cord: rules.map(({ id }) => id) },
  rules: [...rules],
  ...more,
});

function problemsOf(set: RuleSet): readonly RulesProblem[] {
  const problems = checkRules(set, knowsMessage);
  for (const problem of problems) {
    const line = rulesProblemLine(problem);
    expect(line).toMatch(/^[A-Z].*\.$/);
    expect(line).not.toMatch(/undefined|\[object/);
  }
  return problems;
}

describe('what a rule set contradicts itself in', () => {
  test.each<[string, Condition]>([
    ['a finding', showing],
    ['as severe as a finding', { finding: 'cord', atLeast: 'cut' }],
    ['cord in a crack', { all: [showing, { finding: 'crack', is: ['cord-visible'] }] }],
    ['a length', { any: [showing, { reading: 'crack', field: 'length', op: '>', value: 30, unit: 'mm' }] }],
    ['sag as a length', { any: [showing, { reading: 'sag', op: '>', value: 30, unit: 'mm' }] }],
    ['wear', { any: [showing, { worn: 'lug-depth', op: '>', percent: 100 }] }],
    [
      'counts and shares',
      {
        any: [
          { count: 'cord', atLeast: 'cut', op: '>', value: 2 },
          { share: 'roller-path', atLeast: 'worn', op: '>', value: 0.5 },
        ],
      },
    ],
    [
      'all the rest',
      {
        any: [
          { sag: 'tight' },
          { age: 'track', op: '>', years: 5 },
          { track: ['steel'] },
          { not: { unknown: 'cord' } },
        ],
      },
    ],
  ])('[N2] a rule about %s is sound', (_, when) => {
    expect(problemsOf(setOf([rule({ when })]))).toEqual([]);
  });

  test.each<[string, Partial<Rule>, Partial<RulesProblem>]>([
    [
      'an unknown item',
      { items: ['cord', 'hoverboard'] },
      { kind: 'unknown-item', params: { item: 'hoverboard' }, warns: true },
    ],
    [
      'an unknown item deep in a condition',
      { when: { all: [{ not: { unknown: 'hoverboard' } }] } },
      { kind: 'unknown-item' },
    ],
    [
      'an unknown finding',
      { when: { finding: 'cord', is: ['showing', 'frayed'] } },
      { kind: 'unknown-finding', params: { item: 'cord', finding: 'frayed' }, warns: false },
    ],
    [
      'an unknown finding as the least',
      { when: { finding: 'cord', atLeast: 'frayed' } },
      { kind: 'unknown-finding' },
    ],
    [
      'an unknown finding counted',
      { when: { count: 'cord', atLeast: 'frayed', op: '>', value: 1 } },
      { kind: 'unknown-finding' },
    ],
    [
      'an unknown finding shared',
      { when: { share: 'cord', atLeast: 'frayed', op: '>', value: 1 } },
      { kind: 'unknown-finding' },
    ],
    [
      'no finding at all',
      { when: { finding: 'cord' } },
      { kind: 'wrong-question', params: { item: 'cord' }, warns: false },
    ],
    ['a finding of a size', { when: { finding: 'lug-depth', is: ['low'] } }, { kind: 'wrong-question' }],
    [
      'a size of a finding',
      { when: { reading: 'cord', op: '>', value: 1, unit: 'mm' } },
      { kind: 'wrong-question' },
    ],
    ['wear of a finding', { when: { worn: 'cord', op: '>', percent: 1 } }, { kind: 'wrong-question' }],
    [
      'wear of a crack',
      { when: { worn: 'crack', op: '>', percent: 1 } },
      { kind: 'wrong-question', params: { item: 'crack' } },
    ],
    ['wear of sag', { when: { worn: 'sag', op: '>', percent: 1 } }, { kind: 'wrong-question' }],
    [
      'a track that is none',
      { when: { track: ['steel', 'wood'] } },
      { kind: 'unknown-track', params: { track: 'wood' }, warns: false },
    ],
    ['a reason without its text', { reason: { message: 'written' } }, { kind: 'no-text', warns: false }],
    ['a reason with an empty text', { reason: { message: 'written', text: ' ' } }, { kind: 'no-text' }],
    [
      'a reason that has no sentence',
      { reason: { message: 'cord.frayed' } },
      { kind: 'unknown-message', params: { message: 'cord.frayed' }, warns: true },
    ],
    [
      'a reason named like something every object has',
      { reason: { message: 'constructor' } },
      { kind: 'unknown-message' },
    ],
  ])('[N2] %s is found', (_, more, expected) => {
    expect(problemsOf(setOf([rule({ id: 'fine' }), rule(more)]))).toMatchObject([
      { rule: 'cord.one', ...expected },
    ]);
  });

  test('[N2] a reason with its own text needs no sentence of ours', () => {
    expect(problemsOf(setOf([rule({ reason: { message: 'mine', text: 'Ask the boss.' } })]))).toEqual([]);
  });

  test('[N2] every wrong finding of every rule is named', () => {
    const when: Condition = {
      any: [
        { finding: 'cord', is: ['a', 'b'] },
        { finding: 'edges', atLeast: 'c' },
      ],
    };
    const found = problemsOf(setOf([rule({ when })])).map(({ params }) => params['finding']);
    expect(found).toEqual(['a', 'b', 'c']);
  });

  test('[N2] two rules of one name are found once', () => {
    const set = setOf([rule(), rule(), rule(), rule({ id: 'other' })]);
    expect(problemsOf(set)).toEqual([{ kind: 'duplicate-id', rule: 'cord.one', params: {}, warns: false }]);
  });

  test('[N2] a rule that covers nothing is never needed, which is strange', () => {
    expect(problemsOf(setOf([rule()], { covers: { 'bushing-turned': [] } }))).toMatchObject([
      { kind: 'never-used', rule: 'cord.one', warns: true },
    ]);
  });

  test.each<[string, RuleSet['covers'], Partial<RulesProblem>[]]>([
    [
      'an unknown item',
      { cord: ['cord.one'], hoverboard: ['cord.one'] },
      [{ kind: 'covers-unknown-item', warns: true }, { kind: 'covers-by-other-item' }],
    ],
    [
      'a rule that is not there',
      { cord: ['cord.one', 'gone'] },
      [{ kind: 'covers-unknown-rule', params: { item: 'cord', missing: 'gone' }, warns: false }],
    ],
    [
      'no rule',
      { cord: ['cord.one'], edges: [] },
      [{ kind: 'covers-without-rule', params: { item: 'edges' }, warns: true }],
    ],
    ['no rule for a mere fact', { cord: ['cord.one'], 'bushing-turned': [] }, []],
    [
      'a rule about something else',
      { cord: ['cord.one'], edges: ['cord.one'] },
      [{ kind: 'covers-by-other-item', params: { item: 'edges', other: 'cord.one' }, warns: true }],
    ],
    ['nothing at all', {}, [{ kind: 'never-used' }, { kind: 'covers-nothing', warns: true }]],
  ])('[N4] covering by %s', (_, covers, expected) => {
    expect(problemsOf(setOf([rule()], { covers }))).toMatchObject(expected);
  });

  test('[N4] an item may be covered by a rule that only looks at it', () => {
    const when: Condition = { all: [showing, { finding: 'edges', is: ['cut'] }] };
    expect(
      problemsOf(setOf([rule({ when })], { covers: { cord: ['cord.one'], edges: ['cord.one'] } })),
    ).toEqual([]);
  });

  test('[N2] a set of a later language is not judged', () => {
    const set = setOf([rule({ items: ['hoverboard'] }), rule()], { language: 2 });
    expect(problemsOf(set)).toEqual([{ kind: 'newer-language', params: { language: 2 }, warns: true }]);
  });

  test('[N2] the starting rules have nothing wrong', () => {
    expect(Object.values(builtIn.rules).flatMap(problemsOf)).toEqual([]);
  });
});
