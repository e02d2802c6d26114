import { useLocation } from 'preact-iso';
import { useState } from 'preact/hooks';
import type { PhotoEvidence } from '../../core/photo-evidence.ts';
import { measurePhoto, type PhotoMarks, type PhotoSize } from '../../core/photo-measure.ts';
import type { Result } from '../../core/result.ts';
import type { Step } from '../../core/steps.ts';
import { common } from '../../words/en/common.ts';
import { measuring as words, photoDoubtLines, photos } from '../../words/en/photos.ts';
import { questionLine } from '../../words/en/questions.ts';
import { padKey, saveReadings } from '../actions/walk.ts';
import { stepTitle } from '../data/describe.ts';
import { formatter } from '../data/format.ts';
import { doubtOf } from '../data/measuring.ts';
import { walkPath } from '../data/paths.ts';
import { useFlow } from '../data/step-flow.ts';
import { sizeText } from '../data/tool.ts';
import { useDraft } from '../data/use-draft.ts';
import type { WalkModel } from '../data/walk-model.ts';
import { Button, ButtonLink } from '../parts/button.tsx';
import { Choices } from '../parts/choices.tsx';
import { Screen } from '../parts/screen.tsx';
import { Question, type Asked } from '../screens/question.tsx';
import { MeasureMarks, markName, shifted, zoomOf } from './measure-marks.tsx';
import { MeasureScale } from './measure-scale.tsx';
import { madeFrom, measurable, readingFrom } from './measure-use.ts';
import {
  allMarks,
  freshDraft,
  marksOf,
  pitchOf,
  scaleMarks,
  withMark,
  type MeasureDraft,
} from './measuring.ts';
import { photoAlt } from './photo-text.ts';
import { usePicture } from './picture-address.ts';
import { photosPath, type WalkPhoto } from './walk-photos.ts';
import { ZoomFrame } from './zoom-frame.tsx';
import styles from './photos.module.css';

interface MeasurePhotoProps {
  readonly model: WalkModel;
  readonly each: WalkPhoto;
  /** The step that the size is for. */
  readonly from: string | undefined;
}

/** A picture in which something is measured. */
export function MeasurePhoto({ model, each, from }: MeasurePhotoProps) {
  const steps = measurable(model);
  const [picked, setPicked] = useState(from);
  const shown = each.photo.shows.map(({ place, item }) =>
    steps.find((step) => step.place === place && (item === undefined || step.items[0]?.id === item)),
  );
  const step =
    steps.find(({ id }) => id === picked) ?? shown.find((found) => found !== undefined) ?? steps[0];
  if (!step) {
    return (
      <Screen
        title={words.title}
        bar={<ButtonLink href={photosPath(model.key, each.sha256)}>{common.back}</ButtonLink>}
      >
        <span>{photos.gone}</span>
      </Screen>
    );
  }
  return <Measuring key={step.id} model={model} each={each} step={step} steps={steps} onStep={setPicked} />;
}

interface MeasuringProps {
  readonly model: WalkModel;
  readonly each: WalkPhoto;
  readonly step: Step;
  readonly steps: readonly Step[];
  readonly onStep: (id: string) => void;
}

