import { useState } from 'preact/hooks';
import type { TypedError, Typed } from '../../core/typed.ts';
import { ambiguousAsk, typedErrorLines, wholeNumber } from '../../words/en/typed.ts';
import { Button } from './button.tsx';
import { Field } from './field.tsx';
import styles from './forms.module.css';

interface NumberFieldProps<T> {
  readonly label: string;
  readonly text: string;
  readonly hint?: string | undefined;
  /** A whole number is wanted: what is no number is said so. */
  readonly whole?: boolean;
  readonly parse: (text: string) => Typed<T>;
  /** How a value would be typed, to ask which of two was meant. */
  readonly spell: (value: T) => string;
  /** Speak up at once, since it stood in the way of saving. */
  readonly asked?: boolean;
  readonly onInput: (text: string) => void;
}

const lineOf = (kind: TypedError<unknown>['kind'], whole: boolean | undefined): string | undefined => {
  if (kind === 'ambiguous') return undefined;
  return whole === true && kind === 'fraction' ? wholeNumber : typedErrorLines[kind];
};

/** A number as it was typed; what it could mean besides is asked, and nothing typed is ever rewritten. */
export function NumberField<T>(props: NumberFieldProps<T>) {
  const { label, text, hint, whole, parse, spell, asked, onInput } = props;
  const [left, setLeft] = useState(true);
  const read = parse(text);
  const error = read.ok || read.error.kind === 'empty' || (!left && asked !== true) ? undefined : read.error;
  const readings = error?.kind === 'ambiguous' ? error.readings.map(spell) : [];
  const [one = '', other = ''] = readings;
  const ask = readings.length > 0 ? ambiguousAsk(one, other) : undefined;
  return (
    <div class={styles.number}>
      <Field
        label={label}
        value={text}
        hint={hint}
        fault={ask ?? (error && lineOf(error.kind, whole))}
        inputMode="decimal"
        onInput={(next) => {
          setLeft(false);
          onInput(next);
        }}
        onLeave={() => setLeft(true)}
      />
      {readings.length > 0 && (
        <div class={styles.pair}>
          {readings.map((each) => (
            <Button key={each} onTap={() => onInput(each)}>
              {each}
            </Button>
          ))}
        </div>
      )}
    </div>
  );
}
