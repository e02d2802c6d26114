import type { SheetProblem } from '../../core/check-sheet.ts';
import { limitMeaningWords, unitShort } from '../../words/en/choices.ts';
import { itemName } from '../../words/en/items.ts';
import { sagMethodWords } from '../../words/en/sag.ts';
import { sheets as words } from '../../words/en/sheets.ts';
import { useBooks } from '../data/books.ts';
import { preferences } from '../data/preferences.ts';
import { tell } from '../data/notice.ts';
import { bookOptions } from '../data/sheet-choice.ts';
import type { SheetFaults } from '../data/sheet-form.ts';
import { newItemRow, newSagRow, type ItemRow, type SagRow, type SheetForm } from '../data/sheet-rows.ts';
import { Button } from '../parts/button.tsx';
import { Field } from '../parts/field.tsx';
import { Fold } from '../parts/fold.tsx';
import { Section } from '../parts/screen.tsx';
import { Select } from '../parts/select.tsx';
import styles from '../parts/forms.module.css';
import { ItemFields } from './sheet-edit-item.tsx';
import { SagFields } from './sheet-edit-sag.tsx';
import { Problems } from './sheet-read.tsx';

interface SheetFieldsProps {
  readonly form: SheetForm;
  readonly problems: readonly SheetProblem[];
  readonly faults: SheetFaults;
  readonly setForm: (form: SheetForm) => void;
}

/** Name, sizes and sag values of a sheet; each folded away until it is opened. */
export function SheetFields(props: SheetFieldsProps) {
  const { form, faults, setForm } = props;
  const ruleSets = useBooks('rules');
  return (
    <div class={styles.form}>
      <Field
        label={words.name}
        value={form.name}
        fault={faults.includes('name') ? words.nameMissing : undefined}
        onInput={(name) => setForm({ ...form, name })}
      />
      <Field
        label={words.about}
        lines={3}
        value={form.about}
        onInput={(about) => setForm({ ...form, about })}
      />
      <Select
        label={words.ruleSet}
        options={[{ value: '', label: words.ruleSetNone }, ...bookOptions(ruleSets)]}
        chosen={form.rules}
        onChoose={(rules) => setForm({ ...form, rules })}
      />
      <ItemList {...props} />
      <SagList {...props} />
    </div>
  );
}

/** `new 22 mm, replace limit 5 mm` */
function itemLine({ new: fresh, limits, unit }: ItemRow): string {
  const size = (text: string): string => `${text} ${unitShort[unit]}`;
  return [
    fresh.trim() === '' ? words.newMissing : words.rowNew(size(fresh)),
    ...limits.map(({ means, at }) => words.rowLimit(limitMeaningWords[means], size(at))),
  ].join(', ');
}

const sagLine = ({ low, high, unit }: SagRow): string => `${words.fromTo(low, high)} ${unitShort[unit]}`;

const problemsAt = (problems: readonly SheetProblem[], list: 'items' | 'sag', index: number) =>
  problems.filter(({ at }) => at.list === list && at.index === index);

function ItemList({ form, problems, faults, setForm }: SheetFieldsProps) {
  const set = (items: SheetForm['items']): void => setForm({ ...form, items });
  const remove = (row: ItemRow): void => {
    set(form.items.filter(({ id }) => id !== row.id));
    tell(words.removedEntry, () => setForm(form));
  };
  return (
    <Section title={words.items}>
      {form.items.map((row, i) => (
        <Fold
          key={row.id}
          title={row.item === '' ? words.chooseItem : itemName(row.item)}
          line={itemLine(row)}
          open={faults.includes(row.id) || row.item === ''}
        >
          <Problems problems={problemsAt(problems, 'items', i)} />
          <ItemFields
            row={row}
            asked={faults.includes(row.id)}
            change={(next) => set(form.items.map((each) => (each.id === next.id ? next : each)))}
            remove={() => remove(row)}
          />
        </Fold>
      ))}
      {form.items.length === 0 && <p>{words.noItems}</p>}
      <Button onTap={() => set([...form.items, newItemRow(preferences.value.length)])}>
        {words.addItem}
      </Button>
    </Section>
  );
}

function SagList({ form, problems, faults, setForm }: SheetFieldsProps) {
  const set = (sag: SheetForm['sag']): void => setForm({ ...form, sag });
  const remove = (row: SagRow): void => {
    set(form.sag.filter(({ id }) => id !== row.id));
    tell(words.removedEntry, () => setForm(form));
  };
  return (
    <Section title={words.sag}>
      {form.sag.map((row, i) => (
        <Fold
          key={row.id}
          title={sagMethodWords[row.method].name}
          line={sagLine(row)}
          open={faults.includes(row.id) || row.low === ''}
        >
          <Problems problems={problemsAt(problems, 'sag', i)} />
          <SagFields
            row={row}
            asked={faults.includes(row.id)}
            change={(next) => set(form.sag.map((each) => (each.id === next.id ? next : each)))}
            remove={() => remove(row)}
          />
        </Fold>
      ))}
      {form.sag.length === 0 && <p>{words.noSag}</p>}
      <Button onTap={() => set([...form.sag, newSagRow(preferences.value.length)])}>{words.addSag}</Button>
    </Section>
  );
}
