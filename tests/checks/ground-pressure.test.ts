import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  bearing,
  contactLengthMm,
  kpaPerPsi,
  meanPressureKpa,
  peakRigidKpa,
  pressureKpa,
  type ContactLength,
  type Rollers,
} from '../../src/core/ground-pressure.ts';
import { kgPerLb, standardGravity, toMm } from '../../src/core/quantity.ts';
import { contactSources, groundLimits, usualPressures } from '../../src/reference/ground-pressure.ts';

const near = (value: number | undefined, expected: number, tolerance: number): void =>
  expect(Math.abs((value ?? NaN) - expected)).toBeLessThanOrEqual(tolerance);

const measured = (lengthMm: number): ContactLength => ({ kind: 'measured', lengthMm });

const rollersOf = (kN: number, rollersPerSide: number, widthMm: number, rollerMm: number): Rollers => ({
  massKg: (kN * 1000) / standardGravity,
  rollersPerSide,
  widthMm,
  rollerMm,
});

describe('[GP1] mean ground pressure is weight over both tracks’ area', () => {
  test('[CV-36] 10,000 kg on 2 m², g 9.81: 49.05 kPa (hydraulicmotorhq.com, Dec 2025)', () => {
    near(pressureKpa(10_000, 2, 9.81), 49.05, 0.01);
  });

  test('[CV-37] 20,000 kg, 0.6 m wide, 3.4 m long: 48.07 kPa, 6.972 psi (computed)', () => {
    const kpa = meanPressureKpa(20_000, 600, measured(3400));
    near(kpa, 48.07, 0.01);
    near((kpa ?? NaN) / kpaPerPsi, 6.972, 0.01);
  });

  test('[CV-38] 19,500 kg, 0.6 m, 3.275 m + 0.35 × 0.94 m = 3.604 m: 44.22 kPa (ISO 16754 from memory)', () => {
    const contact = { kind: 'centres-sinkage', centresMm: 3275, trackHeightMm: 940 } as const;
    near(contactLengthMm(contact), 3604, 0.5);
    near(meanPressureKpa(19_500, 600, contact), 44.22, 0.05);
  });

  test('[CV-39] 10,000 lb, 16 in, 60 in: 5.208 psi, 35.91 kPa (computed)', () => {
    const kpa = meanPressureKpa(10_000 * kgPerLb, toMm(16, 'in'), measured(toMm(60, 'in')));
    near((kpa ?? NaN) / kpaPerPsi, 5.208, 0.01);
    near(kpa, 35.91, 0.01);
  });

  test('[GP1] the length on the ground goes by its definition (JCMA handbook 2016 p. 214; ukrbukva 69478)', () => {
    expect(contactLengthMm({ kind: 'centres', centresMm: 3275 })).toBe(3275);
    expect(contactLengthMm({ kind: 'end-rollers', rollersMm: 2600 })).toBe(2600);
    expect(contactLengthMm({ kind: 'end-rollers-pitch', rollersMm: 2600, pitchMm: 190 })).toBe(2790);
  });

  test.each([
    [0, 600, 3400],
    [20_000, 0, 3400],
    [20_000, 600, 0],
    [20_000, 600, -1],
    [NaN, 600, 3400],
    [20_000, Infinity, 3400],
  ])('[GP1] %d kg, %d mm, %d mm has no pressure', (massKg, widthMm, lengthMm) => {
    expect(meanPressureKpa(massKg, widthMm, measured(lengthMm))).toBeUndefined();
  });

  const size = fc.double({ min: 1, max: 1e5, noNaN: true });
  test('[GP1] wider or longer never presses harder, and heavier never less', () => {
    fc.assert(
      fc.property(
        size,
        size,
        size,
        fc.double({ min: 1, max: 10, noNaN: true }),
        (mass, width, length, by) => {
          const kpa = meanPressureKpa(mass, width, measured(length)) ?? NaN;
          expect(meanPressureKpa(mass, width * by, measured(length))).toBeLessThanOrEqual(kpa);
          expect(meanPressureKpa(mass, width, measured(length * by))).toBeLessThanOrEqual(kpa);
          expect(meanPressureKpa(mass * by, width, measured(length))).toBeGreaterThanOrEqual(kpa);
        },
      ),
    );
  });
});

