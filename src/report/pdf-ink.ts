import type { Line } from './pdf-text.ts';

/** Colours as red, green and blue, each 0 to 1: those of the app in daylight. */
export const colours = {
  ink: [0.1, 0.09, 0.07],
  soft: [0.27, 0.247, 0.2],
  line: [0.54, 0.506, 0.44],
  faint: [0.89, 0.863, 0.804],
  accent: [0.06, 0.29, 0.4],
} as const;
export type Colour = keyof typeof colours;

/** A step of a path; lengths are points, from the left and from the top. */
export type Step =
  | readonly ['move' | 'line', number, number]
  | readonly ['curve', number, number, number, number, number, number]
  | readonly ['close'];

/** Something drawn; x and y are points from the left and the top of the piece that it belongs to. */
export type Ink =
  | {
      readonly kind: 'text';
      readonly x: number;
      /** Of the base line. */
      readonly y: number;
      readonly size: number;
      readonly bold: boolean;
      readonly colour: Colour;
      readonly line: Line;
    }
  | {
      readonly kind: 'path';
      readonly steps: readonly Step[];
      readonly fill?: Colour;
      readonly stroke?: Colour;
      readonly width?: number;
      readonly dash?: readonly [number, number];
    }
  | {
      readonly kind: 'image';
      readonly sha256: string;
      readonly x: number;
      readonly y: number;
      readonly width: number;
      readonly height: number;
    };

/** A filled rectangle. */
export const rectangle = (x: number, y: number, width: number, height: number, fill: Colour): Ink => ({
  kind: 'path',
  fill,
  steps: rectangleSteps(x, y, width, height),
});

/** The outline of a rectangle. */
export const rectangleSteps = (x: number, y: number, width: number, height: number): readonly Step[] => [
  ['move', x, y],
  ['line', x + width, y],
  ['line', x + width, y + height],
  ['line', x, y + height],
  ['close'],
];

/** A straight line. */
export const rule = (
  [x1, y1, x2, y2]: readonly [number, number, number, number],
  stroke: Colour,
  width: number,
): Ink => ({
  kind: 'path',
  stroke,
  width,
  steps: [
    ['move', x1, y1],
    ['line', x2, y2],
  ],
});

/** What a circle's quarter needs as a curve: 4/3 (√2 − 1). */
const roundness = 0.5523;

/** A circle. */
export function circleSteps(x: number, y: number, radius: number): readonly Step[] {
  const bend = radius * roundness;
  return [
    ['move', x, y - radius],
    ['curve', x + bend, y - radius, x + radius, y - bend, x + radius, y],
    ['curve', x + radius, y + bend, x + bend, y + radius, x, y + radius],
    ['curve', x - bend, y + radius, x - radius, y + bend, x - radius, y],
    ['curve', x - radius, y - bend, x - bend, y - radius, x, y - radius],
    ['close'],
  ];
}
