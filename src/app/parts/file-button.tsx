import styles from './forms.module.css';
import parts from './parts.module.css';

interface FileButtonProps {
  readonly label: string;
  readonly onFile: (file: File) => void;
}

/** A button that lets the person choose a file. */
export function FileButton({ label, onFile }: FileButtonProps) {
  const choose = (input: HTMLInputElement): void => {
    const [file] = input.files ?? [];
    if (file) onFile(file);
    // The same file may be chosen again after it was mended.
    input.value = '';
  };
  return (
    <label class={`${parts.button} ${styles.file}`}>
      {label}
      <input
        type="file"
        accept=".json,application/json,text/plain,.zip,application/zip"
        onChange={(event) => choose(event.currentTarget)}
      />
    </label>
  );
}
