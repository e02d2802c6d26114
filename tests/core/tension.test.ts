import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  catenarySag,
  endAngleDegrees,
  endTension,
  extraLength,
  idlerTravel,
  leastSagMm,
  parabolaSag,
  parabolaTension,
  slackOfLinks,
  tensionRatio,
  travelBetween,
} from '../../src/core/tension.ts';
import { law } from './law.ts';

const positive = (most: number) => fc.double({ min: 0.1, max: most, noNaN: true });

describe('[N5] the hanging span', () => {
  test('[G30] tension and sag of a parabola are each other’s inverse', () => {
    law(
      fc.property(positive(100), positive(10), positive(1), (w, span, s) => {
        expect(parabolaSag(w, span, parabolaTension(w, span, s))).toBeCloseTo(s, 9);
      }),
    );
  });

  test('[G31] a catenary hangs a little lower than its parabola, and as low where it is tight', () => {
    law(
      fc.property(positive(10), positive(10), (w, span) => {
        const tight = 1000 * w * span;
        expect(catenarySag(w, span, w * span)).toBeGreaterThan(parabolaSag(w, span, w * span));
        expect(catenarySag(w, span, tight) / parabolaSag(w, span, tight)).toBeCloseTo(1, 5);
      }),
    );
  });

  test('[G32] the pull at the ends is the horizontal one and half the weight, at its angle', () => {
    expect(endTension(2, 4, 3)).toBe(5);
    expect(endAngleDegrees(2, 4, 4)).toBeCloseTo(45, 9);
  });

  test('[G33] halved sag is twice the tension', () => {
    expect(tensionRatio(30, 15)).toBe(2);
    expect(parabolaTension(1, 1, 15) / parabolaTension(1, 1, 30)).toBe(2);
  });

  test('[G34] the sagged span is 8·s²/(3·L) longer', () => {
    expect(extraLength(1200, 30)).toBe(2);
  });

  test('[G35] the idler takes up half of a slack', () => {
    expect(idlerTravel(slackOfLinks(45, 0.25))).toBe(5.625);
  });

  test('[G36] idler travel between two sags counts the spans that hang', () => {
    expect(travelBetween(30, 15, 1200, 1)).toBe(0.75);
    expect(travelBetween(30, 15, 1200, 2)).toBe(1.5);
    expect(travelBetween(15, 30, 1200, 1)).toBe(-0.75);
  });

  test('[G37] at or below 5 mm of either sag it is not known', () => {
    expect(leastSagMm).toBe(5);
    expect([travelBetween(5, 30, 1200, 1), travelBetween(30, 5, 1200, 1)]).toEqual([undefined, undefined]);
    expect(travelBetween(5.1, 5.2, 1200, 1)).toBeCloseTo(-0.001144, 6);
  });
});
