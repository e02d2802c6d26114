import type { Call } from '../core/calls.ts';
import { circleSteps, rectangle, rectangleSteps, rule, type Ink, type Step } from './pdf-ink.ts';

/** The shape of each call as in the app, on a square of 24. */
const shapes: Readonly<Record<Call | 'open', readonly Ink[]>> = {
  run: [{ kind: 'path', stroke: 'ink', width: 2.5, steps: circleSteps(12, 12, 8) }],
  recheck: [
    {
      kind: 'path',
      stroke: 'ink',
      width: 2.5,
      // Three quarters of a circle of radius 8 and the two hands of a clock.
      steps: [
        ['move', 12, 4],
        ['curve', 16.4, 4, 20, 7.6, 20, 12],
        ['curve', 20, 16.4, 16.4, 20, 12, 20],
        ['curve', 7.6, 20, 4, 16.4, 4, 12],
        ['move', 12, 7.5],
        ['line', 12, 12],
        ['line', 15.5, 14],
      ],
    },
  ],
  adjust: [filled(['12 3 17 9 7 9', '12 21 17 15 7 15'])],
  repair: [
    {
      kind: 'path',
      stroke: 'ink',
      width: 2.5,
      steps: [...rectangleSteps(4, 4, 16, 16), ['move', 4, 20], ['line', 20, 4]],
    },
  ],
  replace: [rectangle(4, 4, 16, 16, 'ink')],
  park: [rectangle(2, 9, 20, 6, 'ink'), rule([8, 3, 8, 21], 'ink', 3), rule([16, 3, 16, 21], 'ink', 3)],
  open: [{ kind: 'path', stroke: 'ink', width: 2.5, dash: [3.2, 3.08], steps: circleSteps(12, 12, 9) }],
};

function filled(polygons: readonly string[]): Ink {
  const steps = polygons.flatMap((polygon): readonly Step[] => {
    const n = polygon.split(' ').map(Number);
    return [0, 2, 4]
      .map((at): Step => [at === 0 ? 'move' : 'line', n[at] ?? 0, n[at + 1] ?? 0])
      .concat([['close']]);
  });
  return { kind: 'path', fill: 'ink', steps };
}

/** The shape of a call, `size` points wide, its top left corner at x and y. */
export const callShape = (call: Call | 'open', x: number, y: number, size: number): readonly Ink[] =>
  shapes[call].map((ink) => moved(ink, x, y, size / 24));

function moved(ink: Ink, x: number, y: number, scale: number): Ink {
  if (ink.kind !== 'path') return ink;
  const along = (step: Step): Step => {
    const [verb, ...numbers] = step;
    const placed = numbers.map((each, index) => each * scale + (index % 2 === 0 ? x : y));
    return [verb, ...placed] as unknown as Step;
  };
  return { ...ink, width: (ink.width ?? 1) * scale, steps: ink.steps.map(along) };
}

/** How far a bar reaches to the right of its limit, which is at 100 percent. */
const mostPercent = 150;

/** Wear as a length: plain up to the limit, hatched beyond it; open at the end where it goes on. */
export function wearBar(percent: number, x: number, y: number, width: number): readonly Ink[] {
  const height = 7;
  const shown = Number.isNaN(percent) ? 0 : Math.min(Math.max(percent, 0), mostPercent);
  const at = (share: number): number => x + (share * width) / mostPercent;
  const limit = at(100);
  return [
    rule([x, y + height, at(mostPercent), y + height], 'line', 0.5),
    rectangle(x, y, at(Math.min(shown, 100)) - x, height, 'accent'),
    ...(shown > 100 ? hatch(limit, y, at(shown), height, percent > mostPercent) : []),
    rule([limit, y - 3, limit, y + height + 3], 'ink', 1.1),
  ];
}

function hatch(left: number, top: number, right: number, height: number, goesOn: boolean): readonly Ink[] {
  const lines: Ink[] = [];
  for (let x = left - height; x < right; x += 2.6) {
    const from = Math.max(x, left);
    const to = Math.min(x + height, right);
    if (to > from)
      lines.push(rule([from, top + height - (from - x), to, top + height - (to - x)], 'ink', 0.8));
  }
  const edges = [
    rule([left, top, right, top], 'ink', 0.8),
    rule([left, top + height, right, top + height], 'ink', 0.8),
  ];
  return [...lines, ...edges, ...(goesOn ? [] : [rule([right, top, right, top + height], 'ink', 0.8)])];
}

/** A triangle with an exclamation mark: take care. */
export const careShape = (x: number, y: number, size: number): readonly Ink[] => [
  {
    kind: 'path',
    stroke: 'ink',
    width: 1.3,
    steps: [
      ['move', x + size / 2, y],
      ['line', x + size, y + 0.88 * size],
      ['line', x, y + 0.88 * size],
      ['close'],
    ],
  },
  rule([x + size / 2, y + 0.32 * size, x + size / 2, y + 0.6 * size], 'ink', 1.4),
  rectangle(x + size / 2 - 0.7, y + 0.68 * size, 1.4, 1.4, 'ink'),
];
