import type { Typed } from '../../core/typed.ts';
import { optionForm as words } from '../../words/en/option-form.ts';
import { typedErrorLines } from '../../words/en/typed.ts';
import { Field } from '../parts/field.tsx';
import { Missing } from '../parts/missing.tsx';
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
  /** Why a number that can be read cannot be kept. */
  readonly odd?: string;
  readonly parse: (text: string) => Typed<T>;
  readonly spell: (value: T) => string;
}

/** A number of the form, by the name of its field. */
export function Numbered<T>({ texts, faults, change, field, odd = words.odd, ...rest }: NumberProps<T>) {
  const isFault = faults.includes(field);
  const read = rest.parse(at(texts, field));
  const isEmpty = !read.ok && read.error.kind === 'empty';
  return (
    <>
      <NumberField
        {...rest}
        text={at(texts, field)}
        asked={isFault}
        onInput={(text) => change({ [field]: text })}
      />
      {isFault && (read.ok || isEmpty) && <Missing line={isEmpty ? typedErrorLines.empty : odd} />}
    </>
  );
}

interface WrittenProps extends OptionFieldsProps {
  readonly field: string;
  readonly label: string;
  readonly hint?: string;
  readonly lines?: number;
  readonly fault?: string;
}

/** A text of the form, by the name of its field. */
export function Written({ texts, faults, change, field, fault = words.tooLong, ...rest }: WrittenProps) {
  return (
    <Field
      {...rest}
      value={at(texts, field)}
      fault={faults.includes(field) ? fault : undefined}
      onInput={(text) => change({ [field]: text })}
    />
  );
}
