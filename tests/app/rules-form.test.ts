import { describe, expect, it } from 'vitest';
import { isCovered, type Condition, type Rule, type RuleSet } from '../../src/core/rules.ts';
import { conditionText } from '../../src/words/en/conditions.ts';
import { makeFormatter } from '../../src/words/formatter.ts';
import {
  changedRule,
  opensWithout,
  rulesForm,
  ruleSetOf,
  thresholdsOf,
} from '../../src/app/data/rules-form.ts';
import { startingRules } from '../../src/reference/rules-starting.ts';

const format = makeFormatter({ locale: 'en', depth: 'mm', length: 'mm', mass: 'kg' });
const set: RuleSet = startingRules;
const ruleNamed = (id: string): Rule => {
  const rule = set.rules.find((each) => each.id === id);
  if (!rule) throw new Error(`no rule ${id}`);
  return rule;
};

describe('the form of a rule set', () => {
  it('[A1] an untouched form gives the set back as it was', () => {
    expect(ruleSetOf(rulesForm(set, undefined), set)).toEqual({ ok: true, value: set });
  });

  it('[A1] numbers that were opened and left alone stay as they are', () => {
    for (const rule of set.rules) {
      const numbers = Object.fromEntries(thresholdsOf(rule.when).map(({ path, text }) => [path, text]));
      expect(changedRule(rule, { numbers })).toEqual(rule);
    }
  });

  it('[A5] a threshold inside a condition is changed where it stands', () => {
    const rule = ruleNamed('crack.repair');
    const [first] = thresholdsOf(rule.when);
    const changed = changedRule(rule, { numbers: { [first?.path ?? '']: '25,5' } });
    expect(changed?.when).toEqual({
      all: [
        { reading: 'crack', field: 'length', op: '>=', value: 25.5, unit: 'mm' },
        { reading: 'crack', field: 'depth', op: '>=', value: 8, unit: 'mm' },
      ],
    });
  });

  it('[A3] a threshold that cannot be read is no rule yet', () => {
    const [first] = thresholdsOf(ruleNamed('crack.repair').when);
    const edits = { 'crack.repair': { numbers: { [first?.path ?? '']: 'thirty' } } };
    expect(ruleSetOf({ ...rulesForm(set, undefined), edits }, set)).toEqual({
      ok: false,
      error: ['crack.repair'],
    });
  });

  it('[A6] a removed rule opens the items that it covered', () => {
    const made = ruleSetOf({ ...rulesForm(set, undefined), removed: ['crack.repair'] }, set);
    expect(opensWithout(set, 'crack.repair')).toEqual(['crack']);
    expect(made.ok && isCovered(made.value, 'crack')).toBe(false);
    expect(made.ok && isCovered(made.value, 'cord')).toBe(true);
  });

  it('[A7] an own reason stands instead of the catalogue’s, and emptied gives it back', () => {
    const rule = ruleNamed('crack.repair');
    const own = changedRule(rule, { reason: ' Seal it today. ' });
    expect(own?.reason).toEqual({ message: 'crack.repair', text: 'Seal it today.' });
    expect(own && changedRule(own, { reason: '' })?.reason).toEqual({ message: 'crack.repair' });
  });
});

describe('a condition in words', () => {
  it('[A8] every starting rule can be read', () => {
    const unreadable = set.rules.filter(({ when }) =>
      /undefined|NaN|newer version|^\s*$/.test(conditionText(when, format)),
    );
    expect(unreadable).toEqual([]);
  });

  const cases: readonly (readonly [Condition, string])[] = [
    [
      { all: [{ sag: 'loose' }, { any: [{ unknown: 'cord' }, { track: ['steel'] }] }] },
      'the sag is too loose and (cord was not read or the track is steel)',
    ],
    [{ not: { worn: 'lug-depth', op: '>', percent: 100 } }, 'not: lug depth is above 100\u00a0% worn'],
    [
      { worn: 'bushing-od', op: '>=', percent: 75, of: 'turn' },
      'bushing diameter is 75\u00a0% or more of the way to the turn limit',
    ],
    [
      { count: 'cores', atLeast: 'missing', op: '>=', value: 2, neighbours: true },
      'cores “one gone” or worse at 2 or more places side by side',
    ],
  ];
  it.each(cases)('[A8] %j reads as a sentence', (condition, text) => {
    expect(conditionText(condition, format)).toBe(text);
  });
});
