import type { ComponentChildren, JSX } from 'preact';
import { drawingTitles, type DrawingId } from '../../words/en/drawings.ts';
import css from '../parts/drawing.module.css';

export type Point = readonly [number, number];

/** The frame of a drawing: 320 units wide, so that a unit is about a pixel on a phone. */
export function Drawing(props: { id: DrawingId; height: number; children: ComponentChildren }): JSX.Element {
  return (
    <svg class={css.drawing} viewBox={`0 0 320 ${props.height}`} role="img">
      <title>{drawingTitles[props.id]}</title>
      {props.children}
    </svg>
  );
}

export type Anchor = 'start' | 'middle' | 'end';

export function Label(props: { at: Point; anchor?: Anchor; mark?: boolean; children: string }): JSX.Element {
  const [x, y] = props.at;
  return (
    <text
      class={`${css.text} ${props.mark ? css.mark : ''}`}
      x={x}
      y={y}
      text-anchor={props.anchor ?? 'middle'}
    >
      {props.children}
    </text>
  );
}

export const path = (points: readonly Point[]): string =>
  points.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${x.toFixed(1)} ${y.toFixed(1)}`).join('');

/** A filled tip at `to`, pointing away from `from`. */
function Tip({ from, to }: { from: Point; to: Point }): JSX.Element {
  const angle = Math.atan2(to[1] - from[1], to[0] - from[0]);
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const barb = (side: number): Point => [to[0] - 8 * cos - side * sin, to[1] - 8 * sin + side * cos];
  return <path class={css.solid} d={`${path([to, barb(4), barb(-4)])}Z`} stroke="none" />;
}

export function Arrow(props: { from: Point; to: Point }): JSX.Element {
  return (
    <g class={css.mark}>
      <path d={path([props.from, props.to])} />
      <Tip {...props} />
    </g>
  );
}

/** What is measured: a line between its two ends, in the accent colour, with its label. */
export function Measure(props: {
  from: Point;
  to: Point;
  label?: string;
  at?: Point;
  anchor?: Anchor;
}): JSX.Element {
  const { from, to, label, at } = props;
  const isShort = Math.hypot(to[0] - from[0], to[1] - from[1]) < 22;
  return (
    <g class={css.mark}>
      <path d={path([from, to])} />
      {!isShort && <Tip from={to} to={from} />}
      {!isShort && <Tip from={from} to={to} />}
      {isShort && <ShortEnds from={from} to={to} />}
      {label !== undefined && at && (
        <Label at={at} anchor={props.anchor ?? 'start'} mark>
          {label}
        </Label>
      )}
    </g>
  );
}

/** Between ends too close for tips inside, the tips point at them from outside. */
function ShortEnds({ from, to }: { from: Point; to: Point }): JSX.Element {
  const size = Math.hypot(to[0] - from[0], to[1] - from[1]) || 1;
  const [dx, dy] = [((to[0] - from[0]) / size) * 16, ((to[1] - from[1]) / size) * 16];
  const [before, after]: readonly [Point, Point] = [
    [from[0] - dx, from[1] - dy],
    [to[0] + dx, to[1] + dy],
  ];
  return (
    <>
      <path d={path([before, after])} />
      <Tip from={before} to={from} />
      <Tip from={after} to={to} />
    </>
  );
}

/** Ties a label to what it names. */
export function Leader(props: { from: Point; to: Point }): JSX.Element {
  return (
    <g>
      <path class={css.faint} d={path([props.from, props.to])} />
      <circle class={css.solid} cx={props.to[0]} cy={props.to[1]} r={2.5} stroke="none" />
    </g>
  );
}

/** Something that must not be: a cross. */
export function Cross({ at, size = 9 }: { at: Point; size?: number }): JSX.Element {
  const [x, y] = at;
  return (
    <g class={css.mark} stroke-width={3.5}>
      <path
        d={`M${x - size} ${y - size}L${x + size} ${y + size}M${x + size} ${y - size}L${x - size} ${y + size}`}
      />
    </g>
  );
}

export function Ground({ y, from = 4, to = 316 }: { y: number; from?: number; to?: number }): JSX.Element {
  const strokes = Array.from({ length: Math.floor((to - from) / 16) }, (_, i) => from + 12 + i * 16);
  return (
    <g class={css.faint}>
      <path d={`M${from} ${y}H${to}${strokes.map((x) => `M${x} ${y}l-7 7`).join('')}`} />
    </g>
  );
}
