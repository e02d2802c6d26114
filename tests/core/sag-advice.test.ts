import { describe, expect, test } from 'vitest';
import type { SagSpec } from '../../src/core/limits.ts';
import { assert } from '../../src/core/result.ts';
import { judgeSag } from '../../src/core/sag.ts';
import { sagAdvice } from '../../src/core/sag-advice.ts';
import { bandOf, sag, sheetOf } from './made.ts';

function advice(spec: SagSpec, ...reading: Parameters<typeof sag>) {
  const judged = judgeSag(sheetOf([], [spec]), sag(...reading));
  assert(judged.kind === 'compared', 'the reading can be compared');
  return sagAdvice(judged);
}

describe('[N5] what sag says of tension and idler travel', () => {
  test('[G40] tension goes by the inverse of sag, against the middle of the band', () => {
    expect(advice(bandOf(20, 40), 15)).toEqual({ tension: 2 });
    expect(advice(bandOf(20, 40), 60)).toEqual({ tension: 0.5 });
  });

  test('[G41] the idler goes out where the track is loose, in where it is tight, over every span read', () => {
    // 8·s²/(3·L): 2 mm at 30 mm and 0.5 mm at 15 mm over 1.2 m.
    expect(advice(bandOf(20, 40), 15, { spanMm: 1200 })?.idlerTravelMm).toBe(-0.75);
    expect(advice(bandOf(10, 20), 30, { spanMm: 1200 })?.idlerTravelMm).toBe(0.75);
    expect(advice(bandOf(10, 20), [25, 35], { spanMm: 1200 })?.idlerTravelMm).toBe(1.5);
  });

  test('[G42] a distance is taken by what it holds of sag, in the unit of the print', () => {
    const gap = bandOf(2, 4, { method: 'roller-gap', unit: 'in', taut: 1 });
    // 2 in of sag are wanted; the reading of 2 in holds one.
    expect(advice(gap, 50.8, { method: 'roller-gap' })?.tension).toBeCloseTo(2, 9);
  });

  test('[G43] a print that contradicts itself counts by its stricter edges', () => {
    const band = bandOf(20, 40, { also: { low: 0.8, high: 1, unit: 'in' } });
    expect(advice(band, 22.7)?.tension).toBeCloseTo(1, 9);
  });

  test('[G44] what gives no true sag says nothing of either', () => {
    expect(advice(bandOf(20, 40, { method: 'deflection' }), 15, { method: 'deflection' })).toBeUndefined();
    expect(
      advice(bandOf(20, 40, { method: 'frame-to-shoe' }), 15, { method: 'frame-to-shoe' }),
    ).toBeUndefined();
  });

  test('[G45] at or below 5 mm, read or wanted, nothing is said', () => {
    expect([advice(bandOf(20, 40), 5), advice(bandOf(4, 6), 15)]).toEqual([undefined, undefined]);
    expect(advice(bandOf(20, 40), 6)).toEqual({ tension: 5 });
  });
});
