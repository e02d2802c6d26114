import { isNeeded, isPassable, numbersOf, samplesNeeded } from './groups.ts';
import { components, itemsOf, partsASide, type Component, type Item } from './items.ts';
import { makePlace, parsePlace, type Place, type PlaceSide } from './keys.ts';
import { grows, limitsFor, type ItemLimits, type LimitSheet } from './limits.ts';
import type { Machine } from './machine.ts';
import { plausibility } from './plausible.ts';
import type { ObservedOf, Reading } from './readings.ts';
import type { Open } from './reason.ts';
import type { RuleSet } from './rules.ts';
import { judgeSag, type SagOutcome } from './sag.ts';
import { isSized, sample, sizeOf, type Sampled, type ToolUncertainty } from './sizes.ts';
import type { Walk } from './walk.ts';
import { wear, type Wear } from './wear.ts';

/** A reading with where it belongs. */
export interface PlacedReading {
  readonly place: Place;
  readonly item: string;
  readonly n: number;
  readonly reading: Reading;
}

export interface ScoreInput {
  readonly machine: Machine;
  readonly walk: Walk;
  /** The limit sheet of each side, since a fitted part may have its own. */
  readonly sheets: { readonly left?: LimitSheet | undefined; readonly right?: LimitSheet | undefined };
  readonly rules?: RuleSet | undefined;
  readonly readings: readonly PlacedReading[];
  /** Readings that were removed; their places are open until read again. */
  readonly takenBack?: readonly Omit<PlacedReading, 'reading'>[];
  /** Readings made by a newer version of the app, which this one cannot read. */
  readonly newer?: readonly Omit<PlacedReading, 'reading'>[];
  /** Other values of readings that clash with those in `readings`. */
  readonly clashes?: readonly PlacedReading[];
  readonly tools?: ToolUncertainty;
  /** Years since each side's track was fitted. */
  readonly ageYears?: { readonly left?: number; readonly right?: number };
}

export interface Crack {
  readonly lengthMm: number;
  readonly depthMm: number;
  readonly cordVisible: boolean;
}

/** All that is known of one item at one place. */
export interface ItemState {
  readonly item: Item;
  readonly place: Place;
  readonly side: PlaceSide;
  readonly number: number | undefined;
  /** How many such parts the side has. */
  readonly parts: number;
  readonly needed: boolean;
  readonly known: boolean;
  readonly passed: boolean;
  readonly finding?: string;
  readonly count?: number;
  readonly share?: number;
  readonly cracks: readonly Crack[];
  readonly sampled?: Sampled;
  readonly wear?: Wear;
  readonly limits?: ItemLimits;
  readonly sag?: SagOutcome;
  readonly open: readonly Open[];
}

export const stateKey = (place: Place, itemId: string): string => `${place}|${itemId}`;

const noCrack: Crack = { lengthMm: 0, depthMm: 0, cordVisible: false };

interface Pass {
  readonly place: Place;
  readonly what: ObservedOf<'pass'>;
}

function passesOf(input: ScoreInput): readonly Pass[] {
  return input.readings.flatMap(({ place, reading }) =>
    reading.what.kind === 'pass' ? [{ place, what: reading.what }] : [],
  );
}

/** The pass that speaks for an item at a place, if one does. */
function passFor(
  passes: readonly Pass[],
  item: Item,
  side: PlaceSide,
  number: number | undefined,
): Pass | undefined {
  if (!isPassable(item)) return undefined;
  return passes.find(({ place, what }) => {
    const of = parsePlace(place);
    if (of.side !== side || of.component !== item.component || !what.items.includes(item.id)) return false;
    return (
      (of.number === undefined || of.number === number) &&
      (number === undefined || !what.except.includes(number))
    );
  });
}

interface Slot {
  readonly item: Item;
  readonly place: Place;
  readonly side: PlaceSide;
  readonly number: number | undefined;
  readonly parts: number;
}

function slotsOf(machine: Machine): readonly Slot[] {
  return components.flatMap((component) => {
    const sides: readonly PlaceSide[] = component === 'machine' ? ['whole'] : ['left', 'right'];
    return sides.flatMap((side) => slotsOfSide(machine, component, side));
  });
}

