import { useImport } from '../data/use-import.ts';
import { FileButton } from '../parts/file-button.tsx';
import styles from '../parts/forms.module.css';
import { ImportProgress } from './import-progress.tsx';
import { ImportResult } from './import-result.tsx';

/** Takes in a file that the person chooses, and says what came of it. */
export function ImportButton({ label }: { label: string }) {
  const { share, result, take, cancel } = useImport();
  return (
    <div class={styles.stack}>
      {share === undefined ? (
        <FileButton label={label} onFile={(file) => void take(file)} />
      ) : (
        <ImportProgress share={share} onCancel={cancel} />
      )}
      {result && <ImportResult result={result} />}
    </div>
  );
}
