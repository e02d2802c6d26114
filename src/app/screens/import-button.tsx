import { useRef, useState } from 'preact/hooks';
import { files as words } from '../../words/en/files.ts';
import { importFile, type Imported } from '../actions/import.ts';
import { formatter } from '../data/format.ts';
import { FileButton } from '../parts/file-button.tsx';
import styles from '../parts/forms.module.css';
import { ImportResult } from './import-result.tsx';
import { LongWork } from './long-work.tsx';

interface Progress {
  readonly done: number;
  readonly of: number;
}

/** Takes in a file that the person chooses, and says what came of it. */
export function ImportButton({ label }: { label: string }) {
  const [progress, setProgress] = useState<Progress>();
  const [result, setResult] = useState<Imported>();
  const stop = useRef<AbortController | undefined>(undefined);
  // The bytes are asked for at once: later the browser may no longer give them.
  const take = async (file: File): Promise<void> => {
    const reading = file.arrayBuffer();
    const controller = new AbortController();
    stop.current = controller;
    setResult(undefined);
    setProgress({ done: 0, of: file.size });
    try {
      const bytes = new Uint8Array(await reading);
      const onProgress = (done: number, of: number): void => setProgress({ done, of });
      setResult(await importFile(bytes, { stop: controller.signal, onProgress }));
    } catch {
      setResult({ kind: 'refused', error: { kind: 'unreadable' } });
    } finally {
      setProgress(undefined);
    }
  };
  const share = progress && progress.of > 0 ? progress.done / progress.of : undefined;
  return (
    <div class={styles.stack}>
      {progress ? (
        <LongWork
          line={words.checkedShare(formatter.value.percent((share ?? 0) * 100))}
          share={share}
          onCancel={() => stop.current?.abort()}
        />
      ) : (
        <FileButton label={label} onFile={(file) => void take(file)} />
      )}
      {result && <ImportResult result={result} />}
    </div>
  );
}
