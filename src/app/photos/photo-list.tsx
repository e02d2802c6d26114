import { useEffect, useState } from 'preact/hooks';
import { makePlace, parsePlace, type Place } from '../../core/keys.ts';
import { common } from '../../words/en/common.ts';
import { itemName, placeName } from '../../words/en/items.ts';
import { photos as words, scaleWords } from '../../words/en/photos.ts';
import { verdict } from '../../words/en/verdict.ts';
import { tell } from '../data/notice.ts';
import { walkPath } from '../data/paths.ts';
import type { WalkModel } from '../data/walk-model.ts';
import { ButtonLink } from '../parts/button.tsx';
import { Toggle } from '../parts/choices.tsx';
import { Screen, Section } from '../parts/screen.tsx';
import type { groupsOf } from './photo-groups.ts';
import { isPositionWanted, mayAskPosition, wantPosition } from './position.ts';
import { TakeButtons } from './take-buttons.tsx';
import { Thumbnail } from './thumbnail.tsx';
import type { WalkPhoto } from './walk-photos.ts';
import styles from './photos.module.css';

const whole = makePlace({ side: 'whole', component: 'machine' });

interface PhotoListProps {
  readonly model: WalkModel;
  readonly groups: ReturnType<typeof groupsOf>;
  readonly count: number;
  readonly from: string | undefined;
}

/** Every picture of a walk; large ones are read when they are opened, small ones when they come into view. */
export function PhotoList({ model, groups, count, from }: PhotoListProps) {
  const shows = [{ place: whole }];
  return (
    <Screen
      wide
      title={words.title}
      sub={`${model.machine.name} · ${words.count(count)}`}
      bar={
        <>
          <ButtonLink href={walkPath(model.key, from ?? 'map')}>
            {from === undefined ? verdict.goBack : common.back}
          </ButtonLink>
          <ButtonLink href={walkPath(model.key, 'verdict')}>{verdict.title}</ButtonLink>
        </>
      }
    >
      {count === 0 && <p>{words.none}</p>}
      {groups.map(({ place, photos }) => {
        const name = place === undefined ? words.nothingNamed : placeName(parsePlace(place));
        return (
          <Section key={name} title={words.groupOf(name, photos.length)}>
            <ul class={styles.grid}>
              {photos.map((each) => (
                <li key={each.key}>
                  <Thumbnail walk={model.key} each={each} from={from} line={lineOf(each, place)} />
                </li>
              ))}
            </ul>
          </Section>
        );
      })}
      <Section title={words.ofMachine}>
        <TakeButtons taken={{ walk: model.key, shows }} step="photos" />
      </Section>
      <PositionToggle />
    </Screen>
  );
}

/** The items that a picture shows at a place, and how near. */
function lineOf({ photo }: WalkPhoto, at: Place | undefined): string {
  const items = photo.shows.flatMap(({ place, item }) =>
    place === at && item !== undefined ? [itemName(item)] : [],
  );
  const near = photo.scale ? [scaleWords[photo.scale].label.toLowerCase()] : [];
  return [...items, ...near].join(', ');
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
