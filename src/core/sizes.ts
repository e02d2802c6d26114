import type { Item } from './items.ts';
import { grows, type ItemLimits } from './limits.ts';
import { addTo } from './lists.ts';
import type { Observed, Reading } from './readings.ts';
import { toMm, type LengthUnit } from './quantity.ts';
import type { Size } from './wear.ts';

/** Standard uncertainty in mm of reading with a tool; a reference value, marked there as an estimate. */
export type ToolUncertainty = Readonly<Record<string, number>>;

const decimalsOf = (typed: string): number => /[.,](\d+)$/.exec(typed.trim())?.[1]?.length ?? 0;

/** The step in mm that a typed number resolves: 0.1 for "12.3" mm, one 32nd of an inch for a tread gauge. */
export function resolutionMm(typed: string, unit: LengthUnit): number {
  if (unit === 'mm' || unit === 'in') return toMm(Number(`1e-${decimalsOf(typed)}`), unit);
  return toMm(1, unit);
}

/** Standard uncertainty of a value read to steps of d: d/√12 (JCGM 100:2008, F.2.2.1). */
export const fromResolution = (stepMm: number): number => stepMm / Math.sqrt(12);

// Math.hypot and ** may differ in the last digit from engine to engine; a product and a root may not.
const squared = (value: number): number => value * value;
/** Two standard uncertainties that have nothing to do with each other, as one. */
export const together = (u: number, other: number): number => Math.sqrt(squared(u) + squared(other));

function uOf(reading: Reading, typed: string, unit: LengthUnit, tools: ToolUncertainty): number {
  if (reading.uMm !== undefined) return reading.uMm;
  const { tool: name } = reading;
  const tool = name !== undefined && Object.hasOwn(tools, name) ? (tools[name] ?? 0) : 0;
  return together(tool, fromResolution(resolutionMm(typed, unit)));
}

type Sized = Extract<Observed, { kind: 'length' | 'pitch' | 'tread' | 'pair' }>;

export const isSized = (what: Observed): what is Sized =>
  what.kind === 'length' || what.kind === 'pitch' || what.kind === 'tread' || what.kind === 'pair';

/**
 * The size a reading stands for. Pitch is length ÷ links. A roller in place is A = 2·(B − C), so that each
 * millimetre of reading is worth two (Komatsu D61EX-24 manual p. 273). An idler is the mean of its two sides.
 */
export function sizeOf(reading: Reading, what: Sized, tools: ToolUncertainty): Size {
  if (what.kind === 'length') return { mm: what.mm, uMm: uOf(reading, what.typed, what.unit, tools) };
  if (what.kind === 'pitch') {
    return { mm: what.totalMm / what.links, uMm: uOf(reading, what.typed, what.unit, tools) / what.links };
  }
  const [first, second] = [what.typed[0] ?? '', what.typed[1] ?? ''];
  const u = together(uOf(reading, first, what.unit, tools), uOf(reading, second, what.unit, tools));
  if (what.kind === 'tread') return { mm: 2 * (what.centreMm - what.linkMm), uMm: 2 * u };
  return { mm: (what.outerMm + what.innerMm) / 2, uMm: u / 2 };
}

/** Which way a part wears, smaller or larger. */
export type WorseIs = 'smaller' | 'larger';

const growing = new Set(['pitch', 'idler-tread']);

/** The way an item wears by its limits, or by its nature where they do not tell. */
export function worseIs({ id }: Item, limits: ItemLimits | undefined): WorseIs {
  const tells = limits?.new !== undefined && limits.limits.length > 0;
  return (tells ? grows(limits) : growing.has(id)) ? 'larger' : 'smaller';
}

export interface Sampled {
  /** The sample by which the part is judged. */
  readonly worst: SpotSize;
  /** The next worst, by which it would be judged were the worst one found better; absent for one sample. */
  readonly nextMm?: number;
  readonly worseIs: WorseIs;
  readonly meanMm: number;
  readonly samples: number;
}

const meanOf = (sizes: readonly Size[]): number =>
  sizes.reduce((sum, each) => sum + each.mm, 0) / sizes.length;

function repeated(sizes: readonly Size[]): Size {
  const mm = meanOf(sizes);
  const tool = Math.max(...sizes.map((each) => each.uMm));
  if (sizes.length < 2) return { mm, uMm: tool };
  const scatter = sizes.reduce((sum, each) => sum + squared(each.mm - mm), 0) / (sizes.length - 1);
  return { mm, uMm: together(tool, Math.sqrt(scatter / sizes.length)) };
}

/** A size by the spot at which it was read. */
export interface SpotSize extends Size {
  readonly spot: number;
}

/** Sizes by spot: repeats at one are averaged and their scatter is error. */
export function bySpot(sizes: readonly SpotSize[]): readonly SpotSize[] {
  const spots = new Map<number, Size[]>();
  for (const each of sizes) addTo(spots, each.spot, each);
  return [...spots].map(([spot, repeats]) => ({ spot, ...repeated(repeats) }));
}

/**
 * Repeats at one spot are averaged and their scatter is error; samples at other spots are judged by the worst
 * (12, 11 and 3 mm is 3 mm), and their mean is kept. Undefined for no sizes.
 */
export function sample(sizes: readonly SpotSize[], worse: WorseIs): Sampled | undefined {
  const means = bySpot(sizes);
  const sign = worse === 'smaller' ? 1 : -1;
  const [worst, next] = [...means].sort((a, b) => sign * (a.mm - b.mm) || a.spot - b.spot);
  if (!worst) return undefined;
  return {
    worst,
    ...(next && { nextMm: next.mm }),
    worseIs: worse,
    meanMm: meanOf(means),
    samples: means.length,
  };
}
