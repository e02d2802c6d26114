import { canonicalJson, type Json } from '../../core/canonical-json.ts';
import type { ChargeList } from '../../core/rental.ts';
import type { SealView } from '../../files/seal-view.ts';
import type { Formatter } from '../../words/format.ts';

/** What was sealed of a charge list, as far as it is told here. */
export interface SignedCharge {
  readonly all: Json;
  readonly grossMinor: number;
  readonly currency: string;
}

const isObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null;

/** The charge list in the last seal that holds; undefined where there is none. */
export function signedCharge(seals: readonly SealView[]): SignedCharge | undefined {
  const outcome = seals.flatMap(({ says }) => (says ? [says.outcome] : [])).at(-1);
  const charge = isObject(outcome) ? outcome['charge'] : undefined;
  if (!isObject(charge)) return undefined;
  const { grossMinor, currency } = charge;
  if (typeof grossMinor !== 'number' || typeof currency !== 'string') return undefined;
  return { all: charge as Json, grossMinor, currency };
}

/** A list as a seal keeps it: what is not known is left out. */
export const asSealed = (list: ChargeList): Json => JSON.parse(JSON.stringify(list)) as Json;

/** Whether a list is another one than what was signed, since something that it leans on was changed. */
export const isAnew = (list: ChargeList, { all }: SignedCharge): boolean =>
  canonicalJson(asSealed(list)) !== canonicalJson(all);

export const signedSum = ({ grossMinor, currency }: SignedCharge, format: Formatter): string =>
  format.money(grossMinor, currency);
