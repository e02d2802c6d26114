import fc from 'fast-check';
import { itemsIn } from '../../src/core/conditions.ts';
import { items, type Item } from '../../src/core/items.ts';
import type { ItemLimits, Limit, LimitSheet, SagSpec } from '../../src/core/limits.ts';
import { limitsFor } from '../../src/core/limits.ts';
import { trackKinds, type Machine } from '../../src/core/machine.ts';
import { plausibility } from '../../src/core/plausible.ts';
import { lengthUnits, fromMm, toMm } from '../../src/core/quantity.ts';
import type { Observed } from '../../src/core/readings.ts';
import type { Condition, Rule, RuleSet } from '../../src/core/rules.ts';
import { slotsOf, type Slot } from '../../src/core/slots.ts';
import type { PlacedReading, ScoreInput } from '../../src/core/states.ts';
import type { Walk } from '../../src/core/walk.ts';
import { startingRules } from '../../src/reference/rules-starting.ts';
import { bandOf, entered, limitAt, machineOf, mm, pass, read, ruleOf, sag, sheetOf, walkOf } from './made.ts';

/** Random machines, sheets, rule sets and walks: whatever a law must hold for. */

export const machines: fc.Arbitrary<Machine> = fc
  .record({
    track: fc.constantFrom(...trackKinds),
    idlers: fc.integer({ min: 1, max: 2 }),
    bottomRollers: fc.integer({ min: 0, max: 4 }),
    carrierRollers: fc.integer({ min: 0, max: 2 }),
    slidePlate: fc.boolean(),
    suspension: fc.constantFrom('rigid' as const, 'bogie' as const),
    tensioner: fc.constantFrom('grease' as const, 'spring' as const),
    kind: fc.constantFrom('excavator' as const, 'track-loader' as const, 'dozer' as const),
  })
  .map(({ track, kind, ...shape }) => machineOf(track, shape, kind));

export const walks: fc.Arbitrary<Walk> = fc
  .record({
    depth: fc.constantFrom('short' as const, 'full' as const),
    start: fc.constantFrom('walk' as const, 'track-off' as const, 'drive-first' as const),
    corner: fc.constantFrom(
      'front-left' as const,
      'rear-left' as const,
      'rear-right' as const,
      'front-right' as const,
    ),
    load: fc.option(fc.constantFrom('light' as const, 'average' as const, 'heavy' as const), {
      nil: undefined,
    }),
    opened: fc.subarray(items.filter(({ depth }) => depth !== 'short').map(({ id }) => id)),
  })
  .map(({ load, ...more }) => walkOf({ ...more, ...(load && { load }) }));

/** Evenly spread, for doubles crowd round zero. */
export const share = (min: number, max: number): fc.Arbitrary<number> =>
  fc.integer({ min: 0, max: 1_000_000 }).map((part) => min + (part / 1_000_000) * (max - min));

/** New and limit of an item within what is plausible for it; a pitch grows little. */
function sizesOf({ id, plausibleMm = [0, 100] }: Item): fc.Arbitrary<readonly [number, number]> {
  const [least, most] = plausibleMm;
  const at = (part: number): number => least + part * (most - least);
  if (id === 'pitch')
    return fc.tuple(share(0.3, 0.7), share(0.01, 0.04)).map(([n, way]) => [at(n), at(n) * (1 + way)]);
  const grows = id === 'idler-tread';
  return fc
    .tuple(share(0.3, 0.4), share(0.6, 0.7))
    .map(([a, b]) => (grows ? [at(a), at(b)] : [at(b), at(a)]));
}

const loadLimits = (at: number, milder: number): readonly (readonly Limit[])[] => [
  [limitAt(at)],
  [limitAt(at, { loads: ['average', 'heavy'] }), limitAt(milder, { loads: ['light'] })],
  [limitAt(at), limitAt(milder, { means: 'destruction', hundred: false })],
];

