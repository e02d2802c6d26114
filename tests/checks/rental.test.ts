import { describe, expect, test } from 'vitest';
import type { Contract } from '../../src/core/contract.ts';
import type { ChargeLine } from '../../src/core/rental-line.ts';
import { chargeList } from '../../src/core/rental.ts';
import { entered, entryOf, limitAt, mm, read, sheetOf } from '../core/made.ts';
import { cut, hireOf, lugs, sound, walkedOf } from '../core/rental-made.ts';

// Tire & Undercarriage Excessive Wear agreement, Cleveland Brothers: its page prints both examples for tyres and
// applies the same sums to undercarriages. One percent of life is 0.1 mm here, and readings are exact.
const price = (what: string, whole: number, lifeHours?: number): Contract['parts'][number] => ({
  what,
  minor: whole * 100,
  source: entered,
  ...(lifeHours !== undefined && { lifeHours }),
});

const inUsd = { currency: 'USD' } as const;

describe('[N9] published sums of a rental return', () => {
  test('[CV-58] 75 % left, cut to cord, cut-off 30 %, price 3,000: 64.29 % are 1,928.57 (printed 65 %, 1,950)', () => {
    const terms: Partial<Contract> = {
      ...inUsd,
      charges: 'damage',
      cutOffPercent: 30,
      parts: [price('renew-track', 3000)],
    };
    const list = chargeList(hireOf([...sound, ...lugs([25])], [...cut, ...lugs([25])], terms));
    expect(list.netMinor).toBe(192_857);
    expect(list.lines[0]?.partMinor).toBeCloseTo((3000_00 * (75 - 30)) / (100 - 30), 6);
    // What the page printed is what comes of rounding the percentage first, in favour of the owner.
    expect((Math.ceil((100 * (75 - 30)) / (100 - 30)) * 3000) / 100).toBe(1950);
  });

  test('out 80 % in 40 %, 500 h of a standard life of 2,800 h, price 3,000: excess 22.143 % are 664.29 (printed 17 % allowed, 23 %, 690)', () => {
    const terms: Partial<Contract> = { ...inUsd, hoursCount: 500, parts: [price('renew-track', 3000, 2800)] };
    const list = chargeList(hireOf(lugs([20]), lugs([60]), terms));
    expect(list.netMinor).toBe(66_429);
    expect(list.lines[0]?.excess?.allowedPercent).toBeCloseTo(17.857, 3);
    expect(list.lines[0]?.excess?.excessPercent).toBeCloseTo(22.143, 3);
    // The page cut the allowance to whole percents, again in favour of the owner.
    expect(((40 - Math.floor((100 * 500) / 2800)) * 3000) / 100).toBe(690);
  });

  test('[CV-60] 20 → 35 % worn, 180 h of 3,000, price 6,000: 6 % allowed, 540 charged (computed)', () => {
    const terms: Partial<Contract> = { hoursCount: 180, parts: [price('renew-track', 6000, 3000)] };
    const list = chargeList(hireOf(lugs([20]), lugs([35]), terms));
    expect(list.lines[0]?.excess?.allowedPercent).toBe(6);
    expect(list.netMinor).toBe(54_000);
    expect(list.grossMinor).toBe(54_000);
  });

  test('[CV-60] the same by the hour meter of both walks', () => {
    const hire = hireOf(lugs([20]), lugs([35]), {
      hours: 'meter',
      parts: [price('renew-track', 6000, 3000)],
    });
    const handOut = walkedOf('walk/out', lugs([20]), { purpose: 'hand-out', meterHours: 1201.5 });
    const returned = walkedOf('walk/back', lugs([35]), { meterHours: 1381.5 });
    expect(chargeList({ ...hire, handOut, returned }).netMinor).toBe(54_000);
  });
});

describe('[N9] the error of what a hire used up, by JCGM 100:2008 5.1.2 with new and limit shared by both walks', () => {
  // New 25 mm with u 0.3 mm, limit 5 mm with u 0.2 mm, lugs of 15 and 12 mm each read with u 0.5 mm: used 15 %.
  const sheet = sheetOf([
    entryOf('lug-depth', 25, [limitAt(5, { tolerance: 0.2 * Math.sqrt(3) })], {
      new: { at: 25, tolerance: 0.3 * Math.sqrt(3), source: entered },
    }),
  ]);
  const walked = (purpose: 'hand-out' | 'rental-return', size: number) => {
    const lug = read('left.track', 'lug-depth', mm(size), { uMm: 0.5 });
    const { input, ...rest } = walkedOf(`walk/${purpose}`, [lug], { purpose });
    return { ...rest, input: { ...input, sheets: { left: sheet, right: sheet } } };
  };
  const hire = hireOf([], []);
  const lineOf = (): ChargeLine | undefined =>
    chargeList({ ...hire, handOut: walked('hand-out', 15), returned: walked('rental-return', 12) }).lines[0];

  test('15 ± 7.09 %: u² = 2·2.5² + (15·0.3/20)² + (15·0.2/20)² (computed)', () => {
    const used = lineOf()?.used;
    expect(used?.usedPercent).toBeCloseTo(15, 9);
    expect(used?.u).toBeCloseTo(Math.sqrt(12.5 + 0.225 * 0.225 + 0.15 * 0.15), 9);
    expect(used?.expanded).toBeCloseTo(7.0917, 4);
  });
});
