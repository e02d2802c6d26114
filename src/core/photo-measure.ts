import type { PhotoEvidence } from './photo-evidence.ts';
import { facingPlane, rectanglePlane, turn } from './photo-plane.ts';
import type { Mark, PictureSize, PlaneMap, Spot } from './photo-plane.ts';
import { err, ok, type Result } from './result.ts';

/** What is measured in a picture: the evidence without its result. */
export type PhotoMarks = Pick<PhotoEvidence, 'scale' | 'measure' | 'marks' | 'uPx'>;

/** Why a picture gives no size. */
export type PhotoDoubt = {
  readonly kind:
    | 'too-few-marks'
    | 'scale-too-small' // shorter in the picture than the marks are sure
    | 'corners-crossed' // the corners do not go round a rectangle
    | 'corners-in-line'
    | 'line-too-short'
    | 'behind-horizon'; // the plane does not reach the mark, or only very far away
};

/** A size in mm with its standard uncertainty, and the half-width of its 95 % interval. */
export interface PhotoSize {
  readonly mm: number;
  readonly uMm: number;
  readonly halfMm: number;
}

/**
 * Slope, each way, by which a plane leans that was meant to face the camera: tan 4°; estimate. So it is nearly
 * always within 10°.
 */
export const tiltSd = 0.07;

/** Fewest standard deviations of a mark that a length in the picture must have: less, and 1/20 of it is chance. */
const fewestSds = 30;
/** Least nearness against the nearest corner: a mark twenty times as far away says nothing. */
const leastNearness = 0.05;
/** 95 % of a normal distribution: the marks are many and known, so no Student factor (JCGM 100:2008, G.1.3). */
const k95 = 1.96;

/**
 * Standard deviation of a mark in picture pixels, each way: one for blur and the pixel itself, and one pixel of the
 * screen for the hand, at `zoom` screen pixels to one of the picture; estimate.
 */
export const markSd = (zoom: number): number => Math.sqrt(1 + 1 / (zoom * zoom));

const squared = (value: number): number => value * value;
const apart = (a: Mark, b: Mark): number => Math.sqrt(squared(a[0] - b[0]) + squared(a[1] - b[1]));

function distance(a: Spot, b: Spot): number {
  return Math.sqrt(squared(b[0] - a[0]) + squared(b[1] - a[1]) + squared(b[2] - a[2]));
}

/** How far a spot is from the line through two others; the sign says on which side, as the camera sees it. */
function fromLine(a: Spot, b: Spot, p: Spot): number {
  const [ux, uy, uz] = [b[0] - a[0], b[1] - a[1], b[2] - a[2]];
  const [vx, vy, vz] = [p[0] - a[0], p[1] - a[1], p[2] - a[2]];
  const [x, y, z] = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
  return (Math.sign(z) * Math.sqrt(x * x + y * y + z * z)) / distance(a, b);
}

/** All that is not sure, in one row: marks of the scale, marks measured, size of the scale, tilt. */
interface Inputs {
  readonly at: readonly number[];
  readonly u: readonly number[];
}

function inputsOf({ scale, marks, uPx }: PhotoMarks): Inputs {
  const places = [...scale.marks, ...marks].flat();
  const sizes = scale.kind === 'length' ? [scale.mm, 0, 0] : scale.mm;
  const us = scale.kind === 'length' ? [scale.uMm, tiltSd, tiltSd] : scale.uMm;
  return { at: [...places, ...sizes], u: [...places.map(() => uPx), ...us] };
}

const markAt = (row: readonly number[], n: number): Mark => [row[2 * n] ?? 0, row[2 * n + 1] ?? 0];

function planeOf({ scale }: PhotoMarks, row: readonly number[], size: PictureSize): PlaneMap {
  const [p, q] = [markAt(row, 0), markAt(row, 1)];
  if (scale.kind === 'rectangle') {
    const [width = 0, height = 0] = row.slice(-2);
    return rectanglePlane([p, q, markAt(row, 2), markAt(row, 3)], width, height);
  }
  const [mm = 0, tx = 0, ty = 0] = row.slice(-3);
  const unscaled = facingPlane(size, 1, [tx, ty]);
  return facingPlane(size, mm / distance(unscaled(p).spot, unscaled(q).spot), [tx, ty]);
}

/** What the marks of a row give, with a sign where it is a distance from a line; of several the mark `only`. */
function valueOf(input: PhotoMarks, row: readonly number[], size: PictureSize, only: number): number {
  const to = planeOf(input, row, size);
  const first = input.scale.marks.length;
  const spot = (n: number): Spot => to(markAt(row, first + n)).spot;
  return input.measure === 'distance' ? distance(spot(0), spot(1)) : fromLine(spot(0), spot(1), spot(only));
}

