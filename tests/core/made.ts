import { itemById, type Item } from '../../src/core/items.ts';
import { parsePlace, placeSchema } from '../../src/core/keys.ts';
import type { ItemLimits, Limit, LimitSheet, SagSpec } from '../../src/core/limits.ts';
import type { Machine, Shape, TrackKind } from '../../src/core/machine.ts';
import type { Observed, ObservedOf, Reading } from '../../src/core/readings.ts';
import { assert } from '../../src/core/result.ts';
import type { Condition, Rule, RuleSet } from '../../src/core/rules.ts';
import type { ItemOutcome, Scored } from '../../src/core/score.ts';
import type { Source } from '../../src/core/source.ts';
import type { PlacedReading, ScoreInput } from '../../src/core/states.ts';
import type { Walk } from '../../src/core/walk.ts';

/** Small made-up machines, walks, sheets, rules and readings; every test says only what matters to it. */

export const entered: Source = { mark: 'entered', text: 'made up for a test' };

export const shapeOf = (track: TrackKind, more: Partial<Shape> = {}): Shape => ({
  track,
  drive: 'oval',
  idlers: 1,
  bottomRollers: 3,
  carrierRollers: 1,
  slidePlate: false,
  suspension: 'rigid',
  flanges: 'double',
  tensioner: 'grease',
  ...more,
});

export const machineOf = (
  track: TrackKind,
  more: Partial<Shape> = {},
  kind: Machine['kind'] = 'excavator',
): Machine => ({
  v: 1,
  name: 'made up',
  kind,
  shape: shapeOf(track, more),
});

export const walkOf = (more: Partial<Walk> = {}): Walk => ({
  v: 1,
  machine: 'machine/made-up',
  purpose: 'jobsite',
  depth: 'full',
  start: 'walk',
  corner: 'front-left',
  ...more,
});

export function item(id: string): Item {
  const found = itemById(id);
  assert(found, `no item ${id}`);
  return found;
}

export const mm = (value: number, typed = `${value}`): ObservedOf<'length'> => ({
  kind: 'length',
  mm: value,
  typed,
  unit: 'mm',
});

export const finding = (
  name: string,
  more: { count?: number; share?: number } = {},
): ObservedOf<'finding'> => ({ kind: 'finding', finding: name, ...more });

export const crack = (lengthMm: number, depthMm: number, cordVisible = false): ObservedOf<'crack'> => ({
  kind: 'crack',
  lengthMm,
  depthMm,
  cordVisible,
});

export const sag = (value: number | number[], more: Partial<ObservedOf<'sag'>> = {}): ObservedOf<'sag'> => ({
  kind: 'sag',
  mm: [value].flat(),
  typed: [value].flat().map(String),
  unit: 'mm',
  method: 'straightedge-shoe',
  posture: 'ground',
  clean: 'clean',
  ...more,
});

export const pass = (items: string[], more: Partial<ObservedOf<'pass'>> = {}): ObservedOf<'pass'> => ({
  kind: 'pass',
  items,
  except: [],
  seen: 'whole',
  ...more,
});

export const unseen = (why: ObservedOf<'unseen'>['why'] = 'mud'): ObservedOf<'unseen'> => ({
  kind: 'unseen',
  why,
});

type More = Partial<Omit<Reading, 'v' | 'what'>> & { readonly n?: number };

/** A reading at a place written as in a key; `n` is 1 and the spot is `n` where nothing else is said. */
export function read(
  place: string,
  itemId: string,
  what: Observed,
  { n = 1, ...more }: More = {},
): PlacedReading {
  return { place: placeSchema.parse(place), item: itemId, n, reading: { v: 1, what, ...more } };
}

export const limitAt = (at: number, more: Partial<Limit> = {}): Limit => ({
  at,
  means: 'replace',
  hundred: true,
  source: entered,
  ...more,
});

/** Limits of an item in mm, from new to 100 %. */
export const entryOf = (
  itemId: string,
  fresh: number,
  limit: number | Limit[],
  more: Partial<ItemLimits> = {},
): ItemLimits => ({
  item: itemId,
  unit: 'mm',
  new: { at: fresh, source: entered },
  limits: typeof limit === 'number' ? [limitAt(limit)] : limit,
  ...more,
});

/** A sag band read by straightedge to the shoe, on the ground. */
export const bandOf = (low: number, high: number, more: Partial<SagSpec> = {}): SagSpec => ({
  method: 'straightedge-shoe',
  posture: 'ground',
  unit: 'mm',
  low,
  high,
  source: entered,
  ...more,
});

export const sheetOf = (items: ItemLimits[], bands: SagSpec[] = []): LimitSheet => ({
  v: 1,
  name: 'made up',
  items,
  sag: bands,
});

export const ruleOf = (
  id: string,
  items: string | string[],
  when: Condition,
  call: Rule['call'] = 'repair',
  meanwhile: Rule['meanwhile'] = 'work',
  more: Partial<Rule> = {},
): Rule => ({
  id,
  items: [items].flat(),
  when,
  call,
  meanwhile,
  reason: { message: id },
  source: entered,
  ...more,
});

/** A set of these rules that covers every item they are about, and more items if said. */
export const rulesOf = (rules: Rule[], more: Partial<RuleSet> = {}): RuleSet => ({
  v: 1,
  language: 1,
  name: 'made up',
  covers: Object.fromEntries(
    rules.flatMap(({ items }) =>
      items.map(
        (id) => [id, rules.filter((rule) => rule.items.includes(id)).map((rule) => rule.id)] as const,
      ),
    ),
  ),
  rules,
  ...more,
});

interface Made extends Partial<Omit<ScoreInput, 'sheets'>> {
  readonly sheet?: LimitSheet;
  readonly sheets?: ScoreInput['sheets'];
}

/** A rubber machine on a full walk with nothing read, except for what is said. */
export const inputOf = ({ sheet, ...more }: Made = {}): ScoreInput => ({
  machine: machineOf('rubber-cored'),
  walk: walkOf(),
  sheets: sheet ? { left: sheet, right: sheet } : {},
  readings: [],
  ...more,
});

/** The outcome of an item at a place written as in a key. */
export function outcomeAt(
  { outcomes }: Pick<Scored, 'outcomes'>,
  place: string,
  itemId: string,
): ItemOutcome {
  const found = outcomes.find(({ state }) => state.place === place && state.item.id === itemId);
  assert(found, `no outcome for ${itemId} at ${place}`);
  return found;
}

export const openKindsOf = ({ open }: Pick<ItemOutcome, 'open'>): readonly string[] =>
  open.map(({ kind }) => kind);

export const componentOf = (place: string): string => parsePlace(placeSchema.parse(place)).component;

/** Freezes a value through and through, so that a function which changes its input throws. */
export function frozen<T>(value: T): T {
  if (typeof value === 'object' && value !== null && !Object.isFrozen(value)) {
    Object.freeze(value);
    Object.values(value).forEach(frozen);
  }
  return value;
}
