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

const [width, height] = [360, 132];
const ground = 118;

const spread = (count: number, from: number, to: number): readonly number[] =>
  Array.from({ length: count }, (_, i) =>
    count === 1 ? (from + to) / 2 : from + ((to - from) * i) / (count - 1),
  );

/** An oval: idler in front, sprocket behind, the top run hanging a little between what carries it. */
function oval(shape: Shape): Drawing {
  const idler: Wheel = { x: 52, y: 86, r: 27 };
  const sprocket: Wheel = { x: 308, y: 86, r: 25, teeth: true };
  const more = spread(shape.idlers - 1, 92, 112).map((x) => ({ x, y: ground - 17, r: 12 }));
  const top = spread(shape.carrierRollers, 140, 228).map((x) => ({ x, y: 66, r: 7 }));
  const start = shape.idlers > 1 ? 128 : 96;
  const under = spread(shape.bottomRollers, start, 266).map((x) => ({
    x,
    y: ground - 13,
    r: Math.min(11, (266 - start) / Math.max(1, shape.bottomRollers - 1) / 2 - 1),
  }));
  const topRun = shape.slidePlate || top.length > 0 ? 'Q116 62 180 56 Q244 62 308 58' : 'Q180 74 308 58';
  return {
    width,
    height,
    loop: `M52 58 ${topRun} A30 30 0 0 1 308 ${ground} L52 ${ground} A30 30 0 0 1 52 58Z`,
    frame: 'M74 78H286V98H74Z',
    parts: [idler, ...more, ...top, ...under, sprocket],
    boxes: boxesFor(56),
  };
}

/** High drive: the sprocket stands above, the track makes a triangle with an idler at each end. */
function high(shape: Shape): Drawing {
  const front: Wheel = { x: 50, y: 92, r: 22 };
  const rear: Wheel = { x: 312, y: 92, r: 22 };
  const sprocket: Wheel = { x: 226, y: 40, r: 26, teeth: true };
  const under = spread(shape.bottomRollers, 92, 270).map((x) => ({ x, y: ground - 13, r: 10 }));
  return {
    width,
    height,
    loop: `M44 67 L216 11 A30 30 0 0 1 246 18 L326 72 A25 25 0 0 1 312 ${ground} L50 ${ground} A25 25 0 0 1 44 67Z`,
    frame: 'M70 82H292V100H70Z',
    parts: [front, ...(shape.idlers > 1 ? [rear] : []), ...under, sprocket],
    boxes: { ...boxesFor(8), rear: { x: 180, y: 4, w: 96, h: 66 }, top: { x: 84, y: 30, w: 92, h: 48 } },
  };
}

// Each box is at least 48 CSS pixels each way when the map is 328 pixels wide.
const boxesFor = (top: number): Drawing['boxes'] => ({
  front: { x: 18, y: 50, w: 72, h: 76 },
  track: { x: 96, y: 2, w: 82, h: 54 },
  top: { x: 182, y: 2, w: 82, h: Math.max(54, top) },
  under: { x: 96, y: 72, w: 172, h: 56 },
  rear: { x: 274, y: 50, w: 72, h: 76 },
});

/** Wheels, track and tap zones of an undercarriage, front to the left. */
export const drawing = (shape: Shape): Drawing => (shape.drive === 'high' ? high(shape) : oval(shape));
