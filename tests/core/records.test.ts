import { describe, expect, test } from 'vitest';
import { keySchema } from '../../src/core/keys.ts';
import type { Fault } from '../../src/core/problem.ts';
import { problemOf } from '../../src/core/problem.ts';
import { isReadKind, recordFault } from '../../src/core/records.ts';
import type { RecordValue } from '../../src/core/versions.ts';

const source = { mark: 'entered', text: 'test' };
const rule = {
  id: 'a',
  items: ['cord'],
  when: { unknown: 'cord' },
  call: 'park',
  meanwhile: 'nothing',
  reason: { message: 'a' },
  source,
};
const set = (rules: unknown, more: object = {}): RecordValue => ({
  v: 1,
  language: 1,
  name: 'a',
  covers: {},
  rules,
  ...more,
});
const reading = (what: object): RecordValue => ({ v: 1, what });
const faultOf = (key: string, value: RecordValue): Fault | undefined =>
  recordFault(keySchema.parse(key), value);

const readKinds = ['machine', 'limits', 'rules', 'walk', 'reading', 'work'] as const;

describe('the value of a record that comes in', () => {
  test.each<[string, string, RecordValue, Fault]>([
    [
      'a rule id with a space',
      'rules/a',
      set([{ ...rule, id: 'a b' }]),
      { path: ['rules', 0, 'id'], problem: { kind: 'malformed' } },
    ],
    [
      'a rule of no item',
      'rules/a',
      set([{ ...rule, items: [] }]),
      { path: ['rules', 0, 'items'], problem: { kind: 'fewer', least: 1 } },
    ],
    [
      'too many rules',
      'rules/a',
      set(Array(401).fill(rule)),
      { path: ['rules'], problem: { kind: 'more', most: 400 } },
    ],
    [
      'a call that is none',
      'rules/a',
      set([{ ...rule, call: 'panic' }]),
      {
        path: ['rules', 0, 'call'],
        problem: { kind: 'not-one-of', options: ['run', 'recheck', 'adjust', 'repair', 'replace', 'park'] },
      },
    ],
    [
      'a condition that is none',
      'rules/a',
      set([{ ...rule, when: {} }]),
      { path: ['rules', 0, 'when'], problem: { kind: 'no-alternative' } },
    ],
    [
      'a rule without its reason',
      'rules/a',
      set([{ ...rule, reason: undefined }]),
      { path: ['rules', 0, 'reason'], problem: { kind: 'missing' } },
    ],
    [
      'a rule that is null',
      'rules/a',
      set([null]),
      { path: ['rules', 0], problem: { kind: 'wrong-type', expected: 'object' } },
    ],
    [
      'a long name',
      'rules/a',
      set([], { name: 'x'.repeat(161) }),
      { path: ['name'], problem: { kind: 'longer', most: 160 } },
    ],
    [
      'a share above 1',
      'reading/w/left.track/roller-path/1',
      reading({ kind: 'finding', finding: 'worn', share: 1.5 }),
      { path: ['what', 'share'], problem: { kind: 'above', most: 1 } },
    ],
    [
      'a count below 0',
      'reading/w/left.track/cord/1',
      reading({ kind: 'finding', finding: 'cut', count: -1 }),
      { path: ['what', 'count'], problem: { kind: 'below', least: 0 } },
    ],
    [
      'a kind of reading that is none',
      'reading/w/left.track/cord/1',
      reading({ kind: 'smell' }),
      {
        path: ['what', 'kind'],
        problem: {
          kind: 'not-one-of',
          options: ['length', 'finding', 'crack', 'sag', 'pitch', 'tread', 'pair', 'pass', 'unseen'],
        },
      },
    ],
    [
      'nothing read',
      'reading/w/left.track/cord/1',
      { v: 1 },
      { path: ['what'], problem: { kind: 'missing' } },
    ],
    [
      'another item’s finding',
      'reading/w/left.track/cord/1',
      reading({ kind: 'finding', finding: 'dry' }),
      {
        path: ['what', 'finding'],
        problem: {
          kind: 'not-one-of',
          options: ['none', 'showing', 'cut', 'half-cut', 'rust-under', 'parted'],
        },
      },
    ],
    [
      'a crack where a size is asked',
      'reading/w/left.track/lug-depth/1',
      reading({ kind: 'crack', lengthMm: 1, depthMm: 1, cordVisible: false }),
      { path: ['what', 'kind'], problem: { kind: 'not-one-of', options: ['length', 'unseen'] } },
    ],
    [
      'a finding as a pass',
      'reading/w/left.track/pass-tread/1',
      reading({ kind: 'unseen', why: 'mud' }),
      { path: ['what', 'kind'], problem: { kind: 'not-one-of', options: ['pass'] } },
    ],
    ['a number that is none', 'same/a', { a: Infinity }, { path: [], problem: { kind: 'not-finite' } }],
    ['a function', 'same/a', { a: () => 1 }, { path: [], problem: { kind: 'not-json' } }],
  ])('[F4] %s is a fault', (_, key, value, fault) => {
    expect(faultOf(key, value)).toEqual(fault);
  });

  test.each<[string, string, RecordValue]>([
    ['a rule set', 'rules/a', set([rule])],
    ['a finding', 'reading/w/left.track/cord/1', reading({ kind: 'finding', finding: 'cut' })],
    [
      'a size',
      'reading/w/left.track/lug-depth/1',
      reading({ kind: 'length', mm: 1, typed: '1', unit: 'mm' }),
    ],
    ['what was not seen', 'reading/w/left.track/lug-depth/1', reading({ kind: 'unseen', why: 'mud' })],
    [
      'a pass',
      'reading/w/left.track/pass-tread/1',
      reading({ kind: 'pass', items: [], except: [], seen: 'half' }),
    ],
    [
      'an item of a later build',
      'reading/w/left.track/hover/1',
      reading({ kind: 'finding', finding: 'any' }),
    ],
    ['a later version', 'rules/a', { v: 2 }],
    ['a kind that is not read', 'same/a', { any: ['thing'] }],
  ])('[F4] %s is none', (_, key, value) => {
    expect(faultOf(key, value)).toBeUndefined();
  });

  test('[F4] only the kinds of this build are read', () => {
    expect(
      (
        [...readKinds, 'price', 'rate', 'hold', 'photo', 'person', 'seal', 'contract', 'option'] as const
      ).every(isReadKind),
    ).toBe(true);
    expect((['verdict', 'same'] as const).some(isReadKind)).toBe(false);
  });

  test('[F4] a value refused for no reason is a bug', () => {
    expect(() => problemOf([], {})).toThrow('refused for a reason');
  });
});
