import type { PictureMeasure } from '../../core/photo-evidence.ts';
import type { PictureSize } from '../../core/photo-plane.ts';
import { unitShort } from '../../words/en/choices.ts';
import { measuring as words } from '../../words/en/photos.ts';
import { preferences } from '../data/preferences.ts';
import { Button } from '../parts/button.tsx';
import { Choices } from '../parts/choices.tsx';
import { Field } from '../parts/field.tsx';
import { Stepper } from '../parts/stepper.tsx';
import { freshMarks, isLength, type MeasureDraft, type ScaleChoice } from './measuring.ts';

interface ScaleProps {
  readonly draft: MeasureDraft;
  readonly size: PictureSize;
  readonly hasPitch: boolean;
  readonly onChange: (draft: MeasureDraft) => void;
}

const mostMarks = 6;

/** What is of known size in the picture, and what is measured against it. */
export function MeasureScale({ draft, size, hasPitch, onChange }: ScaleProps) {
  const { scale, texts, measure } = draft;
  const unit = unitShort[preferences.value.length];
  const offered = (Object.keys(words.scales) as ScaleChoice[]).filter((each) => each !== 'links' || hasPitch);
  const typed = (n: 0 | 1, label: string) => (
    <Field
      label={`${label} (${unit})`}
      inputMode="decimal"
      value={texts[n]}
      onInput={(text) => onChange({ ...draft, texts: n === 0 ? [text, texts[1]] : [texts[0], text] })}
    />
  );
  return (
    <>
      <Choices
        title={words.scale}
        narrow
        chosen={scale}
        options={offered.map((value) => ({ value, ...words.scales[value] }))}
        onChoose={(next) => onChange({ ...draft, scale: next })}
      />
      {scale === 'square' && typed(0, words.side)}
      {scale === 'rectangle' && typed(0, words.first)}
      {scale === 'rectangle' && typed(1, words.second)}
      {scale === 'length' && typed(0, words.length)}
      {scale === 'links' && (
        <Stepper
          label={words.links}
          value={draft.links}
          least={1}
          most={12}
          onChange={(links) => onChange({ ...draft, links })}
        />
      )}
      <p>{words.flat}</p>
      {isLength(scale) && <p>{words.tilt}</p>}
      <Choices<PictureMeasure>
        title={words.measure}
        narrow
        chosen={measure}
        options={(['distance', 'from-line'] as const).map((value) => ({ value, ...words.measures[value] }))}
        onChoose={(next) => onChange({ ...draft, measure: next, marks: freshMarks(next, size) })}
      />
      {measure === 'from-line' && draft.marks.length < mostMarks && (
        <Button
          look="plain"
          onTap={() =>
            onChange({ ...draft, marks: [...draft.marks, ...freshMarks(measure, size).slice(-1)] })
          }
        >
          {words.another}
        </Button>
      )}
    </>
  );
}
