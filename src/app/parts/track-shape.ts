import type { Shape } from '../../core/machine.ts';

interface Wheel {
  readonly x: number;
  readonly y: number;
  readonly r: number;
  readonly teeth?: boolean;
}

interface Box {
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
}

export interface Drawing {
  readonly width: number;
  readonly height: number;
  /** The outline of the track. */
  readonly loop: string;
  readonly frame: string;
  readonly parts: readonly Wheel[];
  readonly boxes: Readonly<Record<'front' | 'top' | 'track' | 'under' | 'rear', Box>>;
}

const [width, height] = [360, 114];
const ground = 104;

const spread = (count: number, from: number, to: number): readonly number[] =>
  Array.from({ length: count }, (_, i) =>
    count === 1 ? (from + to) / 2 : from + ((to - from) * i) / (count - 1),
  );

// Each box is at least 48 CSS pixels each way when the map is 288 pixels wide, on a screen of 320; the boxes reach
// a little beyond the drawing for that.
const boxes: Drawing['boxes'] = {
  front: { x: 16, y: 36, w: 74, h: 76 },
  track: { x: 96, y: -5, w: 82, h: 62 },
  top: { x: 184, y: -5, w: 82, h: 62 },
  under: { x: 96, y: 59, w: 170, h: 61 },
  rear: { x: 272, y: 36, w: 74, h: 76 },
};

/** An oval: idler in front, sprocket behind, the top run hanging a little between what carries it. */
function oval(shape: Shape): Drawing {
  const idler: Wheel = { x: 52, y: 74, r: 26 };
  const sprocket: Wheel = { x: 308, y: 74, r: 25, teeth: true };
  const more = spread(shape.idlers - 1, 92, 112).map((x) => ({ x, y: ground - 17, r: 12 }));
  const top = spread(shape.carrierRollers, 140, 228).map((x) => ({ x, y: 53, r: 6 }));
  const start = shape.idlers > 1 ? 128 : 96;
  const under = spread(shape.bottomRollers, start, 266).map((x) => ({
    x,
    y: ground - 13,
    r: Math.min(11, (266 - start) / Math.max(1, shape.bottomRollers - 1) / 2 - 1),
  }));
  const topRun = shape.slidePlate || top.length > 0 ? 'Q116 49 180 44 Q244 49 308 44' : 'Q180 58 308 44';
  return {
    width,
    height,
    loop: `M52 44 ${topRun} A30 30 0 0 1 308 ${ground} L52 ${ground} A30 30 0 0 1 52 44Z`,
    frame: 'M74 66H286V84H74Z',
    parts: [idler, ...more, ...top, ...under, sprocket],
    boxes,
  };
}

/** High drive: the sprocket stands above, the track makes a triangle with an idler at each end. */
function high(shape: Shape): Drawing {
  const front: Wheel = { x: 50, y: 80, r: 21 };
  const rear: Wheel = { x: 312, y: 80, r: 21 };
  const sprocket: Wheel = { x: 226, y: 34, r: 24, teeth: true };
  const under = spread(shape.bottomRollers, 92, 270).map((x) => ({ x, y: ground - 13, r: 10 }));
  return {
    width,
    height,
    loop: `M44 56 L216 7 A28 28 0 0 1 244 13 L326 61 A24 24 0 0 1 312 ${ground} L50 ${ground} A24 24 0 0 1 44 56Z`,
    frame: 'M70 70H292V86H70Z',
    parts: [front, ...(shape.idlers > 1 ? [rear] : []), ...under, sprocket],
    boxes: { ...boxes, rear: { x: 186, y: -5, w: 84, h: 62 }, track: { x: 96, y: -5, w: 84, h: 62 } },
  };
}

/** Wheels, track and tap zones of an undercarriage, front to the left. */
export const drawing = (shape: Shape): Drawing => (shape.drive === 'high' ? high(shape) : oval(shape));
