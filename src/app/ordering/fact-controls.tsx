import { useState } from 'preact/hooks';
import { factAsk, type FactName } from '../../core/part-kinds.ts';
import type { LengthUnit } from '../../core/quantity.ts';
import { factHows } from '../../core/machine.ts';
import { factWords, howLines, howWords, ordering as words } from '../../words/en/ordering.ts';
import { capital } from '../../words/outcome-text.ts';
import { Choices } from '../parts/choices.tsx';
import { Field } from '../parts/field.tsx';
import { Pad, type PadField } from '../parts/pad.tsx';
import { Stepper } from '../parts/stepper.tsx';
import type { FactDraft } from './fact-entry.ts';

interface ControlsProps {
  readonly name: FactName;
  readonly draft: FactDraft;
  readonly unit: LengthUnit;
  readonly onChange: (draft: FactDraft) => void;
  readonly onDone: () => void;
}

/** What a fact is entered with: a choice, a text, or the pad with its big keys. */
export function FactControls(props: ControlsProps) {
  const { name, draft, onChange } = props;
  const ask = factAsk(name);
  const { name: title, choices = {} } = factWords[name];
  const put = (text: string): void => onChange({ ...draft, texts: [text] });
  if (ask.kind === 'text') return <Field label={capital(title)} value={draft.texts[0] ?? ''} onInput={put} />;
  if (ask.kind !== 'choice') return <Numbers {...props} />;
  return (
    <Choices
      hideTitle
      title={capital(title)}
      options={ask.choices.map((value) => ({ value, label: choices[value] ?? value }))}
      chosen={draft.texts[0]}
      onChoose={put}
    />
  );
}

const most = 40;

function Numbers({ name, draft, unit, onChange, onDone }: ControlsProps) {
  const [active, setActive] = useState(0);
  const { kind } = factAsk(name);
  const labels = kind === 'twice' ? [words.first, words.second] : [''];
  const fields = labels.map((label, at): PadField => ({
    id: `${at}`,
    label,
    name: label === '' ? factWords[name].name : undefined,
    text: draft.texts[at] ?? '',
  }));
  const put = (at: number, text: string): void =>
    onChange({ ...draft, texts: labels.map((_label, k) => (k === at ? text : (draft.texts[k] ?? ''))) });
  return (
    <>
      <Pad
        fields={fields}
        active={active}
        unit={kind === 'count' || kind === 'twice' ? undefined : unit}
        last={undefined}
        onText={put}
        onActive={setActive}
        onNext={() => (active + 1 < fields.length ? setActive(active + 1) : onDone())}
      />
      {kind === 'spaces' && (
        <Stepper
          label={`${words.spaces}, ${words.spacesHint}`}
          value={draft.spaces}
          least={1}
          most={most}
          onChange={(spaces) => onChange({ ...draft, spaces })}
        />
      )}
    </>
  );
}

/** How the person knows it, in one tap. */
export function HowKnown({ draft, onChange }: Pick<ControlsProps, 'draft' | 'onChange'>) {
  return (
    <Choices
      title={words.howAsk}
      narrow
      options={factHows.map((value) => ({ value, label: capital(howWords[value]), line: howLines[value] }))}
      chosen={draft.how}
      onChoose={(how) => onChange({ ...draft, how })}
    />
  );
}
