import { photoScales, type Photo } from '../../core/photo.ts';
import { measuring, photos as words, scaleWords } from '../../words/en/photos.ts';
import { removeWithUndo } from '../actions/saved.ts';
import { tell } from '../data/notice.ts';
import type { TakenFor } from '../data/pending-photo.ts';
import { notSavedLine } from '../data/saving.ts';
import { useDraft, useSaveOnLeave } from '../data/use-draft.ts';
import type { WalkModel } from '../data/walk-model.ts';
import { Button, ButtonLink } from '../parts/button.tsx';
import { Choices } from '../parts/choices.tsx';
import { Facts } from '../parts/facts.tsx';
import { Field } from '../parts/field.tsx';
import { Screen, Section } from '../parts/screen.tsx';
import { EditTies } from './edit-ties.tsx';
import { showsText, takenText } from './photo-text.ts';
import { TakeButtons } from './take-buttons.tsx';
import { changePhoto, photosPath, photoStep, type WalkPhoto } from './walk-photos.ts';

interface AboutPhotoProps {
  readonly model: WalkModel;
  readonly each: WalkPhoto;
  readonly onGone: () => void;
  /** It was taken again: the new picture's hash. */
  readonly onNew: (sha256: string) => void;
  readonly onDone: () => void;
}

/** What is known of a picture, to be put right; and the ways to take it again or remove it. */
export function AboutPhoto({ model, each, onGone, onNew, onDone }: AboutPhotoProps) {
  const { key, sha256, photo } = each;
  const { position, scale, shows, shot, note: said } = photo;
  const remove = async (): Promise<void> => {
    const removed = await removeWithUndo([key]);
    if (!removed.ok) return tell(notSavedLine(removed.error));
    tell(words.removed, removed.value);
    onGone();
  };
  const taken: TakenFor = {
    walk: model.key,
    shows,
    ...(scale && { scale }),
    ...(said !== undefined && { note: said }),
    ...(shot !== undefined && { shot }),
    replaces: key,
  };
  return (
    <Screen
      title={words.aboutTitle}
      sub={showsText(photo)}
      bar={
        <Button look="main" onTap={onDone}>
          {words.toPicture}
        </Button>
      }
    >
      <Note each={each} />
      <Choices
        title={words.scale}
        narrow
        chosen={scale}
        options={photoScales.map((value) => ({ value, ...scaleWords[value] }))}
        onChoose={(next) => void changePhoto(each, (now) => ({ ...now, scale: next }))}
      />
      <EditTies model={model} each={each} />
      <ButtonLink href={photosPath(model.key, each.sha256, 'measure')}>{measuring.open}</ButtonLink>
      <Section title={words.facts}>
        <Facts
          facts={[
            [words.taken, takenText(photo)],
            [words.cameraTime, photo.takenAt?.replace('T', ' ')],
            [words.source, words.sourceOf[photo.from]],
            [words.where, position && words.position5(position.lat, position.lon, position.accuracyM)],
            [words.pixels, words.size(photo.width, photo.height)],
          ]}
        />
      </Section>
      <Section title={words.retakeTitle}>
        <TakeButtons single taken={taken} step={photoStep(sha256)} labels={words.retake} onTaken={onNew} />
        <Button look="plain" onTap={() => void remove()}>
          {words.remove}
        </Button>
      </Section>
    </Screen>
  );
}

/** Kept as it is typed, and part of the record once the field is left. */
function Note({ each }: { each: WalkPhoto }) {
  const kept = each.photo.note ?? '';
  const key = `note/${each.key}`;
  const [draft, setDraft] = useDraft(key, { note: kept });
  const save = (): void => {
    const note = draft.note.trim();
    if (note === kept) return;
    const change = ({ note: _before, ...rest }: Photo): Photo => ({ ...rest, ...(note !== '' && { note }) });
    void changePhoto(each, change, [key]);
  };
  useSaveOnLeave(save);
  return (
    <Field
      label={words.note}
      value={draft.note}
      lines={2}
      onInput={(note) => setDraft({ note })}
      onLeave={save}
    />
  );
}
