import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ruleAnswer, type HaulRule, type RuleAnswer } from '../../src/core/hauling-rules.ts';
import { pulls, tieAnswers, tiesByLength, tiesByMass, type Ties } from '../../src/core/hauling-ties.ts';
import {
  articleSum,
  haulMasses,
  haulRatings,
  printedKg,
  ratingAnswers,
  wholeSum,
  type Haul,
  type HaulField,
  type PrintedMass,
} from '../../src/core/hauling.ts';
import { kgPerLb, toMm } from '../../src/core/quantity.ts';
import { assert } from '../../src/core/result.ts';
import { haulHolds, haulRules, regions, usTies } from '../../src/reference/hauling.ts';

type Masses = Readonly<Partial<Record<HaulField, number>>>;

const fields: readonly HaulField[] = [...haulMasses, ...haulRatings];

/** A haul whose every field is entered: 0 where the case gives none. */
const haul = (unit: 'kg' | 'lb', masses: Masses, on: Haul['on'] = 'trailer'): Haul => ({
  on,
  operatorKg: 0,
  noCombination: false,
  kg: Object.fromEntries(
    fields.map((field) => [field, printedKg({ value: masses[field] ?? 0, unit })]),
  ) as Masses,
});

function ruleOf(name: HaulRule['rule']): HaulRule {
  const rule = regions.flatMap((region) => haulRules[region]).find((each) => each.rule === name);
  assert(rule, 'a rule of that name');
  return rule;
}

const stepOf = (answer: RuleAnswer): string =>
  answer.kind === 'step' ? answer.step : `open from ${answer.atLeast}`;
const asks = (name: HaulRule['rule'], given: Haul): string => stepOf(ruleAnswer(given, ruleOf(name)));

describe('[HL1] licences and rules of the United States', () => {
  test('[CV-67] 25,900 lb rated, 27,000 lb actual, trailer 12,000 lb: a CDL, the greater counts (49 CFR 383.5)', () => {
    const rated = { 'truck-gross': 13_900, 'trailer-gross': 12_000, combination: 25_900 };
    expect(asks('us-licence', haul('lb', { ...rated, truck: 13_900, trailer: 12_000 }))).toBe('no-cdl');
    const actual = { ...rated, truck: 15_000, trailer: 4000, machine: 8000 };
    expect(wholeSum(haul('lb', actual)).kg / kgPerLb).toBeCloseTo(27_000, 6);
    expect(asks('us-licence', haul('lb', actual))).toBe('cdl-a');
  });

  test('[CV-68] 27,000 lb with a trailer of 9,990 and a truck of 17,010 lb: no CDL, but a commercial vehicle (49 CFR 383.5, 390.5)', () => {
    const pair = haul('lb', { 'trailer-gross': 9990, 'truck-gross': 17_010, combination: 27_000 });
    expect(asks('us-licence', pair)).toBe('no-cdl');
    expect(asks('us-safety-rules', pair)).toBe('safety-rules');
    // The rating of a combination on the truck’s label changes neither.
    expect(asks('us-licence', { ...pair, noCombination: true })).toBe('no-cdl');
  });

  test.each([
    [26_000, 'no-cdl'],
    [26_001, 'cdl-b'],
  ])('[CV-69] one truck of %d lb: %s (49 CFR 383.5)', (pounds, step) => {
    expect(asks('us-licence', haul('lb', { 'truck-gross': pounds }, 'truck'))).toBe(step);
    expect(asks('us-licence', haul('lb', { truck: pounds }, 'truck'))).toBe(step);
  });

  test.each([
    [26_000, 10_001, 'no-cdl'],
    [26_001, 10_001, 'cdl-a'],
    [26_001, 10_000, 'no-cdl'],
    [40_000, 10_000, 'cdl-b'],
  ])('[CV-69] a pair of %d lb with a trailer of %d lb: %s (49 CFR 383.5)', (pair, trailer, step) => {
    expect(asks('us-licence', haul('lb', { 'truck-gross': pair - trailer, 'trailer-gross': trailer }))).toBe(
      step,
    );
  });

  test.each([
    [10_000, 'no-safety-rules'],
    [10_001, 'safety-rules'],
  ])('[CV-69] %d lb: %s (49 CFR 390.5)', (pounds, step) => {
    expect(asks('us-safety-rules', haul('lb', { 'truck-gross': pounds }, 'truck'))).toBe(step);
    expect(asks('us-safety-rules', haul('lb', { 'truck-gross': 6000, 'trailer-gross': pounds - 6000 }))).toBe(
      step,
    );
  });

  test('[HL1] the label’s rating of a combination counts only while it tows (49 CFR 383.5, definition)', () => {
    const rated = { 'truck-gross': 19_000, combination: 30_000 };
    expect(asks('us-licence', haul('lb', rated, 'truck'))).toBe('no-cdl');
    const small = { 'truck-gross': 9000, combination: 20_000 };
    expect(asks('us-safety-rules', haul('lb', small, 'truck'))).toBe('no-safety-rules');
    expect(asks('us-safety-rules', haul('lb', small))).toBe('safety-rules');
    expect(asks('us-licence', haul('lb', { ...rated, 'trailer-gross': 10_001 }))).toBe('cdl-a');
    expect(
      asks('us-licence', { ...haul('lb', { ...rated, 'trailer-gross': 6000 }), noCombination: true }),
    ).toBe('no-cdl');
  });
});

