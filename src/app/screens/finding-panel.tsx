import { useState } from 'preact/hooks';
import type { Item } from '../../core/items.ts';
import type { Place } from '../../core/keys.ts';
import type { Observed } from '../../core/readings.ts';
import { stateKey } from '../../core/states.ts';
import type { Step } from '../../core/steps.ts';
import { common } from '../../words/en/common.ts';
import { findingLabel, itemName, itemQuestion } from '../../words/en/items.ts';
import { walk } from '../../words/en/walk.ts';
import { dropDraft } from '../actions/saved.ts';
import { padKey, saveReadings } from '../actions/walk.ts';
import { stateText } from '../../words/outcome-text.ts';
import { formatter } from '../data/format.ts';
import { useFlow } from '../data/step-flow.ts';
import { useDraft } from '../data/use-draft.ts';
import type { WalkModel } from '../data/walk-model.ts';
import { Button } from '../parts/button.tsx';
import { Choices } from '../parts/choices.tsx';
import { Field } from '../parts/field.tsx';
import { Meanwhile, useMeanwhile } from '../parts/meanwhile.tsx';
import { Screen } from '../parts/screen.tsx';
import { Stepper } from '../parts/stepper.tsx';
import { HelpButton } from './help-button.tsx';
import { PhotosHere } from './photos-here.tsx';
import { NotSeen } from './not-seen.tsx';
import { CrackPanel } from './crack-panel.tsx';

interface FindingPanelProps {
  readonly model: WalkModel;
  readonly step: Step;
  readonly item: Item;
  readonly place: Place;
  readonly onDone: () => void;
}

interface Draft {
  readonly finding: string | undefined;
  readonly count: number;
  readonly share: number | undefined;
  readonly note: string;
}

const shares = [
  [0.1, walk.shares.tenth],
  [0.25, walk.shares.quarter],
  [0.5, walk.shares.half],
  [0.75, walk.shares.most],
  [1, walk.shares.all],
] as const;

/** One item at one part: what was found, how many or how much of it, and a note. */
export function FindingPanel(props: FindingPanelProps) {
  return props.item.ask.kind === 'crack' ? <CrackPanel {...props} /> : <Finding {...props} />;
}

function Finding({ model, step, item, place, onDone }: FindingPanelProps) {
  const flow = useFlow(model, step);
  const state = model.outcomes.get(stateKey(place, item.id))?.state;
  const made = model.assembled.input.readings.find((each) => each.place === place && each.item === item.id);
  // Kept on disk: the camera may end the app in the middle of a finding.
  const draftKey = padKey(model.key, `${step.id}.${place}.${item.id}`);
  const [draft, setDraft] = useDraft<Draft>(draftKey, {
    finding: state?.finding,
    count: state?.count ?? 1,
    share: state?.share,
    note: made?.reading.note ?? '',
  });
  const { finding, count, share, note } = draft;
  const [saving, setSaving] = useState(false);
  const there = state?.known ? stateText(state, formatter.value) : '';
  const isOverwritten = useMeanwhile(there, finding !== state?.finding) && !saving;
  const { ask } = item;
  if (ask.kind !== 'finding') return null;
  const isFine = finding === ask.findings[0];
  const save = (found: string, more: boolean): void => {
    const what: Observed = {
      kind: 'finding',
      finding: found,
      ...(more && ask.counted === 'count' && { count }),
      ...(more && ask.counted === 'share' && share !== undefined && { share }),
    };
    const reading = { v: 1 as const, what, ...(note !== '' && { note }) };
    const at = { place, item: item.id, n: 1 };
    setSaving(true);
    void flow
      .saveAnd(() => saveReadings(model.key, [{ ...at, reading }], [draftKey]), [at], true)
      .then((ok) => (ok ? onDone() : setSaving(false)));
  };
  // What is fine, or not counted, is done with the tap that says so.
  const choose = (found: string): void => {
    setDraft({ ...draft, finding: found });
    if (found === ask.findings[0]) save(found, false);
  };
  const leave = (): void => {
    void dropDraft(draftKey);
    onDone();
  };
  return (
    <Screen
      title={itemName(item.id)}
      sub={itemQuestion(item.id)}
      bar={
        <>
          <Button onTap={leave}>{common.back}</Button>
          <Button
            look="main"
            disabled={finding === undefined}
            onTap={() => finding !== undefined && save(finding, !isFine)}
          >
            {common.save}
          </Button>
        </>
      }
    >
      {isOverwritten && <Meanwhile now={there} onKeep={leave} />}
      <Choices
        title={itemQuestion(item.id)}
        hideTitle
        chosen={finding}
        options={ask.findings.map((each) => ({ value: each, label: findingLabel(item.id, each) }))}
        onChoose={choose}
      />
      {finding !== undefined && !isFine && ask.counted === 'count' && (
        <Stepper
          label={walk.howMany}
          value={count}
          least={1}
          most={500}
          onChange={(next) => setDraft({ ...draft, count: next })}
        />
      )}
      {finding !== undefined && !isFine && ask.counted === 'share' && (
        <Choices
          title={walk.howMuch}
          narrow
          chosen={share}
          options={shares.map(([value, label]) => ({ value, label }))}
          onChoose={(next) => setDraft({ ...draft, share: next })}
        />
      )}
      {finding !== undefined && !isFine && (
        <Field
          label={walk.note}
          hint={walk.noteHint}
          value={note}
          lines={2}
          onInput={(next) => setDraft({ ...draft, note: next })}
        />
      )}
      <PhotosHere
        walk={model.key}
        step={step.id}
        place={place}
        items={[item.id]}
        damage={finding !== undefined && !isFine}
      />
      <HelpButton topic={item.id} />
      <NotSeen model={model} place={place} items={[item.id]} spot={1} onDone={leave} />
    </Screen>
  );
}
