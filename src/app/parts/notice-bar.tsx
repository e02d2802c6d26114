import { common } from '../../words/en/common.ts';
import { hush, notice } from '../data/notice.ts';
import { Button } from './button.tsx';
import styles from './forms.module.css';

/** What was just done and, for a while, the way back or on. */
export function NoticeBar() {
  const now = notice.value;
  const then = (act: () => unknown) => (): void => {
    hush();
    act();
  };
  return (
    <div role="status" class={now === undefined ? '' : styles.notice}>
      {now !== undefined && <span>{now.text}</span>}
      {now?.undo !== undefined && <Button onTap={then(now.undo)}>{common.undo}</Button>}
      {now?.next !== undefined && <Button onTap={then(now.next.onTap)}>{now.next.label}</Button>}
    </div>
  );
}