describe('[HL2] licences in Great Britain and the EU', () => {
  test.each([
    [3500, 'b'],
    [3501, 'c1e'],
  ])(
    '[CV-74] GB category B since December 2021, trailer of %d kg: %s (What Van; Press & Journal; PIB 2022)',
    (trailer, step) => {
      expect(asks('gb-licence', haul('kg', { 'truck-gross': 3500, 'trailer-gross': trailer }))).toBe(step);
    },
  );

  test.each([
    [2000, 1500, 'b'],
    [2200, 1500, 'b96'],
    [3500, 750, 'b'],
    [2750, 1500, 'b96'],
    [2751, 1500, 'be'],
    [3500, 3500, 'be'],
    [3500, 3501, 'c1e'],
    [3501, 750, 'c1'],
    [7500, 4500, 'c1e'],
    [7500, 4501, 'ce'],
    [7501, 750, 'c'],
    [7501, 751, 'ce'],
  ])(
    '[CV-75] EU, truck or car %d kg and trailer %d kg: %s (Directive 2006/126/EC, article 4)',
    (truck, trailer, step) => {
      expect(asks('eu-licence', haul('kg', { 'truck-gross': truck, 'trailer-gross': trailer }))).toBe(step);
    },
  );

  test('[HL2] European limits go by the plates, whatever the scale says', () => {
    const light = haul('kg', { 'truck-gross': 3500, 'trailer-gross': 3500, truck: 3000, machine: 9000 });
    expect(asks('gb-licence', light)).toBe('b');
  });

  test.each([
    ['gb-tachograph', 3500, 3501],
    ['eu-tachograph', 3500, 3501],
    ['eu-abroad', 2500, 2501],
  ] as const)('[HL2] %s: not at %d kg of plates, at %d kg it is', (rule, free, bound) => {
    expect(asks(rule, haul('kg', { 'truck-gross': 2000, 'trailer-gross': free - 2000 }))).toBe(
      'no-tachograph',
    );
    expect(asks(rule, haul('kg', { 'truck-gross': 2000, 'trailer-gross': bound - 2000 }))).toBe('tachograph');
  });
});

const unlimited: Ties = {
  direct: { count: undefined, wllKg: undefined },
  over: { count: 0, wllKg: undefined },
  lengthMm: undefined,
  blocked: false,
};
const direct = (count: number, pounds: number): Ties => ({
  ...unlimited,
  direct: { count, wllKg: pounds * kgPerLb },
});
const machineOf = (pounds: number) => articleSum(haul('lb', { machine: pounds }));

