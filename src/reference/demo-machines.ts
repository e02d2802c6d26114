import type { Id, PlaceParts } from '../core/keys.ts';
import type { Machine, Side } from '../core/machine.ts';
import type { Observed } from '../core/readings.ts';
import type { Walk, Work } from '../core/walk.ts';

/** One reading of a demo walk; its number is also its spot. */
export interface DemoReading {
  readonly place: PlaceParts;
  readonly item: string;
  readonly n: number;
  readonly what: Observed;
}

export interface DemoWalk {
  readonly walkId: Id;
  readonly walk: Walk;
  readonly readings: readonly DemoReading[];
}

/** A machine with its last walk, those before, and what was done to it; everything about it is invented. */
export interface DemoMachine extends DemoWalk {
  readonly machineId: Id;
  readonly machine: Machine;
  readonly workId: Id;
  readonly work: Work;
  /** In the order of time. */
  readonly before: readonly DemoWalk[];
}

const invented = 'Invented for the demo: machine, site, people and values.';
const people = {
  customer: 'Example Earthworks (invented)',
  site: 'Sample Lane 1 (invented)',
  contact: 'A. Sample (invented)',
  inspector: 'B. Example (invented)',
};

const inMm = (
  side: Side,
  component: string,
  item: string,
  ...values: readonly number[]
): readonly DemoReading[] =>
  values.map((mm, at) => ({
    place: { side, component },
    item,
    n: at + 1,
    what: { kind: 'length', mm, typed: String(mm), unit: 'mm' },
  }));

const found = (place: PlaceParts, item: string, finding: string): DemoReading => ({
  place,
  item,
  n: 1,
  what: { kind: 'finding', finding },
});

const sag = (side: Side, mm: number, method: 'roller-gap' | 'frame-to-shoe'): DemoReading => ({
  place: { side, component: 'track' },
  item: 'sag',
  n: 1,
  what: { kind: 'sag', mm: [mm], typed: [String(mm)], unit: 'mm', method, posture: 'raised', clean: 'clean' },
});

const pitch = (side: Side, totalMm: number): DemoReading => ({
  place: { side, component: 'track' },
  item: 'pitch',
  n: 1,
  what: { kind: 'pitch', totalMm, links: 4, typed: String(totalMm), unit: 'mm' },
});

/** A walk of the same machine on an earlier day. */
function earlier(
  walk: Walk,
  walkId: string,
  day: string,
  meterHours: number,
  readings: readonly DemoReading[],
): DemoWalk {
  const at = (time: string) => ({ utc: `${day}T${time}Z`, offsetMinutes: 60 });
  const when = { startedAt: at('09:00:00'), finishedAt: at('09:20:00') };
  return {
    walkId: walkId as Id,
    walk: { ...walk, ...when, meterHours, meterTyped: `${meterHours}` },
    readings,
  };
}

const rubberWalk: Walk = {
  v: 1,
  machine: 'demo/machine/mini',
  purpose: 'jobsite',
  depth: 'short',
  start: 'walk',
  corner: 'front-left',
  startedAt: { utc: '2026-02-17T08:10:00Z', offsetMinutes: 60 },
  finishedAt: { utc: '2026-02-17T08:21:00Z', offsetMinutes: 60 },
  meterHours: 1110,
  meterTyped: '1110',
  ...people,
  jobNumber: 'DEMO-1',
  ground: 'mixed',
  turning: 'some',
  load: 'average',
  clean: 'clean',
  cautions: ['ground', 'raised'],
  note: invented,
};

const rubber: DemoMachine = {
  machineId: 'mini' as Id,
  machine: {
    v: 1,
    name: 'Demo mini excavator, rubber',
    kind: 'excavator',
    maker: 'Invented',
    model: 'Demo 27',
    pin: 'DEMO-0001',
    massKg: 2700,
    meterHours: 1240,
    shape: {
      track: 'rubber-cored',
      drive: 'oval',
      idlers: 1,
      bottomRollers: 4,
      carrierRollers: 0,
      slidePlate: true,
      suspension: 'rigid',
      flanges: 'double',
      tensioner: 'grease',
    },
    left: { make: 'Invented', size: '300 × 52.5 × 84', fittedAtHours: 610 },
    right: { make: 'Invented', size: '300 × 52.5 × 84', fittedAtHours: 610 },
    sheet: 'limits/starting-rubber-mini',
    note: invented,
  },
  workId: 'tracks' as Id,
  work: {
    v: 1,
    kind: 'fitted',
    side: 'whole',
    component: 'track',
    meterHours: 610,
    on: '2025-04-08',
    note: invented,
  },
  walkId: 'mini-last' as Id,
  walk: rubberWalk,
  before: [
    earlier(rubberWalk, 'mini-first', '2025-07-08', 760, [
      sag('left', 12, 'roller-gap'),
      sag('right', 12, 'roller-gap'),
      ...inMm('left', 'track', 'lug-depth', 20, 19),
      ...inMm('right', 'track', 'lug-depth', 19, 18),
    ]),
    earlier(rubberWalk, 'mini-second', '2025-11-04', 950, [
      sag('left', 12, 'roller-gap'),
      sag('right', 13, 'roller-gap'),
      ...inMm('left', 'track', 'lug-depth', 17, 16),
      ...inMm('right', 'track', 'lug-depth', 16, 14),
    ]),
  ],
  readings: [
    sag('left', 13, 'roller-gap'),
    sag('right', 14, 'roller-gap'),
    ...inMm('left', 'track', 'lug-depth', 14, 13),
    ...inMm('right', 'track', 'lug-depth', 13, 10),
    found({ side: 'right', component: 'track' }, 'lug-damage', 'nicked'),
    found({ side: 'right', component: 'bottom-roller', number: 3 }, 'roller-leak', 'weeping'),
  ],
};

