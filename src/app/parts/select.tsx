import { useId } from 'preact/hooks';
import type { Option } from './choices.tsx';
import styles from './parts.module.css';

interface SelectProps {
  readonly label: string;
  readonly options: readonly Option<string>[];
  readonly chosen: string;
  readonly hint?: string | undefined;
  readonly onChoose: (value: string) => void;
}

/** One of many, by the phone's own list. */
export function Select({ label, options, chosen, hint, onChoose }: SelectProps) {
  const id = useId();
  return (
    <div class={styles.field}>
      <label class={styles.label} for={id}>
        {label}
      </label>
      <select
        id={id}
        aria-describedby={hint === undefined ? undefined : `${id}-about`}
        onChange={(event) => onChoose(event.currentTarget.value)}
      >
        {options.map((option) => (
          <option key={option.value} value={option.value} selected={option.value === chosen}>
            {option.label}
          </option>
        ))}
      </select>
      {hint !== undefined && (
        <span id={`${id}-about`} class={styles.sub}>
          {hint}
        </span>
      )}
    </div>
  );
}