describe('[HL3] ties by 49 CFR part 393', () => {
  test('[CV-70] a machine of 10,000 lb: four ties, the careful reading (49 CFR 393.130)', () => {
    expect(tiesByMass(usTies, 10_000 * kgPerLb)).toBe(4);
    expect(tieAnswers(usTies, machineOf(10_000), direct(3, 5000)).count).toMatchObject({
      kind: 'short',
      need: 4,
    });
    const withDriver = articleSum({ ...haul('lb', { machine: 10_000 }), operatorKg: 75 });
    expect(tieAnswers(usTies, withDriver, direct(4, 5000)).count).toMatchObject({ need: 4 });
    expect(tieAnswers(usTies, machineOf(10_000), direct(4, 5000)).count).toMatchObject({
      kind: 'enough',
      need: 4,
    });
  });

  test('[CV-71] a machine of 9,900 lb: two are the least allowed, four are advised (49 CFR 393.128, weak; 393.130)', () => {
    const { count, advised } = tieAnswers(usTies, machineOf(9900), direct(2, 5400));
    expect(count).toMatchObject({ kind: 'enough', have: 2, need: 2 });
    expect(advised).toBe(4);
  });

  test('[CV-72] 12,000 lb on four direct ties of 5,000 lb: 10,000 lb for 6,000 lb, enough (49 CFR 393.106)', () => {
    const { aggregate, count, weak } = tieAnswers(usTies, machineOf(12_000), direct(4, 5000));
    expect(aggregate.kind).toBe('enough');
    expect(aggregate.have / kgPerLb).toBeCloseTo(10_000, 6);
    expect((aggregate.need ?? NaN) / kgPerLb).toBeCloseTo(6000, 6);
    expect([count.kind, weak]).toEqual(['enough', false]);
  });

  test('[HL3] ties over the machine and down on the other side count whole (49 CFR 393.106(d))', () => {
    const over = { ...direct(0, 0), over: { count: 2, wllKg: 3000 * kgPerLb } };
    const { aggregate } = tieAnswers(usTies, machineOf(12_000), over);
    expect([aggregate.kind, Math.round(aggregate.have / kgPerLb)]).toEqual(['enough', 6000]);
    expect(tieAnswers(usTies, machineOf(12_001), over).aggregate.kind).toBe('short');
  });

  // Feet, pounds, unblocked, blocked.
  test.each([
    [5, 1100, 1, 1],
    [5, 1101, 2, 1],
    [5.1, 500, 2, 1],
    [10, 9000, 2, 1],
    [10.1, 9000, 3, 2],
    [20, 9000, 3, 2],
    [20.1, 30_000, 4, 3],
  ])(
    '[HL3] %d ft and %d lb: %d ties, with the front blocked %d (49 CFR 393.110, FMCSA’s Cargo Securement Rules)',
    (feet, pounds, free, blocked) => {
      const lengthMm = toMm(feet * 12, 'in');
      expect(tiesByLength(usTies, lengthMm, pounds * kgPerLb, false)).toBe(free);
      expect(tiesByLength(usTies, lengthMm, pounds * kgPerLb, true)).toBe(blocked);
    },
  );

  test('[HL3] pulls to hold: 0.435, 0.5, 0.25 g by working load, 0.8, 0.5, 0.5 g by breaking, a fifth down (49 CFR 393.102)', () => {
    const held = pulls(haulHolds.us.holds, machineOf(10_000)).map(({ by, to, kg }) => [
      by,
      to,
      Math.round(kg / kgPerLb),
    ]);
    expect(held).toEqual([
      ['working-load', 'front', 4350],
      ['working-load', 'rear', 5000],
      ['working-load', 'side', 2500],
      ['breaking', 'front', 8000],
      ['breaking', 'rear', 5000],
      ['breaking', 'side', 5000],
      ['working-load', 'up', 2000],
    ]);
  });
});

describe('[HL4] masses', () => {
  const printed: readonly (readonly [PrintedMass, number, number])[] = [
    [{ value: 26_001, unit: 'lb' }, 1, 11_793.86],
    [{ value: 10_001, unit: 'lb' }, 1, 4536.38],
    [{ value: 5000, unit: 'lb' }, 1, 2267.96],
    [{ value: 3500, unit: 'kg' }, kgPerLb, 7716.18],
  ];
  test.each(printed)(
    '[CV-76] %o in the other unit (the pound is exact, NIST SP 811)',
    (mass, per, expected) => {
      expect(Math.abs(printedKg(mass) / per - expected)).toBeLessThanOrEqual(0.01);
    },
  );
});

