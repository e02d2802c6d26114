import type { RecordKey } from '../../core/keys.ts';
import type { Shape } from '../../core/machine.ts';
import { machineKindWords, trackKindWords } from '../../words/en/choices.ts';
import { machineCosts as costs } from '../../words/en/machine-costs.ts';
import { machineForm, machineHints } from '../../words/en/machine.ts';
import type { Book } from '../data/books.ts';
import type { MachineFaults, MachineField, MachineTexts } from '../data/machine-form.ts';
import { bookOptions, sheetHint, sheetOptions } from '../data/sheet-choice.ts';
import { Choices } from '../parts/choices.tsx';
import { Field } from '../parts/field.tsx';
import { Fold } from '../parts/fold.tsx';
import { Missing } from '../parts/missing.tsx';
import { Section } from '../parts/screen.tsx';
import { Select } from '../parts/select.tsx';
import styles from '../parts/forms.module.css';
import { MachineCosts } from './machine-costs.tsx';
import { MachineMore, MachinePlate } from './machine-plate.tsx';
import { MachineShape, optionsOf } from './machine-shape.tsx';
import { MachineSides } from './machine-sides.tsx';

interface MachineFieldsProps {
  readonly texts: MachineTexts;
  readonly shape: Shape | undefined;
  readonly massKg: number | undefined;
  readonly fits: string | undefined;
  readonly sheets: readonly Book<'limits'>[] | undefined;
  readonly ruleSets: readonly Book<'rules'>[] | undefined;
  readonly prices: readonly Book<'price'>[] | undefined;
  readonly rates: readonly Book<'rate'>[] | undefined;
  readonly faults: MachineFaults;
  readonly own: RecordKey<'machine'> | undefined;
  readonly change: (field: MachineField, text: string) => void;
}

/** The fields of a machine: three that are needed, the rest when it is known. */
export function MachineFields(props: MachineFieldsProps) {
  const { texts, shape, faults, change } = props;
  return (
    <div class={styles.columns}>
      <div class={styles.form}>
        <Field
          label={machineForm.name}
          value={texts.name}
          hint={machineForm.nameHint}
          fault={faults.includes('name') ? machineForm.nameMissing : undefined}
          onInput={(text) => change('name', text)}
        />
        <Choices
          title={machineForm.kind}
          narrow
          options={optionsOf(machineKindWords)}
          chosen={texts.kind}
          onChoose={(value) => change('kind', value)}
        />
        {faults.includes('kind') && <Missing line={machineHints.kindMissing} />}
        <Choices
          title={machineForm.track}
          options={optionsOf(trackKindWords)}
          chosen={texts.track}
          onChoose={(value) => change('track', value)}
        />
        {faults.includes('track') && <Missing line={machineHints.trackMissing} />}
      </div>
      <div class={`${styles.form} ${styles.tall}`}>
        {shape && <MachineShape shape={shape} change={change} />}
      </div>
      <div class={styles.form}>
        <MachineRest {...props} />
      </div>
    </div>
  );
}

function MachineRest({
  texts,
  shape,
  massKg,
  fits,
  sheets,
  ruleSets,
  prices,
  rates,
  faults,
  own,
  change,
}: MachineFieldsProps) {
  const form = { texts, change, asked: faults.length > 0 };
  const isOpen = (...fields: MachineField[]): boolean => fields.some((field) => faults.includes(field));
  return (
    <>
      <Section title={machineHints.plate}>
        <MachinePlate {...form} own={own} />
      </Section>
      <Section title={machineHints.limits}>
        <Select
          label={machineForm.sheet}
          options={sheetOptions(sheets)}
          chosen={texts.sheet}
          hint={sheetHint(
            texts.sheet,
            sheets?.find(({ key }) => key === fits),
            shape,
            massKg,
          )}
          onChoose={(value) => change('sheet', value)}
        />
        <Select
          label={machineForm.rules}
          options={[{ value: '', label: machineHints.sheetRules }, ...bookOptions(ruleSets)]}
          chosen={texts.rules}
          onChoose={(value) => change('rules', value)}
        />
      </Section>
      <Fold
        title={machineForm.sidesDiffer}
        line={machineHints.sidesLine}
        open={isOpen('leftFitted', 'rightFitted')}
      >
        <MachineSides {...form} sheets={sheets} />
      </Fold>
      <Fold title={costs.machineTitle} line={costs.fitting} open={isOpen('hoursPerWeek')}>
        <MachineCosts {...form} prices={prices} rates={rates} />
      </Fold>
      <Fold title={machineForm.more} line={machineHints.moreLine} open={isOpen('travelHours')}>
        <MachineMore {...form} />
      </Fold>
    </>
  );
}
