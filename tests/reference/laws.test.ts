import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { callRank, meanwhileRank } from '../../src/core/calls.ts';
import { itemsIn } from '../../src/core/conditions.ts';
import { numbersOf } from '../../src/core/groups.ts';
import { components, itemsOf, partsASide, type Item } from '../../src/core/items.ts';
import { makePlace, type Place, type PlaceSide } from '../../src/core/keys.ts';
import type { LimitSheet } from '../../src/core/limits.ts';
import type { Machine } from '../../src/core/machine.ts';
import type { RuleSet } from '../../src/core/rules.ts';
import { score, type Scored } from '../../src/core/score.ts';
import type { PlacedReading, ScoreInput } from '../../src/core/states.ts';
import { assert } from '../../src/core/result.ts';
import { startingRules } from '../../src/reference/rules-starting.ts';
import { startingSheets } from '../../src/reference/sheets.ts';
import { inputOf as checkInput } from '../checks/walk-file.ts';
import { pairsFor } from './severity.ts';
import { allPassed, fullWalk, inputOf, machineOn } from './walkaround.ts';

interface Bench {
  readonly name: string;
  readonly machine: Machine;
  readonly sheet: LimitSheet;
  readonly rules: RuleSet;
}

function startingBench(id: string, track: Parameters<typeof machineOn>[0]): Bench {
  const sheet = startingSheets.find(({ key }) => key === `limits/starting-${id}`)?.value;
  assert(sheet, `no sheet ${id}`);
  return { name: `the starting rules on ${id}`, machine: machineOn(track), sheet, rules: startingRules };
}

function publishedBench(name: string): Bench {
  const { machine, sheets, rules } = checkInput(name);
  assert(sheets.left && rules, `${name} has a sheet and rules`);
  return { name: `the published rules of ${name}`, machine, sheet: sheets.left, rules };
}

const benches: readonly Bench[] = [
  startingBench('rubber-mini', 'rubber-cored'),
  startingBench('rubber-loader-coreless', 'rubber-coreless'),
  startingBench('steel-23t', 'steel-pads'),
  startingBench('dozer-mid', 'steel'),
  publishedBench('rubber-first-maker'),
  publishedBench('rubber-second-maker'),
  publishedBench('rubber-third-maker'),
  publishedBench('steel'),
];

interface Slot {
  readonly item: Item;
  readonly place: Place;
  readonly position: { number: number; of: number } | undefined;
}

function slotsOf({ shape }: Machine): readonly Slot[] {
  return components.flatMap((component) => {
    const parts = partsASide(component, shape);
    const sides: readonly PlaceSide[] = component === 'machine' ? ['whole'] : ['left', 'right'];
    return sides.flatMap((side) =>
      numbersOf(component, parts).flatMap((number) =>
        itemsOf(component, shape).map((item) => ({
          item,
          place: makePlace({ side, component, ...(number !== undefined && { number }) }),
          position: number === undefined ? undefined : { number, of: parts },
        })),
      ),
    );
  });
}

type Draw = <T>(arb: fc.Arbitrary<T>) => T;

const readingAt = ({ place, item }: Slot, what: PlacedReading['reading']['what']): PlacedReading => ({
  place,
  item: item.id,
  n: 1,
  reading: { v: 1, what, spot: 1 },
});

/** Items that one rule looks at together: where the reading of one could make light of another. */
const jointItems = ({ rules }: RuleSet): readonly (readonly string[])[] =>
  rules
    .map(({ items, when }) => [...new Set([...items, ...itemsIn(when)])])
    .filter((together) => together.length > 1);

/**
 * A walk with a random choice of items read, each at a random severity, on top of what was passed by eye. What a
 * rule looks at together with the item in question is always read.
 */
function drawReadings(bench: Bench, draw: Draw, but?: Slot): readonly PlacedReading[] {
  const slots = slotsOf(bench.machine).filter((slot) => slot !== but);
  const joint = jointItems(bench.rules).filter((together) => but && together.includes(but.item.id));
  const some = draw(fc.subarray([...slots], { maxLength: 25 }));
  const chosen = slots.filter((slot) => joint.flat().includes(slot.item.id) || some.includes(slot));
  const read = chosen.map((slot) =>
    readingAt(slot, draw(pairsFor(slot.item, bench.sheet, slot.position))[draw(fc.constantFrom(0, 1))]),
  );
  const passed = draw(fc.boolean()) ? allPassed(bench.machine, fullWalk) : [];
  return [...passed, ...read];
}

const scoreOf = (bench: Bench, readings: readonly PlacedReading[], more: Partial<ScoreInput> = {}): Scored =>
  score({ ...inputOf(bench.machine, bench.sheet, bench.rules, readings), ...more });

interface Outcome {
  readonly call: number;
  readonly meanwhile: number;
  readonly open: boolean;
}

