import { useEffect, useState } from 'preact/hooks';
import type { Place, RecordKey } from '../../core/keys.ts';
import { photoScales, type PhotoScale } from '../../core/photo.ts';
import { nextScale, showsAt } from '../../core/photo-order.ts';
import { makeDates } from '../../words/dates.ts';
import { photos as words, scaleWords } from '../../words/en/photos.ts';
import { pendingPhoto, pendingPhotoNow, type PendingPhoto } from '../data/pending-photo.ts';
import { store } from '../data/phone.ts';
import { preferences } from '../data/preferences.ts';
import { Button } from '../parts/button.tsx';
import { Choices } from '../parts/choices.tsx';
import { Section } from '../parts/screen.tsx';
import { TakeButtons } from './take-buttons.tsx';
import { Thumbnail } from './thumbnail.tsx';
import { useWalkPhotos } from './walk-photos.ts';
import parts from '../parts/parts.module.css';
import styles from './photos.module.css';

interface PhotoBarProps {
  readonly walk: RecordKey<'walk'>;
  readonly step: string;
  readonly place: Place;
  readonly items: readonly string[];
  /** Damage is shown from three distances. */
  readonly damage?: boolean;
}

const none: readonly never[] = [];

/** Pictures of what the screen asks about: the ones there are, and the way to more. */
export function PhotoBar({ walk, step, place, items, damage = false }: PhotoBarProps) {
  const all = useWalkPhotos(walk) ?? none;
  const here = all.filter(({ photo }) => showsAt(photo, { place, items }));
  const suggested = damage ? nextScale(here.map(({ photo }) => photo)) : undefined;
  const [picked, setPicked] = useState<PhotoScale>();
  const scale = damage ? (picked ?? suggested) : undefined;
  // Where one thing is asked about, the picture shows that; at a group it shows the place.
  const shows = items.length === 1 ? items.map((item) => ({ place, item })) : [{ place }];
  return (
    <Section title={words.here(here.length)}>
      <NotArrived walk={walk} step={step} />
      {here.length > 0 && (
        <ul class={styles.strip}>
          {here.map((each) => (
            <li key={each.key}>
              <Thumbnail walk={walk} each={each} />
            </li>
          ))}
        </ul>
      )}
      {damage && (
        <Choices
          title={suggested ? words.scaleNext(scaleWords[suggested].label) : words.scale}
          narrow
          chosen={scale}
          options={photoScales.map((value) => ({ value, ...scaleWords[value] }))}
          onChoose={setPicked}
        />
      )}
      <TakeButtons taken={{ walk, shows, scale }} step={step} onTaken={() => setPicked(undefined)} />
    </Section>
  );
}

/** After the phone ended the app while the camera was open: says that the picture did not arrive. */
function NotArrived({ walk, step }: { walk: string; step: string }) {
  const [pending, setPending] = useState<PendingPhoto>();
  useEffect(() => {
    void pendingPhotoNow(Date.now()).then(setPending);
  }, []);
  if (pending?.walk !== walk || pending.step !== step) return null;
  const drop = (): void => {
    void store.drafts.delete(pendingPhoto);
    setPending(undefined);
  };
  return (
    <div class={parts.banner} role="status">
      <span>{words.notArrived(makeDates(preferences.value.locale).moment(pending.since))}</span>
      <Button look="plain" onTap={drop}>
        {words.notNeeded}
      </Button>
    </div>
  );
}
