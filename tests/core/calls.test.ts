import { describe, expect, test } from 'vitest';
import { callRank, calls, meanwhileRank, meanwhiles, stricter, worseCall } from '../../src/core/calls.ts';

describe('[N4] calls', () => {
  test('[V1] run < recheck < adjust < repair < replace < park', () => {
    expect([...calls].sort((a, b) => callRank(a) - callRank(b))).toEqual([
      'run',
      'recheck',
      'adjust',
      'repair',
      'replace',
      'park',
    ]);
  });

  test('[V2] work < light work < move only < nothing', () => {
    expect([...meanwhiles].sort((a, b) => meanwhileRank(a) - meanwhileRank(b))).toEqual([
      'work',
      'light-work',
      'move-only',
      'nothing',
    ]);
  });

  test('[V3] of two the later in the order counts, whichever comes first', () => {
    for (const [i, a] of calls.entries())
      for (const [j, b] of calls.entries()) expect(worseCall(a, b)).toBe(calls[Math.max(i, j)]);
    for (const [i, a] of meanwhiles.entries())
      for (const [j, b] of meanwhiles.entries()) expect(stricter(a, b)).toBe(meanwhiles[Math.max(i, j)]);
  });
});
