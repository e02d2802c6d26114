import { useLocation } from 'preact-iso';
import { sealed as words } from '../../words/en/sealing.ts';
import { tell } from '../data/notice.ts';
import { walkPath } from '../data/paths.ts';
import { notSavedLine } from '../data/saving.ts';
import type { WalkModel } from '../data/walk-model.ts';
import { Button } from '../parts/button.tsx';
import { correctWalk } from './correct-walk.ts';
import { recordText } from './place-text.ts';
import type { Later } from '../../files/seal-view.ts';
import styles from './sealing.module.css';

/** A reading is read again or taken back; another record is changed or removed. */
function lineOf({ key, kind }: Later): string {
  const what = recordText(key);
  const isReading = key.startsWith('reading/');
  if (kind === 'added') return words.lateAdded(what);
  if (kind === 'changed') return isReading ? words.lateChanged(what) : words.laterChanged(what);
  return isReading ? words.lateGone(what) : words.laterGone(what);
}

/** What was read, changed or taken back since: it stands, and is no part of the seal. */
export function LateReadings({ late }: { late: readonly Later[] }) {
  if (late.length === 0) return null;
  return (
    <section class={styles.later} aria-label={words.late}>
      <strong>{words.late}</strong>
      <p>{words.lateLine}</p>
      <ul class={styles.list}>
        {late.map((each) => (
          <li key={each.key}>{lineOf(each)}</li>
        ))}
      </ul>
    </section>
  );
}

/** A sealed walk is not opened again: a new one corrects it. */
export function Correction({ model }: { model: WalkModel }) {
  const { route } = useLocation();
  const correct = async (): Promise<void> => {
    const made = await correctWalk(model);
    tell(made.ok ? words.correcting : notSavedLine(made.error));
    if (made.ok) route(walkPath(made.value, 'map'));
  };
  return (
    <>
      <Button onTap={() => void correct()}>{words.correct}</Button>
      <p class={styles.soft}>{words.correctLine}</p>
    </>
  );
}
