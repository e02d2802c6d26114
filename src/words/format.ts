import type { Params } from '../core/reason.ts';
import type { LengthUnit } from '../core/quantity.ts';

/** What one person has chosen to read in, per quantity. */
export interface Preferences {
  readonly locale: string;
  readonly depth: LengthUnit;
  readonly length: LengthUnit;
  readonly mass: 'kg' | 'lb';
}

/** Turns base units and ids into what a reader sees. */
export interface Formatter {
  readonly length: (valueMm: number) => string;
  readonly depth: (valueMm: number) => string;
  readonly percent: (value: number) => string;
  readonly hours: (value: number) => string;
  readonly mass: (valueKg: number) => string;
  readonly number: (value: number) => string;
  readonly plural: (count: number, one: string, other: string) => string;
  readonly item: (id: string) => string;
  readonly finding: (itemId: string, finding: string) => string;
}

export type Message = (params: Params, format: Formatter) => string;
