import { describe, expect, test } from 'vitest';
import { historiesOf, type HistoryInput, type WalkReadings } from '../../src/core/history.ts';
import { hoursLeft, rubberRisk } from '../../src/core/hours-left.ts';
import { assert } from '../../src/core/result.ts';
import { daysBetween } from '../../src/core/days.ts';
import { runningHours } from '../../src/core/running-hours.ts';
import type { Walk, Work } from '../../src/core/walk.ts';
import { life } from '../../src/reference/life.ts';
import { entryOf } from '../checks/sizes.ts';
import { machineOf, mm, read, sheetOf, walkOf } from './made.ts';

const day = (on: string): Walk['startedAt'] => ({ utc: `${on}T08:00:00Z`, offsetMinutes: 0 });
const walkAt = (on: string, meterHours?: number, more: Partial<Walk> = {}): Walk =>
  walkOf({ startedAt: day(on), ...(meterHours !== undefined && { meterHours }), ...more });
const work = (kind: Work['kind'], more: Partial<Work> = {}): Work => ({ v: 1, kind, side: 'whole', ...more });

describe('[N6] running hours', () => {
  test('[R1] are the meter’s where nothing else is known; what a walk lacks it lacks', () => {
    const { clock, ofWalks, fault } = runningHours(
      [walkAt('2025-01-01', 100), walkAt('2025-02-01'), walkAt('2025-03-01', 180)],
      [],
    );
    expect([clock, ofWalks, fault]).toEqual(['engine', [100, undefined, 180], undefined]);
    expect(runningHours([walkAt('2025-01-01')], []).fault).toBe('no-hours');
  });

  test('[R2] a meter that goes back is a fault', () => {
    expect(runningHours([walkAt('2025-01-01', 100), walkAt('2025-02-01', 90)], []).fault).toBe('meter-back');
  });

  test('[R3] a changed meter goes on where the old one ended, and work counts on the meter of its day', () => {
    const walks = [walkAt('2025-01-01', 4000), walkAt('2025-03-01', 50), walkAt('2025-05-01', 250)];
    const changed = work('meter-changed', { on: '2025-02-01', meterHours: 10, oldMeterHours: 4100 });
    const { ofWalks, ofWork, fault } = runningHours(walks, [changed]);
    expect([ofWalks, fault]).toEqual([[4000, 4140, 4340], undefined]);
    expect(ofWork(work('fitted', { on: '2025-01-15', meterHours: 4050 }))).toBe(4050);
    expect(ofWork(work('fitted', { on: '2025-04-01', meterHours: 100 }))).toBe(4190);
    expect(ofWork(work('fitted', { meterHours: 100 }))).toBe(4190);
    expect(ofWork(work('fitted'))).toBeUndefined();
  });

  test('[R4] without the old meter’s last reading, or with one below what was read, the hours are not known', () => {
    const walks = [walkAt('2025-01-01', 4000), walkAt('2025-03-01', 50)];
    const changed = work('meter-changed', { on: '2025-02-01', meterHours: 0 });
    expect(runningHours(walks, [changed]).fault).toBe('old-meter-unknown');
    expect(runningHours(walks, [{ ...changed, oldMeterHours: 3000 }]).fault).toBe('old-meter-unknown');
    expect(
      runningHours(walks, [work('meter-changed', { meterHours: 0, oldMeterHours: 4100 })]).ofWalks,
    ).toEqual([4000, 4150]);
  });

  test('[R5] travel hours count where every walk has them and they grow, scaled by the share of travel', () => {
    const walks = [
      walkAt('2025-01-01', 1000, { travelHours: 300 }),
      walkAt('2025-03-01', 1500, { travelHours: 400 }),
      walkAt('2025-05-01', 2000, { travelHours: 500 }),
    ];
    const { clock, travelShare, ofWalks, ofWork } = runningHours(walks, []);
    expect([clock, travelShare, ofWalks]).toEqual(['travel', 0.25, [1200, 1600, 2000]]);
    // Between the walks straight, before the first and after the last as they say.
    expect(ofWork(work('fitted', { meterHours: 1250 }))).toBe(1400);
    expect(ofWork(work('fitted', { meterHours: 500 }))).toBe(600);
    expect(ofWork(work('fitted', { meterHours: 2400 }))).toBe(2400);
    const [first, ...rest] = walks;
    assert(first, 'a walk');
    expect(runningHours([{ ...first, travelHours: undefined }, ...rest], []).clock).toBe('engine');
    expect(runningHours([...walks, walkAt('2025-06-01', 2100, { travelHours: 450 })], []).clock).toBe(
      'engine',
    );
  });

  test('[R6] more hours than the days have are doubted', () => {
    const tooFast = (hours: number): boolean =>
      runningHours([walkAt('2025-01-01', 100), walkAt('2025-01-03', 100 + hours)], []).tooFast;
    expect([tooFast(72), tooFast(73)]).toEqual([false, true]);
    expect(runningHours([walkOf({ meterHours: 1 }), walkOf({ meterHours: 9999 })], []).tooFast).toBe(false);
  });

  test('[R7] days are those of the calendar', () => {
    const days = (a: string, b: string) => daysBetween(walkAt(a), walkAt(b));
    expect(days('2024-02-28', '2024-03-01')).toBe(2);
    expect(days('2025-02-28', '2025-03-01')).toBe(1);
    expect(days('2023-12-31', '2025-01-01')).toBe(367);
    expect(days('2025-03-01', '2025-02-28')).toBe(-1);
    expect(daysBetween(walkOf(), walkAt('2025-01-01'))).toBeUndefined();
  });

  test('[R8] a day is that of the place, east and west of Greenwich', () => {
    const at = (utc: string, offsetMinutes: number): Walk => walkOf({ startedAt: { utc, offsetMinutes } });
    const noon = walkAt('2025-03-01');
    expect(daysBetween(noon, at('2025-03-01T22:30:00Z', 600))).toBe(1);
    expect(daysBetween(noon, at('2025-03-01T13:59:00Z', 600))).toBe(0);
    expect(daysBetween(noon, at('2025-03-01T02:00:00Z', -300))).toBe(-1);
    expect(daysBetween(noon, at('2025-03-01T05:00:00Z', -300))).toBe(0);
  });

  test.each([
    ['on the old meter', 4095, 4095],
    ['on the new meter', 12, 4112],
    ['at the old meter’s last reading', 4100, 4100],
    ['at the new meter’s first reading', 0, 4100],
  ])('[R9] on the day of a change hours %s: %d are %d', (_, meter, hours) => {
    const walks = [walkAt('2025-01-01', 4000), walkAt('2025-02-01', meter), walkAt('2025-03-01', 50)];
    const changed = work('meter-changed', { on: '2025-02-01', meterHours: 0, oldMeterHours: 4100 });
    const { ofWalks, ofWork, fault } = runningHours(walks, [changed]);
    expect([ofWalks, fault]).toEqual([[4000, hours, 4150], undefined]);
    expect(ofWork({ meterHours: meter, on: '2025-02-01' })).toBe(hours);
  });

  test('[R10] a meter changed since the last walk counts for the work noted on it', () => {
    const walks = [walkAt('2025-01-01', 4000)];
    const changed = work('meter-changed', { on: '2025-02-01', meterHours: 0, oldMeterHours: 4100 });
    const { ofWalks, ofWork } = runningHours(walks, [changed]);
    expect(ofWalks).toEqual([4000]);
    expect(ofWork({ meterHours: 20, on: '2025-02-10' })).toBe(4120);
    expect(runningHours(walks, [{ ...changed, oldMeterHours: undefined } as Work]).fault).toBe(
      'old-meter-unknown',
    );
    expect(runningHours(walks, [work('meter-changed', { meterHours: 0 })]).fault).toBeUndefined();
  });

  test('[R11] what a meter showed that nobody read need not be known; work on it has no hours', () => {
    const walks = [walkAt('2025-03-01', 50), walkAt('2025-04-01', 150)];
    const changed = work('meter-changed', { on: '2025-02-01', meterHours: 10 });
    const { ofWalks, ofWork, fault } = runningHours(walks, [changed]);
    expect([ofWalks, fault]).toEqual([[50, 150], undefined]);
    expect(ofWork({ meterHours: 3900, on: '2024-01-01' })).toBeUndefined();
    expect(ofWork({ meterHours: 40, on: '2025-02-20' })).toBe(40);
  });

  test('[R12] two changes are taken in the order of their days', () => {
    const walks = [walkAt('2025-01-01', 1000), walkAt('2025-06-01', 30)];
    const first = work('meter-changed', { on: '2025-02-01', meterHours: 0, oldMeterHours: 1100 });
    const second = work('meter-changed', { on: '2025-04-01', meterHours: 5, oldMeterHours: 200 });
    for (const changes of [
      [first, second],
      [second, first],
    ])
      expect(runningHours(walks, changes).ofWalks).toEqual([1000, 1325]);
  });

  test.each([
    ['as on the walk before', 700, '2025-05-01', true],
    ['a day’s hours off', 724, '2025-05-01', true],
    ['more than a day’s hours ahead of the walk of its day', 725, '2025-05-01', false],
    ['more than a later walk has', 525, '2025-02-01', false],
    ['less than an earlier walk had', 275, '2025-02-01', false],
    ['after the last walk, as much as the days have', 964, '2025-05-11', true],
    ['after the last walk, more than the days have', 965, '2025-05-11', false],
    ['without a day, ahead', 3700, undefined, true],
    ['without a day, further ahead than anybody notes', 3701, undefined, false],
    ['before the first walk', 10, '2024-01-01', true],
  ])('[R13] work %s: %d h on %s fits %s', (_, meterHours, on, fits) => {
    const walks = [walkAt('2025-01-01', 300), walkAt('2025-03-01', 500), walkAt('2025-05-01', 700)];
    expect(runningHours(walks, []).fits({ meterHours, ...(on !== undefined && { on }) })).toBe(fits);
  });

  test('[R14] work without hours, and any work of a machine without any, fits', () => {
    expect(runningHours([walkAt('2025-01-01', 300)], []).fits({ on: '2025-01-01' })).toBe(true);
    expect(runningHours([walkAt('2025-01-01')], []).fits({ meterHours: 9e5 })).toBe(true);
  });
});

