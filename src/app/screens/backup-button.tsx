import { useRef, useState } from 'preact/hooks';
import { files as words } from '../../words/en/files.ts';
import { backUp } from '../actions/backup.ts';
import { Button } from '../parts/button.tsx';
import { LongWork } from './long-work.tsx';

/** Writes everything on this phone as one file. */
export function BackupButton({ onDone }: { onDone: () => void }) {
  const [count, setCount] = useState<number>();
  const stop = useRef<AbortController | undefined>(undefined);
  const run = async (): Promise<void> => {
    const controller = new AbortController();
    stop.current = controller;
    setCount(0);
    try {
      await backUp({ stop: controller.signal, onCount: setCount });
    } finally {
      setCount(undefined);
      onDone();
    }
  };
  if (count === undefined) return <Button onTap={() => void run()}>{words.backup}</Button>;
  return <LongWork line={words.backupCount(count)} onCancel={() => stop.current?.abort()} />;
}
