import type { StatusCode } from '../../storage/status.ts';
import { storageStates, type StorageState, type StorageWords } from '../../words/en/storage.ts';
import { store, storageStatus } from '../data/phone.ts';
import { Button } from './button.tsx';
import styles from './parts.module.css';

const stateOf: Record<StatusCode, StorageState | undefined> = {
  opening: undefined,
  open: undefined,
  slow: 'slow',
  blocked: 'blocked',
  stuck: 'slow',
  denied: 'denied',
  full: 'full',
  corrupt: 'corrupt',
  lost: 'lost',
  'too-new': 'newer',
  'updated-elsewhere': 'superseded',
};

/** Says what is wrong with this phone's storage and how to mend it; nothing while all is well. */
export function StorageBanner() {
  const code = storageStatus.value;
  const state = stateOf[code];
  if (state === undefined) return null;
  const words: StorageWords = storageStates[state];
  const again = (): void => {
    if (code === 'updated-elsewhere' || code === 'too-new') location.reload();
    else void store.probe();
  };
  return (
    <section class={styles.banner} role="alert">
      <strong>{words.title}</strong>
      <span>{words.line}</span>
      {words.button !== undefined && <Button onTap={again}>{words.button}</Button>}
    </section>
  );
}