function outcomesIn({ outcomes, verdict }: Scored): ReadonlyMap<string, Outcome> {
  const each = outcomes.map(
    ({ state, atLeast, meanwhile, open }) =>
      [
        `${state.place} ${state.item.id}`,
        { call: callRank(atLeast), meanwhile: meanwhileRank(meanwhile), open: open.length > 0 },
      ] as const,
  );
  const machine = {
    call: callRank(verdict.atLeast),
    meanwhile: meanwhileRank(verdict.meanwhile),
    open: outcomes.some(({ open }) => open.length > 0),
  };
  return new Map([...each, ['the machine', machine]]);
}

/** The outcomes that are milder after than before; with `openMay`, those that did not become open either. */
function milder(before: Scored, after: Scored, openMay: boolean): readonly string[] {
  const now = outcomesIn(after);
  return [...outcomesIn(before)].flatMap(([name, was]) => {
    const is = now.get(name);
    if (is && is.call >= was.call && is.meanwhile >= was.meanwhile) return [];
    return openMay && is?.open ? [] : [name];
  });
}

/** Rules that gave a reason; taking out another could change nothing. */
const firedIn = ({ outcomes }: Scored): readonly string[] => [
  ...new Set(outcomes.flatMap(({ reasons }) => reasons.map(({ rule }) => rule))),
];

/** Readings of items that need something, and the passes. */
function callingReadings({ outcomes }: Scored, readings: readonly PlacedReading[]): readonly PlacedReading[] {
  const calling = new Set(
    outcomes.filter(({ atLeast }) => atLeast !== 'run').map(({ state }) => `${state.place} ${state.item.id}`),
  );
  return readings.filter(
    ({ place, item, reading }) => reading.what.kind === 'pass' || calling.has(`${place} ${item}`),
  );
}

const seed = 20_260_101;
const check = (property: (draw: Draw) => void, numRuns = 30): void =>
  fc.assert(
    fc.property(fc.gen(), (g) => property((arb) => g(() => arb))),
    { seed, numRuns, endOnFailure: true },
  );

// A second or two alone; much longer beside everything else that a full run does on two cores.
const patience = { timeout: 60_000 };

describe.each(benches.map((bench) => [bench.name, bench] as const))('[N4] %s', (_, bench) => {
  // Both sides are alike, so that one is enough for what changes.
  const ordered = slotsOf(bench.machine).filter(
    ({ item, place }) => item.order !== 'none' && !place.startsWith('right'),
  );
  const together = new Set(jointItems(bench.rules).flat());
  const joint = ordered.filter(({ item }) => together.has(item.id));

  test(`[G1] nothing grows milder along an item’s severity order (seed ${seed})`, patience, () => {
    check((draw) => {
      const among = joint.length > 0 && draw(fc.nat({ max: 2 })) > 0 ? joint : ordered;
      const slot = draw(fc.constantFrom(...among));
      const others = drawReadings(bench, draw, slot);
      const [mild, severe] = draw(pairsFor(slot.item, bench.sheet, slot.position));
      const before = scoreOf(bench, [...others, readingAt(slot, mild)]);
      const after = scoreOf(bench, [...others, readingAt(slot, severe)]);
      expect(milder(before, after, false)).toEqual([]);
    }, 150);
  });

  test(`[G2] taking a reading back makes nothing milder without opening it (seed ${seed})`, patience, () => {
    check((draw) => {
      const readings = drawReadings(bench, draw);
      const before = scoreOf(bench, readings);
      const calling = callingReadings(before, readings);
      if (calling.length === 0) return;
      const gone = draw(fc.constantFrom(...calling));
      const { place, item, n } = gone;
      const rest = readings.filter((each) => each !== gone);
      const after = scoreOf(bench, rest, { takenBack: [{ place, item, n }] });
      expect(milder(before, after, true)).toEqual([]);
    });
  });

  test(`[G3] taking a rule out makes nothing milder without opening it (seed ${seed})`, patience, () => {
    check((draw) => {
      const readings = drawReadings(bench, draw);
      const before = scoreOf(bench, readings);
      const fired = firedIn(before);
      if (fired.length === 0) return;
      const gone = draw(fc.constantFrom(...fired));
      const rules = { ...bench.rules, rules: bench.rules.rules.filter(({ id }) => id !== gone) };
      expect(milder(before, scoreOf(bench, readings, { rules }), true)).toEqual([]);
    });
  });

  test(
    `[G4] taking the rule set or the sheet away makes nothing milder without opening it (seed ${seed})`,
    patience,
    () => {
      check((draw) => {
        const readings = drawReadings(bench, draw);
        const before = scoreOf(bench, readings);
        expect(milder(before, scoreOf(bench, readings, { rules: undefined }), true)).toEqual([]);
        expect(milder(before, scoreOf(bench, readings, { sheets: {} }), true)).toEqual([]);
      });
    },
  );
});
