import { expect, test } from 'vitest';
import { lastSeal } from '../../../src/app/sealing/last-seal.ts';
import type { ReadSeal } from '../../../src/seal/seals.ts';

const seal = (hash: string, utc: string, previous?: string): ReadSeal =>
  ({ hash, payload: { sealedAt: { utc }, ...(previous !== undefined && { previous }) } }) as ReadSeal;

const cases: readonly (readonly [string, ReadSeal[], string | undefined])[] = [
  ['of none there is none', [], undefined],
  ['of a chain its end', [seal('b', '2', 'a'), seal('a', '1')], 'b'],
  ['of a chain its end, although the clock was put back', [seal('a', '9'), seal('b', '2', 'a')], 'b'],
  ['of a fork the newer end', [seal('a', '1'), seal('b', '2', 'a'), seal('c', '3', 'a')], 'c'],
  ['one whose forerunner is elsewhere', [seal('b', '2', 'a')], 'b'],
];

test.each(cases)('[SG15] the seal before the next one: %s', (_name, seals, last) => {
  expect(lastSeal(seals)?.hash).toBe(last);
});