describe('[GP2] peaks under the rollers are Rowland’s mean maximum pressure', () => {
  // kN, rollers a side, width, pitch, diameter in mm; computed kPa; the book's, from memory.
  test.each([
    ['CV-40', 108, 5, 381, 152.4, 610, 117.1, 119],
    ['CV-41', 393, 7, 550, 169, 650, 194, 198],
  ])(
    '[%s] %d kN on %d rollers a side: %s (Rowland 1972; Wong, Theory of Ground Vehicles, from memory)',
    (_id, kN, count, width, pitch, diameter, expected, book) => {
      const kpa = peakRigidKpa(rollersOf(kN, count, width, diameter), pitch);
      near(kpa, expected, 0.1);
      near(kpa, book, book * 0.03);
    },
  );

  test('[CV-42] 196.133 kN, 7, 0.6, 0.19, 0.15 m: 174.3 kPa, 3.6 times the average (computed)', () => {
    const kpa = peakRigidKpa(rollersOf(196.133, 7, 600, 150), 190);
    near(kpa, 174.3, 0.1);
    near((kpa ?? NaN) / (meanPressureKpa(20_000, 600, measured(3400)) ?? NaN), 3.6, 0.05);
  });

  test('[GP2] what is not known of the rollers leaves no peak', () => {
    expect(peakRigidKpa(rollersOf(100, 0, 600, 150), 190)).toBeUndefined();
    expect(peakRigidKpa(rollersOf(100, 7, 600, 150), 0)).toBeUndefined();
  });

  test('[GP2] more rollers, a wider track or a longer pitch never peak higher', () => {
    const size = fc.integer({ min: 1, max: 2000 });
    fc.assert(
      fc.property(
        size,
        size,
        size,
        size,
        fc.integer({ min: 1, max: 20 }),
        (width, pitch, roller, more, n) => {
          const peak = (count: number, wide: number, long: number): number =>
            peakRigidKpa(rollersOf(100, count, wide, roller), long) ?? NaN;
          const before = peak(n, width, pitch);
          expect(peak(n + 1, width, pitch)).toBeLessThanOrEqual(before);
          expect(peak(n, width + more, pitch)).toBeLessThanOrEqual(before);
          expect(peak(n, width, pitch + more)).toBeLessThanOrEqual(before);
        },
      ),
    );
  });
});

describe('[GP3] limits of soft ground', () => {
  const [soil] = groundLimits;
  test.each([
    [150, 'desirable'],
    [150.1, 'satisfactory'],
    [200, 'satisfactory'],
    [300, 'most'],
    [300.1, 'over'],
  ])('[GP3] %d kPa on wet fine soil is %s (Wong, after Rowland, from memory)', (kpa, expected) => {
    expect(soil && bearing(soil, kpa)).toBe(expected);
  });

  test('[GP3] every row rises and says where it is from; no figure from memory passes as published', () => {
    for (const { desirable, satisfactory, most, source } of groundLimits) {
      expect(desirable < satisfactory && satisfactory < most).toBe(true);
      expect(source.mark).toBe('from-memory');
    }
    expect(contactSources['centres-sinkage'].mark).toBe('from-memory');
  });

  test('[GP3] the example of 20 t lies in the range that is usual for it, a compact loader’s in psi', () => {
    const usual = usualPressures.find(({ machine }) => machine === 'excavator-20-t');
    const kpa = meanPressureKpa(20_000, 600, measured(3400)) ?? NaN;
    expect(usual && kpa >= usual.lowKpa && kpa <= usual.highKpa).toBe(true);
    const loader = usualPressures.find(({ machine }) => machine === 'track-loader');
    near(loader?.lowKpa, 17.2, 0.1);
    near(loader?.highKpa, 27.6, 0.1);
  });
});
