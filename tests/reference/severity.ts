import fc from 'fast-check';
import type { Item } from '../../src/core/items.ts';
import {
  chooseLimit,
  limitsFor,
  type ItemLimits,
  type LimitSheet,
  type SagSpec,
} from '../../src/core/limits.ts';
import type { Observed } from '../../src/core/readings.ts';

/** Two readings of one item, the second at least as severe as the first along the item's declared order. */
export type Pair = readonly [Observed, Observed];

const sorted = (a: number, b: number): readonly [number, number] => (a <= b ? [a, b] : [b, a]);
const pairOf = (arb: fc.Arbitrary<number>): fc.Arbitrary<readonly [number, number]> =>
  fc.tuple(arb, arb).map(([a, b]) => sorted(a, b));

const asLength = (mm: number): Observed => ({ kind: 'length', mm, typed: String(mm), unit: 'mm' });
const asSize: Readonly<Record<string, (mm: number) => Observed>> = {
  length: asLength,
  pitch: (mm) => ({ kind: 'pitch', totalMm: 4 * mm, links: 4, typed: String(4 * mm), unit: 'mm' }),
  tread: (mm) => ({ kind: 'tread', centreMm: mm / 2 + 100, linkMm: 100, typed: ['', '100'], unit: 'mm' }),
  pair: (mm) => ({ kind: 'pair', outerMm: mm, innerMm: mm, typed: [String(mm), String(mm)], unit: 'mm' }),
};

/** Percent worn within the plausible range, often just on either side of where a rule turns. */
const percents = fc.oneof(
  fc.double({ min: -25, max: 200, noNaN: true }),
  fc.constantFrom(0, 49, 50, 51, 74, 75, 76, 99, 100, 101, 109, 110, 111, 119, 120, 121),
);

/** Sizes of two percentages within the plausible range, or of any size where the sheet has no limit. */
function sizes(item: Item, entry: ItemLimits | undefined): fc.Arbitrary<readonly [number, number]> {
  const limit = entry && chooseLimit(entry, 'hundred', undefined);
  const fresh = entry?.new;
  if (fresh && limit) {
    return pairOf(percents).map(([a, b]) => {
      const at = (percent: number): number => fresh.at + (percent / 100) * (limit.at - fresh.at);
      return [at(a), at(b)] as const;
    });
  }
  const [least, most] = item.plausibleMm ?? [0, 100];
  return pairOf(fc.double({ min: least, max: most, noNaN: true })).map(([a, b]) => [b, a] as const);
}

const asSag = (spec: SagSpec | undefined, mm: number): Observed => ({
  kind: 'sag',
  mm: [mm],
  typed: [String(mm)],
  unit: 'mm',
  method: spec?.method ?? 'string',
  posture: spec?.posture ?? 'ground',
  clean: spec?.clean ?? 'clean',
  ...(spec?.loadN !== undefined && { loadN: spec.loadN }),
});

/** Sag on one side of the band, ever further from it. */
function sags(spec: SagSpec | undefined): fc.Arbitrary<Pair> {
  if (!spec) return fc.constant([asSag(spec, 20), asSag(spec, 20)]);
  const middle = (spec.low + spec.high) / 2;
  const away = pairOf(fc.double({ min: 0, max: 1, noNaN: true }));
  return fc.tuple(away, fc.boolean()).map(([[near, far], loose]) => {
    const at = (share: number): number => (loose ? middle + share * 60 : middle - share * middle);
    return [asSag(spec, at(near)), asSag(spec, at(far))];
  });
}

const cracks: fc.Arbitrary<Pair> = fc
  .tuple(
    pairOf(fc.integer({ min: 0, max: 90 })),
    pairOf(fc.integer({ min: 0, max: 20 })),
    pairOf(fc.nat({ max: 1 })),
  )
  .map(([length, depth, cord]) => {
    const at = (index: 0 | 1): Observed => ({
      kind: 'crack',
      lengthMm: length[index],
      depthMm: depth[index],
      cordVisible: cord[index] === 1,
    });
    return [at(0), at(1)];
  });

function findings(names: readonly string[]): fc.Arbitrary<Pair> {
  const marks = fc.record({
    count: fc.integer({ min: 1, max: 9 }),
    share: fc.double({ min: 0, max: 1, noNaN: true }),
  });
  const indexes = pairOf(fc.nat({ max: names.length - 1 }));
  return fc.tuple(indexes, marks).map(([[a, b], counted]) => {
    const at = (index: number): Observed => ({ kind: 'finding', finding: names[index] ?? '', ...counted });
    return [at(a), at(b)];
  });
}

/** Pairs of readings of an item at a part, all else equal. */
export function pairsFor(
  item: Item,
  sheet: LimitSheet,
  position: { number: number; of: number } | undefined,
): fc.Arbitrary<Pair> {
  if (item.ask.kind === 'finding') return findings(item.ask.findings);
  if (item.ask.kind === 'crack') return cracks;
  if (item.ask.kind === 'sag') return sags(sheet.sag[0]);
  const make = asSize[item.ask.kind] ?? asLength;
  return sizes(item, limitsFor(sheet, item.id, position)).map(([a, b]) => [make(a), make(b)]);
}
