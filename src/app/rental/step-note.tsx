import { useState } from 'preact/hooks';
import { itemName } from '../../words/en/items.ts';
import { isSized, sizeOf } from '../../core/sizes.ts';
import { isMarked, markId } from '../../core/shots.ts';
import type { PlacedReading } from '../../core/states.ts';
import type { Step } from '../../core/steps.ts';
import { marks as words } from '../../words/en/rental-walks.ts';
import { sizeText } from '../data/tool.ts';
import type { WalkModel } from '../data/walk-model.ts';
import { Button } from '../parts/button.tsx';
import { Field } from '../parts/field.tsx';
import { usePicture } from '../photos/picture-address.ts';
import type { HandedOut } from './handed-out.ts';
import { useThenPhoto, WholePhoto } from './then-photo.tsx';
import styles from './rental.module.css';

interface StepNoteProps {
  readonly model: WalkModel;
  readonly step: Step;
  readonly mark: string;
  readonly onMark: (mark: string) => void;
}

/** Above a size of a rental walk: at hand-out where its mark is, at return where it was and what it measured. */
export function noteAt({ model, step, mark, onMark }: StepNoteProps) {
  const { rental, walk } = model;
  if (!rental || !isMarked(step)) return undefined;
  if (walk.purpose === 'hand-out') return <MarkField {...{ model, mark, onMark }} />;
  const then = rental.handedOutAt(step);
  return rental.handOut && then ? <Then handOut={rental.handOut} then={then} step={step} /> : undefined;
}

type MarkFieldProps = Omit<StepNoteProps, 'step'>;

function MarkField({ model, mark, onMark }: MarkFieldProps) {
  const before = model.assembled.input.readings.flatMap(({ reading }) => reading.mark ?? []).at(-1);
  return (
    <>
      <Field label={words.ask} hint={words.hint} value={mark} onInput={onMark} />
      {mark === '' && before !== undefined && (
        <Button onTap={() => onMark(before)}>{words.again(before)}</Button>
      )}
    </>
  );
}

interface ThenProps {
  readonly handOut: HandedOut;
  readonly then: PlacedReading;
  readonly step: Step;
}

function Then({ handOut, then: { item, reading }, step }: ThenProps) {
  const [open, setOpen] = useState(false);
  const photo = useThenPhoto(handOut, markId(step));
  const small = usePicture(photo?.sha256, 'small');
  const value = isSized(reading.what) ? sizeText(item, sizeOf(reading, reading.what, {}).mm) : '';
  const mark = reading.mark ?? '';
  const text = (
    <span>
      {words.then(value)} {mark === '' ? words.none : words.at(mark)} {photo === undefined && words.noPhoto}
    </span>
  );
  if (photo === undefined) return <p>{text}</p>;
  return (
    <>
      <button type="button" class={styles.then} aria-expanded={open} onClick={() => setOpen(!open)}>
        {small?.address !== undefined && <img src={small.address} alt={words.open} />}
        {text}
      </button>
      {open && <WholePhoto each={photo} alt={words.thenAlt(itemName(item))} />}
    </>
  );
}
