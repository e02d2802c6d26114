import { useEffect, useState } from 'preact/hooks';
import { makePlace, parsePlace } from '../../core/keys.ts';
import { placeName } from '../../words/en/items.ts';
import { photos as words } from '../../words/en/photos.ts';
import { verdict } from '../../words/en/verdict.ts';
import { tell } from '../data/notice.ts';
import { walkPath } from '../data/paths.ts';
import type { WalkModel } from '../data/walk-model.ts';
import { ButtonLink } from '../parts/button.tsx';
import { Toggle } from '../parts/choices.tsx';
import { Screen, Section } from '../parts/screen.tsx';
import { isPositionWanted, mayAskPosition, wantPosition } from './position.ts';
import { TakeButtons } from './take-buttons.tsx';
import { Thumbnail } from './thumbnail.tsx';
import { useWalkPhotos, type WalkPhoto } from './walk-photos.ts';
import styles from './photos.module.css';

const whole = makePlace({ side: 'whole', component: 'machine' });

/** The pictures by the place that they were first taken for. */
function byPlace(photos: readonly WalkPhoto[]): readonly (readonly [string, readonly WalkPhoto[]])[] {
  const groups = new Map<string, WalkPhoto[]>();
  for (const each of photos) {
    const [first] = each.photo.shows;
    const name = first ? placeName(parsePlace(first.place)) : words.nothingNamed;
    groups.set(name, [...(groups.get(name) ?? []), each]);
  }
  return [...groups];
}

/** Every picture of a walk; large ones are read when they are opened, small ones when they come into view. */
export function PhotoList({ model }: { model: WalkModel }) {
  const photos = useWalkPhotos(model.key);
  const shows = [{ place: whole }];
  return (
    <Screen
      wide
      title={words.title}
      sub={photos && words.count(photos.length)}
      bar={
        <>
          <ButtonLink href={walkPath(model.key, 'map')}>{verdict.goBack}</ButtonLink>
          <ButtonLink href={walkPath(model.key, 'verdict')}>{verdict.title}</ButtonLink>
        </>
      }
    >
      {photos?.length === 0 && <p>{words.none}</p>}
      {byPlace(photos ?? []).map(([name, list]) => (
        <Section key={name} title={name}>
          <ul class={styles.grid}>
            {list.map((each) => (
              <li key={each.key}>
                <Thumbnail walk={model.key} each={each} />
              </li>
            ))}
          </ul>
        </Section>
      ))}
      <Section title={words.ofMachine}>
        <TakeButtons taken={{ walk: model.key, shows }} step="photos" />
      </Section>
      <PositionToggle />
    </Screen>
  );
}

/** Whether pictures say where they were taken; the phone asks for its permission when it is switched on. */
function PositionToggle() {
  const [on, setOn] = useState(false);
  useEffect(() => void isPositionWanted().then(setOn), []);
  const change = async (): Promise<void> => {
    const next = !on;
    if (next && !(await mayAskPosition())) return tell(words.positionRefused);
    await wantPosition(next);
    setOn(next);
  };
  return <Toggle label={words.position} line={words.positionLine} on={on} onTap={() => void change()} />;
}