const steelWalk: Walk = {
  v: 1,
  machine: 'demo/machine/steel',
  purpose: 'jobsite',
  depth: 'full',
  start: 'walk',
  corner: 'front-left',
  startedAt: { utc: '2026-01-20T12:30:00Z', offsetMinutes: 60 },
  finishedAt: { utc: '2026-01-20T13:25:00Z', offsetMinutes: 60 },
  meterHours: 4980,
  meterTyped: '4980',
  ...people,
  jobNumber: 'DEMO-2',
  ground: 'gravel',
  turning: 'some',
  load: 'average',
  clean: 'clean',
  cautions: ['ground', 'raised', 'track-turning'],
  note: invented,
};

const steel: DemoMachine = {
  machineId: 'steel' as Id,
  machine: {
    v: 1,
    name: 'Demo excavator, steel',
    kind: 'excavator',
    maker: 'Invented',
    model: 'Demo 135',
    pin: 'DEMO-0002',
    massKg: 13_500,
    meterHours: 5230,
    shape: {
      track: 'steel',
      drive: 'oval',
      idlers: 1,
      bottomRollers: 7,
      carrierRollers: 1,
      slidePlate: false,
      suspension: 'rigid',
      flanges: 'double',
      tensioner: 'grease',
    },
    sheet: 'limits/starting-steel-13t',
    note: invented,
  },
  workId: 'chains' as Id,
  work: {
    v: 1,
    kind: 'fitted',
    side: 'whole',
    component: 'track',
    meterHours: 1900,
    on: '2023-09-12',
    note: invented,
  },
  walkId: 'steel-last' as Id,
  walk: steelWalk,
  before: [
    earlier(steelWalk, 'steel-first', '2024-06-11', 3100, [
      sag('left', 262, 'frame-to-shoe'),
      sag('right', 266, 'frame-to-shoe'),
      ...inMm('left', 'track', 'link-height', 82.5, 82.5),
      ...inMm('right', 'track', 'link-height', 82, 82),
      pitch('left', 688.5),
      pitch('right', 689),
      ...inMm('left', 'track', 'bushing-od', 45, 45),
      ...inMm('right', 'track', 'bushing-od', 45, 44.5),
      ...inMm('left', 'track', 'grouser', 21),
      ...inMm('right', 'track', 'grouser', 21),
    ]),
    earlier(steelWalk, 'steel-second', '2025-04-15', 4100, [
      sag('left', 265, 'frame-to-shoe'),
      sag('right', 275, 'frame-to-shoe'),
      ...inMm('left', 'track', 'link-height', 81.5, 81.5),
      ...inMm('right', 'track', 'link-height', 81, 80.5),
      pitch('left', 690),
      pitch('right', 691.5),
      ...inMm('left', 'track', 'bushing-od', 44.5, 44),
      ...inMm('right', 'track', 'bushing-od', 44, 43.5),
      ...inMm('left', 'track', 'grouser', 19),
      ...inMm('right', 'track', 'grouser', 18),
    ]),
  ],
  readings: [
    sag('left', 268, 'frame-to-shoe'),
    sag('right', 284, 'frame-to-shoe'),
    ...inMm('left', 'track', 'link-height', 80.5, 80),
    ...inMm('right', 'track', 'link-height', 79.5, 79),
    pitch('left', 692),
    pitch('right', 694),
    ...inMm('left', 'track', 'bushing-od', 43.5, 43),
    ...inMm('right', 'track', 'bushing-od', 43, 42.5),
    ...inMm('left', 'track', 'grouser', 16),
    ...inMm('right', 'track', 'grouser', 15),
    found({ side: 'left', component: 'bottom-roller', number: 2 }, 'roller-leak', 'weeping'),
  ],
};

export const demoMachines: readonly DemoMachine[] = [rubber, steel];
