import type { LengthUnit } from '../core/quantity.ts';
import type { Params } from '../core/reason.ts';

/** What one person has chosen to read in, per quantity. */
export interface Preferences {
  readonly locale: string;
  readonly depth: LengthUnit;
  readonly length: LengthUnit;
  readonly mass: 'kg' | 'lb';
}

/** Turns base units into what a reader sees; what it shows is never written back. */
export interface Numbers {
  readonly length: (valueMm: number) => string;
  readonly depth: (valueMm: number) => string;
  /** In a stated unit, as limits keep their print; `resolution` is the smallest step of that print. */
  readonly inUnit: (valueMm: number, unit: LengthUnit, resolution?: number) => string;
  /** As a person would type it into a field of that unit: no unit, no grouping. */
  readonly field: (valueMm: number, unit: LengthUnit) => string;
  readonly percent: (value: number) => string;
  readonly hours: (value: number) => string;
  readonly mass: (valueKg: number) => string;
  readonly number: (value: number) => string;
  /** An amount in minor units with its currency; cents are shown where there are any. */
  readonly money: (minor: number, currency: string) => string;
  /** As a person would type it into a field of that currency. */
  readonly moneyField: (minor: number, currency: string) => string;
  /** The count with its word: `1 link`, `4 links`. */
  readonly plural: (count: number, one: string, other: string) => string;
}

/** Turns base units and ids into what a reader sees. */
export interface Formatter extends Numbers {
  readonly item: (id: string) => string;
  readonly finding: (itemId: string, finding: string) => string;
}

export type Message = (params: Params, format: Formatter) => string;
