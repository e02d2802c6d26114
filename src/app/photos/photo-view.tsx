import { useLocation } from 'preact-iso';
import { useState } from 'preact/hooks';
import { photoScales, type Photo } from '../../core/photo.ts';
import { common } from '../../words/en/common.ts';
import { photos as words, scaleWords } from '../../words/en/photos.ts';
import { put, removeWithUndo, save } from '../actions/saved.ts';
import { tell } from '../data/notice.ts';
import { notSavedLine } from '../data/saving.ts';
import type { WalkModel } from '../data/walk-model.ts';
import { Button, ButtonLink } from '../parts/button.tsx';
import { Choices } from '../parts/choices.tsx';
import { Facts } from '../parts/facts.tsx';
import { Field } from '../parts/field.tsx';
import { Screen } from '../parts/screen.tsx';
import { photoAlt, shownText, takenText } from './photo-text.ts';
import { usePicture } from './picture-address.ts';
import { TakeButtons } from './take-buttons.tsx';
import { photosPath, useWalkPhotos, type WalkPhoto } from './walk-photos.ts';
import { ZoomFrame } from './zoom-frame.tsx';
import styles from './photos.module.css';

/** One picture as large as the screen, what it shows, and what can be done with it. */
export function PhotoView({ model, sha256 }: { model: WalkModel; sha256: string }) {
  const photos = useWalkPhotos(model.key);
  const at = photos?.findIndex((each) => each.sha256 === sha256) ?? -1;
  const each = photos?.[at];
  const list = photosPath(model.key);
  const [before, after] = [photos?.[at - 1], photos?.[at + 1]];
  return (
    <Screen
      wide
      title={each ? words.nth(at + 1, photos?.length ?? 0) : words.title}
      sub={each && (each.photo.shows.map(shownText).join('; ') || words.nothingNamed)}
      bar={
        <>
          <ButtonLink href={list}>{words.all}</ButtonLink>
          {before && <ButtonLink href={photosPath(model.key, before.sha256)}>{words.before}</ButtonLink>}
          {after && <ButtonLink href={photosPath(model.key, after.sha256)}>{words.after}</ButtonLink>}
        </>
      }
    >
      {photos && !each && <p>{common.gone}</p>}
      {each && <Shown key={each.sha256} model={model} each={each} />}
    </Screen>
  );
}

function Shown({ model, each }: { model: WalkModel; each: WalkPhoto }) {
  const { route } = useLocation();
  const { key, sha256, photo } = each;
  const picture = usePicture(sha256, 'whole');
  const [note, setNote] = useState(photo.note ?? '');
  const change = async (more: Partial<Photo>): Promise<void> => {
    const saved = await save([put(key, { ...photo, ...more })]);
    if (!saved.ok) tell(notSavedLine(saved.error));
  };
  const remove = async (): Promise<void> => {
    const removed = await removeWithUndo([key]);
    if (!removed.ok) return tell(notSavedLine(removed.error));
    route(photosPath(model.key), true);
    tell(words.removed, removed.value);
  };
  const retaken = (next: string): void => {
    if (next === sha256) return;
    tell(words.retaken, () => save([put(key, photo)]));
    route(photosPath(model.key, next), true);
  };
  return (
    <>
      {picture && picture.address === undefined ? (
        <p>{words.gone}</p>
      ) : (
        <ZoomFrame label={words.picture}>
          {picture?.address !== undefined && (
            <img class={styles.large} src={picture.address} alt={photoAlt(photo)} draggable={false} />
          )}
        </ZoomFrame>
      )}
      <Facts
        facts={[
          [words.taken, takenText(photo)],
          [words.cameraTime, photo.takenAt],
          [words.where, photo.position && words.position5(photo.position.lat, photo.position.lon)],
          [words.pixels, words.size(photo.width, photo.height)],
        ]}
      />
      <Choices
        title={words.scale}
        narrow
        chosen={photo.scale}
        options={photoScales.map((value) => ({ value, ...scaleWords[value] }))}
        onChoose={(scale) => void change({ scale })}
      />
      <Field label={words.note} value={note} lines={2} onInput={setNote} />
      {note !== (photo.note ?? '') && <Button onTap={() => void change({ note })}>{common.save}</Button>}
      <TakeButtons
        single
        taken={{ walk: model.key, shows: photo.shows, scale: photo.scale, replaces: key }}
        step={`photos.${sha256}`}
        labels={words.retake}
        onTaken={retaken}
      />
      <Button look="plain" onTap={() => void remove()}>
        {words.remove}
      </Button>
    </>
  );
}
