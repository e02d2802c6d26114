import type { Typed } from '../../core/typed.ts';
import { NumberField } from '../parts/number-field.tsx';
import type { OptionFaults, OptionTexts } from './option-texts.ts';

export interface OptionFieldsProps {
  readonly texts: OptionTexts;
  readonly faults: OptionFaults;
  readonly change: (part: Readonly<Record<string, string>>) => void;
}

export const at = (texts: OptionTexts, field: string): string => texts[field] ?? '';

interface NumberProps<T> extends OptionFieldsProps {
  readonly field: string;
  readonly label: string;
  readonly hint?: string;
  readonly whole?: boolean;
  readonly parse: (text: string) => Typed<T>;
  readonly spell: (value: T) => string;
}

/** A number of the form, by the name of its field. */
export function Numbered<T>({ texts, faults, change, field, ...rest }: NumberProps<T>) {
  return (
    <NumberField
      {...rest}
      text={at(texts, field)}
      asked={faults.includes(field)}
      onInput={(text) => change({ [field]: text })}
    />
  );
}
