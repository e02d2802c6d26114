/** A point of a picture in its own pixels, x to the right and y down; or of a plane in millimetres. */
export type Mark = readonly [x: number, y: number];

/** A point in millimetres, with its depth where the plane leans. */
export type Spot = readonly [x: number, y: number, z: number];

/** Width and height of a picture in pixels. */
export interface PictureSize {
  readonly width: number;
  readonly height: number;
}

type Row = readonly [number, number, number];
type Matrix = readonly [Row, Row, Row];

/** Twice the signed area of a triangle. */
export const turn = (a: Mark, b: Mark, c: Mark): number =>
  (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);

/**
 * The map from the unit square (0,0), (1,0), (1,1), (0,1) to four corners in a picture, in closed form (P. S.
 * Heckbert, Fundamentals of Texture Mapping and Image Warping, 1989, section 2.2.3).
 */
function squareTo([p, q, r, s]: readonly [Mark, Mark, Mark, Mark]): Matrix {
  const [dx1, dy1] = [q[0] - r[0], q[1] - r[1]];
  const [dx2, dy2] = [s[0] - r[0], s[1] - r[1]];
  const [sx, sy] = [p[0] - q[0] + r[0] - s[0], p[1] - q[1] + r[1] - s[1]];
  const by = dx1 * dy2 - dx2 * dy1;
  const [g, h] = [(sx * dy2 - dx2 * sy) / by, (dx1 * sy - sx * dy1) / by];
  return [
    [q[0] - p[0] + g * q[0], s[0] - p[0] + h * s[0], p[0]],
    [q[1] - p[1] + g * q[1], s[1] - p[1] + h * s[1], p[1]],
    [g, h, 1],
  ];
}

const cross = (a: Row, b: Row): Row => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
const dot = (a: Row, b: Row): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const column = (m: Matrix, at: 0 | 1 | 2): Row => [m[0][at], m[1][at], m[2][at]];

/** Takes a point of the picture to the plane; `nearness` is 1/depth up to a common factor, 0 on the horizon. */
export type PlaneMap = (mark: Mark) => { readonly spot: Spot; readonly nearness: number };

/**
 * The plane of a rectangle of `width` × `height` mm whose corners were marked one after the other round it, the
 * width first. Exact for a camera without distortion, whatever its focal length and tilt.
 */
export function rectanglePlane(
  corners: readonly [Mark, Mark, Mark, Mark],
  width: number,
  height: number,
): PlaneMap {
  const to = squareTo(corners);
  const [a, b, c] = [column(to, 0), column(to, 1), column(to, 2)];
  // The rows of the inverse, but for a common factor: cross products of the columns.
  const [u, v, w] = [cross(b, c), cross(c, a), cross(a, b)];
  return ([x, y]) => {
    const p: Row = [x, y, 1];
    const by = dot(w, p);
    return {
      spot: [(width * dot(u, p)) / by, (height * dot(v, p)) / by, 0],
      nearness: by / dot(a, cross(b, c)),
    };
  };
}

/** Focal length of a phone's main camera over the longer side of its picture: 26 mm on 43 mm; estimate. */
const focalShare = 0.76;

/** Focal length in picture pixels as assumed where the picture does not tell; estimate. */
const focalPx = ({ width, height }: PictureSize): number => focalShare * Math.max(width, height);

/**
 * A plane that leans by the slopes `tilt` against the one that faces the camera, with `mmPerPx` in the middle of
 * the picture. With no tilt it is a similarity.
 */
export function facingPlane(size: PictureSize, mmPerPx: number, [tx, ty]: Mark): PlaneMap {
  const f = focalPx(size);
  return ([x, y]) => {
    const [dx, dy] = [x - size.width / 2, y - size.height / 2];
    const nearness = 1 - (tx * dx + ty * dy) / f;
    const scale = mmPerPx / nearness;
    return { spot: [dx * scale, dy * scale, f * scale], nearness };
  };
}

/**
 * How many times longer the first side of a marked rectangle is than the second, as the assumed focal length has
 * it: good enough to tell a sheet that lies across from one that stands.
 */
export function sideRatio(corners: readonly [Mark, Mark, Mark, Mark], size: PictureSize): number {
  const to = squareTo(corners);
  const f = focalPx(size);
  const length = (at: 0 | 1): number => {
    const [x, y, w] = column(to, at);
    const ray: Row = [(x - (size.width / 2) * w) / f, (y - (size.height / 2) * w) / f, w];
    return Math.sqrt(dot(ray, ray));
  };
  return length(0) / length(1);
}
