import type { ComponentChildren } from 'preact';
import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import styles from './forms.module.css';

interface FoldProps {
  readonly title: ComponentChildren;
  readonly line?: ComponentChildren;
  /** Turning true opens it; the person opens and closes it from there on. */
  readonly open?: boolean;
  readonly children: ComponentChildren;
}

/** A part of a screen that is folded away, and not drawn, until it is wanted. */
export function Fold({ title, line, open = false, children }: FoldProps) {
  const box = useRef<HTMLDetailsElement>(null);
  const [isDrawn, setDrawn] = useState(open);
  // In the element and not in its attribute, which would close it again while somebody types in it.
  useLayoutEffect(() => {
    if (open && box.current) box.current.open = true;
  }, [open]);
  return (
    <details
      ref={box}
      class={styles.fold}
      onToggle={(event) => setDrawn(isDrawn || event.currentTarget.open)}
    >
      <summary>
        <span class={styles.foldTitle}>
          <strong>{title}</strong>
          {line !== undefined && <span>{line}</span>}
        </span>
      </summary>
      <div class={styles.foldIn}>{(isDrawn || open) && children}</div>
    </details>
  );
}
