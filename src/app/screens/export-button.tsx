import type { RecordKey } from '../../core/keys.ts';
import { exportRecords } from '../actions/files.ts';
import { Button } from '../parts/button.tsx';

interface ExportButtonProps {
  readonly keys: readonly RecordKey[];
  readonly name: string;
  readonly label: string;
}

/** Writes records as a file that other programs can read. */
export const ExportButton = ({ keys, name, label }: ExportButtonProps) => (
  <Button onTap={() => void exportRecords(keys, name)}>{label}</Button>
);