const sheet = sheetOf([
  entryOf('lug-depth', 25, 5),
  entryOf('grouser', 24, 10),
  entryOf('bushing-od', 46, 41),
]);

/** Lug depths in mm of the left track (or both) by walk: 25 new, 5 worn out. */
const lugs = (on: string, meterHours: number, left: number, right?: number): WalkReadings => ({
  key: `walk/${on}`,
  walk: walkAt(on, meterHours),
  readings: [
    read('left.track', 'lug-depth', mm(left)),
    ...(right === undefined ? [] : [read('right.track', 'lug-depth', mm(right))]),
  ],
});

const inputOf = (walks: readonly WalkReadings[], more: Partial<HistoryInput> = {}): HistoryInput => ({
  machine: machineOf('rubber-cored'),
  walks,
  work: [],
  sheets: { left: sheet, right: sheet },
  tools: {},
  life,
  ...more,
});

function left(walks: readonly WalkReadings[], more: Partial<HistoryInput> = {}) {
  const found = historiesOf(inputOf(walks, more)).parts.find(({ place }) => place === 'left.track');
  assert(found, 'the left track');
  return found;
}

const three = [lugs('2025-01-01', 300, 21), lugs('2025-03-01', 500, 18), lugs('2025-05-01', 700, 15)];
const kinds = (events: readonly { kind: string; hours: number }[]) =>
  events.map(({ kind, hours }) => `${kind} ${hours}`);

