/** A line drawn without lifting: x, y, x, y, … as shares of the pad's width. */
export type Stroke = readonly number[];

/** How high the pad is for its width. */
export const padRatio = 0.45;

export const mostStrokes = 200;
export const mostNumbersAStroke = 2000;
/** Of all strokes together: about 28 kB as text, so that a person's record stays well below the 64 kB of a version. */
export const mostNumbers = 4000;

/** Half a pixel on the narrowest phone: what is nearer to a straight line than this nobody sees. */
const finest = 0.0015;

/** Ten thousandths of the width are finer than any screen. */
const rounded = (share: number): number => Math.round(share * 10_000) / 10_000;

const pointAt = (stroke: Stroke, at: number): readonly [x: number, y: number] => [
  stroke[2 * at] ?? 0,
  stroke[2 * at + 1] ?? 0,
];

/** How far a point lies from the straight line between two others; from the first where both are one. */
function distance(stroke: Stroke, at: number, from: number, to: number): number {
  const [x, y] = pointAt(stroke, at);
  const [fromX, fromY] = pointAt(stroke, from);
  const [toX, toY] = pointAt(stroke, to);
  const [alongX, alongY] = [toX - fromX, toY - fromY];
  const length2 = alongX * alongX + alongY * alongY;
  const share = length2 === 0 ? 0 : ((x - fromX) * alongX + (y - fromY) * alongY) / length2;
  const near = Math.min(1, Math.max(0, share));
  return Math.hypot(x - fromX - near * alongX, y - fromY - near * alongY);
}

/** The points that a line needs so that no other lies further off than `tolerance` (Douglas and Peucker, 1973). */
function thinned(stroke: Stroke, tolerance: number): Stroke {
  const last = stroke.length / 2 - 1;
  const kept = new Set([0, last]);
  const spans: (readonly [from: number, to: number])[] = [[0, last]];
  for (let span = spans.pop(); span; span = spans.pop()) {
    const [from, to] = span;
    let [furthest, off] = [from, tolerance];
    for (let at = from + 1; at < to; at += 1) {
      const away = distance(stroke, at, from, to);
      if (away > off) [furthest, off] = [at, away];
    }
    if (furthest === from) continue;
    kept.add(furthest);
    spans.push([from, furthest], [furthest, to]);
  }
  return [...kept].sort((a, b) => a - b).flatMap((at) => pointAt(stroke, at).map(rounded));
}

const total = (strokes: readonly Stroke[]): number => strokes.reduce((sum, { length }) => sum + length, 0);

/** A drawing that a record can hold: as fine as half a pixel, and coarser only where it is longer than any signature. */
export function tidied(strokes: readonly Stroke[]): readonly Stroke[] {
  let thin: readonly Stroke[] = strokes.slice(0, mostStrokes);
  for (let tolerance = finest; ; tolerance *= 2) {
    const off = tolerance;
    thin = thin.map((stroke) => thinned(stroke, off));
    if (total(thin) <= mostNumbers && thin.every(({ length }) => length <= mostNumbersAStroke)) return thin;
  }
}
