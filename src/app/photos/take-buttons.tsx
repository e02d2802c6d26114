import { useRef, useState } from 'preact/hooks';
import { common } from '../../words/en/common.ts';
import { photoFaultLine, photos as words } from '../../words/en/photos.ts';
import { observedNow } from '../data/moment.ts';
import { pendingPhoto, type PendingPhoto } from '../data/pending-photo.ts';
import { store } from '../data/phone.ts';
import { notSavedLine } from '../data/saving.ts';
import { Button } from '../parts/button.tsx';
import parts from '../parts/parts.module.css';
import { takePhotos, type NotTaken, type TakenFor } from './take-photos.ts';
import styles from './photos.module.css';

interface TakeButtonsProps {
  readonly taken: TakenFor;
  readonly step: string;
  /** One picture, as where another is to be replaced. */
  readonly single?: boolean;
  readonly labels?: { readonly camera: string; readonly gallery: string };
  readonly onTaken?: (sha256: string) => void;
}

const photoKinds: ReadonlySet<string> = new Set([
  'unreadable',
  'not-an-image',
  'truncated',
  'heic',
  'undecodable',
  'blank',
  'failed',
  'cancelled',
  'too-many-pixels',
  'file-too-large',
]);

const lineOf = (fault: NotTaken): string =>
  photoKinds.has(fault.kind)
    ? photoFaultLine(fault as Parameters<typeof photoFaultLine>[0])
    : notSavedLine(fault as Parameters<typeof notSavedLine>[0]);

/** Camera and gallery; one after the other is made small and kept, and each that is not says why. */
export function TakeButtons({ taken, step, single, labels = words, onTaken }: TakeButtonsProps) {
  const [at, setAt] = useState<{ readonly done: number; readonly of: number }>();
  const [faults, setFaults] = useState<readonly string[]>([]);
  const stop = useRef<AbortController | undefined>(undefined);
  const camera = useRef<HTMLInputElement>(null);
  const gallery = useRef<HTMLInputElement>(null);
  const openCamera = async (): Promise<void> => {
    const pending: PendingPhoto = { walk: taken.walk, step, since: observedNow(), sinceMs: Date.now() };
    // The phone may end this app while the camera has the screen: what to come back to is on disk before.
    await store.drafts.put(pendingPhoto, pending);
    camera.current?.click();
  };
  const take = async (input: HTMLInputElement, from: 'camera' | 'gallery'): Promise<void> => {
    const files = [...(input.files ?? [])];
    if (files.length === 0) return;
    stop.current = new AbortController();
    setFaults([]);
    const works = takePhotos(files, from, taken, stop.current.signal);
    input.value = '';
    for (const [done, work] of works.entries()) {
      setAt({ done, of: files.length });
      const result = await work;
      if (result.ok) onTaken?.(result.value);
      else if (result.error.kind !== 'cancelled') setFaults((all) => [...all, lineOf(result.error)]);
    }
    setAt(undefined);
  };
  return (
    <>
      <div class={styles.take}>
        <Button onTap={() => void openCamera()}>{labels.camera}</Button>
        <Button onTap={() => gallery.current?.click()}>{labels.gallery}</Button>
      </div>
      <input
        ref={camera}
        type="file"
        accept="image/*"
        capture="environment"
        hidden
        aria-label={labels.camera}
        onChange={(event) => void take(event.currentTarget, 'camera')}
      />
      <input
        ref={gallery}
        type="file"
        accept="image/*"
        multiple={single !== true}
        hidden
        aria-label={labels.gallery}
        onChange={(event) => void take(event.currentTarget, 'gallery')}
      />
      {at && (
        <p class={styles.working} role="status">
          <span>{words.working(at.done + 1, at.of)}</span>
          <Button look="plain" onTap={() => stop.current?.abort()}>
            {common.cancel}
          </Button>
        </p>
      )}
      {faults.length > 0 && (
        <ul class={parts.banner} role="alert">
          {faults.map((line, n) => (
            <li key={n}>{line}</li>
          ))}
        </ul>
      )}
    </>
  );
}
