import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Contract } from '../../src/core/contract.ts';
import { makePlace, parsePlace } from '../../src/core/keys.ts';
import type { Limit } from '../../src/core/limits.ts';
import { wholeMinor } from '../../src/core/money.ts';
import type { RentalInput, RentalWalk } from '../../src/core/rental-input.ts';
import type { ChargeLine } from '../../src/core/rental-line.ts';
import { chargeList, type ChargeList } from '../../src/core/rental.ts';
import { score } from '../../src/core/score.ts';
import type { PlacedReading, ScoreInput } from '../../src/core/states.ts';
import type { Walk } from '../../src/core/walk.ts';
import { casesOf, lawOfWalks } from './law.ts';
import {
  entered,
  entryOf,
  finding,
  frozen,
  inputOf,
  limitAt,
  machineOf,
  mm,
  read,
  sheetOf,
  walkOf,
} from './made.ts';
import { share } from './random-walks.ts';

/** New 20 mm, limit 10 mm: one percent of life is a tenth of a millimetre; sizes that are off by a tolerance. */
const sheetWith = (tolerance: number): NonNullable<ScoreInput['sheets']['left']> => {
  const limits: Limit[] = [limitAt(10, { tolerance })];
  return sheetOf([entryOf('lug-depth', 20, limits, { new: { at: 20, tolerance, source: entered } })]);
};

interface Track {
  readonly percents: readonly number[];
  readonly cord: 'none' | 'cut' | 'half-cut';
}

interface Terms {
  readonly hours: number;
  readonly lifeHours: number;
  readonly minor: number;
  readonly labourMinor: number;
  readonly haulageMinor: number;
  readonly allowancePercent: number;
  readonly cutOffPercent: number;
  readonly taxPercent: number;
  readonly uMm: number;
  readonly tolerance: number;
}

type Side = 'left' | 'right';
type Sides = Readonly<Record<Side, Track>>;

const trackReadings = (side: Side, { percents, cord }: Track, uMm: number): readonly PlacedReading[] => [
  ...percents.map((percent, i) =>
    read(`${side}.track`, 'lug-depth', mm(20 - percent / 10), { n: i + 1, spot: i + 1, uMm }),
  ),
  read(`${side}.track`, 'cord', finding(cord, cord === 'none' ? {} : { count: 1 })),
];

function walked(key: string, sides: Sides, terms: Terms, walk: Partial<Walk>): RentalWalk {
  const sheet = sheetWith(terms.tolerance);
  const readings = (['left', 'right'] as const).flatMap((side) =>
    trackReadings(side, sides[side], terms.uMm),
  );
  const input = inputOf({ sheet, readings: [...readings], walk: walkOf({ depth: 'short', ...walk }) });
  return { key, input, scored: score(input), photos: [] };
}

const contractOf = (terms: Terms): Contract => ({
  v: 1,
  machine: 'machine/made-up',
  charges: 'damage-and-wear',
  hours: 'billed',
  hoursCount: terms.hours,
  currency: 'EUR',
  parts: [
    {
      what: 'renew-track',
      lifeHours: terms.lifeHours,
      minor: terms.minor,
      labourMinor: terms.labourMinor,
      source: entered,
    },
  ],
  haulageMinor: terms.haulageMinor,
  allowancePercent: terms.allowancePercent,
  cutOffPercent: terms.cutOffPercent,
  taxPercent: terms.taxPercent,
});

interface Hire {
  readonly out: Sides;
  readonly back: Sides;
  readonly terms: Terms;
}

const inputFor = ({ out, back, terms }: Hire): RentalInput => ({
  contract: contractOf(terms),
  handOut: walked('walk/out', out, terms, { purpose: 'hand-out' }),
  returned: walked('walk/back', back, terms, { purpose: 'rental-return' }),
});

const listFor = (hire: Hire): ChargeList => chargeList(inputFor(hire));

const terms: fc.Arbitrary<Terms> = fc.record({
  hours: share(0, 1500),
  lifeHours: share(500, 4000),
  minor: fc.integer({ min: 1, max: 5_000_000 }),
  labourMinor: fc.integer({ min: 0, max: 500_000 }),
  haulageMinor: fc.integer({ min: 0, max: 100_000 }),
  allowancePercent: fc.constantFrom(0, 0, 5),
  cutOffPercent: fc.constantFrom(0, 0, 20, 30),
  taxPercent: fc.constantFrom(0, 7, 19, 20, 8.875),
  uMm: fc.constantFrom(0, 0.05, 0.15, 0.3),
  tolerance: fc.constantFrom(0, 0, 0.5, 1.5, 8),
});

