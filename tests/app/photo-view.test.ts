import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { groupsOf, inOrder, toggled, united } from '../../src/app/photos/photo-groups.ts';
import { moved, wholeView, zoomed, type View } from '../../src/app/photos/zoom.ts';
import type { WalkPhoto } from '../../src/app/photos/walk-photos.ts';
import { makeKey, makePlace, type Id, type Place } from '../../src/core/keys.ts';
import { mostShown, type Shown } from '../../src/core/photo.ts';

const frame = { width: 360, height: 480 };
const amount = fc.double({ min: -400, max: 400, noNaN: true });
const factor = fc.double({ min: 0.2, max: 5, noNaN: true });
const acts = fc.array(fc.tuple(factor, amount, amount), { maxLength: 20 });

const after = (steps: readonly (readonly [number, number, number])[]): View =>
  steps.reduce<View>(
    (view, [by, x, y]) => moved(zoomed(view, by, frame, { x: x / 3, y: y / 3 }), x, y, frame),
    wholeView,
  );

describe('a picture in its frame', () => {
  test('[PV10] it is never smaller than whole, and never leaves the frame bare', () => {
    fc.assert(
      fc.property(acts, (steps) => {
        const { scale, x, y } = after(steps);
        expect(scale).toBeGreaterThanOrEqual(1);
        expect(Math.abs(x)).toBeLessThanOrEqual((frame.width * (scale - 1)) / 2 + 1e-6);
        expect(Math.abs(y)).toBeLessThanOrEqual((frame.height * (scale - 1)) / 2 + 1e-6);
      }),
    );
  });

  test('[PV11] what is under the finger stays under it while it grows', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 3, noNaN: true }),
        fc.double({ min: -180, max: 180, noNaN: true }),
        fc.double({ min: -240, max: 240, noNaN: true }),
        (by, x, y) => {
          const view = zoomed(wholeView, by, frame, { x, y });
          expect((x - view.x) / view.scale).toBeCloseTo(x, 6);
          expect((y - view.y) / view.scale).toBeCloseTo(y, 6);
        },
      ),
    );
  });
});

const places: readonly Place[] = [1, 2, 3, 4].map((number) =>
  makePlace({ side: 'left', component: 'bottom-roller', number }),
);
const tie: fc.Arbitrary<Shown> = fc
  .tuple(fc.constantFrom(...places), fc.constantFrom(undefined, 'oil-leak', 'flat-spot'))
  .map(([place, item]) => ({ place, ...(item !== undefined && { item }) }));
const ties = fc.array(tie, { maxLength: 6 }).map((all) => united([], all));

const photoOf = (shows: readonly Shown[], at: number): WalkPhoto => {
  const sha256 = at.toString(16).padStart(64, '0');
  const key = makeKey({ kind: 'photo', walk: 'w' as Id, hash: sha256 });
  const original = { sha256, bytes: 1 };
  const photo = {
    v: 1,
    type: 'image/jpeg',
    bytes: 1,
    width: 4,
    height: 3,
    original,
    from: 'camera',
  } as const;
  return { key, sha256, photo: { ...photo, shows: [...shows] } };
};

describe('what pictures show', () => {
  test('[PV12] each picture stands at every place it shows, and comes once in the order', () => {
    fc.assert(
      fc.property(fc.array(ties, { maxLength: 12 }), (all) => {
        const photos = all.map(photoOf);
        const groups = groupsOf(photos, places.slice(0, 2));
        for (const each of photos) {
          const wanted = Math.max(1, new Set(each.photo.shows.map(({ place }) => place)).size);
          expect(groups.filter((group) => group.photos.includes(each))).toHaveLength(wanted);
        }
        expect(inOrder(groups)).toHaveLength(photos.length);
        expect(new Set(inOrder(groups))).toEqual(new Set(photos));
      }),
    );
  });

  test('[PV13] a tie put twice is as before, and never more are kept than a record may hold', () => {
    fc.assert(
      fc.property(ties, tie, (shows, one) => {
        const twice = toggled(toggled(shows, one), one);
        expect(new Set(twice.map((each) => JSON.stringify(each)))).toEqual(
          new Set(shows.map((each) => JSON.stringify(each))),
        );
      }),
    );
    const many = Array.from({ length: mostShown + 5 }, (_, at) => ({
      place: makePlace({ side: 'left', component: 'bottom-roller', number: at + 1 }),
    }));
    expect(united([], many)).toHaveLength(mostShown);
  });
});
