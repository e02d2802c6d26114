import { limitsFor, type LimitSheet } from './limits.ts';
import type { FittedFact, Machine, Side } from './machine.ts';
import { factAsk, isOfOnePart, traitsOfPart, type FactName, type PartKind } from './part-kinds.ts';
import { toMm } from './quantity.ts';
import type { ItemOutcome } from './score.ts';
import { sizeOf, type ToolUncertainty } from './sizes.ts';
import { parseTrackSize } from './track-size.ts';
import type { Work } from './walk.ts';

/** Where a fact is from: typed in for the order, the walk, the machine's record, its moulding, the limit sheet, … */
export type FactFrom = 'entered' | 'walk' | 'machine' | 'moulding' | 'sheet' | 'other-side';

/** What makes a fact questionable. */
export type FactDoubt = 'counted-once' | 'counts-differ' | 'not-as-moulded' | 'before-fitted';

/** One thing that a parts desk must know of a part, as far as it is known. */
export interface PartFact {
  readonly name: FactName;
  readonly how: 'measured' | 'read' | 'assumed' | 'missing';
  /** A length in mm, a count, the name of a choice, or a text; absent when it is missing. */
  readonly value?: string | number;
  readonly from?: FactFrom;
  /** Standard uncertainty in mm of a measured length. */
  readonly uMm?: number;
  readonly spaces?: number;
  readonly again?: number;
  readonly doubts: readonly FactDoubt[];
}

/** What the facts of a part are looked for in. */
export interface FactInput {
  readonly machine: Machine;
  readonly outcomes: readonly ItemOutcome[];
  readonly sheets: { readonly left?: LimitSheet | undefined; readonly right?: LimitSheet | undefined };
  readonly work: readonly Work[];
  readonly tools: ToolUncertainty;
}

/** One part at a place; without a number all of its kind on the side. */
export interface PartAt {
  readonly kind: PartKind;
  readonly side: Side;
  readonly number?: number | undefined;
}

type Known = Omit<PartFact, 'name' | 'doubts'>;

const fact = (value: string | number, how: Known['how'], from: FactFrom): Known => ({ value, how, from });

/** Which entry of the machine's record a fact stands in. */
export function placeOfFact(
  name: FactName,
  { kind, side, number }: PartAt,
  { shape }: Machine,
): { readonly side: Side; readonly component: string; readonly number?: number } {
  const { component } = traitsOfPart(kind);
  return { side, component, ...(number !== undefined && isOfOnePart(kind, name, shape) && { number }) };
}

function storedFact(name: FactName, at: PartAt, machine: Machine): FittedFact | undefined {
  const { side, component, number } = placeOfFact(name, at, machine);
  const entry = machine.fitted?.find(
    (each) => each.side === side && each.component === component && each.number === number,
  );
  return entry && Object.hasOwn(entry.facts, name) ? entry.facts[name] : undefined;
}

const byCaliper: ReadonlySet<FactName> = new Set(['bushing', 'bore']);

/** Bores and bushings are read with a caliper, the rest with a tape, whose error the spaces of a pitch share. */
function uncertaintyOf(
  name: FactName,
  { value, typed, unit, spaces }: FittedFact,
  tools: ToolUncertainty,
): number | undefined {
  if (typeof value !== 'number' || typed === undefined || unit === undefined) return undefined;
  const links = spaces ?? 1;
  const what = { kind: 'pitch', totalMm: value * links, links, typed, unit } as const;
  const tool = byCaliper.has(name) ? 'caliper' : 'tape';
  return sizeOf({ v: 1, what, tool }, what, tools).uMm;
}

function entered(name: FactName, at: PartAt, { machine, tools }: FactInput): Known | undefined {
  const own = name === 'moulding' ? machine[at.side]?.size : undefined;
  if (own !== undefined) return fact(own, 'read', 'machine');
  const stored = storedFact(name, at, machine);
  if (!stored) return undefined;
  const { value, how, spaces, again } = stored;
  const uMm = how === 'measured' ? uncertaintyOf(name, stored, tools) : undefined;
  return {
    ...fact(value, how, 'entered'),
    ...(uMm !== undefined && { uMm }),
    ...(spaces !== undefined && { spaces }),
    ...(again !== undefined && { again }),
  };
}

const itemsRead: Readonly<Partial<Record<PartKind, Readonly<Partial<Record<FactName, string>>>>>> = {
  'bottom-roller': { diameter: 'roller-tread' },
};
const chainRead: Readonly<Partial<Record<FactName, string>>> = { pitch: 'pitch', bushing: 'bushing-od' };

/** The mean of what the walk measured; a worn part's size, and not that of a new one. */
function fromWalk(name: FactName, { kind, side, number }: PartAt, { outcomes }: FactInput) {
  const item = itemsRead[kind]?.[name] ?? chainRead[name];
  const found = outcomes.find(
    ({ state }) =>
      state.side === side &&
      state.item.id === item &&
      state.sampled !== undefined &&
      (number === undefined || state.number === number),
  )?.state.sampled;
  return found && { ...fact(found.meanMm, 'measured', 'walk'), uMm: found.worst.uMm };
}