const exactly = { uMm: 0, tolerance: 0, allowancePercent: 0, cutOffPercent: 0 } as const;

const spots = fc.array(share(0, 70), { minLength: 1, maxLength: 3 });
const more = (out: readonly number[], used: readonly number[]): readonly number[] =>
  out.map((percent, i) => percent + (used[i] ?? 0));

const used = fc.tuple(share(-5, 60), share(-5, 60), share(-5, 60));
const cords = fc.constantFrom('none' as const, 'none' as const, 'cut' as const, 'half-cut' as const);

/** A side before and after the hire. */
const stretch = fc
  .record({
    out: spots,
    used,
    was: fc.constantFrom('none' as const, 'none' as const, 'cut' as const),
    is: cords,
  })
  .map(({ out, used: by, was, is }) => ({
    out: { percents: out, cord: was },
    back: { percents: more(out, by), cord: is },
  }));

const hires: fc.Arbitrary<Hire> = fc.tuple(stretch, stretch, terms).map(([left, right, all]) => ({
  out: { left: left.out, right: right.out },
  back: { left: left.back, right: right.back },
  terms: all,
}));

const undamaged = ({ out, back, ...hire }: Hire): Hire => {
  const fine = (track: Track): Track => ({ ...track, cord: 'none' });
  return {
    ...hire,
    out: { left: fine(out.left), right: fine(out.right) },
    back: { left: fine(back.left), right: fine(back.right) },
  };
};

const lineOf = (list: ChargeList, kind: ChargeLine['kind'], side: Side): ChargeLine | undefined =>
  list.lines.find((line) => line.kind === kind && line.side === side);

const isCharged = (line: ChargeLine | undefined): line is ChargeLine => line?.standing.kind === 'charged';

const charged = (line: ChargeLine | undefined): number => (isCharged(line) ? (line.partMinor ?? 0) : 0);

/** Doubles add up in another order to another last digit; prices here are below 5e6 minor units. */
const hair = 1e-6;

const near = (value: number, expected: number): void =>
  expect(Math.abs(value - expected)).toBeLessThanOrEqual(hair);

const swappedReading = (reading: PlacedReading): PlacedReading => {
  const { side, ...rest } = parsePlace(reading.place);
  const other = side === 'left' ? 'right' : side === 'right' ? 'left' : side;
  return { ...reading, place: makePlace({ ...rest, side: other }) };
};

const swap = ({ input, ...walk }: RentalWalk): RentalWalk => {
  const turned = { ...input, readings: input.readings.map(swappedReading) };
  return { ...walk, input: turned, scored: score(turned) };
};

