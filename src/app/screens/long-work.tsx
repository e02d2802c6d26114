import { common } from '../../words/en/common.ts';
import { Button } from '../parts/button.tsx';
import styles from '../parts/forms.module.css';

interface LongWorkProps {
  readonly line: string;
  /** Absent while it is not known how much there is. */
  readonly share?: number | undefined;
  readonly onCancel: () => void;
}

/** Work that takes a while: how far it is, and how to stop it. */
export const LongWork = ({ line, share, onCancel }: LongWorkProps) => (
  <div class={styles.card} role="status">
    <span>{line}</span>
    <progress class={styles.progress} max={1} value={share} aria-label={line} />
    <Button look="plain" onTap={onCancel}>
      {common.cancel}
    </Button>
  </div>
);
