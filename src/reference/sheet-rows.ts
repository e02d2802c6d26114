import type {
  ItemLimits,
  Limit,
  LimitMeaning,
  LimitSheet,
  Posture,
  SagMethod,
  SagSpec,
} from '../core/limits.ts';
import type { Source } from '../core/source.ts';
import { startingRulesKey } from './rules-starting.ts';

/** A built-in record with its key. */
export interface Sheet {
  readonly key: string;
  readonly value: LimitSheet;
}

export const sheetVersion = '2026-1';

/** A starting sheet: named, versioned, and judged by the starting rules unless another set is chosen. */
export const sheet = (
  id: string,
  name: string,
  about: string,
  items: readonly ItemLimits[],
  sag: readonly SagSpec[],
): Sheet => ({
  key: `limits/starting-${id}`,
  value: {
    v: 1,
    name,
    about,
    items: [...items],
    sag: [...sag],
    rules: startingRulesKey,
    version: sheetVersion,
  },
});

/** New size with how far a part of this class may be from it: the wider, the less the percentage means. */
export const newSize = (at: number, tolerance: number, source: Source) => ({ at, tolerance, source });

/** The limit that counts as 100 % worn. */
export const hundred = (at: number, means: LimitMeaning, source: Source): Limit => ({
  at,
  means,
  hundred: true,
  source,
});

/** New size and limits of one item in millimetres. */
export const inMm = (
  item: string,
  fresh: ReturnType<typeof newSize>,
  ...limits: readonly Limit[]
): ItemLimits => ({ item, unit: 'mm', resolution: 1, new: fresh, limits: [...limits] });

type SagExtra = Partial<Pick<SagSpec, 'clean' | 'also' | 'derailAbove' | 'loadN' | 'taut'>>;

/** One printed sag band in millimetres. */
export const band = (
  method: SagMethod,
  posture: Posture,
  low: number,
  high: number,
  source: Source,
  extra: SagExtra = {},
): SagSpec => ({ method, posture, unit: 'mm', low, high, source, ...extra });
