import { shell } from '../../words/en/settings.ts';
import { appState, applyUpdate } from '../update.ts';
import { Button } from './button.tsx';
import styles from './parts.module.css';

/** Offers a newer version on a calm screen; it is never applied by itself and never on a walk. */
export function UpdateOffer() {
  if (appState.value !== 'update-waiting') return null;
  return (
    <section class={styles.banner} role="status">
      <strong>{shell.updateReady}</strong>
      <Button onTap={applyUpdate}>{shell.updateNow}</Button>
    </section>
  );
}
