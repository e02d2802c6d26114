import { useState } from 'preact/hooks';
import type { Place, RecordKey } from '../../core/keys.ts';
import { photoScales, type PhotoScale, type Shown } from '../../core/photo.ts';
import { nextScale, showsAt } from '../../core/photo-order.ts';
import { measuring, photos as words, scaleWords } from '../../words/en/photos.ts';
import { ButtonLink } from '../parts/button.tsx';
import { Choices } from '../parts/choices.tsx';
import { Section } from '../parts/screen.tsx';
import { TakeButtons } from './take-buttons.tsx';
import { Thumbnail } from './thumbnail.tsx';
import { photosPath, useWalkPhotos } from './walk-photos.ts';
import styles from './photos.module.css';

interface PhotoBarProps {
  readonly walk: RecordKey<'walk'>;
  readonly step: string;
  readonly place: Place;
  readonly items: readonly string[];
  /** Damage is shown from three distances. */
  readonly damage?: boolean;
  /** What is asked for can be measured in a picture. */
  readonly measures?: boolean;
  /** A picture of one item was cut off by the end of the app. */
  readonly onCutOff?: ((shown: Shown) => void) | undefined;
}

/** The newest; the others are one tap away. */
const mostInStrip = 6;

const none: readonly never[] = [];

/** Pictures of what the screen asks about: the ones there are, and the way to more. */
export function PhotoBar({
  walk,
  step,
  place,
  items,
  damage = false,
  measures = false,
  onCutOff,
}: PhotoBarProps) {
  const all = useWalkPhotos(walk) ?? none;
  const here = all.filter(({ photo }) => showsAt(photo, { place, items }));
  const last = here.at(-1);
  const suggested = damage ? nextScale(here.map(({ photo }) => photo)) : undefined;
  const [picked, setPicked] = useState<PhotoScale>();
  const scale = damage ? (picked ?? suggested) : undefined;
  // Where one thing is asked about, the picture shows that; at a group it shows the place.
  const shows = items.length === 1 ? items.map((item) => ({ place, item })) : [{ place }];
  return (
    <Section title={words.here(here.length)}>
      {damage && (
        <Choices
          title={suggested ? words.scaleNext(scaleWords[suggested].label) : words.scale}
          narrow
          chosen={scale}
          options={photoScales.map((value) => ({ value, ...scaleWords[value] }))}
          onChoose={setPicked}
        />
      )}
      <TakeButtons
        taken={{ walk, shows, ...(scale && { scale }) }}
        step={step}
        onTaken={() => setPicked(undefined)}
        onCutOff={onCutOff}
      />
      {here.length > 0 && (
        <ul class={styles.strip}>
          {here.slice(-mostInStrip).map((each) => (
            <li key={each.key}>
              <Thumbnail walk={walk} each={each} from={step} />
            </li>
          ))}
        </ul>
      )}
      {measures && last && (
        <ButtonLink look="plain" href={photosPath(walk, last.sha256, 'measure', step)}>
          {measuring.openHere}
        </ButtonLink>
      )}
      {here.length > mostInStrip && (
        <ButtonLink look="plain" href={photosPath(walk, undefined, undefined, step)}>
          {words.all}
        </ButtonLink>
      )}
    </Section>
  );
}
