import fc from 'fast-check';
import { expect, test } from 'vitest';
import { mostNumbers, mostNumbersAStroke, mostStrokes, tidied } from '../../../src/app/sealing/strokes.ts';

const share = fc.integer({ min: 0, max: 10_000 }).map((n) => n / 10_000);
const stroke = (most: number) =>
  fc.array(fc.tuple(share, share), { minLength: 1, maxLength: most }).map((points) => points.flat());

/** How far a point lies from a line of several straight pieces. */
function away([x, y]: readonly [number, number], line: readonly number[]): number {
  let least = Infinity;
  for (let at = 0; at < line.length; at += 2) {
    const [ax, ay] = [line[at] ?? 0, line[at + 1] ?? 0];
    const [bx, by] = [line[at + 2] ?? ax, line[at + 3] ?? ay];
    const length2 = (bx - ax) ** 2 + (by - ay) ** 2;
    const t =
      length2 === 0 ? 0 : Math.min(1, Math.max(0, ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / length2));
    least = Math.min(least, Math.hypot(x - ax - t * (bx - ax), y - ay - t * (by - ay)));
  }
  return least;
}

test('[SG1] a drawing of the length of a signature keeps every point within half a pixel', () => {
  fc.assert(
    fc.property(fc.array(stroke(40), { maxLength: 10 }), (strokes) => {
      const tidy = tidied(strokes);
      expect(tidy.length).toBe(strokes.length);
      for (const [n, each] of strokes.entries())
        for (let at = 0; at < each.length; at += 2)
          expect(away([each[at] ?? 0, each[at + 1] ?? 0], tidy[n] ?? [])).toBeLessThanOrEqual(0.0017);
    }),
  );
});

test('[SG2] however much is drawn, the record can hold it', () => {
  const scribble = (n: number): number[] =>
    Array.from({ length: n === 0 ? 9000 : 300 }, (_, at) =>
      at % 2 === 0 ? at / 9000 : Math.abs(Math.sin(at * (n + 3))),
    );
  const tidy = tidied(Array.from({ length: 230 }, (_, n) => scribble(n)));
  expect(tidy.length).toBeLessThanOrEqual(mostStrokes);
  expect(Math.max(...tidy.map(({ length }) => length))).toBeLessThanOrEqual(mostNumbersAStroke);
  expect(tidy.flat().length).toBeLessThanOrEqual(mostNumbers);
  expect(JSON.stringify(tidy).length).toBeLessThan(60_000);
});

test('[SG3] a straight line keeps its two ends, a dot its place', () => {
  const line = Array.from({ length: 100 }, (_, at) => [at / 100, at / 200]).flat();
  expect(tidied([line, [0.5, 0.2], [0.5, 0.2, 0.5, 0.2]])).toEqual([
    [0, 0, 0.99, 0.495],
    [0.5, 0.2],
    [0.5, 0.2, 0.5, 0.2],
  ]);
});
