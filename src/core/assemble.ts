import type { PriceList, Rates } from './costs.ts';
import { isDemo, makeKey, parseKey, prefixOf, type Id, type Kind, type RecordKey } from './keys.ts';
import type { LifeTables } from './life.ts';
import type { LimitSheet } from './limits.ts';
import type { Machine, Side } from './machine.ts';
import type { Reading } from './readings.ts';
import { err, ok, type Result } from './result.ts';
import type { RuleSet } from './rules.ts';
import type { ToolUncertainty } from './sizes.ts';
import type { ClashSide, PlacedReading, ScoreInput } from './states.ts';
import { displayed, isClash, isNewer, sameValue, type Version } from './versions.ts';
import type { Walk, Work } from './walk.ts';

/** The version of record values that this build writes and understands. */
export const valueVersion = 1;

/** Where records are read from: a phone's storage, a file or a server, already merged. */
export interface Shelf {
  readonly get: (key: string) => readonly Version[];
  readonly under: (prefix: string) => readonly (readonly [RecordKey, readonly Version[]])[];
}

/** The sheets, rule sets, price lists and rates that come with the app, by key. */
export interface BuiltIn {
  readonly limits: Readonly<Record<string, LimitSheet>>;
  readonly rules: Readonly<Record<string, RuleSet>>;
  readonly prices: Readonly<Record<string, PriceList>>;
  readonly rates: Readonly<Record<string, Rates>>;
  readonly tools: ToolUncertainty;
  /** Life figures and what else the forecast takes from books. */
  readonly life: LifeTables;
}

export interface Assembled {
  readonly input: ScoreInput;
  readonly machineKey: string;
  readonly sheetKeys: Readonly<Record<Side, string | undefined>>;
  readonly rulesKey: string | undefined;
  /** A pinned sheet or rule set has been edited since the walk pinned it. */
  readonly changed: { readonly sheet: boolean; readonly rules: boolean };
}

export type AssembleError = {
  readonly kind: 'no-walk' | 'no-machine' | 'newer-version';
  readonly key: string;
};

/**
 * The displayed value of a merged set as a record of ours, or undefined when it is missing, removed or newer.
 * Values were checked where they came in, so they are taken for what their key says.
 */
export function valueIn<T>(versions: readonly Version[]): T | undefined {
  const value = displayed(versions)?.value;
  return value === undefined || isNewer(value, valueVersion) ? undefined : (value as unknown as T);
}

/** True when what is displayed was made by a newer version, which this one cannot read. */
export const isFromNewer = (versions: readonly Version[]): boolean => {
  const value = displayed(versions)?.value;
  return value !== undefined && isNewer(value, valueVersion);
};

interface Sorted {
  readonly readings: PlacedReading[];
  readonly takenBack: Omit<PlacedReading, 'reading'>[];
  readonly newer: Omit<PlacedReading, 'reading'>[];
  readonly clashes: ClashSide[];
}

/** Splits the readings of a walk into what can be scored and what is open. */
function sortReadings(shelf: Shelf, walk: Id, demo: boolean): Sorted {
  const sorted: Sorted = { readings: [], takenBack: [], newer: [], clashes: [] };
  for (const [key, versions] of shelf.under(prefixOf('reading', { owner: walk, demo }))) {
    const parts = parseKey(key);
    const shown = displayed(versions);
    if (parts?.kind !== 'reading' || !shown) continue;
    const at = { place: parts.place, item: parts.item, n: parts.n };
    if (isFromNewer(versions)) sorted.newer.push(at);
    else if (shown.value === undefined) sorted.takenBack.push(at);
    else sorted.readings.push({ ...at, reading: shown.value as unknown as Reading });
    if (isClash(versions)) sorted.clashes.push(...otherSides(versions, shown, at));
  }
  return sorted;
}

/** What the displayed version clashes with; a removal, and what a newer version wrote, have no reading. */
function otherSides(
  versions: readonly Version[],
  shown: Version,
  at: Omit<PlacedReading, 'reading'>,
): readonly ClashSide[] {
  const others = versions.filter((version) => !sameValue(version, shown));
  return others.map(({ value }) => {
    const isOurs = value !== undefined && !isNewer(value, valueVersion);
    return isOurs ? { ...at, reading: value as unknown as Reading } : at;
  });
}

const isoDay = /^\d{4}-\d{2}-\d{2}$/;

/**
 * Whole years since the track of a side was last fitted before the walk; undefined if not known. What was fitted
 * later is no part of this walk: a walk gives the same result whenever it is scored.
 */
