import { common } from '../../words/en/common.ts';
import { hush, notice } from '../data/notice.ts';
import { Button } from './button.tsx';
import styles from './forms.module.css';

/** What was just done and, for a while, the way back. */
export function NoticeBar() {
  const now = notice.value;
  const undo = (): void => {
    now?.undo?.();
    hush();
  };
  return (
    <div role="status" class={now === undefined ? '' : styles.notice}>
      {now !== undefined && <span>{now.text}</span>}
      {now?.undo !== undefined && <Button onTap={undo}>{common.undo}</Button>}
    </div>
  );
}