function fromRecord(name: FactName, { kind, side }: PartAt, { machine }: FactInput): Known | undefined {
  const { track, flanges } = machine.shape;
  if (name === 'cored') {
    if (track === 'rubber-cored') return fact('cored', 'read', 'machine');
    return track === 'rubber-coreless' ? fact('coreless', 'read', 'machine') : undefined;
  }
  if (kind === 'bottom-roller' && name === 'flange' && flanges !== 'mixed')
    return fact(flanges, 'read', 'machine');
  const moulded = mouldedValue(name, machine[side]?.size);
  return moulded === undefined ? undefined : fact(moulded, 'read', 'moulding');
}

/** What width, pitch and links come to by the moulding; undefined for one that does not say. */
function mouldedValue(name: FactName, moulding: string | undefined): number | undefined {
  const size = moulding === undefined ? undefined : parseTrackSize(moulding);
  if (!size) return undefined;
  if (name === 'width') return size.widthMm;
  if (name === 'pitch') return size.pitchMm;
  return name === 'links' ? size.links : undefined;
}

const sheetItems: Readonly<Partial<Record<FactName, string>>> = {
  'pitch-new': 'pitch',
  'bushing-new': 'bushing-od',
};

function fromSheet(name: FactName, { side }: PartAt, { sheets }: FactInput): Known | undefined {
  const item = sheetItems[name];
  const sheet = sheets[side];
  const limits = item === undefined || !sheet ? undefined : limitsFor(sheet, item);
  return limits?.new && fact(toMm(limits.new.at, limits.unit), 'assumed', 'sheet');
}

const opposite = { left: 'right', right: 'left' } as const;

/** Both sides are mostly alike, but nobody has looked. */
function fromOtherSide(name: FactName, at: PartAt, input: FactInput): Known | undefined {
  const there = entered(name, { ...at, side: opposite[at.side] }, input);
  return there?.value === undefined ? undefined : fact(there.value, 'assumed', 'other-side');
}

/** Share by which a measured width or pitch may be off its moulding, for wear and cut edges: an estimate. */
const mouldedWithin: Readonly<Partial<Record<FactName, number>>> = { width: 0.03, pitch: 0.01, links: 0 };

function differsFromMoulding(name: FactName, { value, from, uMm = 0 }: Known, moulded: number | undefined) {
  const within = mouldedWithin[name];
  if (within === undefined || moulded === undefined || typeof value !== 'number') return false;
  return from !== 'moulding' && Math.abs(value - moulded) > within * moulded + 2 * uMm;
}

function isBeforeFitted(name: FactName, at: PartAt, { machine, work }: FactInput): boolean {
  const on = storedFact(name, at, machine)?.on;
  const { component } = traitsOfPart(at.kind);
  return work.some(
    (each) =>
      each.kind === 'fitted' &&
      each.component === component &&
      (each.side === at.side || each.side === 'whole') &&
      on !== undefined &&
      each.on !== undefined &&
      each.on > on,
  );
}

function doubtsOf(name: FactName, at: PartAt, known: Known, input: FactInput): readonly FactDoubt[] {
  const isEntered = known.from === 'entered';
  const isCounted = isEntered && factAsk(name).kind === 'twice' && known.how === 'measured';
  const moulded = mouldedValue(name, input.machine[at.side]?.size);
  return [
    ...(isCounted && known.again === undefined ? (['counted-once'] as const) : []),
    ...(isCounted && known.again !== undefined && known.again !== known.value
      ? (['counts-differ'] as const)
      : []),
    ...(differsFromMoulding(name, known, moulded) ? (['not-as-moulded'] as const) : []),
    ...(isEntered && isBeforeFitted(name, at, input) ? (['before-fitted'] as const) : []),
  ];
}

function factOf(name: FactName, at: PartAt, input: FactInput): PartFact {
  const known =
    entered(name, at, input) ??
    fromWalk(name, at, input) ??
    fromRecord(name, at, input) ??
    fromSheet(name, at, input) ??
    fromOtherSide(name, at, input);
  if (!known) return { name, how: 'missing', doubts: [] };
  return { name, ...known, doubts: doubtsOf(name, at, known, input) };
}

/** All that a parts desk must know of a part, in the order in which it is asked. */
export const factsOfPart = (at: PartAt, input: FactInput): readonly PartFact[] =>
  traitsOfPart(at.kind).facts.map((name) => factOf(name, at, input));

/** True for what has to be looked at before the old part is gone. */
export const isToLookAt = ({ how, doubts }: PartFact): boolean =>
  how === 'missing' || how === 'assumed' || doubts.length > 0;