function slotsOfSide(machine: Machine, component: Component, side: PlaceSide): readonly Slot[] {
  const parts = partsASide(component, machine.shape);
  return numbersOf(component, parts).flatMap((number) => {
    const place = makePlace({ side, component, ...(number !== undefined && { number }) });
    return itemsOf(component, machine.shape).map((item) => ({ item, place, side, number, parts }));
  });
}

const worstFinding = (item: Item, findings: readonly string[]): string | undefined => {
  const { ask } = item;
  if (ask.kind !== 'finding') return findings.at(-1);
  return [...findings].sort((a, b) => ask.findings.indexOf(b) - ask.findings.indexOf(a))[0];
};

type Known = Pick<
  ItemState,
  'finding' | 'count' | 'share' | 'cracks' | 'sampled' | 'wear' | 'limits' | 'sag'
>;

const sheetOf = (input: ScoreInput, side: PlaceSide): LimitSheet | undefined =>
  side === 'right' ? input.sheets.right : input.sheets.left;

function sized(slot: Slot, mine: readonly PlacedReading[], input: ScoreInput): [Partial<Known>, Open[]] {
  const sheet = sheetOf(input, slot.side);
  const position = slot.number === undefined ? undefined : { number: slot.number, of: slot.parts };
  const limits = sheet && limitsFor(sheet, slot.item.id, position);
  const open: Open[] = [];
  const sizes = mine.flatMap(({ n, reading }) => {
    if (!isSized(reading.what)) return [];
    const size = { ...sizeOf(reading, reading.what, input.tools ?? {}), spot: reading.spot ?? n };
    const question = reading.confirmed ? undefined : plausibility(slot.item, size, limits, input.walk.load);
    if (question) open.push({ kind: 'questioned', params: question });
    return question ? [] : [size];
  });
  const growing = limits ? grows(limits) : slot.item.id === 'pitch' || slot.item.id === 'idler-tread';
  const sampled = sample(sizes, growing ? 'larger' : 'smaller');
  if (!sampled) return [{}, open];
  const worn = limits && wear(limits, sampled.worst, input.walk.load);
  if (!sheet) open.push({ kind: 'no-sheet', params: {} });
  else if (!worn) open.push({ kind: 'no-limit', params: { sheet: sheet.name } });
  const want = samplesNeeded(slot.item, input.walk);
  if (sampled.samples < want) open.push({ kind: 'not-read', params: { have: sampled.samples, want } });
  return [{ sampled, ...(worn && { wear: worn }), ...(limits && { limits }) }, open];
}

function sagOf(slot: Slot, mine: readonly PlacedReading[], input: ScoreInput): [Partial<Known>, Open[]] {
  const last = mine.filter(({ reading }) => reading.what.kind === 'sag').at(-1)?.reading;
  if (last?.what.kind !== 'sag') return [{}, []];
  const sheet = sheetOf(input, slot.side);
  if (!sheet) return [{}, [{ kind: 'no-sheet', params: {} }]];
  const judged = judgeSag(sheet, last.what);
  if (judged.kind === 'open') return [{}, [judged.open]];
  const question = last.confirmed ? undefined : plausibility(slot.item, { mm: judged.valueMm, uMm: 0 });
  return question ? [{}, [{ kind: 'questioned', params: question }]] : [{ sag: judged }, []];
}

function found(slot: Slot, mine: readonly PlacedReading[]): Partial<Known> {
  const findings = mine.flatMap(({ reading }) => (reading.what.kind === 'finding' ? [reading.what] : []));
  const finding = worstFinding(
    slot.item,
    findings.map((each) => each.finding),
  );
  if (finding === undefined) return {};
  const counts = findings.flatMap((each) => each.count ?? []);
  const shares = findings.flatMap((each) => each.share ?? []);
  return {
    finding,
    ...(counts.length > 0 && { count: Math.max(...counts) }),
    ...(shares.length > 0 && { share: Math.max(...shares) }),
  };
}

function cracked(slot: Slot, mine: readonly PlacedReading[]): [Partial<Known>, Open[]] {
  const open: Open[] = [];
  const cracks = mine.flatMap(({ reading }) => {
    if (reading.what.kind !== 'crack') return [];
    const { lengthMm, depthMm, cordVisible } = reading.what;
    const question = reading.confirmed ? undefined : plausibility(slot.item, { mm: lengthMm, uMm: 0 });
    if (question) open.push({ kind: 'questioned', params: question });
    return question ? [] : [{ lengthMm, depthMm, cordVisible }];
  });
  return [cracks.length > 0 ? { cracks } : {}, open];
}

