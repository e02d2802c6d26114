import { useId } from 'preact/hooks';
import styles from './parts.module.css';

export interface Option<T> {
  readonly value: T;
  readonly label: string;
  readonly line?: string | undefined;
}

interface ChoicesProps<T> {
  readonly title: string;
  readonly options: readonly Option<T>[];
  readonly chosen: T | undefined;
  readonly narrow?: boolean;
  readonly hideTitle?: boolean;
  readonly onChoose: (value: T) => void;
}

/** One of a few: big buttons, arrow keys move between them. */
export function Choices<T extends string | number>(props: ChoicesProps<T>) {
  const { title, options, chosen, narrow, hideTitle, onChoose } = props;
  const id = useId();
  const move = (event: KeyboardEvent, by: number): void => {
    const at = options.findIndex(({ value }) => value === chosen);
    const next = options[(at + by + options.length) % options.length];
    if (!next) return;
    event.preventDefault();
    onChoose(next.value);
    const buttons = (event.currentTarget as HTMLElement).querySelectorAll('button');
    buttons[options.indexOf(next)]?.focus();
  };
  const keys = (event: KeyboardEvent): void => {
    if (event.key === 'ArrowDown' || event.key === 'ArrowRight') move(event, 1);
    if (event.key === 'ArrowUp' || event.key === 'ArrowLeft') move(event, -1);
  };
  return (
    <div class={styles.section}>
      <span id={id} class={styles.label} hidden={hideTitle}>
        {title}
      </span>
      <div
        role="radiogroup"
        tabIndex={-1}
        aria-labelledby={id}
        class={`${styles.choices} ${narrow ? styles.narrow : ''}`}
        onKeyDown={keys}
      >
        {options.map(({ value, label, line }, i) => (
          <button
            key={value}
            type="button"
            role="radio"
            aria-checked={value === chosen}
            tabIndex={value === chosen || (chosen === undefined && i === 0) ? 0 : -1}
            class={styles.choice}
            onClick={() => onChoose(value)}
          >
            <span>{label}</span>
            {line !== undefined && <span class={styles.choiceLine}>{line}</span>}
          </button>
        ))}
      </div>
    </div>
  );
}

interface ToggleProps {
  readonly label: string;
  readonly line?: string;
  readonly on: boolean;
  readonly onTap: () => void;
}

/** Yes or no in one tap. */
export function Toggle({ label, line, on, onTap }: ToggleProps) {
  return (
    <button type="button" class={`${styles.choice} ${styles.tick}`} aria-pressed={on} onClick={onTap}>
      {label}
      {line !== undefined && <span class={styles.choiceLine}>{line}</span>}
    </button>
  );
}
