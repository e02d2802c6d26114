import { useEffect, useRef, useState } from 'preact/hooks';
import type { Photo, Shown } from '../../core/photo.ts';
import { makeDates } from '../../words/dates.ts';
import { photos as words } from '../../words/en/photos.ts';
import { dropDraft } from '../actions/saved.ts';
import { observedNow } from '../data/moment.ts';
import { pendingPhoto, pendingPhotoNow, type PendingPhoto, type TakenFor } from '../data/pending-photo.ts';
import { store } from '../data/phone.ts';
import { preferences } from '../data/preferences.ts';
import { Button } from '../parts/button.tsx';
import parts from '../parts/parts.module.css';
import { Picker, type PickerProps } from './picker.tsx';
import { takePhotos } from './take-photos.ts';
import { thisRun } from './walk-photos.ts';
import { TakingLine } from './taking-line.tsx';
import styles from './photos.module.css';

interface TakeButtonsProps {
  readonly taken: TakenFor;
  readonly step: string;
  /** One picture, as where another is to be replaced. */
  readonly single?: boolean;
  readonly labels?: Readonly<Record<Photo['from'], string>>;
  readonly onTaken?: (sha256: string) => void;
  /** A picture of this was cut off by the end of the app: whoever asks about it may open that. */
  readonly onCutOff?: ((shown: Shown) => void) | undefined;
}

/** A slow disk must not keep the camera shut: after this it opens in any case. */
const longestMs = 500;

/** Camera and gallery, and what was to come from them when the app was ended. */
export function TakeButtons(props: TakeButtonsProps) {
  const { taken, step, single = false, labels = words, onTaken, onCutOff } = props;
  const [cutOff, setCutOff] = useCutOff(taken.walk, step, onCutOff);
  const drop = (): void => {
    setCutOff(undefined);
    void dropDraft(pendingPhoto);
  };
  const picker = (from: Photo['from'], label: string, what: TakenFor): PickerProps => ({
    from,
    label,
    multiple: from === 'gallery' && !single,
    before: () => notePending(from, what, step),
    onNothing: drop,
    onFiles: (files) => {
      setCutOff(undefined);
      // Several at once are not all from one distance.
      const { scale: _any, ...others } = what;
      const kept = takePhotos(files, from, files.length === 1 ? what : others);
      void kept.then(([sha256]) => sha256 !== undefined && onTaken?.(sha256));
    },
  });
  return (
    <>
      {cutOff && (
        <div class={parts.banner} role="status">
          <span>{words.notArrived(makeDates(preferences.value.locale).moment(cutOff.since))}</span>
          <Picker {...picker(cutOff.from, words.again[cutOff.from], cutOff.taken)} />
          <Button look="plain" onTap={drop}>
            {words.notNeeded}
          </Button>
        </div>
      )}
      <div class={styles.take}>
        {(['camera', 'gallery'] as const).map((from) => (
          <Picker key={from} {...picker(from, labels[from], taken)} />
        ))}
      </div>
      <TakingLine walk={taken.walk} />
    </>
  );
}

/** Drafts are written in turn: once this one is on disk, so is what was typed before. */
async function notePending(from: Photo['from'], taken: TakenFor, step: string): Promise<void> {
  const since = observedNow();
  const pending: PendingPhoto = {
    walk: taken.walk,
    step,
    from,
    taken,
    since,
    sinceMs: Date.now(),
    run: thisRun,
  };
  const late = new Promise((resolve) => setTimeout(resolve, longestMs));
  await Promise.race([store.drafts.put(pendingPhoto, pending), late]);
}

/** What has opened its panel already: going back from there must not lead there again. */
const opened = new Set<number>();

/** The picture that was to come here when another run of the app was ended. */
function useCutOff(
  walk: string,
  step: string,
  onCutOff: TakeButtonsProps['onCutOff'],
): readonly [PendingPhoto | undefined, (next: undefined) => void] {
  const [cutOff, setCutOff] = useState<PendingPhoto>();
  const tell = useRef(onCutOff);
  tell.current = onCutOff;
  useEffect(() => {
    let current = true;
    void pendingPhotoNow(Date.now()).then((found) => {
      const isHere = found?.walk === walk && found.step === step && found.run !== thisRun;
      if (!current || !isHere) return;
      setCutOff(found);
      const [shown] = found.taken.shows;
      if (shown === undefined || tell.current === undefined || opened.has(found.sinceMs)) return;
      opened.add(found.sinceMs);
      tell.current(shown);
    });
    return () => {
      current = false;
    };
  }, [walk, step]);
  return [cutOff, setCutOff];
}
