import { parseLength, type TypedLength } from '../../core/typed.ts';
import type { LengthUnit } from '../../core/quantity.ts';
import { ambiguousAsk, typedErrorLines } from '../../words/en/typed.ts';
import { formatter } from './format.ts';

/** A typed text as a length, or the sentence that says why it is none; `doubt` can be confirmed. */
export type PadReading =
  | { readonly kind: 'length'; readonly typed: string; readonly mm: number }
  | { readonly kind: 'fault'; readonly line: string }
  | { readonly kind: 'doubt'; readonly line: string; readonly choices: readonly TypedLength[] };

/** Reads what stands in a field of the pad. */
export function readPad(typed: string, unit: LengthUnit): PadReading {
  const parsed = parseLength(typed, unit);
  if (parsed.ok) return { kind: 'length', typed, mm: parsed.value.mm };
  const { error } = parsed;
  const format = formatter.value;
  if (error.kind === 'ambiguous') {
    const [one, other] = error.readings;
    const line = ambiguousAsk(format.inUnit(one.mm, unit), format.inUnit(other.mm, unit));
    return { kind: 'doubt', line, choices: error.readings };
  }
  if (error.kind === 'negative')
    return { kind: 'doubt', line: typedErrorLines.negative, choices: [error.reading] };
  return { kind: 'fault', line: typedErrorLines[error.kind] };
}
