import type { ComponentChildren } from 'preact';
import styles from './parts.module.css';

export type Look = 'main' | 'normal' | 'plain';

const looks: Record<Look, string | undefined> = {
  main: styles.main,
  normal: '',
  plain: styles.plain,
};

interface ButtonProps {
  readonly look?: Look;
  readonly disabled?: boolean;
  readonly label?: string;
  readonly pressed?: boolean;
  /** A key that is meant to be tapped fast, as in a counter. */
  readonly quick?: boolean;
  readonly onTap: () => void;
  readonly children: ComponentChildren;
}

/** A button; that one tap has one effect, echo.ts sees to for all controls. */
export function Button({ look = 'normal', disabled, label, pressed, quick, onTap, children }: ButtonProps) {
  return (
    <button
      type="button"
      class={`${styles.button} ${looks[look]}`}
      disabled={disabled}
      aria-label={label}
      aria-pressed={pressed}
      data-quick={quick}
      onClick={onTap}
    >
      {children}
    </button>
  );
}

interface ButtonLinkProps {
  readonly look?: Look;
  readonly href: string;
  /** `_blank` for a file: an installed app that went to it would have no way back. */
  readonly target?: '_blank';
  readonly children: ComponentChildren;
}

/** Goes to another screen and looks like a button. */
export function ButtonLink({ look = 'normal', href, target, children }: ButtonLinkProps) {
  return (
    <a class={`${styles.button} ${looks[look]}`} href={href} target={target}>
      {children}
    </a>
  );
}

/** One of a list that leads to its own screen. */
export function RowLink({ href, children }: { href: string; children: ComponentChildren }) {
  return (
    <a class={styles.row} href={href}>
      {children}
    </a>
  );
}

/** The text side of a row: a name and a quieter line under it. */
export function RowText({ name, line }: { name: ComponentChildren; line?: ComponentChildren }) {
  return (
    <span class={styles.rowText}>
      <strong>{name}</strong>
      {line !== undefined && <span class={styles.sub}>{line}</span>}
    </span>
  );
}
