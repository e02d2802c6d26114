import { expect, test } from 'vitest';
import { assert, err, ok, unreachable } from '../../src/core/result.ts';

test('[R95] an answer is good with its value, with none, or an error with its value', () => {
  expect([ok(3), ok(), err('why')]).toEqual([
    { ok: true, value: 3 },
    { ok: true, value: undefined },
    { ok: false, error: 'why' },
  ]);
});

test('[R96] a bug throws and says what does not hold', () => {
  expect(() => assert(1 + 1 === 2, 'sums hold')).not.toThrow();
  expect(() => assert(undefined, 'sums hold')).toThrow('assertion failed: sums hold');
  expect(() => unreachable({ kind: 'other' } as never)).toThrow('unreachable: {"kind":"other"}');
});
