import { useId } from 'preact/hooks';
import styles from './parts.module.css';

interface DateFieldProps {
  readonly label: string;
  /** `2026-03-01`, a day and never an instant. */
  readonly value: string;
  readonly onInput: (value: string) => void;
}

/** A day, by the phone's own calendar. */
export function DateField({ label, value, onInput }: DateFieldProps) {
  const id = useId();
  return (
    <div class={styles.field}>
      <label class={styles.label} for={id}>
        {label}
      </label>
      <input id={id} type="date" value={value} onInput={(event) => onInput(event.currentTarget.value)} />
    </div>
  );
}
