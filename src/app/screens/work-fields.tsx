import type { Shape } from '../../core/machine.ts';
import { round6, type LengthUnit } from '../../core/quantity.ts';
import { parseHours, parseLength } from '../../core/typed.ts';
import { unitNames, workKindWords } from '../../words/en/choices.ts';
import { componentNames, sideNames } from '../../words/en/items.ts';
import { machineCosts as costs, workReasonWords } from '../../words/en/machine-costs.ts';
import { workForm as words } from '../../words/en/machine.ts';
import { useBooks } from '../data/books.ts';
import { formatter } from '../data/format.ts';
import { bookOptions } from '../data/sheet-choice.ts';
import { hasPart, numbersOf, partsOf, type WorkFault, type WorkTexts } from '../data/work-form.ts';
import { Choices } from '../parts/choices.tsx';
import { DateField } from '../parts/date-field.tsx';
import { Field } from '../parts/field.tsx';
import { Missing } from '../parts/missing.tsx';
import { NumberField } from '../parts/number-field.tsx';
import { Select } from '../parts/select.tsx';
import styles from '../parts/forms.module.css';
import { optionsOf } from './machine-shape.tsx';

interface WorkFieldsProps {
  readonly texts: WorkTexts;
  readonly faults: readonly WorkFault[];
  readonly shape: Shape;
  readonly unit: LengthUnit;
  readonly change: (part: Partial<WorkTexts>) => void;
}

/** What was done, on which part, and when. */
export function WorkFields(props: WorkFieldsProps) {
  const { texts, faults, change } = props;
  return (
    <div class={styles.form}>
      <Choices
        title={words.what}
        narrow
        options={optionsOf(workKindWords)}
        chosen={texts.kind}
        onChoose={(kind) => change({ kind })}
      />
      {faults.includes('kind') && <Missing line={words.kindMissing} />}
      {hasPart(texts.kind) && <PartFields {...props} />}
      {texts.kind === 'meter-changed' && (
        <NumberField
          label={costs.oldMeter}
          hint={costs.oldMeterHint}
          text={texts.oldMeter}
          asked={faults.includes('oldMeter')}
          parse={parseHours}
          spell={(hours) => String(round6(hours))}
          onInput={(oldMeter) => change({ oldMeter })}
        />
      )}
      {texts.kind === 'fitted' && (
        <Choices
          title={costs.why}
          narrow
          options={optionsOf(workReasonWords)}
          chosen={texts.why}
          onChoose={(why) => change({ why: why === texts.why ? '' : why })}
        />
      )}
      <DateField label={words.when} value={texts.on} onInput={(on) => change({ on })} />
      <NumberField
        label={hasPart(texts.kind) || texts.kind === '' ? words.meter : words.meterNew}
        text={texts.meter}
        asked={faults.includes('meter')}
        parse={parseHours}
        spell={(hours) => String(round6(hours))}
        onInput={(meter) => change({ meter })}
      />
      {hasPart(texts.kind) && <NewPart {...props} />}
      <Field label={words.note} lines={3} value={texts.note} onInput={(note) => change({ note })} />
    </div>
  );
}

function PartFields({ texts, faults, shape, change }: WorkFieldsProps) {
  const numbers = numbersOf(texts, shape);
  return (
    <>
      <Choices
        title={words.part}
        narrow
        options={partsOf(shape).map((value) => ({ value, label: componentNames[value].one }))}
        chosen={texts.component}
        onChoose={(component) => change({ component, number: '' })}
      />
      {faults.includes('component') && <Missing line={words.partMissing} />}
      <Choices
        title={words.side}
        narrow
        options={[
          { value: 'left', label: sideNames.left },
          { value: 'right', label: sideNames.right },
          { value: 'both', label: words.both },
        ]}
        chosen={texts.side}
        onChoose={(side) => change({ side })}
      />
      {faults.includes('side') && <Missing line={words.sideMissing} />}
      {numbers > 1 && (
        <Select
          label={words.number}
          options={[
            { value: '', label: words.allOfThem },
            ...Array.from({ length: numbers }, (_, at) => ({ value: `${at + 1}`, label: `${at + 1}` })),
          ]}
          chosen={texts.number}
          onChoose={(number) => change({ number })}
        />
      )}
    </>
  );
}

/** Size and sheet of what was put on. */
function NewPart({ texts, faults, unit, change }: WorkFieldsProps) {
  const sheets = useBooks('limits');
  return (
    <>
      <NumberField
        label={`${words.newSize}, ${unitNames[unit].label}`}
        text={texts.size}
        asked={faults.includes('size')}
        parse={(text) => parseLength(text, unit)}
        spell={({ mm }) => formatter.value.field(mm, unit)}
        onInput={(size) => change({ size })}
      />
      <Select
        label={words.sheet}
        options={[{ value: '', label: words.sameSheet }, ...bookOptions(sheets)]}
        chosen={texts.sheet}
        onChoose={(sheet) => change({ sheet })}
      />
    </>
  );
}
