import { useId } from 'preact/hooks';
import styles from './parts.module.css';

interface FieldProps {
  readonly label: string;
  readonly value: string;
  readonly hint?: string | undefined;
  /** What is wrong with it and how to mend it. */
  readonly fault?: string | undefined;
  readonly inputMode?: 'text' | 'decimal' | 'numeric' | 'search';
  readonly lines?: number;
  readonly onInput: (value: string) => void;
  readonly onLeave?: () => void;
}

/** A text field that keeps what was typed; numbers are read from it, never written back into it. */
export function Field({ label, value, hint, fault, inputMode, lines, onInput, onLeave }: FieldProps) {
  const id = useId();
  const common = {
    id,
    value,
    autocomplete: 'off',
    'aria-invalid': fault !== undefined,
    'aria-describedby': fault === undefined && hint === undefined ? undefined : `${id}-about`,
    onInput: (event: { currentTarget: { value: string } }) => onInput(event.currentTarget.value),
    onBlur: onLeave,
  };
  return (
    <div class={styles.field}>
      <label class={styles.label} for={id}>
        {label}
      </label>
      {lines === undefined ? (
        <input type="text" inputMode={inputMode} {...common} />
      ) : (
        <textarea rows={lines} {...common} />
      )}
      {(fault ?? hint) !== undefined && (
        <span id={`${id}-about`} class={fault === undefined ? styles.sub : styles.fault}>
          {fault ?? hint}
        </span>
      )}
    </div>
  );
}
