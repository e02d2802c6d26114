import { describe, expect, test } from 'vitest';
import type { Photo } from '../../src/core/photo.ts';
import type { RentalInput } from '../../src/core/rental-input.ts';
import { pairOf } from '../../src/core/rental-pairs.ts';
import { placeSchema } from '../../src/core/keys.ts';
import { hireOf } from './rental-made.ts';

const track = placeSchema.parse('left.track');

const photo = (sha256: string, more: Partial<Photo>): RentalInput['returned']['photos'][number] => ({
  sha256,
  photo: {
    v: 1,
    type: 'image/jpeg',
    bytes: 1,
    width: 1,
    height: 1,
    original: { sha256, bytes: 1 },
    shows: [{ place: track, item: 'lug-depth' }],
    from: 'camera',
    ...more,
  },
});

type Photos = RentalInput['returned']['photos'];

function pair(before: Photos, after: Photos) {
  const { handOut, returned, contract } = hireOf([], []);
  const then = handOut && { ...handOut, photos: before };
  return pairOf({ contract, handOut: then, returned: { ...returned, photos: after } }, track, 'lug-depth');
}

describe('photo pairs', () => {
  const [one, two] = [{ shot: 'left.track.lug-depth.s1' }, { shot: 'left.track.lug-depth.s2' }];

  test('[RW16] beside the photo of a mark stands the hand-out’s of the same mark, whichever is later', () => {
    const before = [photo('a1', one), photo('a2', two)];
    expect(pair(before, [photo('b2', two), photo('b1', one)])).toEqual({ before: 'a1', after: 'b1' });
    expect(pair(before, [photo('b1', one), photo('b2', two)])).toEqual({ before: 'a2', after: 'b2' });
  });

  test('[RW16] a photo that shows the item comes before one of the sequence that shows the place alone', () => {
    const place = photo('a1', { ...one, shows: [{ place: track }] });
    expect(pair([photo('a2', {}), place], [photo('b1', one)])).toEqual({ before: 'a2', after: 'b1' });
    expect(pair([], [photo('b1', one)])).toEqual({ before: undefined, after: 'b1' });
  });
});
