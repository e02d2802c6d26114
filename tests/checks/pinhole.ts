import type { Mark, PictureSize } from '../../src/core/photo-plane.ts';
import type { Random } from './random.ts';

/** The picture that the phone keeps: its longer side as after shrinking. */
export const pictureSize: PictureSize = { width: 2048, height: 1536 };

/** A pinhole camera over a plane: where it is and how it is turned, in mm, radians and pixels. */
export interface Camera {
  readonly focalPx: number;
  readonly distanceMm: number;
  /** Slopes of the plane against the one that faces the camera. */
  readonly slope: Mark;
  readonly roll: number;
  /** Where the plane's own zero stands in the picture, from its middle. */
  readonly pan: Mark;
}

type Three = readonly [number, number, number];
const scaled = ([x, y, z]: Three, by: number): Three => [x * by, y * by, z * by];
const sum = (a: Three, b: Three): Three => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
const dot = (a: Three, b: Three): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const unit = (a: Three): Three => scaled(a, 1 / Math.sqrt(dot(a, a)));
const crossed = (a: Three, b: Three): Three => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];

/** The plane as the camera has it: where its zero is, and its two axes. Written with rays, not with homographies. */
function planeOf({ focalPx, distanceMm, slope, roll, pan }: Camera): readonly [Three, Three, Three] {
  const normal = unit([slope[0], slope[1], -1]);
  const across = unit(sum([1, 0, 0], scaled(normal, -normal[0])));
  const down = crossed(across, normal);
  const [c, s] = [Math.cos(roll), Math.sin(roll)];
  const x = sum(scaled(across, c), scaled(down, -s));
  const y = sum(scaled(across, s), scaled(down, c));
  const zero: Three = scaled([pan[0] / focalPx, pan[1] / focalPx, 1], distanceMm);
  return [zero, x, y];
}

/** Where a point of the plane, in mm, is seen. */
export function seenAt(camera: Camera, [u, v]: Mark): Mark {
  const [zero, x, y] = planeOf(camera);
  const at = sum(zero, sum(scaled(x, u), scaled(y, v)));
  const by = camera.focalPx / at[2];
  return [at[0] * by + pictureSize.width / 2, at[1] * by + pictureSize.height / 2];
}

/** From a pixel to the point of the plane, in mm, that it looks at. */
export function looking(camera: Camera): (px: number, py: number) => Mark {
  const [zero, x, y] = planeOf(camera);
  const normal = crossed(x, y);
  const height = dot(zero, normal);
  return (px, py) => {
    const ray: Three = [px - pictureSize.width / 2, py - pictureSize.height / 2, camera.focalPx];
    const hit = sum(scaled(ray, height / dot(ray, normal)), scaled(zero, -1));
    return [dot(hit, x), dot(hit, y)];
  };
}

/**
 * Renders the part of the picture around a target, a dark disc of `radius` mm on white with four rays for each
 * pixel, and finds the disc's middle again as the darkness's centre of gravity, to the pixel as a person sees it.
 */
function foundIn(camera: Camera, target: Mark, radius: number): Mark {
  const near = seenAt(camera, target).map(Math.round);
  const half = 8;
  const lookAt = looking(camera);
  const side = 2 * half + 1;
  const pixels = new Uint8Array(side * side).fill(255);
  for (let at = 0; at < pixels.length; at += 1) {
    const [x, y] = [(near[0] ?? 0) - half + (at % side), (near[1] ?? 0) - half + Math.floor(at / side)];
    const dark = [-0.25, 0.25].flatMap((dx) =>
      [-0.25, 0.25].filter((dy) => {
        const [u, v] = lookAt(x + dx, y + dy);
        return (u - target[0]) ** 2 + (v - target[1]) ** 2 < radius * radius;
      }),
    ).length;
    pixels[at] = 255 - Math.round((dark * 225) / 4);
  }
  let [weight, sx, sy] = [0, 0, 0];
  pixels.forEach((value, at) => {
    weight += 255 - value;
    sx += (255 - value) * (at % side);
    sy += (255 - value) * Math.floor(at / side);
  });
  return [Math.round((near[0] ?? 0) - half + sx / weight), Math.round((near[1] ?? 0) - half + sy / weight)];
}

/** Standard deviation of a person's hand in picture pixels, each way; the rounding to a pixel comes on top. */
export const handSd = 1.2;

/** The deviation that is stated for a mark: the hand and 1/√12 of a pixel. */
export const statedSd = Math.sqrt(handSd * handSd + 1 / 12);

/** Targets of a plane, rendered, found to the pixel, and marked with a hand's error. */
export function marked(camera: Camera, targets: readonly Mark[], random: Random): readonly Mark[] {
  // About four pixels across half: small enough that its middle is seen where the middle is.
  const radius = (4 * camera.distanceMm) / camera.focalPx;
  return targets.map((target) => {
    const [x, y] = foundIn(camera, target, radius);
    return [x + handSd * random.normal(), y + handSd * random.normal()];
  });
}

/** Evenly between two values. */
export const between = (random: Random, from: number, to: number): number =>
  from + (to - from) * random.uniform();

/** A camera that a hand holds: `distanceMm` away, the plane leaning by a slope towards any side. */
export function heldCamera(random: Random, distanceMm: number, slope: Mark): Camera {
  return {
    // 24 to 28 mm on 43 mm, over the longer side.
    focalPx: between(random, 0.7, 0.82) * pictureSize.width,
    distanceMm,
    slope,
    roll: between(random, 0, 2 * Math.PI),
    pan: [between(random, -60, 60), between(random, -60, 60)],
  };
}
