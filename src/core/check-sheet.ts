import { itemById } from './items.ts';
import {
  loads,
  printsDisagree,
  type ItemLimits,
  type Limit,
  type LimitSheet,
  type Load,
  type SagSpec,
} from './limits.ts';
import { compare } from './quantity.ts';

/** What is wrong with an entry of a limit sheet, or (`warns`) only strange. */
export type SheetProblemKind =
  | 'unknown-item'
  | 'not-a-size'
  | 'new-is-limit'
  | 'no-hundred'
  | 'several-hundred'
  | 'limits-both-ways'
  | 'breaks-not-monotone'
  | 'prints-disagree'
  | 'sag-low-above-high'
  | 'sag-derail-below-high'
  | 'several-entries'
  | 'several-sag';

export interface SheetProblem {
  readonly kind: SheetProblemKind;
  /** Which entry: its list and number from 0. */
  readonly at: { readonly list: 'items' | 'sag'; readonly index: number };
  /** The item's id; `sag` for a sag value. */
  readonly item: string;
  readonly params: Readonly<Record<string, string | number>>;
  /** True when the sheet can be used all the same. */
  readonly warns: boolean;
}

type Found = Pick<SheetProblem, 'kind' | 'params' | 'warns'>;

const wrong = (kind: SheetProblemKind, params: SheetProblem['params'] = {}): Found => ({
  kind,
  params,
  warns: false,
});
const strange = (kind: SheetProblemKind, params: SheetProblem['params'] = {}): Found => ({
  kind,
  params,
  warns: true,
});

const sizedAsks = new Set(['length', 'pitch', 'tread', 'pair']);

function itemProblem(id: string): readonly Found[] {
  const item = itemById(id);
  if (!item) return [strange('unknown-item', { item: id })];
  return sizedAsks.has(item.ask.kind) ? [] : [wrong('not-a-size', { item: id })];
}

const appliesTo = (limit: Limit, load: Load): boolean => !limit.loads || limit.loads.includes(load);

const hundredsFor = (entry: ItemLimits, load: Load): readonly Limit[] =>
  entry.limits.filter((limit) => limit.hundred && appliesTo(limit, load));

/** Exactly one limit may count as 100 % under each load; without any, worn cannot be counted. */
function hundredProblems(entry: ItemLimits): readonly Found[] {
  if (entry.limits.length === 0) return [];
  const crowded = loads.find((load) => hundredsFor(entry, load).length > 1);
  if (crowded) return [wrong('several-hundred', { load: crowded })];
  const bare = loads.find((load) => hundredsFor(entry, load).length === 0);
  return bare ? [strange('no-hundred', { load: bare })] : [];
}

function directionProblems(entry: ItemLimits): readonly Found[] {
  const fresh = entry.new?.at;
  if (fresh === undefined) return [];
  const equal = entry.limits.find(({ at }) => compare(at, '=', fresh));
  if (equal) return [wrong('new-is-limit', { at: fresh, unit: entry.unit })];
  const signs = new Set(entry.limits.map(({ at }) => Math.sign(at - fresh)));
  return signs.size > 1 ? [wrong('limits-both-ways', { at: fresh, unit: entry.unit })] : [];
}

/** Break points must rise from new (0 %) to the limit (100 %), in size and in percent. */
function breakProblems(entry: ItemLimits): readonly Found[] {
  const { breaks = [], new: fresh } = entry;
  const limit = entry.limits.find(({ hundred }) => hundred);
  if (breaks.length === 0 || !fresh || !limit) return [];
  const sign = Math.sign(limit.at - fresh.at);
  const inner = [...breaks].sort((a, b) => sign * (a.at - b.at));
  const curve = [{ at: fresh.at, percent: 0 }, ...inner, { at: limit.at, percent: 100 }];
  const rises = curve.every((knot, i) => {
    const next = curve[i + 1];
    return !next || (sign * (next.at - knot.at) > 0 && next.percent > knot.percent);
  });
  return rises ? [] : [wrong('breaks-not-monotone')];
}

function printProblems(entry: ItemLimits): readonly Found[] {
  return entry.limits.flatMap(({ at, means, also }) => {
    const main = { at, unit: entry.unit, resolution: entry.resolution };
    if (!also || !printsDisagree(main, also)) return [];
    return [
      strange('prints-disagree', { at, unit: entry.unit, alsoAt: also.at, alsoUnit: also.unit, means }),
    ];
  });
}

const entryProblems = (entry: ItemLimits): readonly Found[] => [
  ...itemProblem(entry.item),
  ...directionProblems(entry),
  ...hundredProblems(entry),
  ...breakProblems(entry),
  ...printProblems(entry),
];

function sagProblems(spec: SagSpec): readonly Found[] {
  const { low, high, also, derailAbove, unit } = spec;
  const found: Found[] = [];
  if (low > high || (also && also.low > also.high))
    found.push(wrong('sag-low-above-high', { low, high, unit }));
  if (derailAbove !== undefined && derailAbove < high)
    found.push(wrong('sag-derail-below-high', { at: derailAbove, high, unit }));
  return [...found, ...sagPrintProblems(spec)];
}

/** Either end of the band, printed in two units that are not the same length. */
function sagPrintProblems({ low, high, unit, resolution, also }: SagSpec): readonly Found[] {
  if (!also) return [];
  const ends = [
    [low, also.low],
    [high, also.high],
  ] as const;
  return ends
    .filter(([at, alsoAt]) =>
      printsDisagree({ at, unit, resolution }, { at: alsoAt, unit: also.unit, resolution: also.resolution }),
    )
    .map(([at, alsoAt]) =>
      strange('prints-disagree', { at, unit, alsoAt, alsoUnit: also.unit, means: 'sag' }),
    );
}

/** Entries that a lookup could not tell apart, of which only the first would ever be used. */
function repeats<T>(list: readonly T[], same: (entry: T) => string): ReadonlySet<number> {
  const seen = new Set<string>();
  return new Set(
    list.flatMap((entry, i) => {
      const mark = same(entry);
      if (seen.has(mark)) return [i];
      seen.add(mark);
      return [];
    }),
  );
}

const entryMark = ({ item, positions }: ItemLimits): string => JSON.stringify([item, positions ?? 'all']);
const sagMark = ({ method, posture, loadN }: SagSpec): string =>
  JSON.stringify([method, posture, loadN ?? 0]);

/**
 * What a limit sheet contradicts itself in, entry by entry; empty for a sound sheet. Problems that only warn leave
 * the sheet usable; the others make an item open or its percentage wrong.
 */
export function checkSheet(sheet: LimitSheet): readonly SheetProblem[] {
  const itemTwice = repeats(sheet.items, entryMark);
  const sagTwice = repeats(sheet.sag, sagMark);
  return [
    ...sheet.items.flatMap((entry, index) => {
      const found = [...entryProblems(entry), ...(itemTwice.has(index) ? [wrong('several-entries')] : [])];
      return found.map((each) => ({ ...each, at: { list: 'items' as const, index }, item: entry.item }));
    }),
    ...sheet.sag.flatMap((spec, index) => {
      const found = [...sagProblems(spec), ...(sagTwice.has(index) ? [wrong('several-sag')] : [])];
      return found.map((each) => ({ ...each, at: { list: 'sag' as const, index }, item: 'sag' }));
    }),
  ];
}
