import type { HaulField } from '../../core/hauling.ts';
import { round6 } from '../../core/quantity.ts';
import { parseCount, parseLength, parseMass } from '../../core/typed.ts';
import { massUnitWords, unitNames } from '../../words/en/choices.ts';
import { haulFieldWords, hauling as words, tieFieldWords } from '../../words/en/hauling.ts';
import { formatter } from '../data/format.ts';
import { preferences } from '../data/preferences.ts';
import { Toggle } from '../parts/choices.tsx';
import { NumberField } from '../parts/number-field.tsx';
import { isOfLoad, massText, shownLength, shownMass, type LoadForm, type RigForm } from './haul-form.ts';

/** Both forms of a haul and how they change. */
export interface HaulForms {
  readonly rig: RigForm;
  readonly load: LoadForm;
  readonly setRig: (rig: RigForm) => void;
  readonly setLoad: (load: LoadForm) => void;
  /** From the machine's record, in kg. */
  readonly machineKg: number | undefined;
}

/** Mass fields, in the unit that this person reads in. */
export function MassFields({ fields, ...forms }: HaulForms & { fields: readonly HaulField[] }) {
  return (
    <>
      {fields.map((field) => (
        <OneMass key={field} field={field} {...forms} />
      ))}
    </>
  );
}

function OneMass({ field, rig, load, setRig, setLoad, machineKg }: HaulForms & { field: HaulField }) {
  const unit = preferences.value.mass;
  const typed = (isOfLoad(field) ? load : rig).masses[field];
  const isRecord = field === 'machine' && typed === undefined && machineKg !== undefined;
  const change = (text: string): void => {
    const masses = { [field]: { text, unit } };
    if (isOfLoad(field)) setLoad({ ...load, masses: { ...load.masses, ...masses } });
    else setRig({ ...rig, masses: { ...rig.masses, ...masses } });
  };
  return (
    <NumberField
      label={`${haulFieldWords[field].label}, ${massUnitWords[unit]}`}
      text={isRecord ? massText(machineKg, unit) : shownMass(typed, unit)}
      hint={isRecord ? words.fromMachine : haulFieldWords[field].hint}
      parse={(text) => parseMass(text, unit)}
      spell={({ value }) => String(round6(value))}
      onInput={change}
    />
  );
}

type RigProps = Pick<HaulForms, 'rig' | 'setRig'>;

/** How many ties of which working load limit. */
export const TieFields = (props: RigProps) => (
  <>
    <TieGroupFields way="direct" {...props} />
    <TieGroupFields way="over" {...props} />
  </>
);

function TieGroupFields({ way, rig, setRig }: RigProps & { way: 'direct' | 'over' }) {
  const unit = preferences.value.mass;
  const [count, wll] = [tieFieldWords[`${way}-count`], tieFieldWords[`${way}-wll`]];
  return (
    <>
      <NumberField
        whole
        label={count.label}
        text={rig[way] ?? ''}
        hint={count.hint}
        parse={parseCount}
        spell={String}
        onInput={(text) => setRig({ ...rig, [way]: text })}
      />
      <NumberField
        label={`${wll.label}, ${massUnitWords[unit]}`}
        text={shownMass(rig.wll[way], unit)}
        hint={wll.hint}
        parse={(text) => parseMass(text, unit)}
        spell={({ value }) => String(round6(value))}
        onInput={(text) => setRig({ ...rig, wll: { ...rig.wll, [way]: { text, unit } } })}
      />
    </>
  );
}

/** Length on the deck, and whether something stops the machine there. */
export function LengthField({ load, setLoad }: Pick<HaulForms, 'load' | 'setLoad'>) {
  // A machine’s length is no matter of 32nds.
  const unit = preferences.value.length === 'mm' ? 'mm' : 'in';
  return (
    <>
      <NumberField
        label={`${tieFieldWords.length.label}, ${unitNames[unit].label}`}
        text={shownLength(load.length, unit)}
        hint={tieFieldWords.length.hint}
        parse={(text) => parseLength(text, unit)}
        spell={({ mm }) => formatter.value.field(mm, unit)}
        onInput={(text) => setLoad({ ...load, length: { text, unit } })}
      />
      <Toggle
        label={words.blocked}
        line={words.blockedLine}
        on={load.blocked === true}
        onTap={() => setLoad({ ...load, blocked: load.blocked !== true })}
      />
    </>
  );
}
