import type { RecordKey } from '../../core/keys.ts';
import type { Machine } from '../../core/machine.ts';
import { round6 } from '../../core/quantity.ts';
import { parseHours, parseMass } from '../../core/typed.ts';
import { valueIn } from '../../core/assemble.ts';
import { massUnitWords } from '../../words/en/choices.ts';
import { machineForm, machineHints } from '../../words/en/machine.ts';
import { preferences } from '../data/preferences.ts';
import { useLive, valueOf } from '../data/live.ts';
import type { MachineField, MachineTexts } from '../data/machine-form.ts';
import { machinePath } from '../data/paths.ts';
import { store } from '../data/phone.ts';
import { barePin, pinHints, type PinHint } from '../data/pin.ts';
import { Field } from '../parts/field.tsx';
import { NumberField } from '../parts/number-field.tsx';
import styles from '../parts/forms.module.css';

export interface FormPartProps {
  readonly texts: MachineTexts;
  readonly asked: boolean;
  readonly change: (field: MachineField, text: string) => void;
}

export const pinLine = (hint: PinHint, pin: string): string => {
  if (hint === 'check-letter') return machineHints.pinCheckLetter;
  return hint === 'letters' ? machineHints.pinLetters : machineHints.pinLength(barePin(pin).length);
};

/** PIN, mass and hour meter. */
export function MachinePlate({ own, ...props }: FormPartProps & { own: RecordKey<'machine'> | undefined }) {
  const { texts, asked, change } = props;
  const unit = preferences.value.mass;
  return (
    <>
      <Field
        label={machineForm.pin}
        value={texts.pin}
        hint={pinHints(texts.pin).map((hint) => pinLine(hint, texts.pin))[0]}
        onInput={(text) => change('pin', text)}
      />
      <SamePin pin={texts.pin} own={own} />
      <NumberField
        label={`${machineForm.mass}, ${massUnitWords[unit]}`}
        text={texts.mass}
        asked={asked}
        parse={(text) => parseMass(text, unit)}
        spell={({ value }) => String(round6(value))}
        onInput={(text) => change('mass', text)}
      />
      <Hours field="meter" {...props} />
    </>
  );
}

/** One field of meter hours. */
export function Hours({ field, texts, asked, change }: FormPartProps & { field: HoursField }) {
  return (
    <NumberField
      label={hoursLabels[field]}
      text={texts[field]}
      asked={asked}
      parse={parseHours}
      spell={(hours) => String(round6(hours))}
      onInput={(text) => change(field, text)}
    />
  );
}

type HoursField = 'meter' | 'travelHours' | 'leftFitted' | 'rightFitted';
const hoursLabels: Record<HoursField, string> = {
  meter: machineForm.meter,
  travelHours: machineForm.travelHours,
  leftFitted: machineForm.fittedAt,
  rightFitted: machineForm.fittedAt,
};

/** Says when another machine on this phone has the same PIN. */
function SamePin({ pin, own }: { pin: string; own: RecordKey<'machine'> | undefined }) {
  const machines = valueOf(useLive('pins', ['machine/'], () => store.list({ prefix: 'machine/' })));
  const bare = barePin(pin);
  const other = machines?.find(
    ({ key, versions }) =>
      key !== own && bare !== '' && barePin(valueIn<Machine>(versions)?.pin ?? '') === bare,
  );
  if (!other) return null;
  const name = valueIn<Machine>(other.versions)?.name ?? '';
  return (
    <p role="status">
      {machineForm.pinTaken(name)}{' '}
      <a class={styles.link} href={machinePath(other.key)}>
        {machineHints.openOther}
      </a>
    </p>
  );
}

/** What a machine may say of itself besides. */
export function MachineMore(props: FormPartProps) {
  const { texts, change } = props;
  return (
    <>
      <Field label={machineForm.maker} value={texts.maker} onInput={(text) => change('maker', text)} />
      <Field label={machineForm.model} value={texts.model} onInput={(text) => change('model', text)} />
      <Hours field="travelHours" {...props} />
      <Field label={machineForm.note} lines={3} value={texts.note} onInput={(text) => change('note', text)} />
    </>
  );
}