function entriesOf(item: Item): fc.Arbitrary<ItemLimits> {
  const extras = fc.record({
    unit: fc.constantFrom(...lengthUnits),
    kind: fc.nat({ max: 2 }),
    tolerance: fc.option(share(0, 1), { nil: undefined }),
    breaks: fc.constantFrom<readonly (readonly [number, number])[]>(
      [],
      [[0.5, 30]],
      [
        [0.2, 50],
        [0.6, 70],
      ],
    ),
  });
  return fc.tuple(sizesOf(item), extras).map(([[fresh, limit], { unit, kind, tolerance, breaks }]) => {
    const printed = (way: number): number => fromMm(fresh + way * (limit - fresh), unit);
    return {
      item: item.id,
      unit,
      new: { at: printed(0), source: entered, ...(tolerance !== undefined && { tolerance }) },
      limits: [...(loadLimits(printed(1), printed(1.2))[kind] ?? [])],
      breaks: breaks.map(([way, percent]) => ({ at: printed(way), percent, source: entered })),
    };
  });
}

export const sagSpecs: fc.Arbitrary<SagSpec> = fc
  .record({ low: share(10, 100), width: share(1, 60), derail: fc.option(share(1, 60), { nil: undefined }) })
  .map(({ low, width, derail }) =>
    bandOf(low, low + width, derail === undefined ? {} : { derailAbove: low + width + derail }),
  );

const sized = items.filter(({ ask }) => ['length', 'pitch', 'tread', 'pair'].includes(ask.kind));

/** A sheet with most of the sized items and, mostly, a sag band. */
export const sheets: fc.Arbitrary<LimitSheet> = fc
  .tuple(
    fc.tuple(...sized.map((item) => fc.option(entriesOf(item), { nil: undefined, freq: 8 }))),
    fc.option(sagSpecs, { nil: undefined, freq: 8 }),
  )
  .map(([entries, band]) =>
    sheetOf(
      entries.filter((each) => each !== undefined),
      band ? [band] : [],
    ),
  );

const acts = fc.tuple(
  fc.constantFrom(
    'recheck' as const,
    'adjust' as const,
    'repair' as const,
    'replace' as const,
    'park' as const,
  ),
  fc.constantFrom('work' as const, 'light-work' as const, 'move-only' as const, 'nothing' as const),
);

const worn = fc
  .tuple(fc.constantFrom(...sized), share(20, 180))
  .map(([{ id }, percent]): Condition => ({ worn: id, op: '>=', percent }));

/** A few rules of wear at random percentages, some of two items, as somebody may write them. */
const wearRules: fc.Arbitrary<readonly Rule[]> = fc
  .array(fc.tuple(worn, fc.option(worn, { nil: undefined }), fc.boolean(), acts), { maxLength: 6 })
  .map((rows) =>
    rows.map(([first, second, all, [call, meanwhile]], i) => {
      const both = second ? (all ? { all: [first, second] } : { any: [first, second] }) : first;
      return ruleOf(`made.${i}`, [...itemsIn(both)], both, call, meanwhile);
    }),
  );

/** The starting rules, and beside them some of somebody’s own. */
export const ruleSets: fc.Arbitrary<RuleSet> = wearRules.map((own) => ({
  ...startingRules,
  rules: [...startingRules.rules, ...own],
}));

const asSize: Readonly<Record<string, (value: number) => Observed>> = {
  pitch: (value) => ({ kind: 'pitch', totalMm: 4 * value, links: 4, typed: `${4 * value}`, unit: 'mm' }),
  tread: (value) => ({
    kind: 'tread',
    centreMm: value / 2 + 100,
    linkMm: 100,
    typed: ['', '100'],
    unit: 'mm',
  }),
  pair: (value) => ({
    kind: 'pair',
    outerMm: value,
    innerMm: value,
    typed: [`${value}`, `${value}`],
    unit: 'mm',
  }),
};

/** A reading of a sized item that stands for this many millimetres. */
export const sizeReading = (item: Item, value: number): Observed => (asSize[item.ask.kind] ?? mm)(value);

const limitsAt = (slot: Slot, sheet: LimitSheet): ItemLimits | undefined =>
  limitsFor(
    sheet,
    slot.item.id,
    slot.number === undefined ? undefined : { number: slot.number, of: slot.parts },
  );