describe('[HL5] laws', () => {
  const mass = fc.oneof(fc.integer({ min: 0, max: 40_000 }), fc.constantFrom(750, 3500, 4250, 7500, 12_000));
  const anyHaul = fc.record({
    on: fc.constantFrom('trailer' as const, 'truck' as const),
    operatorKg: fc.constantFrom(0, 75),
    noCombination: fc.boolean(),
    kg: fc.record(Object.fromEntries(fields.map((field) => [field, mass])), { requiredKeys: [] }),
  }) as fc.Arbitrary<Haul>;
  const rules = regions.flatMap((region) => haulRules[region]);
  const at = (rule: HaulRule, answer: RuleAnswer): number =>
    rule.steps.findIndex(({ step }) => step === (answer.kind === 'step' ? answer.step : answer.atLeast));
  const heavier = fc.record({ field: fc.constantFrom(...fields), by: fc.integer({ min: 1, max: 20_000 }) });

  test('[HL5] a heavier load or a higher plate never asks for less licence', () => {
    fc.assert(
      fc.property(anyHaul, heavier, fc.constantFrom(...rules), (given, { field, by }, rule) => {
        const more = { ...given, kg: { ...given.kg, [field]: (given.kg[field] ?? 0) + by } };
        const [before, after] = [ruleAnswer(given, rule), ruleAnswer(more, rule)];
        expect(at(rule, after)).toBeGreaterThanOrEqual(at(rule, before));
      }),
      { numRuns: 2000 },
    );
  });

  test('[HL5] what is not entered stays open: no figure that may still come makes an answer less', () => {
    fc.assert(
      fc.property(
        anyHaul,
        fc.constantFrom(...fields),
        mass,
        fc.constantFrom(...rules),
        (given, field, kg, rule) => {
          const { [field]: _gone, ...rest } = given.kg;
          const without = { ...given, kg: rest };
          const [open, known] = [
            ruleAnswer(without, rule),
            ruleAnswer({ ...given, kg: { ...rest, [field]: kg } }, rule),
          ];
          expect(at(rule, known)).toBeGreaterThanOrEqual(at(rule, open));
          // A firm answer leaned on nothing that is missing: an open one names what it waits for.
          if (open.kind === 'step') expect(known).toMatchObject({ kind: 'step', step: open.step });
          else expect(open.open.length).toBeGreaterThan(0);
        },
      ),
      { numRuns: 2000 },
    );
  });

  test('[HL5] a rating that is exceeded stays so when the load grows, and nothing is within while a mass is open', () => {
    fc.assert(
      fc.property(
        anyHaul,
        fc.constantFrom(...haulMasses),
        fc.integer({ min: 1, max: 9000 }),
        (given, field, by) => {
          const more = { ...given, kg: { ...given.kg, [field]: (given.kg[field] ?? 0) + by } };
          const after = ratingAnswers(more);
          ratingAnswers(given).forEach((answer, index) => {
            if (answer.kind === 'over') expect(after[index]?.kind).toBe('over');
            if (answer.kind === 'within') expect(answer.sum.open).toEqual([]);
          });
        },
      ),
      { numRuns: 1000 },
    );
  });

  test('[HL5] a heavier or longer machine never needs fewer ties, nor a smaller sum', () => {
    const length = fc.integer({ min: 500, max: 20_000 });
    fc.assert(
      fc.property(mass, mass, length, length, fc.boolean(), (kg, more, lengthMm, longer, blocked) => {
        expect(tiesByMass(usTies, kg + more)).toBeGreaterThanOrEqual(tiesByMass(usTies, kg));
        const ties = (mm: number, weight: number): number => tiesByLength(usTies, mm, weight, blocked);
        expect(ties(lengthMm + longer, kg + more)).toBeGreaterThanOrEqual(ties(lengthMm, kg));
        const held = direct(4, 5000);
        const need = (weight: number): number =>
          tieAnswers(usTies, articleSum(haul('kg', { machine: weight })), held).aggregate.need ?? NaN;
        expect(need(kg + more)).toBeGreaterThanOrEqual(need(kg));
      }),
      { numRuns: 1000 },
    );
  });

  test('[HL5] every law ends in a step without limits, and names source and vehicles', () => {
    for (const rule of rules) {
      expect(rule.steps.at(-1)?.any).toEqual([[]]);
      expect(rule.source.text).not.toBe('');
      expect(rule.steps.slice(0, -1).every(({ any }) => any.every((list) => list.length > 0))).toBe(true);
    }
  });
});