describe('[N9] laws of the rental charge, over random hires', { timeout: 60_000 }, () => {
  test('[RC10] more wear never costs less on an undamaged part, and never less than nothing', () => {
    let paid = 0;
    lawOfWalks(
      fc.property(hires, fc.tuple(share(0, 40), share(0, 40), share(0, 40)), (any, by) => {
        const hire = undamaged(any);
        const left = { ...hire.back.left, percents: more(hire.back.left.percents, by) };
        const [less, worse] = [hire, { ...hire, back: { ...hire.back, left } }].map((each) =>
          charged(lineOf(listFor(each), 'wear', 'left')),
        );
        expect(less).toBeGreaterThanOrEqual(0);
        expect(worse ?? 0).toBeGreaterThanOrEqual((less ?? 0) - hair);
        if ((worse ?? 0) > (less ?? 0)) paid += 1;
      }),
      300,
    );
    expect(paid).toBeGreaterThan(casesOf(40));
  });

  test('[RC11] swapping the sides swaps the charge', () => {
    lawOfWalks(
      fc.property(hires, (hire) => {
        const input = inputFor(hire);
        const one = chargeList(input);
        const other = chargeList({
          ...input,
          handOut: input.handOut && swap(input.handOut),
          returned: swap(input.returned),
        });
        for (const kind of ['wear', 'damage'] as const)
          for (const [side, across] of [
            ['left', 'right'],
            ['right', 'left'],
          ] as const) {
            const [here, there] = [lineOf(one, kind, side), lineOf(other, kind, across)];
            expect(there?.standing).toEqual(here?.standing);
            near(there?.partMinor ?? 0, here?.partMinor ?? 0);
          }
        expect(other.netMinor).toBe(one.netMinor);
        expect(other.grossMinor).toBe(one.grossMinor);
      }),
    );
  });

  test('[RC12] a hire split at a walk in its middle adds up, where both halves are charged and below the cap', () => {
    let added = 0;
    const halves = fc.tuple(spots, used, used, terms, share(0.05, 0.95));
    lawOfWalks(
      fc.property(halves, ([out, first, second, any, part]) => {
        const all: Terms = { ...any, allowancePercent: 0, hours: any.hours / 4 };
        const track = (percents: readonly number[]): Sides => {
          const one: Track = { percents, cord: 'none' };
          return { left: one, right: one };
        };
        const [start, mid] = [out, more(out, first)];
        const end = more(mid, second);
        const lineFor = (from: readonly number[], to: readonly number[], hours: number) =>
          lineOf(listFor({ out: track(from), back: track(to), terms: { ...all, hours } }), 'wear', 'left');
        const [one, two, whole] = [
          lineFor(start, mid, all.hours * part),
          lineFor(mid, end, all.hours * (1 - part)),
          lineFor(start, end, all.hours),
        ];
        if (!isCharged(one) || !isCharged(two)) return;
        expect(whole?.standing.kind).toBe('charged');
        const isBelow = [one, two, whole].every(
          (line) => (line?.partMinor ?? 0) < (line?.mostMinor ?? 0) - hair,
        );
        if (!isBelow) return;
        near(charged(one) + charged(two), charged(whole));
        added += 1;
      }),
      400,
    );
    expect(added).toBeGreaterThan(casesOf(40));
  });

  test('[RC13] only the sums are rounded, once: no line is, and net and tax are the gross sum', () => {
    let broken = 0;
    lawOfWalks(
      fc.property(hires, (hire) => {
        const list = listFor(hire);
        const lines = list.lines.filter(isCharged);
        const exact = lines.reduce(
          (sum, line) => sum + (line.partMinor ?? 0) + (line.labourMinor ?? 0),
          lines.length > 0 ? hire.terms.haulageMinor : 0,
        );
        expect(Math.abs(list.netMinor - exact)).toBeLessThanOrEqual(0.5 + hair);
        expect(Math.abs(list.grossMinor - exact * (1 + hire.terms.taxPercent / 100))).toBeLessThanOrEqual(
          0.5 + hair,
        );
        expect(list.netMinor + list.taxMinor).toBe(list.grossMinor);
        for (const amount of [list.netMinor, list.taxMinor, list.grossMinor, list.haulageMinor])
          expect(Number.isSafeInteger(amount)).toBe(true);
        const { lifeHours, hours, minor } = hire.terms;
        for (const line of lines.filter(({ kind }) => kind === 'wear')) {
          const excess =
            (line.used?.usedPercent ?? 0) - (100 * hours) / lifeHours - hire.terms.allowancePercent;
          if (
            (line.partMinor ?? 0) < (line.mostMinor ?? 0) - hair &&
            !isCharged(lineOf(list, 'damage', 'left'))
          )
            near(line.partMinor ?? 0, (minor * excess) / 100);
          if (!Number.isInteger(line.partMinor)) broken += 1;
        }
      }),
      300,
    );
    expect(broken).toBeGreaterThan(casesOf(40));
  });

  test('[RC14] every amount is of the contract’s currency: another one changes its name and nothing else', () => {
    lawOfWalks(
      fc.property(hires, fc.constantFrom('USD', 'JPY', 'KWD'), (hire, currency) => {
        const input = inputFor(hire);
        const { currency: named, ...list } = chargeList(input);
        const { currency: renamed, ...other } = chargeList({
          ...input,
          contract: { ...input.contract, currency },
        });
        expect([named, renamed]).toEqual(['EUR', currency]);
        expect(other).toEqual(list);
      }),
      60,
    );
  });

  test('[RC15] wear and damage of a part together never pass price × share left at hand-out', () => {
    let both = 0;
    lawOfWalks(
      fc.property(hires, fc.boolean(), (hire, settle) => {
        const input = inputFor(hire);
        const ids = chargeList(input).lines.map(({ id }) => id);
        const settled = ids.map((line) => ({ line, is: 'charged' as const }));
        const walk = { ...input.returned.input.walk, ...(settle && { settled }) };
        const list = chargeList({
          ...input,
          returned: { ...input.returned, input: { ...input.returned.input, walk } },
        });
        for (const side of ['left', 'right'] as const) {
          const [wear, damage] = [lineOf(list, 'wear', side), lineOf(list, 'damage', side)];
          const { percents } = hire.out[side];
          const worn = percents.reduce((sum, each) => sum + each, 0) / percents.length;
          const left = Math.min(100, Math.max(0, 100 - worn)) / 100;
          const sum = charged(wear) + charged(damage);
          expect(sum).toBeLessThanOrEqual(hire.terms.minor * left + hair);
          if (charged(wear) > 0 && charged(damage) > 0) both += 1;
        }
      }),
      400,
    );
    expect(both).toBeGreaterThan(casesOf(30));
  });

  const chainSheet = sheetOf([
    entryOf('link-height', 100, [limitAt(90)]),
    entryOf('bushing-od', 60, [limitAt(50)]),
  ]);
  const chainWalk = (key: string, [links, bushings]: readonly number[], cracked: boolean): RentalWalk => {
    const size = (item: string, newMm: number, percent = 0) =>
      read('left.track', item, mm(newMm - percent / 10), { uMm: 0 });
    const link = read('left.track', 'links-cracked', finding(cracked ? 'one' : 'none'));
    const input = inputOf({
      machine: machineOf('steel'),
      sheet: chainSheet,
      readings: [size('link-height', 100, links), size('bushing-od', 60, bushings), link],
      walk: walkOf({}),
    });
    return { key, input, scored: score(input), photos: [] };
  };

  test('[RC82] of a chain too, whose wear another item may tell than its life left, link and wear stay within that', () => {
    let lowered = 0;
    const pair = fc.tuple(share(0, 70), share(0, 70));
    lawOfWalks(
      fc.property(pair, pair, terms, ([a, b], [c, d], all) => {
        const { minor } = all;
        const contract = contractOf({ ...all, hours: all.hours / 10 });
        const source = entered;
        const parts = [
          { what: 'renew-chain', minor, lifeHours: all.lifeHours, source },
          { what: 'change-link', minor: Math.ceil(minor / 2), source },
        ];
        const { lines } = chargeList({
          contract: { ...contract, parts },
          handOut: chainWalk('walk/out', [a, b], false),
          returned: chainWalk('walk/back', [a + c, b + d], true),
        });
        const [wear, damage] = (['wear', 'damage'] as const).map((kind) =>
          lines.find((line) => line.kind === kind),
        );
        const left = Math.min(100, Math.max(0, 100 - Math.max(a, b))) / 100;
        expect(charged(wear) + charged(damage)).toBeLessThanOrEqual(minor * left + hair);
        const excess = wear?.excess?.excessPercent ?? 0;
        if (charged(damage) > 0 && charged(wear) < minor * Math.min(excess / 100, left) - hair) lowered += 1;
      }),
      300,
    );
    expect(lowered).toBeGreaterThan(casesOf(20));
  });

  test('[RC16] damage is charged at the value just before it, never at that of the hand-out', () => {
    let worn = 0;
    lawOfWalks(
      fc.property(hires, (hire) => {
        const list = listFor(hire);
        for (const side of ['left', 'right'] as const) {
          const damage = lineOf(list, 'damage', side);
          if (!isCharged(damage)) continue;
          const [was, now] = [hire.out, hire.back].map((sides) => {
            const { percents } = sides[side];
            return percents.reduce((sum, each) => sum + each, 0) / percents.length;
          });
          const left = Math.min(100, Math.max(0, 100 - Math.max(was ?? 0, now ?? 0)));
          const { cutOffPercent, minor } = hire.terms;
          near(charged(damage), (minor * Math.max(0, left - cutOffPercent)) / (100 - cutOffPercent));
          if ((now ?? 0) > (was ?? 0)) worn += 1;
        }
      }),
      300,
    );
    expect(worn).toBeGreaterThan(casesOf(40));
  });

  test('[RC17] more than allowed by less than the readings can tell is shown and not charged', () => {
    let shown = 0;
    lawOfWalks(
      fc.property(hires, share(0, 12), fc.constantFrom(0.15, 0.3), (any, by, uMm) => {
        const hire = undamaged(any);
        const all: Terms = { ...hire.terms, uMm };
        const usual = (100 * all.hours) / all.lifeHours + all.allowancePercent + by;
        const beyond = ({ percents, cord }: Track): Track => ({
          percents: percents.map((percent) => percent + usual),
          cord,
        });
        const back = { left: beyond(hire.out.left), right: beyond(hire.out.right) };
        const list = listFor({ ...hire, back, terms: all });
        for (const { used: of, excess, standing, partMinor } of list.lines) {
          if (!of || !excess || of.vague) continue;
          const isInside = excess.excessPercent > 1e-5 && excess.excessPercent < of.expanded - 1e-5;
          const isBeyond = excess.excessPercent > of.expanded + 1e-5 && excess.excessPercent > 1e-5;
          if (isInside) {
            expect(standing).toEqual({ kind: 'not-charged', why: 'within-uncertainty' });
            expect(partMinor).toBeUndefined();
            shown += 1;
          }
          if (isBeyond && standing.kind === 'not-charged') expect(standing.why).toBe('nothing-left');
        }
      }),
      150,
    );
    expect(shown).toBeGreaterThan(casesOf(40));
  });

  test('[RC18] new and limit are shared by both walks, so that their error counts with what was used alone', () => {
    lawOfWalks(
      fc.property(hires, (any) => {
        const hire = undamaged(any);
        const { uMm, tolerance } = hire.terms;
        for (const { used: of } of listFor(hire).lines) {
          if (!of) continue;
          const [reading, sheet] = [(100 * uMm) / 10, (of.usedPercent * (tolerance / Math.sqrt(3))) / 10];
          const squared = 2 * reading * reading + 2 * sheet * sheet;
          near(of.u, Math.sqrt(squared));
          near(of.expanded, 2 * of.u);
        }
      }),
    );
  });

  test('[RC19] a hire of more hours is never charged more wear', () => {
    let less = 0;
    lawOfWalks(
      fc.property(hires, share(0, 500), (any, hours) => {
        const hire = undamaged(any);
        const longer = { ...hire, terms: { ...hire.terms, hours: hire.terms.hours + hours } };
        const [short, long] = [hire, longer].map((each) => charged(lineOf(listFor(each), 'wear', 'left')));
        expect(long ?? 0).toBeLessThanOrEqual((short ?? 0) + hair);
        if ((long ?? 0) < (short ?? 0)) less += 1;
      }),
      300,
    );
    expect(less).toBeGreaterThan(casesOf(30));
  });

  test('[RC20] without a hand-out walk nothing is charged that nobody settles', () => {
    lawOfWalks(
      fc.property(hires, (hire) => {
        const list = chargeList({ ...inputFor(hire), handOut: undefined });
        expect(list.lines.filter(isCharged)).toEqual([]);
        expect([list.netMinor, list.taxMinor, list.grossMinor, list.haulageMinor]).toEqual([0, 0, 0, 0]);
        for (const line of list.lines) expect(line.standing).toEqual({ kind: 'open', why: 'no-hand-out' });
      }),
      60,
    );
  });

  test('[RC21] the order of the readings is nothing, and what is put in stays as it was', () => {
    lawOfWalks(
      fc.property(hires, (hire) => {
        const input = frozen(inputFor(hire));
        const turned = (walk: RentalWalk): RentalWalk => {
          const back = { ...walk.input, readings: [...walk.input.readings].reverse() };
          return { ...walk, input: back, scored: score(back) };
        };
        const list = chargeList(input);
        const other = chargeList({
          ...input,
          handOut: input.handOut && turned(input.handOut),
          returned: turned(input.returned),
        });
        expect(other.grossMinor).toBe(list.grossMinor);
        expect(other.lines.map(({ id, standing }) => [id, standing])).toEqual(
          list.lines.map(({ id, standing }) => [id, standing]),
        );
      }),
      60,
    );
  });

  test('[RC22] exact readings of a hire within its hours cost nothing', () => {
    lawOfWalks(
      fc.property(hires, share(0, 1), (any, part) => {
        const hire = undamaged(any);
        const all: Terms = { ...hire.terms, ...exactly };
        const usual = (100 * all.hours) / all.lifeHours;
        const within = (track: Track): Track => ({
          ...track,
          percents: track.percents.map((percent) => percent + usual * part),
        });
        const back = { left: within(hire.out.left), right: within(hire.out.right) };
        const list = listFor({ ...hire, back, terms: all });
        expect(list.grossMinor).toBe(0);
        for (const { standing, used: of } of list.lines)
          if (of) expect(standing).toEqual({ kind: 'not-charged', why: 'within-allowance' });
      }),
    );
  });

  test.each([
    [0.5, 0],
    [1.5, 2],
    [2.5, 2],
    [3.5, 4],
    [2.4999, 2],
    [2.5001, 3],
    [53_999.999_999_9, 54_000],
    [7, 7],
  ])('[RC23] %s minor units are %s: half a unit goes to the even one, for neither side', (minor, whole) => {
    expect(wholeMinor(minor)).toBe(whole);
  });
});