describe('[N6] histories', () => {
  test('[H1] readings of one part in their order, in percent of its sheet', () => {
    const { points, events, fittedKnown, faults } = left(three);
    expect(points.map(({ hours, percent }) => [hours, Math.round(percent * 1e6) / 1e6])).toEqual([
      [300, 20],
      [500, 35],
      [700, 50],
    ]);
    expect(kinds(events)).toEqual(['read 300', 'read 500', 'read 700']);
    expect([fittedKnown, faults]).toEqual([false, []]);
  });

  test('[H2] the mean of the spots is taken, repeats of one spot averaged first', () => {
    const walk = {
      ...lugs('2025-01-01', 300, 20),
      readings: [
        read('left.track', 'lug-depth', mm(20), { n: 1 }),
        read('left.track', 'lug-depth', mm(22), { n: 2, spot: 1 }),
        read('left.track', 'lug-depth', mm(17), { n: 3 }),
      ],
    };
    expect(left([walk]).points[0]?.mm).toBe(19);
  });

  test('[H3] what is implausible is passed over until somebody says that it is right', () => {
    const wrong = lugs('2025-07-01', 900, 60);
    expect(left([...three, wrong]).points).toHaveLength(3);
    const confirmed = { ...wrong, readings: [read('left.track', 'lug-depth', mm(60), { confirmed: true })] };
    expect(left([...three, confirmed]).points).toHaveLength(4);
  });

  test('[H4] a fitting starts the part anew; of one after the last walk nothing is read yet', () => {
    const renewed = work('fitted', {
      component: 'track',
      side: 'left',
      meterHours: 400,
      on: '2025-02-01',
      why: 'worn',
    });
    const { events, earlier, fittedKnown, lives } = left(three, { work: [renewed] });
    expect(kinds(events)).toEqual(['fitted 400', 'read 500', 'read 700']);
    expect(earlier.map(kinds)).toEqual([['read 300']]);
    expect([fittedKnown, lives]).toEqual([true, [{ hours: 300, broke: false }]]);
    const after = work('fitted', { component: 'track', meterHours: 700, on: '2025-05-02' });
    expect(kinds(left(three, { work: [after] }).events)).toEqual(['fitted 700']);
    const before = { ...after, on: '2025-04-30' };
    expect(kinds(left(three, { work: [before] }).events)).toEqual(['fitted 700', 'read 700']);
  });

  test('[H5] work on another side, component or number is no matter of the part', () => {
    for (const other of [
      work('fitted', { component: 'track', side: 'right', meterHours: 400 }),
      work('fitted', { component: 'sprocket', side: 'left', meterHours: 400 }),
      work('adjusted', { component: 'track', side: 'left', meterHours: 400 }),
      work('fitted', { component: 'track', item: 'grouser', side: 'left', meterHours: 400 }),
    ])
      expect(left(three, { work: [other] }).events.map(({ kind }) => kind)).toEqual(['read', 'read', 'read']);
  });

  test('[H6] the size of the part fitted counts, and the machine’s own word for its tracks', () => {
    const used = work('fitted', { component: 'track', meterHours: 400, on: '2025-02-01', newMm: 20 });
    expect(left(three, { work: [used] }).events[0]).toMatchObject({ kind: 'fitted', percent: 25 });
    const machine = { ...machineOf('rubber-cored'), left: { fittedAtHours: 50 } };
    expect(kinds(left(three, { machine }).events)).toEqual(['fitted 50', 'read 300', 'read 500', 'read 700']);
  });

  test('[H7] turning makes bushings unknown and keeps their pace; building up makes grousers so', () => {
    const steel = (item: string, sizes: readonly number[]) =>
      sizes.map((size, n): WalkReadings => ({
        key: `walk/${n}`,
        walk: walkAt(`2025-0${n + 1}-01`, 1000 * (n + 1)),
        readings: [read('left.track', item, mm(size))],
      }));
    const events = (item: string, done: Work, sizes: readonly number[]) => {
      const input = inputOf(steel(item, sizes), { machine: machineOf('steel'), work: [done] });
      const part = historiesOf(input).parts.find((each) => each.item.id === item && each.side === 'left');
      return kinds(part?.events ?? []);
    };
    const turned = work('turned', { component: 'track', side: 'left', meterHours: 1500 });
    expect(events('bushing-od', turned, [44, 45])).toEqual(['read 1000', 'stepped 1500', 'read 2000']);
    expect(events('grouser', turned, [20, 18])).toEqual(['read 1000', 'read 2000']);
    const built = work('repaired', { component: 'track', side: 'left', meterHours: 1500 });
    expect(events('grouser', built, [15, 22])).toEqual(['read 1000', 'stepped 1500', 'read 2000']);
  });

  test('[H8] sides that were swapped take their past along; swapped twice they are back', () => {
    const walks = [
      lugs('2025-01-01', 300, 21, 19),
      lugs('2025-03-01', 500, 18, 14),
      lugs('2025-05-01', 700, 11, 15),
    ];
    const swap = (meterHours: number) =>
      (['left', 'right'] as const).map((side) => work('swapped', { component: 'track', side, meterHours }));
    expect(left(walks, { work: swap(600) }).points.map((point) => point.mm)).toEqual([19, 14, 11]);
    expect(left(walks, { work: [...swap(400), ...swap(600)] }).points.map((point) => point.mm)).toEqual([
      21, 14, 11,
    ]);
    const fitted = work('fitted', { component: 'track', side: 'right', meterHours: 100 });
    expect(left(walks, { work: [...swap(600), fitted] }).fittedKnown).toBe(true);
  });

  test('[H9] better than before by more than both errors is questioned, by less it is not', () => {
    const improved = left([...three, lugs('2025-07-01', 900, 20)]);
    expect(improved.faults).toEqual(['improved']);
    expect(improved.droppedBy).toBeCloseTo(25, 6);
    expect(left([...three, lugs('2025-07-01', 900, 15.5)]).faults).toEqual([]);
  });

  test('[H10] a part without readings, a life figure or hours says so', () => {
    expect(left([{ ...lugs('2025-01-01', 300, 21), readings: [] }]).faults).toEqual(['no-reading']);
    expect(left(three, { life: { ...life, figures: [] } }).faults).toEqual(['no-life-figure']);
    const unknown = three.map((each) => ({ ...each, walk: { ...each.walk, meterHours: undefined } }));
    expect(left(unknown).faults).toEqual(['no-hours']);
  });

  test('[H11] what the fleet has learnt stands in for the book, and more turning for a shorter life', () => {
    const learnt = new Map([['rubber-excavator', { centre: -2, spread: 0.2 }]]);
    const mine = left(three, { learnt });
    expect([mine.isLearnt, mine.prior]).toEqual([true, { centre: -2, spread: 0.2 }]);
    const turning = three.map((each) => ({ ...each, walk: { ...each.walk, turning: 'much' as const } }));
    expect((left(turning).prior?.centre ?? 0) - (left(three).prior?.centre ?? 0)).toBeCloseTo(
      -Math.log(0.7),
      9,
    );
  });

  test('[H12] all walks are judged by one load, the last one’s', () => {
    const heavy = lugs('2025-05-01', 700, 15);
    const walks = [three[0], three[1], { ...heavy, walk: { ...heavy.walk, load: 'heavy' as const } }];
    expect(
      left(walks.flatMap((each) => each ?? [])).points.map(({ percent }) => Math.round(percent)),
    ).toEqual([20, 35, 50]);
  });
});