function readSlot(slot: Slot, mine: readonly PlacedReading[], input: ScoreInput): [Partial<Known>, Open[]] {
  if (slot.item.ask.kind === 'sag') return sagOf(slot, mine, input);
  if (slot.item.ask.kind === 'crack') return cracked(slot, mine);
  if (slot.item.ask.kind === 'finding') return [found(slot, mine), []];
  return sized(slot, mine, input);
}

function passedValue(slot: Slot): Partial<Known> {
  if (slot.item.ask.kind === 'finding') {
    const fine = slot.item.ask.findings[0];
    return fine === undefined ? {} : { finding: fine };
  }
  return { cracks: [noCrack] };
}

const isKnown = (known: Partial<Known>): boolean =>
  known.finding !== undefined ||
  known.cracks !== undefined ||
  known.sampled !== undefined ||
  known.sag !== undefined;

/** Collects what is known of every item of the machine, by place and item. */
export function gatherStates(input: ScoreInput): ReadonlyMap<string, ItemState> {
  const byState = new Map<string, PlacedReading[]>();
  for (const each of input.readings) {
    const key = stateKey(each.place, each.item);
    byState.set(key, [...(byState.get(key) ?? []), each]);
  }
  const lost = gone(input);
  const passes = passesOf(input);
  const states = slotsOf(input.machine).map((slot) => {
    const key = stateKey(slot.place, slot.item.id);
    const mine = byState.get(key) ?? unseenAsWhole(slot, byState);
    return [key, stateOf(slot, mine, lost.get(key) ?? [], passes, input)] as const;
  });
  return new Map(states);
}

/** A whole row of parts can be marked as not seen at the place without a number. */
function unseenAsWhole(slot: Slot, byState: ReadonlyMap<string, PlacedReading[]>): readonly PlacedReading[] {
  if (slot.number === undefined) return [];
  const whole = makePlace({ side: slot.side, component: slot.item.component });
  const all = byState.get(stateKey(whole, slot.item.id)) ?? [];
  return all.filter(({ reading }) => reading.what.kind === 'unseen');
}

/** The places whose reading is not to be had, with why. */
function gone(input: ScoreInput): ReadonlyMap<string, readonly Open[]> {
  const lost = new Map<string, Open[]>();
  const add = (each: Omit<PlacedReading, 'reading'>, open: Open): void => {
    const key = stateKey(each.place, each.item);
    lost.set(key, [...(lost.get(key) ?? []), open]);
  };
  for (const each of input.takenBack ?? []) add(each, { kind: 'taken-back', params: { n: each.n } });
  for (const each of input.newer ?? []) add(each, { kind: 'newer-version', params: {} });
  for (const each of input.clashes ?? []) add(each, { kind: 'clash', params: {} });
  return lost;
}

function unread(mine: readonly PlacedReading[], needed: boolean): readonly Open[] {
  const unseen = mine.find(({ reading }) => reading.what.kind === 'unseen')?.reading.what;
  if (unseen?.kind === 'unseen') return [{ kind: 'not-seen', params: { why: unseen.why } }];
  return needed ? [{ kind: 'not-read', params: {} }] : [];
}

function stateOf(
  slot: Slot,
  mine: readonly PlacedReading[],
  lost: readonly Open[],
  passes: readonly Pass[],
  input: ScoreInput,
): ItemState {
  const needed = isNeeded(slot.item, input.walk);
  const [direct, asked] = readSlot(slot, mine, input);
  const pass =
    mine.length === 0 && lost.length === 0 ? passFor(passes, slot.item, slot.side, slot.number) : undefined;
  const known = pass ? passedValue(slot) : direct;
  const half = pass?.what.seen === 'half' && input.walk.depth === 'full';
  const open = [
    ...lost,
    ...asked,
    ...(half ? [{ kind: 'half-seen', params: {} } as const] : []),
    ...(isKnown(known) || asked.length > 0 ? [] : unread(mine, needed && lost.length === 0)),
  ];
  return { ...slot, needed, passed: pass !== undefined, cracks: [], ...known, known: isKnown(known), open };
}