function Measuring({ model, each: { sha256, photo }, step, steps, onStep }: MeasuringProps) {
  const { route } = useLocation();
  const flow = useFlow(model, step);
  const size = { width: photo.width, height: photo.height };
  const key = `marks/${model.key}/${step.id}/${sha256}`;
  const usual = step.kind === 'sag' ? 'from-line' : 'distance';
  const [draft, setDraft] = useDraft<MeasureDraft>(
    key,
    freshDraft(size, usual, madeFrom(model, step, sha256)),
  );
  const [asked, setAsked] = useState<Asked>();
  const pitch = pitchOf(model, step);
  const marks = marksOf(draft, size, pitch);
  const result = marks && measurePhoto(marks, size);
  const take = (from: PhotoEvidence, confirmed: boolean): void => {
    const placed = readingFrom(model, step, from, confirmed);
    const doubt = confirmed ? undefined : doubtOf(model, step, placed.reading);
    const line = doubt && questionLine(placed.item, doubt, formatter.value, 1);
    if (line !== undefined) return setAsked({ line, choices: [], take: () => take(from, true) });
    const drafts = [key, padKey(model.key, step.id)];
    void flow
      .saveAnd(() => saveReadings(model.key, [placed], drafts), [placed], true)
      .then((saved) => saved && route(walkPath(model.key, step.id)));
  };
  const evidence = marks && result?.ok ? evidenceOf(sha256, marks, result.value) : undefined;
  return (
    <Screen
      wide
      title={words.title}
      sub={stepTitle(step)}
      bar={
        <>
          <ButtonLink href={photosPath(model.key, sha256)}>{common.back}</ButtonLink>
          <Button look="main" disabled={!evidence} onTap={() => evidence && take(evidence, false)}>
            {words.use}
          </Button>
        </>
      }
    >
      <p>{words.caution}</p>
      {asked && <Question asked={asked} onAgain={() => setAsked(undefined)} />}
      <MarkedPicture draft={draft} size={size} sha256={sha256} alt={photoAlt(photo)} onChange={setDraft} />
      <Measured item={step.items[0]?.id ?? ''} draft={draft} result={result} />
      <MeasureScale draft={draft} size={size} hasPitch={pitch !== undefined} onChange={setDraft} />
      <Choices
        title={words.reading}
        narrow
        chosen={step.id}
        options={steps.map((other) => ({ value: other.id, label: stepTitle(other) }))}
        onChoose={onStep}
      />
    </Screen>
  );
}

const evidenceOf = (photo: string, marks: PhotoMarks, { mm, uMm }: PhotoSize): PhotoEvidence => ({
  photo,
  ...marks,
  mm: Math.round(mm * 1000) / 1000,
  uMm: Math.round(uMm * 1000) / 1000,
});

interface MeasuredProps {
  readonly item: string;
  readonly draft: MeasureDraft;
  readonly result: Result<PhotoSize, { readonly kind: keyof typeof photoDoubtLines }> | undefined;
}

/** The size with its interval as it stands, or what is missing. */
function Measured({ item, draft, result }: MeasuredProps) {
  const left = allMarks(draft).filter(({ zoom }) => zoom === 0).length;
  return (
    <section aria-label={words.result}>
      <p class={result?.ok ? styles.measured : undefined} role="status">
        {left > 0 && words.left(left)}
        {result && !result.ok && photoDoubtLines[result.error.kind]}
        {result?.ok && words.size(sizeText(item, result.value.mm), sizeText(item, result.value.halfMm))}
      </p>
      {result?.ok && <p>{words.how}</p>}
    </section>
  );
}

interface MarkedPictureProps {
  readonly draft: MeasureDraft;
  readonly size: { readonly width: number; readonly height: number };
  readonly sha256: string;
  readonly alt: string;
  readonly onChange: (draft: MeasureDraft) => void;
}

/** The picture with its marks: a tap puts the chosen one there, and the next is chosen. */
function MarkedPicture({ draft, size, sha256, alt, onChange }: MarkedPictureProps) {
  const picture = usePicture(sha256, 'whole');
  const [chosen, setChosen] = useState(0);
  const address = picture?.address;
  const marks = allMarks(draft);
  const at = Math.min(chosen, marks.length - 1);
  if (picture && address === undefined) return <p>{photos.gone}</p>;
  return (
    <>
      <div class={styles.marked} style={{ '--ratio': size.width / size.height }}>
        <ZoomFrame
          label={words.picture}
          over={(view, frame) =>
            address !== undefined && (
              <MeasureMarks
                {...{ draft, size, view, frame, address }}
                chosen={at}
                onChoose={setChosen}
                onMove={(n, put) => onChange(withMark(draft, n, put))}
              />
            )
          }
          onTap={({ x, y }, view, frame) => {
            const zoom = zoomOf(size, view, frame);
            const middle = { at: [size.width / 2, size.height / 2], zoom } as const;
            onChange(
              withMark(draft, at, shifted(middle, (x - view.x) / zoom, (y - view.y) / zoom, size, zoom)),
            );
            const next = marks.findIndex((mark, n) => n !== at && mark.zoom === 0);
            if (next >= 0) setChosen(next);
          }}
        >
          {address !== undefined && <img class={styles.fitted} src={address} alt={alt} draggable={false} />}
        </ZoomFrame>
      </div>
      <Choices
        title={words.marks}
        narrow
        chosen={at}
        options={marks.map((_, n) => ({ value: n, label: markName(n, scaleMarks(draft).length) }))}
        onChoose={setChosen}
      />
      <p>{words.keys}</p>
    </>
  );
}