const isOn = (work: Work, side: Side): boolean => work.side === side || work.side === 'whole';

function ageOf(work: readonly Work[], side: Side, walkedAt: string | undefined): number | undefined {
  const walkedOn = walkedAt?.slice(0, 10) ?? '';
  const newest = work
    .filter((each) => each.kind === 'fitted' && each.component === 'track' && isOn(each, side))
    .flatMap(({ on }) => (on !== undefined && isoDay.test(on) && on <= walkedOn ? [on] : []))
    .sort()
    .at(-1);
  if (newest === undefined || !isoDay.test(walkedOn)) return undefined;
  const years = Number(walkedOn.slice(0, 4)) - Number(newest.slice(0, 4));
  return walkedOn.slice(5) < newest.slice(5) ? years - 1 : years;
}

function workOf(shelf: Shelf, machineKey: string): readonly Work[] {
  const parts = parseKey(machineKey);
  if (parts?.kind !== 'machine') return [];
  const prefix = prefixOf('work', { owner: parts.id, demo: isDemo(machineKey) });
  return shelf.under(prefix).flatMap(([, versions]) => valueIn<Work>(versions) ?? []);
}

/**
 * The record that another one names, if the name is one of its kind: names come in from outside too, and a walk
 * taken for a sheet would not be understood. What is not stored may come with the app; what a newer version has
 * stored is never replaced by that.
 */
export function named<T>(
  shelf: Shelf,
  kind: Kind,
  key: string | undefined,
  builtIn: Readonly<Record<string, T>> = {},
): T | undefined {
  if (key === undefined || parseKey(key)?.kind !== kind) return undefined;
  const versions = shelf.get(key);
  return isFromNewer(versions) ? undefined : (valueIn<T>(versions) ?? builtIn[key]);
}

const isChanged = (shelf: Shelf, pin: { key: string; stamp?: string | undefined } | undefined): boolean =>
  pin?.stamp !== undefined && displayed(shelf.get(pin.key))?.stamp !== pin.stamp;

/** Gathers from records all that scoring a walk needs; built-in sheets and sets stand in where none is stored. */
export function assemble(shelf: Shelf, builtIn: BuiltIn, walkKey: string): Result<Assembled, AssembleError> {
  const versions = shelf.get(walkKey);
  const walk = valueIn<Walk>(versions);
  const parts = parseKey(walkKey);
  if (!walk || parts?.kind !== 'walk') {
    return err({ kind: isFromNewer(versions) ? 'newer-version' : 'no-walk', key: walkKey });
  }
  const machine = named<Machine>(shelf, 'machine', walk.machine);
  if (!machine) {
    const isNewerOne = isFromNewer(shelf.get(walk.machine));
    return err({ kind: isNewerOne ? 'newer-version' : 'no-machine', key: walk.machine });
  }
  const sheetAt = (key: string | undefined) => named(shelf, 'limits', key, builtIn.limits);
  const keyFor = (side: Side): string | undefined => machine[side]?.sheet ?? walk.sheet?.key ?? machine.sheet;
  const sheetKeys = { left: keyFor('left'), right: keyFor('right') };
  const sheets = { left: sheetAt(sheetKeys.left), right: sheetAt(sheetKeys.right) };
  const rulesKey = walk.rules?.key ?? sheets.left?.rules ?? sheets.right?.rules ?? machine.rules;
  const rules = named(shelf, 'rules', rulesKey, builtIn.rules);
  const work = workOf(shelf, walk.machine);
  const ages = (['left', 'right'] as const).flatMap((side) => {
    const years = ageOf(work, side, walk.startedAt?.utc);
    return years === undefined ? [] : [[side, years] as const];
  });
  return ok({
    input: {
      machine,
      walk,
      sheets,
      rules,
      ...sortReadings(shelf, parts.id, isDemo(walkKey)),
      tools: builtIn.tools,
      ageYears: Object.fromEntries(ages),
    },
    machineKey: walk.machine,
    sheetKeys,
    rulesKey,
    changed: { sheet: isChanged(shelf, walk.sheet), rules: isChanged(shelf, walk.rules) },
  });
}

/** The key of a walk's reading. */
export const readingKey = (
  walkKey: string,
  at: Omit<PlacedReading, 'reading'>,
): RecordKey<'reading'> | undefined => {
  const parts = parseKey(walkKey);
  if (parts?.kind !== 'walk') return undefined;
  return makeKey({ kind: 'reading', walk: parts.id, ...at, ...(isDemo(walkKey) && { demo: true }) });
};