describe('[N6] work and readings that do not fit together', () => {
  test('[H21] work noted at hours that its day did not have gives no figure', () => {
    const fitted = (meterHours: number, on?: string): Work =>
      work('fitted', { component: 'track', meterHours, ...(on !== undefined && { on }) });
    // A figure too many, a figure too few, the wrong day.
    for (const wrong of [fitted(4000, '2025-02-01'), fitted(40, '2025-04-01'), fitted(7000)])
      expect(left(three, { work: [wrong] }).faults).toEqual(['work-hours']);
    const machine = { ...machineOf('rubber-cored'), left: { fittedAtHours: 5000 } };
    expect(left(three, { machine }).faults).toEqual(['work-hours']);
    const swapped = work('swapped', { component: 'track', side: 'left', meterHours: 40, on: '2025-04-01' });
    expect(left(three, { work: [swapped] }).faults).toContain('work-hours');
    const other = work('adjusted', { component: 'track', meterHours: 4000, on: '2025-02-01' });
    expect(left(three, { work: [other] }).faults).toEqual([]);
    expect(hoursLeft(inputOf(three, { work: [fitted(4000, '2025-02-01')] })).parts[0]?.left).toBeUndefined();
  });

  test('[H22] a track fitted on a new meter after the last walk is new', () => {
    const changed = work('meter-changed', { on: '2025-05-10', meterHours: 0, oldMeterHours: 720 });
    const fitted = work('fitted', { component: 'track', meterHours: 20, on: '2025-05-20' });
    expect(kinds(left(three, { work: [changed, fitted] }).events)).toEqual(['fitted 740']);
  });

  test('[H23] the machine’s own word counts on the clock of its walks, and on the meter that it can be of', () => {
    const travelled = three.map((each, n) => ({
      ...each,
      walk: { ...each.walk, travelHours: [120, 160, 280][n] ?? 0 },
    }));
    const machine = { ...machineOf('rubber-cored'), left: { fittedAtHours: 150 } };
    expect(kinds(left(travelled, { machine }).events)).toEqual([
      'fitted 150',
      'read 300',
      'read 400',
      'read 700',
    ]);
    const slower = three.map((each, n) => ({
      ...each,
      walk: { ...each.walk, travelHours: [30, 60, 280][n] ?? 0 },
    }));
    // 30 of 300 h before the first walk, 280 of 700 h in all.
    expect(left(slower, { machine }).events[0]?.hours).toBeCloseTo((150 * 30 * 700) / (300 * 280), 9);
    const changed = work('meter-changed', { on: '2024-12-01', meterHours: 0, oldMeterHours: 4000 });
    const on = (fittedAtHours: number) =>
      left(three, { machine: { ...machine, left: { fittedAtHours } }, work: [changed] }).events[0];
    expect([on(3800), on(100)]).toMatchObject([
      { kind: 'fitted', hours: 3800 },
      { kind: 'fitted', hours: 4100 },
    ]);
  });

  test('[H24] at the same hours a swap of an earlier day came first, one of the day itself came after', () => {
    const again = lugs('2025-05-02', 700, 11, 15);
    const walks = [lugs('2025-01-01', 300, 21, 19), lugs('2025-05-01', 700, 15, 11), again];
    const swap = work('swapped', { component: 'track', side: 'left', meterHours: 700, on: '2025-05-01' });
    expect(left(walks, { work: [swap] }).points.map((point) => point.mm)).toEqual([19, 11, 11]);
  });

  test('[H25] at the same hours the days of the place tell whether a reading is of the old part or the new', () => {
    const morning: WalkReadings = {
      ...lugs('2025-05-01', 700, 25),
      key: 'walk/morning',
      // Half past eight in the morning of the second.
      walk: walkOf({ startedAt: { utc: '2025-05-01T22:30:00Z', offsetMinutes: 600 }, meterHours: 700 }),
    };
    const fitted = work('fitted', { component: 'track', meterHours: 700, on: '2025-05-01' });
    const { events, faults } = left([...three, morning], { work: [fitted] });
    expect([kinds(events), faults]).toEqual([['fitted 700', 'read 700'], []]);
  });

  test('[H26] several small gains are as telling as one large one; turning between is an answer', () => {
    const better = [10, 11.8, 13.4, 15].map((size, n) => lugs(`2025-0${n + 1}-01`, 300 + 200 * n, size));
    const found = left(better);
    expect(found.faults).toEqual(['improved']);
    expect(found.droppedBy).toBeCloseTo(25, 6);
    expect(left(better.slice(0, 2)).faults).toEqual([]);
    const renewed = work('fitted', { component: 'track', meterHours: 800, on: '2025-03-15', newMm: 16 });
    expect(left(better, { work: [renewed] }).faults).toEqual([]);
    const bushings = [42, 45].map((size, n): WalkReadings => ({
      key: `walk/${n}`,
      walk: walkAt(`2025-0${n + 1}-01`, 1000 + 500 * n),
      readings: [read('left.track', 'bushing-od', mm(size))],
    }));
    const turned = work('turned', { component: 'track', side: 'left', meterHours: 1200, on: '2025-01-15' });
    const faults = (done: readonly Work[]) =>
      historiesOf(inputOf(bushings, { machine: machineOf('steel'), work: done })).parts.find(
        ({ item, side }) => item.id === 'bushing-od' && side === 'left',
      )?.faults;
    expect([faults([]), faults([turned])]).toEqual([['improved'], []]);
  });
});

