import type { RecordKey } from '../../core/keys.ts';

interface ExportButtonProps {
  readonly keys: readonly RecordKey[];
  readonly name: string;
  readonly label: string;
}

/** Stands in until files can be written. */
export function ExportButton({ label }: ExportButtonProps) {
  return <span hidden>{label}</span>;
}
