import type { JSX } from 'preact';
import css from '../parts/drawing.module.css';
import { path, type Point } from './drawing.tsx';

export function Wheel({ at, r, hub = 4 }: { at: Point; r: number; hub?: number }): JSX.Element {
  return (
    <g>
      <circle class={css.body} cx={at[0]} cy={at[1]} r={r} />
      <circle class={css.open} cx={at[0]} cy={at[1]} r={hub} />
    </g>
  );
}

const toothTurns = [-0.32, -0.14, 0.14, 0.32] as const;

/** A toothed wheel; `r` is the radius over the tips. */
export function Sprocket({ at, r, teeth = 12 }: { at: Point; r: number; teeth?: number }): JSX.Element {
  const root = r * 0.82;
  const outline = Array.from({ length: teeth }).flatMap((_, tooth) =>
    toothTurns.map((turn, i): Point => {
      const angle = ((tooth + turn) / teeth) * 2 * Math.PI;
      const radius = i === 1 || i === 2 ? r : root;
      return [at[0] + radius * Math.cos(angle), at[1] + radius * Math.sin(angle)];
    }),
  );
  return (
    <g>
      <path class={css.body} d={`${path(outline)}Z`} />
      <circle class={css.open} cx={at[0]} cy={at[1]} r={r * 0.3} />
    </g>
  );
}

/** Heights of a span that hangs between two ends at `y` by `sag`, from left to right. */
export function hanging(from: number, to: number, y: number, sag: number, steps: number): readonly Point[] {
  return Array.from({ length: steps + 1 }, (_, i): Point => {
    const t = i / steps;
    return [from + (to - from) * t, y + 4 * sag * t * (1 - t)];
  });
}

/** Shoes with one grouser each, between neighbouring points; `up` is the side of the grousers. */
export function Shoes({
  points,
  up,
  tall = 11,
}: {
  points: readonly Point[];
  up: 1 | -1;
  tall?: number;
}): JSX.Element {
  const grousers = points.slice(0, -1).map(([x, y], i) => {
    const [nx, ny] = points[i + 1] ?? [x, y];
    const angle = Math.atan2(ny - y, nx - x) - (up * Math.PI) / 2;
    const [mx, my] = [(x + nx) / 2, (y + ny) / 2];
    return path([
      [mx, my],
      [mx + tall * Math.cos(angle), my + tall * Math.sin(angle)],
    ]);
  });
  return (
    <g>
      <path class={css.thick} d={path(points)} />
      <path stroke-width={3.5} d={grousers.join('')} />
    </g>
  );
}

/** A rubber track seen from the side: a band with lugs; `up` is the side of the lugs. */
export function RubberRun({ points, up }: { points: readonly Point[]; up: 1 | -1 }): JSX.Element {
  const lugs = points.slice(0, -1).map(([x, y], i) => {
    const [nx, ny] = points[i + 1] ?? [x, y];
    const out = -up * 8;
    return `${path([
      [x + (nx - x) * 0.2, y + (ny - y) * 0.2 + out / 2],
      [x + (nx - x) * 0.3, y + (ny - y) * 0.3 + out],
      [x + (nx - x) * 0.7, y + (ny - y) * 0.7 + out],
      [x + (nx - x) * 0.8, y + (ny - y) * 0.8 + out / 2],
    ])}Z`;
  });
  return (
    <g>
      <path stroke-width={8} d={path(points)} />
      <path class={css.solid} d={lugs.join('')} />
    </g>
  );
}
