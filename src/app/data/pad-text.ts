import type { LengthUnit } from '../../core/quantity.ts';
import { parseLength } from '../../core/typed.ts';
import { unitShort } from '../../words/en/choices.ts';
import { ambiguousAsk, typedErrorLines } from '../../words/en/typed.ts';
import { formatter } from './format.ts';

/** One of the lengths that a text can mean, as it would be typed without doubt. */
export interface Meant {
  readonly mm: number;
  readonly label: string;
}

/** A typed text as a length, or the sentence that says why it is none; `doubt` can be confirmed. */
export type PadReading =
  | { readonly kind: 'length'; readonly typed: string; readonly mm: number }
  | { readonly kind: 'fault'; readonly line: string }
  | { readonly kind: 'doubt'; readonly line: string; readonly choices: readonly Meant[] };

/** Reads what stands in a field of the pad. */
export function readPad(typed: string, unit: LengthUnit): PadReading {
  const parsed = parseLength(typed, unit);
  if (parsed.ok) return { kind: 'length', typed, mm: parsed.value.mm };
  const { error } = parsed;
  const meant = ({ mm }: { mm: number }): Meant => ({ mm, label: plainly(mm, unit) });
  if (error.kind === 'ambiguous') {
    const [one, other] = error.readings;
    const choices = [meant(one), meant(other)] as const;
    return { kind: 'doubt', line: ambiguousAsk(choices[0].label, choices[1].label), choices };
  }
  if (error.kind === 'negative')
    return { kind: 'doubt', line: typedErrorLines.negative, choices: [meant(error.reading)] };
  return { kind: 'fault', line: typedErrorLines[error.kind] };
}

/** Neither rounded nor grouped: a person has to tell 1.234 mm from 1234 mm. */
function plainly(mm: number, unit: LengthUnit): string {
  const { field, inUnit } = formatter.value;
  if (unit !== 'mm' && unit !== 'in') return inUnit(mm, unit);
  return `${unit === 'mm' ? mm : field(mm, unit)} ${unitShort[unit]}`;
}
