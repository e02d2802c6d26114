import { expect, test } from 'vitest';
import { lastContract, lastHandOut, namedHandOut } from '../../src/core/hire.ts';
import type { Walk } from '../../src/core/walk.ts';
import { walkOf } from './made.ts';
import { contractOf } from './rental-made.ts';

const at = (date: string) => ({ utc: `${date}T08:00:00Z`, offsetMinutes: 0 });

const walk = (key: string, purpose: Walk['purpose'], date: string, more: Partial<Walk> = {}) => ({
  key,
  value: walkOf({ purpose, machine: 'machine/m1', startedAt: at(date), finishedAt: at(date), ...more }),
});

const first = walk('walk/first', 'hand-out', '2026-01-01');
const second = walk('walk/second', 'hand-out', '2026-02-01');
const third = walk('walk/third', 'hand-out', '2026-05-01');
const back = walk('walk/back', 'rental-return', '2026-03-01');
const { finishedAt: _finished, ...begun } = second.value;
const lastOf = (...walks: readonly (typeof back)[]) =>
  lastHandOut({ key: back.key, walk: back.value }, [back, ...walks])?.key;

test.each<[string, readonly (typeof back)[], string | undefined]>([
  ['is the last before the return', [first, second, third], second.key],
  ['is finished', [first, { key: second.key, value: begun }], first.key],
  [
    'is of the same machine',
    [first, { ...second, value: { ...second.value, machine: 'machine/m2' } }],
    first.key,
  ],
  ['is a hand-out', [first, walk('walk/job', 'jobsite', '2026-02-02')], first.key],
  [
    'is not that of another return',
    [first, second, walk('walk/other', 'rental-return', '2026-02-20', { handOut: second.key })],
    first.key,
  ],
  ['may be missing', [third], undefined],
])('[HR1] the hand-out of a return that names none %s', (_rule, walks, expected) => {
  expect(lastOf(...walks)).toBe(expected);
  expect(lastOf(...[...walks].reverse())).toBe(expected);
});

test('[HR2] the contract of a return that names none is the last of its machine that had begun', () => {
  const contract = (key: string, from: string, machine = 'machine/m1') => ({
    key,
    value: contractOf({ machine, from }),
  });
  const all = [
    contract('contract/a', '2026-01-01'),
    contract('contract/b', '2026-03-01'),
    contract('contract/c', '2026-03-02'),
    contract('contract/d', '2026-02-02', 'machine/m2'),
  ];
  expect(lastContract(back.value, all)?.key).toBe('contract/b');
  expect(lastContract(back.value, all.slice(2))).toBeUndefined();
});

test('[HR3] what the return says of its hand-out stands before what its contract says', () => {
  const contract = contractOf({ handOut: 'walk/first' });
  expect(namedHandOut(back.value, contract)).toBe('walk/first');
  expect(namedHandOut({ ...back.value, handOut: '' }, contract)).toBe('');
  expect(namedHandOut(back.value, undefined)).toBeUndefined();
});