describe('[N6] hours left of a machine', () => {
  test('[H13] the part with the fewest hours stands first, those without a figure last', () => {
    const walks = [lugs('2025-01-01', 300, 21, 19), lugs('2025-03-01', 500, 18, 14)];
    const { parts, now } = hoursLeft(inputOf(walks));
    expect(parts.map(({ history }) => history.side)).toEqual(['right', 'left']);
    expect(now).toBe(500);
    const worse = [...walks, lugs('2025-05-01', 600, 17, 20)];
    expect(hoursLeft(inputOf(worse)).parts.map(({ open }) => open)).toEqual([[], ['improved']]);
  });

  test('[H14] hours count from the machine’s last walk, also where the part was read before', () => {
    const later = { ...lugs('2025-07-01', 800, 15), readings: [] };
    const [now, then] = [three, [...three, later]].map((walks) => hoursLeft(inputOf(walks)).parts[0]?.left);
    expect((now?.middle ?? 0) - (then?.middle ?? 0)).toBeCloseTo(100, 3);
  });

  test('[H15] what lasts beyond any plan has no upper end', () => {
    const slow = [lugs('2025-01-01', 1000, 24.8), lugs('2025-03-01', 9000, 24.6)];
    const [part] = hoursLeft(inputOf(slow)).parts;
    expect(part?.left?.high).toBe(Infinity);
    expect(part?.doubts).toContain('too-slow');
  });

  test('[H16] only the doubts that are there are told', () => {
    const doubts = (walks: readonly WalkReadings[], more: Partial<HistoryInput> = {}) =>
      hoursLeft(inputOf(walks, more)).parts[0]?.doubts;
    const known = work('fitted', { component: 'track', meterHours: 100, on: '2024-10-01' });
    expect(doubts(three, { work: [known] })).toEqual([]);
    expect(doubts(three)).toEqual(['fitted-unknown']);
    expect(doubts(three.slice(0, 1))).toEqual(['fitted-unknown', 'one-reading']);
    expect(doubts([...three, lugs('2025-05-05', 760, 7)], { work: [known] })).toEqual(['too-fast']);
    expect(doubts([...three, lugs('2025-05-02', 800, 13.5)], { work: [known] })).toEqual(['meter-fast']);
  });

  test('[H17] turned and not measured since has no figure', () => {
    const machine = machineOf('steel');
    const walks = [
      {
        key: 'walk/a',
        walk: walkAt('2025-01-01', 1000),
        readings: [read('left.track', 'bushing-od', mm(44))],
      },
    ];
    const turned = work('turned', { component: 'track', side: 'left', meterHours: 1200 });
    const { parts } = hoursLeft(inputOf(walks, { machine, work: [turned] }));
    expect(parts.map(({ open }) => open)).toEqual([['no-reading']]);
  });
});

