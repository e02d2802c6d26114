import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Observed } from '../../src/core/readings.ts';
import { assert } from '../../src/core/result.ts';
import { fromResolution, isSized, resolutionMm, sample, sizeOf, worseIs } from '../../src/core/sizes.ts';
import { law } from './law.ts';
import { crack, entryOf, finding, item, mm, pass, sag, unseen } from './made.ts';

function sizeRead(what: Observed, more = {}, tools = {}) {
  assert(isSized(what), 'a sized reading');
  return sizeOf({ v: 1, what, ...more }, what, tools);
}

const pitch = (totalMm: number, links: number): Observed => ({
  kind: 'pitch',
  totalMm,
  links,
  typed: `${totalMm}`,
  unit: 'mm',
});
const tread = (centreMm: number, linkMm: number): Observed => ({
  kind: 'tread',
  centreMm,
  linkMm,
  typed: [`${centreMm}.0`, `${linkMm}`],
  unit: 'mm',
});
const pair = (outerMm: number, innerMm: number): Observed => ({
  kind: 'pair',
  outerMm,
  innerMm,
  typed: [`${outerMm}.0`, `${innerMm}`],
  unit: 'mm',
});

const step = (mmStep: number): number => mmStep / Math.sqrt(12);

describe('[N3] what a reading resolves', () => {
  test.each([
    ['12', 'mm', 1],
    ['12.3', 'mm', 0.1],
    ['12,34', 'mm', 0.01],
    [' 12.345 ', 'mm', 0.001],
    ['12.', 'mm', 1],
    ['12.5 or so', 'mm', 1],
    ['', 'mm', 1],
    ['1.25', 'in', 0.254],
    ['3', 'in', 25.4],
    ['24', 'in/32', 0.79375],
    ['24.5', 'in/32', 0.79375],
    ['7', 'in/16', 1.5875],
  ] as const)('[W20] %j in %s resolves %d mm', (typed, unit, mmStep) => {
    expect(resolutionMm(typed, unit)).toBeCloseTo(mmStep, 12);
  });

  test('[W21] a step of d brings d/√12', () => {
    expect(fromResolution(1)).toBeCloseTo(0.288675, 6);
    expect(sizeRead(mm(12, '12.3')).uMm).toBeCloseTo(step(0.1), 12);
  });

  test('[W22] the tool and the step add in quadrature', () => {
    expect(sizeRead(mm(12, '12'), { tool: 'rule' }, { rule: 0.5 }).uMm).toBeCloseTo(
      Math.sqrt(0.25 + 1 / 12),
      12,
    );
  });

  test.each(['never-heard-of', 'constructor', '__proto__'])(
    '[W23] a tool named %s brings nothing',
    (tool) => {
      expect(sizeRead(mm(12, '12'), { tool }, { rule: 0.5 }).uMm).toBeCloseTo(step(1), 12);
    },
  );

  test('[W24] an uncertainty that was stated stands for tool and step, 0 too', () => {
    const read = (uMm: number) => sizeRead(mm(12, '12'), { tool: 'rule', uMm }, { rule: 0.5 }).uMm;
    expect([read(2), read(0)]).toEqual([2, 0]);
  });
});

describe('[N3] derived readings', () => {
  test('[W25] a length is what was read', () => {
    expect(sizeRead(mm(12.5)).mm).toBe(12.5);
  });

  test('[W26] pitch is length ÷ links, and so is its uncertainty', () => {
    expect(sizeRead(pitch(692, 4))).toEqual({ mm: 173, uMm: step(1) / 4 });
    expect(sizeRead(pitch(173, 1))).toEqual({ mm: 173, uMm: step(1) });
  });

  test('[W27] a roller in place is A = 2·(B − C), so each millimetre of either counts twice', () => {
    expect(sizeRead(tread(203, 112)).mm).toBe(182);
    expect(sizeRead(tread(203, 112)).uMm).toBeCloseTo(2 * Math.sqrt(step(0.1) ** 2 + step(1) ** 2), 12);
    expect(sizeRead(tread(203, 112), { uMm: 0.5 }).uMm).toBeCloseTo(2 * Math.sqrt(0.5), 12);
  });

  test('[W28] an idler is the mean of its two sides, each of half the weight', () => {
    expect(sizeRead(pair(20, 23)).mm).toBe(21.5);
    expect(sizeRead(pair(20, 23)).uMm).toBeCloseTo(Math.sqrt(step(0.1) ** 2 + step(1) ** 2) / 2, 12);
  });

  test('[W29] a pair of which nothing was noted as typed resolves whole millimetres', () => {
    const bare: Observed = { kind: 'pair', outerMm: 1, innerMm: 1, typed: [], unit: 'mm' };
    expect(sizeRead(bare).uMm).toBeCloseTo(Math.sqrt(2 * step(1) ** 2) / 2, 12);
  });

  test('[W30] findings, cracks, sag, passes and what was not seen are no sizes', () => {
    expect([mm(1), pitch(4, 4), tread(3, 1), pair(1, 1)].map(isSized)).toEqual([true, true, true, true]);
    expect([finding('cut'), crack(1, 1), sag(1), pass([]), unseen()].some(isSized)).toBe(false);
  });
});

