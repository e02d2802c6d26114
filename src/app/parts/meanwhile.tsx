import { useRef } from 'preact/hooks';
import { step as words } from '../../words/en/walk.ts';
import { Button } from './button.tsx';
import styles from './parts.module.css';

/** True when the record was changed elsewhere after the person had begun to say something else. */
export function useMeanwhile(record: string, hasBegun: boolean): boolean {
  const began = useRef(record);
  if (!hasBegun) began.current = record;
  return hasBegun && began.current !== record;
}

/** Two tabs, one item: says what the other one wrote, before it is replaced. */
export function Meanwhile({ now, onKeep }: { now: string; onKeep: () => void }) {
  return (
    <section class={styles.banner} role="alert">
      <strong>{words.meanwhile(now)}</strong>
      <Button onTap={onKeep}>{words.keepThat}</Button>
    </section>
  );
}