describe('[N6] what ends rubber besides wear', () => {
  const none = { ageYears: undefined, ranHours: undefined, learnt: undefined };

  test('[H18] damage goes by the ground, an unknown ground by its own figure', () => {
    const share = (ground: Walk['ground']) => rubberRisk(life, { ...none, ground }).within(1000);
    expect(share('rock')).toBeCloseTo(1 - Math.exp(-life.damage.rock.value), 12);
    expect(share(undefined)).toBeCloseTo(1 - Math.exp(-life.damage.unknown.value), 12);
    expect(rubberRisk(life, { ...none, ground: 'rock' }).isLearnt).toBe(false);
  });

  test('[H19] the fleet’s own breakages count from the hours that the track has run', () => {
    const learnt = { shape: 2, scale: 1000 };
    const risk = (ranHours: number) => rubberRisk(life, { ...none, ground: 'rock', learnt, ranHours });
    expect(risk(0).within(1000)).toBeCloseTo(1 - Math.exp(-1), 12);
    expect(risk(1000).within(1000)).toBeCloseTo(1 - Math.exp(-3), 12);
    expect(risk(0).isLearnt).toBe(true);
  });

  test('[H20] age leaves what it leaves, never less than nothing', () => {
    expect(rubberRisk(life, { ...none, ground: 'rock', ageYears: 3 }).yearsLeft).toBe(5);
    expect(rubberRisk(life, { ...none, ground: 'rock', ageYears: 12 }).yearsLeft).toBe(0);
    expect(rubberRisk(life, { ...none, ground: 'rock' })).not.toHaveProperty('yearsLeft');
  });
});
