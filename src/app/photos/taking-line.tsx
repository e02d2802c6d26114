import { photos as words } from '../../words/en/photos.ts';
import { common } from '../../words/en/common.ts';
import { Button } from '../parts/button.tsx';
import { dropFaults, stopTaking, taking } from './take-photos.ts';
import parts from '../parts/parts.module.css';
import styles from './photos.module.css';

/** How far the pictures are, and which did not come in; the walk goes on meanwhile. */
export function TakingLine({ walk }: { walk: string }) {
  const now = taking.value;
  if (now?.walk !== walk) return null;
  const isBusy = now.done < now.total;
  return (
    <>
      {isBusy && (
        <div class={styles.working}>
          <span role="status">{words.working(Math.min(now.done + 1, now.total), now.total)}</span>
          <Button onTap={stopTaking}>{common.cancel}</Button>
        </div>
      )}
      {now.faults.length > 0 && (
        <div class={parts.banner} role="alert">
          {now.faults.map((line) => (
            <span key={line}>{line}</span>
          ))}
          <Button onTap={dropFaults}>{common.close}</Button>
        </div>
      )}
    </>
  );
}
