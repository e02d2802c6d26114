import { printsDisagree, sagReads, type LimitSheet, type SagSpec } from './limits.ts';
import { compare, fromMm, toMm } from './quantity.ts';
import type { ObservedOf } from './readings.ts';
import type { Open } from './reason.ts';

export type SagState = 'tight' | 'right' | 'loose' | 'derailing';

export interface SagOutcome {
  readonly kind: 'compared';
  readonly state: SagState;
  /** How far outside the band, in mm; 0 when right. */
  readonly byMm: number;
  readonly valueMm: number;
  readonly lowMm: number;
  readonly highMm: number;
  readonly derailMm: number | undefined;
  /** True sag, where the method gives it. */
  readonly trueMm: number | undefined;
  /** The sheet prints the band twice and the two disagree; the stricter side was taken. */
  readonly contradicts: boolean;
  readonly spec: SagSpec;
  /** Length of the span, where it was noted, and how many spans were read. */
  readonly spanMm: number | undefined;
  readonly spans: number;
}

export interface SagOpen {
  readonly kind: 'open';
  readonly open: Open;
}

type Sag = ObservedOf<'sag'>;

/** The mean of the spans read, in mm. */
export const meanSagMm = (sag: Sag): number => sag.mm.reduce((sum, each) => sum + each, 0) / sag.mm.length;

const open = (kind: Open['kind'], params: Open['params']): SagOpen => ({
  kind: 'open',
  open: { kind, params },
});

const sameLoad = (spec: SagSpec, sag: Sag): boolean =>
  spec.loadN === undefined || Math.abs((sag.loadN ?? 0) - spec.loadN) <= spec.loadN * 0.05;

/** The band of a print that may contradict itself: the stricter side of either unit. */
export function sagBand(spec: SagSpec): { low: number; high: number; contradicts: boolean } {
  const { also, unit, resolution } = spec;
  if (!also) return { low: spec.low, high: spec.high, contradicts: false };
  const disagrees = (at: number, other: number): boolean =>
    printsDisagree({ at, unit, resolution }, { at: other, unit: also.unit, resolution: also.resolution });
  const inUnit = (value: number): number => fromMm(toMm(value, also.unit), unit);
  const low = disagrees(spec.low, also.low) ? Math.max(spec.low, inUnit(also.low)) : spec.low;
  const high = disagrees(spec.high, also.high) ? Math.min(spec.high, inUnit(also.high)) : spec.high;
  return { low, high, contradicts: low !== spec.low || high !== spec.high };
}

/** A clean track compares with a clean print, a working one with a working print; packed never with clean. */
function dirtProblem(spec: SagSpec, sag: Sag): SagOpen | undefined {
  if (sag.clean === 'packed' && spec.clean !== 'working-dirt')
    return open('clean-first', { method: sag.method });
  if (sag.clean === 'working-dirt' && spec.clean === 'clean')
    return open('clean-first', { method: sag.method });
  if (sag.clean === 'clean' && spec.clean === 'working-dirt') {
    return open('not-comparable', { method: sag.method, wanted: spec.method, clean: 'working-dirt' });
  }
  return undefined;
}

/** The state of a value in a band, all in one unit. */
export function stateIn(
  band: { readonly low: number; readonly high: number; readonly derail: number | undefined },
  value: number,
): SagState {
  if (compare(value, '>', band.derail ?? Infinity)) return 'derailing';
  if (compare(value, '>', band.high)) return 'loose';
  return compare(value, '<', band.low) ? 'tight' : 'right';
}

/**
 * Compares a sag reading with the sheet. Like is compared with like: method, posture, load and cleanliness
 * must be the print's, else it is open, because the same number means another tension by another method.
 */
export function judgeSag(sheet: LimitSheet, sag: Sag): SagOutcome | SagOpen {
  const [wanted] = sheet.sag;
  if (!wanted) return open('no-sag-value', { sheet: sheet.name });
  const fitting = sheet.sag.filter(
    (each) => each.method === sag.method && each.posture === sag.posture && sameLoad(each, sag),
  );
  const spec = fitting.find((each) => !dirtProblem(each, sag)) ?? fitting[0];
  if (!spec) {
    return open('not-comparable', {
      method: sag.method,
      posture: sag.posture,
      wanted: wanted.method,
      wantedPosture: wanted.posture,
    });
  }
  const dirt = dirtProblem(spec, sag);
  if (dirt) return dirt;
  const valueMm = meanSagMm(sag);
  const value = fromMm(valueMm, spec.unit);
  const { low, high, contradicts } = sagBand(spec);
  const by = Math.max(0, low - value, value - high);
  return {
    kind: 'compared',
    state: stateIn({ low, high, derail: spec.derailAbove }, value),
    byMm: toMm(by, spec.unit),
    valueMm,
    lowMm: toMm(low, spec.unit),
    highMm: toMm(high, spec.unit),
    derailMm: spec.derailAbove === undefined ? undefined : toMm(spec.derailAbove, spec.unit),
    trueMm: trueSagMm(spec, valueMm),
    contradicts,
    spec,
    spanMm: sag.spanMm,
    spans: sag.mm.length,
  };
}

function trueSagMm(spec: SagSpec, valueMm: number): number | undefined {
  const reads = sagReads[spec.method];
  if (reads === 'sag') return valueMm;
  return reads === 'distance' && spec.taut !== undefined ? valueMm - toMm(spec.taut, spec.unit) : undefined;
}
