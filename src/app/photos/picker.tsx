import { useRef } from 'preact/hooks';
import type { Photo } from '../../core/photo.ts';
import { Button } from '../parts/button.tsx';

export interface PickerProps {
  readonly from: Photo['from'];
  readonly label: string;
  readonly multiple?: boolean;
  /** Runs before camera or gallery opens, which may end the app. */
  readonly before: () => Promise<unknown>;
  readonly onFiles: (files: readonly File[]) => void;
  /** The person came back without a picture. */
  readonly onNothing: () => void;
}

/** Opens the phone's camera, or its gallery. */
export function Picker({ from, label, multiple = false, before, onFiles, onNothing }: PickerProps) {
  const input = useRef<HTMLInputElement>(null);
  const chosen = (field: HTMLInputElement): void => {
    const files = [...(field.files ?? [])];
    // Handed on first: what reads them has to begin before the field lets go of them.
    if (files.length > 0) onFiles(files);
    else onNothing();
    field.value = '';
  };
  return (
    <>
      <Button onTap={() => void before().then(() => input.current?.click())}>{label}</Button>
      <input
        ref={input}
        type="file"
        hidden
        accept="image/*"
        aria-label={label}
        {...(from === 'camera' && { capture: 'environment' as const })}
        multiple={multiple}
        onChange={(event) => chosen(event.currentTarget)}
        onCancel={onNothing}
      />
    </>
  );
}