/** Sizes of an item from better than new to far past its limit, none of which would be questioned. */
function sizesFor(slot: Slot, sheet: LimitSheet, load: Walk['load']): fc.Arbitrary<number> {
  const entry = limitsAt(slot, sheet);
  const [least, most] = slot.item.plausibleMm ?? [0, 100];
  const limit = entry?.limits[0];
  const at = (way: number): number => {
    if (!entry?.new || !limit) return least + ((way + 0.25) / 2.25) * (most - least);
    return toMm(entry.new.at + way * (limit.at - entry.new.at), entry.unit);
  };
  return share(-0.25, 2)
    .map(at)
    .filter((value) => !plausibility(slot.item, { mm: value, uMm: 0 }, entry, load));
}

/** Readings of one place from fine to severe, along the declared order of its item. */
export function readingsFor(slot: Slot, sheet: LimitSheet, load: Walk['load']): fc.Arbitrary<Observed> {
  const { ask } = slot.item;
  if (ask.kind === 'finding') {
    const marks = fc.record({ count: fc.nat({ max: 9 }), share: share(0, 1) }, { requiredKeys: [] });
    return fc
      .tuple(fc.constantFrom(...ask.findings), marks)
      .map(([name, more]) => ({ kind: 'finding', finding: name, ...more }));
  }
  if (ask.kind === 'crack')
    return fc.record({
      kind: fc.constant('crack' as const),
      lengthMm: fc.nat({ max: 60 }),
      depthMm: fc.nat({ max: 20 }),
      cordVisible: fc.boolean(),
    });
  if (ask.kind === 'sag') return share(0, 200).map((value) => sag(value));
  return sizesFor(slot, sheet, load).map((value) => sizeReading(slot.item, value));
}

const rowOf = ({ row }: Slot): string => row;

/** Passes of whole rows, each of some of its items and with some exceptions. */
function passesOf(slots: readonly Slot[]): fc.Arbitrary<readonly PlacedReading[]> {
  const rows = [...new Set(slots.map(rowOf))];
  const one = (row: string): fc.Arbitrary<PlacedReading> => {
    const here = slots.filter((slot) => slot.row === row);
    const ids = [...new Set(here.map(({ item }) => item.id))];
    const numbers = [...new Set(here.flatMap(({ number }) => number ?? []))];
    return fc
      .tuple(fc.subarray(ids), fc.subarray(numbers), fc.boolean())
      .map(([passed, except, half]) =>
        read(row, 'pass-all', pass(passed, { except, seen: half ? 'half' : 'whole' })),
      );
  };
  return fc.subarray(rows).chain((chosen) => fc.tuple(...chosen.map(one)));
}

export interface RandomWalk {
  readonly input: ScoreInput;
  readonly slots: readonly Slot[];
  readonly sheet: LimitSheet;
}

/** A whole random walk: some rows passed, some places read once to three times. */
export const randomWalks: fc.Arbitrary<RandomWalk> = fc
  .tuple(machines, walks, sheets, ruleSets)
  .chain(([machine, walk, sheet, rules]) => {
    const slots = slotsOf(machine);
    const one = (slot: Slot): fc.Arbitrary<readonly PlacedReading[]> =>
      fc
        .array(
          fc.tuple(
            readingsFor(slot, sheet, walk.load),
            fc.option(fc.integer({ min: 1, max: 3 }), { nil: undefined }),
          ),
          { minLength: 1, maxLength: 3 },
        )
        .map((list) =>
          list.map(([what, spot], i) =>
            read(slot.place, slot.item.id, what, { n: i + 1, ...(spot !== undefined && { spot }) }),
          ),
        );
    return fc
      .tuple(
        passesOf(slots),
        fc.subarray([...slots], { maxLength: 40 }).chain((chosen) => fc.tuple(...chosen.map(one))),
      )
      .map(([passes, readings]) => ({
        slots,
        sheet,
        input: {
          machine,
          walk,
          sheets: { left: sheet, right: sheet },
          rules,
          readings: [...passes, ...readings.flat()],
        },
      }));
  });
