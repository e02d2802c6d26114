import type { Source } from './source.ts';

/** Values of a reason in base units (mm, percent, hours) or ids; never text in a language. */
export type Params = Readonly<Record<string, string | number>>;

/** Why something is as it is: the rule that says so, the message of the catalogue, and where the rule is from. */
export interface Reason {
  readonly rule: string;
  readonly message: string;
  readonly params: Params;
  readonly source?: Source;
}

export const openKinds = [
  'not-read',
  'not-counted',
  'not-seen',
  'half-seen',
  'by-eye',
  'taken-back',
  'clash',
  'newer-version',
  'no-rules',
  'newer-rules',
  'not-covered',
  'no-sheet',
  'no-limit',
  'not-comparable',
  'no-sag-value',
  'clean-first',
  'questioned',
  'needs',
  'flange-unknown',
] as const;
export type OpenKind = (typeof openKinds)[number];

/** Something not known yet, with why. */
export interface Open {
  readonly kind: OpenKind;
  readonly params: Params;
}