/** The mark that is farthest from the line. */
function farthest(input: PhotoMarks, row: readonly number[], size: PictureSize): number {
  const far = (n: number): number => Math.abs(valueOf(input, row, size, n));
  return input.marks.map((_, n) => n).reduce((most, n) => (n > 1 && far(n) > far(most) ? n : most), 2);
}

function scaleDoubt({ scale, uPx }: PhotoMarks): PhotoDoubt | undefined {
  const { marks } = scale;
  const sides = marks.map((mark, n) => apart(mark, marks[(n + 1) % marks.length] ?? mark));
  if (Math.min(...sides) < fewestSds * uPx) return { kind: 'scale-too-small' };
  if (scale.kind === 'length') return undefined;
  const corner = (n: number): Mark => scale.marks[n % 4] ?? scale.marks[0];
  const turns = [0, 1, 2, 3].map((n) => turn(corner(n), corner(n + 1), corner(n + 2)));
  const reach = Math.max(...sides);
  if (turns.some((each) => Math.abs(each) < (fewestSds / 2) * uPx * reach))
    return { kind: 'corners-in-line' };
  const side = Math.sign(turns[0] ?? 0);
  return turns.every((each) => Math.sign(each) === side) ? undefined : { kind: 'corners-crossed' };
}

function doubtOf(input: PhotoMarks, row: readonly number[], size: PictureSize): PhotoDoubt | undefined {
  const { marks, measure, scale, uPx } = input;
  const [a, b] = marks;
  if (!a || !b || (measure === 'from-line' && marks.length < 3)) return { kind: 'too-few-marks' };
  const bad = scaleDoubt(input);
  if (bad) return bad;
  if (measure === 'from-line' && apart(a, b) < fewestSds * uPx) return { kind: 'line-too-short' };
  const to = planeOf(input, row, size);
  const nearest = Math.max(...scale.marks.map((mark) => to(mark).nearness));
  const isFar = marks.some((mark) => to(mark).nearness < leastNearness * nearest);
  return isFar ? { kind: 'behind-horizon' } : undefined;
}

/** The row with some of its entries moved by so many of their uncertainties. */
function moved({ at, u }: Inputs, by: readonly (readonly [n: number, sds: number])[]): readonly number[] {
  const row = [...at];
  for (const [n, sds] of by) row[n] = (row[n] ?? 0) + sds * (u[n] ?? 0);
  return row;
}

/** How far, in uncertainties, an input is moved to see what it does. */
const step = 0.25;

/** First-order propagation (JCGM 100:2008, 5.1.2, equation 10) with differences taken as its 5.1.3 note 2 has it. */
function firstOrder(inputs: Inputs, f: (row: readonly number[]) => number): number {
  const change = (n: number): number =>
    (f(moved(inputs, [[n, step]])) - f(moved(inputs, [[n, -step]]))) / (2 * step);
  return inputs.u.reduce((sum, u, n) => (u === 0 ? sum : sum + squared(change(n))), 0);
}

/**
 * What tilt does at second order (JCGM 100:2008, 5.1.2 note): a length that leans is seen shorter by the cosine, which
 * first order does not see. For slopes t with deviation σ the variance is σ⁴·(½·Hxx² + ½·Hyy² + Hxy²).
 */
function secondOrder(inputs: Inputs, f: (row: readonly number[]) => number): number {
  const [x, y] = [inputs.at.length - 2, inputs.at.length - 1];
  const own = (n: number): number =>
    f(moved(inputs, [[n, 1]])) - 2 * f(inputs.at) + f(moved(inputs, [[n, -1]]));
  const both = (sx: number, sy: number): number =>
    f(
      moved(inputs, [
        [x, sx],
        [y, sy],
      ]),
    );
  const mixed = (both(1, 1) - both(1, -1) - both(-1, 1) + both(-1, -1)) / 4;
  return squared(own(x)) / 2 + squared(own(y)) / 2 + squared(mixed);
}

/**
 * Measures in a picture: mm with the standard uncertainty that comes from every mark, from the size of the scale
 * and, for a known length, from a tilt that is not corrected but allowed for (`tiltSd`). It holds for marks in the
 * plane of the scale. A camera without distortion and an uncropped picture are assumed.
 */
export function measurePhoto(input: PhotoMarks, size: PictureSize): Result<PhotoSize, PhotoDoubt> {
  const inputs = inputsOf(input);
  const doubt = doubtOf(input, inputs.at, size);
  if (doubt) return err(doubt);
  const only = input.measure === 'distance' ? 1 : farthest(input, inputs.at, size);
  const f = (row: readonly number[]): number => valueOf(input, row, size, only);
  const leaning = input.scale.kind === 'length' ? secondOrder(inputs, f) : 0;
  const uMm = Math.sqrt(firstOrder(inputs, f) + leaning);
  return ok({ mm: Math.abs(f(inputs.at)), uMm, halfMm: k95 * uMm });
}
