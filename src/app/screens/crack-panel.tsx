import { useState } from 'preact/hooks';
import type { Item } from '../../core/items.ts';
import type { Place } from '../../core/keys.ts';
import { plausibility } from '../../core/plausible.ts';
import type { Step } from '../../core/steps.ts';
import { common } from '../../words/en/common.ts';
import { itemName, itemQuestion } from '../../words/en/items.ts';
import { pad } from '../../words/en/pad.ts';
import { questionLine } from '../../words/en/questions.ts';
import { padKey, saveReadings } from '../actions/walk.ts';
import { formatter } from '../data/format.ts';
import { preferences } from '../data/preferences.ts';
import { readPad } from '../data/pad-text.ts';
import { freeNumber, useFlow } from '../data/step-flow.ts';
import { useDraft } from '../data/use-draft.ts';
import type { WalkModel } from '../data/walk-model.ts';
import { Button } from '../parts/button.tsx';
import { Toggle } from '../parts/choices.tsx';
import { Pad } from '../parts/pad.tsx';
import { Screen } from '../parts/screen.tsx';
import { PhotosHere } from './photos-here.tsx';
import { NotSeen } from './not-seen.tsx';
import { Question, type Asked } from './question.tsx';

interface CrackPanelProps {
  readonly model: WalkModel;
  readonly step: Step;
  readonly item: Item;
  readonly place: Place;
  readonly onDone: () => void;
}

/** One crack or cut: its length, its depth, and whether cord shows in it; each one is a reading of its own. */
export function CrackPanel({ model, step, item, place, onDone }: CrackPanelProps) {
  const flow = useFlow(model, step);
  const draftKey = padKey(model.key, `${step.id}.${item.id}`);
  const [draft, setDraft] = useDraft(draftKey, { texts: ['', ''], cord: false });
  const [active, setActive] = useState(0);
  const [asked, setAsked] = useState<Asked>();
  const unit = preferences.value.depth === 'in/16' ? 'in' : preferences.value.depth;
  const n = freeNumber(model, step, item.id);
  const store = (lengthMm: number, depthMm: number, confirmed: boolean): void => {
    const what = {
      kind: 'crack' as const,
      lengthMm,
      depthMm,
      cordVisible: draft.cord,
      typed: draft.texts,
      unit,
    };
    const at = { place, item: item.id, n };
    const reading = { v: 1 as const, what, ...(confirmed && { confirmed }) };
    const save = () => saveReadings(model.key, [{ ...at, reading }], [draftKey]);
    void flow.saveAnd(save, [at], true).then((ok) => ok && onDone());
  };
  const next = (): void => {
    const read = draft.texts.map((text) => readPad(text, unit));
    const bad = read.findIndex(({ kind }) => kind !== 'length');
    if (bad === 1 && active === 0) return setActive(1);
    const [length, depth] = read;
    const fault = read[bad];
    if (fault && fault.kind !== 'length') {
      setActive(bad);
      return setAsked({ line: fault.line, choices: [], take: undefined });
    }
    if (length?.kind !== 'length' || depth?.kind !== 'length') return;
    const doubt = plausibility(item, { mm: length.mm, uMm: 0 });
    if (!doubt) return store(length.mm, depth.mm, false);
    setAsked({
      line: questionLine(item.id, doubt, formatter.value),
      choices: [],
      take: () => store(length.mm, depth.mm, true),
    });
  };
  const type = (at: number, text: string): void => {
    setAsked(undefined);
    setDraft({ ...draft, texts: draft.texts.map((each, i) => (i === at ? text : each)) });
  };
  const [lengthText = '', depthText = ''] = draft.texts;
  return (
    <Screen
      title={itemName(item.id)}
      sub={itemQuestion(item.id)}
      bar={
        <>
          <Button onTap={onDone}>{common.back}</Button>
          <Button look="main" onTap={next}>
            {common.save}
          </Button>
        </>
      }
    >
      {asked && <Question asked={asked} onAgain={() => setAsked(undefined)} />}
      <Pad
        fields={[
          { id: 'length', label: pad.length, text: lengthText },
          { id: 'depth', label: pad.depth, text: depthText },
        ]}
        active={active}
        unit={unit}
        last={undefined}
        onText={type}
        onActive={setActive}
        onNext={next}
      />
      <Toggle
        label={pad.cordVisible}
        on={draft.cord}
        onTap={() => setDraft({ ...draft, cord: !draft.cord })}
      />
      <Button look="plain" onTap={() => store(0, 0, false)}>
        {pad.noCrack}
      </Button>
      <PhotosHere walk={model.key} step={step.id} place={place} items={[item.id]} damage />
      <NotSeen model={model} place={place} items={[item.id]} spot={n} onDone={onDone} />
    </Screen>
  );
}
