import { isNeeded, samplesNeeded } from './groups.ts';
import type { Item } from './items.ts';
import type { Place, PlaceSide } from './keys.ts';
import { limitsFor, type ItemLimits, type LimitSheet } from './limits.ts';
import type { Machine } from './machine.ts';
import { addTo } from './lists.ts';
import { passesOf, passFor, type Passes } from './passes.ts';
import { plausibility } from './plausible.ts';
import type { Reading } from './readings.ts';
import type { Open, Params } from './reason.ts';
import type { RuleSet } from './rules.ts';
import { judgeSag, type SagOutcome } from './sag.ts';
import { isSized, sample, sizeOf, worseIs, type Sampled, type ToolUncertainty } from './sizes.ts';
import { slotsOf, type Slot } from './slots.ts';
import type { Walk } from './walk.ts';
import { wear, type Wear } from './wear.ts';

/** A reading with where it belongs. */
export interface PlacedReading {
  readonly place: Place;
  readonly item: string;
  readonly n: number;
  readonly reading: Reading;
}

/** Another side of a clash; without a reading it is a removal, or one that this version cannot read. */
export type ClashSide = Omit<PlacedReading, 'reading'> & { readonly reading?: Reading };

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
  /** The other sides of readings that clash with those in `readings` or `takenBack`. */
  readonly clashes?: readonly ClashSide[];
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
export interface ItemState extends Omit<Slot, 'row'> {
  readonly needed: boolean;
  readonly known: boolean;
  readonly passed: boolean;
  /** Passed by half of the loop alone. */
  readonly halfSeen?: true;
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

type Known = Pick<
  ItemState,
  'finding' | 'count' | 'share' | 'cracks' | 'sampled' | 'wear' | 'limits' | 'sag'
>;

/** What readings say of an item, and what they leave open. */
type Read = readonly [Partial<Known>, readonly Open[]];

const sheetOf = (input: ScoreInput, side: PlaceSide): LimitSheet | undefined =>
  side === 'right' ? input.sheets.right : input.sheets.left;

/** The questions that a reading raises and that nobody has answered. */
function questionsOf(reading: Reading, ...why: readonly (Params | undefined)[]): readonly Open[] {
  if (reading.confirmed) return [];
  return why.flatMap((params) => (params ? [{ kind: 'questioned' as const, params }] : []));
}

function sized(slot: Slot, mine: readonly PlacedReading[], input: ScoreInput): Read {
  const { item, number } = slot;
  const sheet = sheetOf(input, slot.side);
  const position = number === undefined ? undefined : { number, of: slot.parts };
  const limits = sheet && limitsFor(sheet, item.id, position);
  const open: Open[] = [];
  const sizes = mine.flatMap(({ n, reading }) => {
    if (!isSized(reading.what)) return [];
    const size = { ...sizeOf(reading, reading.what, input.tools ?? {}), spot: reading.spot ?? n };
    const asked = questionsOf(reading, plausibility(item, size, limits, input.walk.load));
    open.push(...asked);
    return asked.length > 0 ? [] : [size];
  });
  const sampled = sample(sizes, worseIs(item, limits));
  if (!sampled) return [{}, open];
  const worn = limits && wear(limits, sampled.worst, input.walk.load);
  if (!sheet) open.push({ kind: 'no-sheet', params: {} });
  else if (!worn) open.push({ kind: 'no-limit', params: { sheet: sheet.name } });
  const want = samplesNeeded(item, input.walk);
  if (sampled.samples < want) open.push({ kind: 'not-read', params: { have: sampled.samples, want } });
  return [{ sampled, ...(worn && { wear: worn }), ...(limits && { limits }) }, open];
}

/** Of several readings of sag the latest stands. */
function sagOf(slot: Slot, mine: readonly PlacedReading[], input: ScoreInput): Read {
  const last = mine.filter(({ reading }) => reading.what.kind === 'sag').at(-1)?.reading;
  if (last?.what.kind !== 'sag') return [{}, []];
  const sheet = sheetOf(input, slot.side);
  if (!sheet) return [{}, [{ kind: 'no-sheet', params: {} }]];
  const judged = judgeSag(sheet, last.what);
  if (judged.kind === 'open') return [{}, [judged.open]];
  const spans = last.what.mm.map((mm) => plausibility(slot.item, { mm, uMm: 0 }));
  const asked = questionsOf(last, ...spans);
  return asked.length > 0 ? [{}, asked] : [{ sag: judged }, []];
}

/** The worst finding; one that the item does not have was made by a version that knows more. */
function found(listed: readonly string[], mine: readonly PlacedReading[]): Read {
  const findings = mine.flatMap(({ reading }) => (reading.what.kind === 'finding' ? [reading.what] : []));
  const ours = findings.filter((each) => listed.includes(each.finding));
  const open = ours.length < findings.length ? [{ kind: 'newer-version', params: {} } as const] : [];
  const finding = listed[Math.max(...ours.map((each) => listed.indexOf(each.finding)))];
  if (finding === undefined) return [{}, open];
  const counts = ours.flatMap((each) => each.count ?? []);
  const shares = ours.flatMap((each) => each.share ?? []);
  const known = {
    finding,
    ...(counts.length > 0 && { count: Math.max(...counts) }),
    ...(shares.length > 0 && { share: Math.max(...shares) }),
  };
  return [known, open];
}

function cracked({ item }: Slot, mine: readonly PlacedReading[]): Read {
  const open: Open[] = [];
  const cracks = mine.flatMap(({ reading }) => {
    if (reading.what.kind !== 'crack') return [];
    const { lengthMm, depthMm, cordVisible } = reading.what;
    const asked = questionsOf(
      reading,
      ...[lengthMm, depthMm].map((mm) => plausibility(item, { mm, uMm: 0 })),
    );
    open.push(...asked);
    return asked.length > 0 ? [] : [{ lengthMm, depthMm, cordVisible }];
  });
  return [cracks.length > 0 ? { cracks } : {}, open];
}

function readSlot(slot: Slot, mine: readonly PlacedReading[], input: ScoreInput): Read {
  const { ask } = slot.item;
  if (ask.kind === 'sag') return sagOf(slot, mine, input);
  if (ask.kind === 'crack') return cracked(slot, mine);
  return ask.kind === 'finding' ? found(ask.findings, mine) : sized(slot, mine, input);
}

function passedValue({ ask }: Item): Partial<Known> {
  const fine = ask.kind === 'finding' ? ask.findings[0] : undefined;
  return fine === undefined ? { cracks: [noCrack] } : { finding: fine };
}

/** Collects what is known of every item of the machine, by place and item; the order of readings is nothing. */
export function gatherStates(input: ScoreInput): ReadonlyMap<string, ItemState> {
  const read = new Map<string, PlacedReading[]>();
  for (const each of input.readings) addTo(read, stateKey(each.place, each.item), each);
  for (const mine of read.values()) mine.sort((a, b) => a.n - b.n);
  const gathered = { input, read, lost: gone(input), passes: passesOf(input.readings) };
  return new Map(
    slotsOf(input.machine).map(
      (slot) => [stateKey(slot.place, slot.item.id), stateOf(slot, gathered)] as const,
    ),
  );
}

interface Gathered {
  readonly input: ScoreInput;
  readonly read: ReadonlyMap<string, readonly PlacedReading[]>;
  /** What is not to be had, with why, by place and item. */
  readonly lost: ReadonlyMap<string, readonly Open[]>;
  readonly passes: Passes;
}

/** The readings of a slot, in their order; a whole row can be marked as not seen at the place without a number. */
function readingsOf({ item, place, row }: Slot, { read }: Gathered): readonly PlacedReading[] {
  const mine = read.get(stateKey(place, item.id));
  if (mine) return mine;
  const all = read.get(stateKey(row, item.id)) ?? [];
  return all.filter(({ reading }) => reading.what.kind === 'unseen');
}

function gone({
  takenBack = [],
  newer = [],
  clashes = [],
}: ScoreInput): ReadonlyMap<string, readonly Open[]> {
  const lost = new Map<string, Open[]>();
  for (const { place, item, n } of takenBack)
    addTo(lost, stateKey(place, item), { kind: 'taken-back', params: { n } });
  for (const key of keysOf(newer)) addTo(lost, key, { kind: 'newer-version', params: {} });
  for (const key of keysOf(clashes)) addTo(lost, key, { kind: 'clash', params: {} });
  return lost;
}

const keysOf = (readings: readonly Omit<PlacedReading, 'reading'>[]): ReadonlySet<string> =>
  new Set(readings.map(({ place, item }) => stateKey(place, item)));

function unread(mine: readonly PlacedReading[], needed: boolean): readonly Open[] {
  const unseen = mine.find(({ reading }) => reading.what.kind === 'unseen')?.reading.what;
  if (unseen?.kind === 'unseen') return [{ kind: 'not-seen', params: { why: unseen.why } }];
  return needed ? [{ kind: 'not-read', params: {} }] : [];
}

function stateOf(slot: Slot, gathered: Gathered): ItemState {
  const { walk } = gathered.input;
  const needed = isNeeded(slot.item, walk);
  const mine = readingsOf(slot, gathered);
  const lost = gathered.lost.get(stateKey(slot.place, slot.item.id)) ?? [];
  const [direct, asked] = readSlot(slot, mine, gathered.input);
  const pass = mine.length === 0 && lost.length === 0 ? passFor(gathered.passes, slot) : undefined;
  const value = pass ? passedValue(slot.item) : direct;
  const known = Object.keys(value).length > 0;
  const isHalf = pass?.what.seen === 'half' && walk.depth === 'full';
  const open = [
    ...lost,
    ...((pass && gathered.lost.get(stateKey(pass.place, pass.item))) ?? []),
    ...asked,
    ...(isHalf ? [{ kind: 'half-seen', params: {} } as const] : []),
    ...(known || asked.length > 0 ? [] : unread(mine, needed && lost.length === 0)),
  ];
  const { item, place, side, number, parts, tensioner } = slot;
  const state = {
    item,
    place,
    side,
    number,
    parts,
    tensioner,
    needed,
    known,
    passed: pass !== undefined,
    cracks: [],
    open,
  };
  const half = pass?.what.seen === 'half' ? ({ halfSeen: true } as const) : {};
  return known ? { ...state, ...half, ...value } : state;
}
