import { describe, expect, test } from 'vitest';
import { parseTrackSize } from '../../src/core/track-size.ts';

// Sizes: How to measure rubber tracks, Imara Engineering Supplies (n.d.); Rubber track size,
// rubbertrackscanada.com. The loop is arithmetic, pitch × links.
describe('rubber track sizes', () => {
  test.each([
    ['CV-01', '300 × 52.5 × 84', 4410],
    ['CV-02', '450 × 86 × 56', 4816],
    ['CV-02', '400x86x52', 4472],
  ])('%s: the loop of %s is %d mm', (_cv, text, loopMm) => {
    expect(parseTrackSize(text)?.loopMm).toBe(loopMm);
  });

  test.each(['', '300', '300x52.5', '300x52.5x0', 'wide', '300x52.5x8400'])('[L30] %j is no size', (text) => {
    expect(parseTrackSize(text)).toBeUndefined();
  });

  test('[L31] a suffix and a comma are read as moulded', () => {
    expect(parseTrackSize('300x52,5Nx84 K')).toEqual({
      widthMm: 300,
      pitchMm: 52.5,
      links: 84,
      loopMm: 4410,
    });
  });
});
