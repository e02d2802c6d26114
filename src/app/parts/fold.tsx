import type { ComponentChildren } from 'preact';
import styles from './forms.module.css';

interface FoldProps {
  readonly title: ComponentChildren;
  readonly line?: ComponentChildren;
  readonly open?: boolean | undefined;
  readonly onOpen?: (open: boolean) => void;
  readonly children: ComponentChildren;
}

/** A part of a screen that is folded away until it is wanted. */
export function Fold({ title, line, open, onOpen, children }: FoldProps) {
  return (
    <details class={styles.fold} open={open} onToggle={(event) => onOpen?.(event.currentTarget.open)}>
      <summary>
        <span class={styles.foldTitle}>
          <strong>{title}</strong>
          {line !== undefined && <span>{line}</span>}
        </span>
      </summary>
      <div class={styles.foldIn}>{children}</div>
    </details>
  );
}