const spots = (...sizes: readonly (readonly [spot: number, mm: number, uMm?: number])[]) =>
  sizes.map(([spot, value, uMm = 0]) => ({ spot, mm: value, uMm }));

describe('[N3] repeats and samples', () => {
  test('[W31] no sizes are no sample', () => {
    expect(sample([], 'smaller')).toBeUndefined();
  });

  test('[W32] samples of 12, 11 and 3 mm are judged as 3 mm, and their mean is kept', () => {
    expect(sample(spots([1, 12], [2, 11], [3, 3]), 'smaller')).toEqual({
      worst: { spot: 3, mm: 3, uMm: 0 },
      nextMm: 11,
      worseIs: 'smaller',
      meanMm: 26 / 3,
      samples: 3,
    });
  });

  test('[W33] of a part that grows the largest sample is the worst', () => {
    expect(sample(spots([1, 12], [2, 11], [3, 3]), 'larger')).toMatchObject({
      worst: { spot: 1, mm: 12 },
      nextMm: 11,
      worseIs: 'larger',
    });
  });

  test('[W34] repeats at one spot are averaged, and are one sample', () => {
    const found = sample(spots([1, 12], [1, 14], [2, 20]), 'smaller');
    expect(found).toMatchObject({ worst: { spot: 1, mm: 13 }, nextMm: 20, samples: 2, meanMm: 16.5 });
  });

  test('[W35] the scatter of repeats is error beside that of the tool', () => {
    // Standard deviation of 12 and 14 is √2, of their mean 1; JCGM 100:2008, 4.2.3.
    expect(sample(spots([1, 12, 0.75], [1, 14, 0.5]), 'smaller')?.worst.uMm).toBeCloseTo(1.25, 12);
    expect(sample(spots([1, 12, 0.75]), 'smaller')?.worst.uMm).toBe(0.75);
    expect(sample(spots([1, 9, 0], [1, 10, 0], [1, 11, 0]), 'smaller')?.worst.uMm).toBeCloseTo(
      1 / Math.sqrt(3),
      12,
    );
  });

  test('[W36] of two spots alike the first is the worst; a single one has no next', () => {
    expect(sample(spots([2, 5], [1, 5]), 'smaller')?.worst.spot).toBe(1);
    expect(sample(spots([2, 5], [1, 5]), 'larger')?.worst.spot).toBe(1);
    expect(sample(spots([4, 5]), 'smaller')).not.toHaveProperty('nextMm');
  });

  test('[W37] repeats are averaged and samples judged by the worst, whatever they are', () => {
    const sizes = fc.array(
      fc.record({ spot: fc.integer({ min: 1, max: 4 }), mm: fc.integer({ min: 0, max: 99 }) }),
      {
        minLength: 1,
      },
    );
    law(
      fc.property(sizes, fc.constantFrom('smaller' as const, 'larger' as const), (list, worse) => {
        const means = [1, 2, 3, 4].flatMap((spot) => {
          const here = list.filter((each) => each.spot === spot).map((each) => each.mm);
          return here.length === 0 ? [] : [here.reduce((a, b) => a + b, 0) / here.length];
        });
        const found = sample(
          list.map((each) => ({ ...each, uMm: 0 })),
          worse,
        );
        expect(found?.worst.mm).toBe(worse === 'smaller' ? Math.min(...means) : Math.max(...means));
        expect(found?.samples).toBe(means.length);
        expect(found?.meanMm).toBeCloseTo(means.reduce((a, b) => a + b, 0) / means.length, 9);
      }),
    );
  });
});

describe('[N2] which way a part wears', () => {
  test('[W38] by new and limit, where the sheet has both', () => {
    expect(worseIs(item('pitch'), entryOf('pitch', 180, 170))).toBe('smaller');
    expect(worseIs(item('lug-depth'), entryOf('lug-depth', 10, 20))).toBe('larger');
    expect(worseIs(item('lug-depth'), entryOf('lug-depth', 20, 5))).toBe('smaller');
  });

  test('[W39] by its nature, where the sheet does not tell: pitch and idler depth grow', () => {
    const { new: _, ...bare } = entryOf('pitch', 170, 175);
    expect(worseIs(item('pitch'), undefined)).toBe('larger');
    expect(worseIs(item('idler-tread'), undefined)).toBe('larger');
    expect(worseIs(item('pitch'), bare)).toBe('larger');
    expect(worseIs(item('pitch'), entryOf('pitch', 170, []))).toBe('larger');
    expect(worseIs(item('link-height'), undefined)).toBe('smaller');
  });
});
