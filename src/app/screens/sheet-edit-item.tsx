import { items } from '../../core/items.ts';
import { limitMeanings, loads, type LimitMeaning } from '../../core/limits.ts';
import { lengthUnits, type LengthUnit } from '../../core/quantity.ts';
import { parseLength } from '../../core/typed.ts';
import { limitMeaningWords, loadWords, unitNames } from '../../words/en/choices.ts';
import { itemName } from '../../words/en/items.ts';
import { sheets as words } from '../../words/en/sheets.ts';
import {
  newLimitRow,
  spellIn,
  type ItemRow,
  type LimitRow,
  type PositionChoice,
} from '../data/sheet-form.ts';
import { Button } from '../parts/button.tsx';
import { Toggle } from '../parts/choices.tsx';
import { Field } from '../parts/field.tsx';
import { Missing } from '../parts/missing.tsx';
import { NumberField } from '../parts/number-field.tsx';
import { Select } from '../parts/select.tsx';
import styles from '../parts/forms.module.css';
import { SourceFields } from './source-fields.tsx';

const sized = items.filter(({ ask }) => ['length', 'pitch', 'tread', 'pair'].includes(ask.kind));

export const unitOptions = lengthUnits.map((value) => ({ value, label: unitNames[value].label }));

interface SizeFieldProps {
  readonly label: string;
  readonly text: string;
  readonly unit: LengthUnit;
  readonly asked: boolean;
  readonly onInput: (text: string) => void;
}

/** A number of the sheet in the unit of its entry. */
export const SizeField = ({ unit, ...props }: SizeFieldProps) => (
  <NumberField {...props} parse={(text) => parseLength(text, unit)} spell={spellIn(unit)} />
);

interface ItemFieldsProps {
  readonly row: ItemRow;
  readonly asked: boolean;
  readonly change: (row: ItemRow) => void;
  readonly remove: () => void;
}

/** One size of a sheet: new, limits, units and where each number is from. */
export function ItemFields({ row, asked, change, remove }: ItemFieldsProps) {
  const set = (part: Partial<ItemRow>): void => change({ ...row, ...part });
  return (
    <>
      <Select
        label={words.item}
        options={[
          { value: '', label: words.chooseItem },
          ...sized.map(({ id }) => ({ value: id, label: itemName(id) })),
        ]}
        chosen={row.item}
        onChoose={(item) => set({ item })}
      />
      {asked && row.item === '' && <Missing line={words.itemMissing} />}
      <Positions row={row} asked={asked} set={set} />
      <Select
        label={words.unit}
        options={unitOptions}
        chosen={row.unit}
        onChoose={(unit) => set({ unit: unit as LengthUnit })}
      />
      <SizeField
        label={words.newSize}
        text={row.new}
        unit={row.unit}
        asked={asked}
        onInput={(text) => set({ new: text })}
      />
      {row.new.trim() !== '' && (
        <>
          <SizeField
            label={words.tolerance}
            text={row.tolerance}
            unit={row.unit}
            asked={asked}
            onInput={(tolerance) => set({ tolerance })}
          />
          <SourceFields texts={row} change={set} />
        </>
      )}
      <NumberField
        label={words.resolution}
        text={row.resolution}
        asked={asked}
        parse={(text) => parseLength(text, 'mm')}
        spell={({ value }) => String(value)}
        onInput={(resolution) => set({ resolution })}
      />
      <Limits row={row} asked={asked} set={set} />
      {row.breaks && row.breaks.length > 0 && (
        <>
          <p>{words.breaksKept(row.breaks.map(({ at, percent }) => `${at} = ${percent} %`).join(', '))}</p>
          <Button look="plain" onTap={() => set({ breaks: undefined })}>
            {words.removeBreaks}
          </Button>
        </>
      )}
      <Button look="plain" onTap={remove}>
        {words.removeItem}
      </Button>
    </>
  );
}

interface PartProps {
  readonly row: ItemRow;
  readonly asked: boolean;
  readonly set: (part: Partial<ItemRow>) => void;
}

function Positions({ row, asked, set }: PartProps) {
  const choices: readonly PositionChoice[] = ['all', 'ends', 'inner', 'some'];
  return (
    <>
      <Select
        label={words.position}
        options={choices.map((value) => ({ value, label: words.positions[value] }))}
        chosen={row.positions}
        onChoose={(positions) => set({ positions: positions as PositionChoice })}
      />
      {row.positions === 'some' && (
        <Field
          label={words.someNumbers}
          value={row.numbers}
          hint={words.someNumbersHint}
          fault={asked && row.numbers.trim() === '' ? words.someNumbersHint : undefined}
          onInput={(numbers) => set({ numbers })}
        />
      )}
    </>
  );
}

function Limits({ row, asked, set }: PartProps) {
  const change = (next: LimitRow): void =>
    set({ limits: row.limits.map((each) => (each.id === next.id ? next : each)) });
  return (
    <>
      {row.limits.map((limit) => (
        <div key={limit.id} class={styles.card}>
          <LimitFields limit={limit} unit={row.unit} asked={asked} change={change} />
          <Button look="plain" onTap={() => set({ limits: row.limits.filter(({ id }) => id !== limit.id) })}>
            {words.removeLimit}
          </Button>
        </div>
      ))}
      <Button onTap={() => set({ limits: [...row.limits, newLimitRow(row.limits.length === 0)] })}>
        {words.addLimit}
      </Button>
    </>
  );
}

interface LimitFieldsProps {
  readonly limit: LimitRow;
  readonly unit: LengthUnit;
  readonly asked: boolean;
  readonly change: (limit: LimitRow) => void;
}

function LimitFields({ limit, unit, asked, change }: LimitFieldsProps) {
  const set = (part: Partial<LimitRow>): void => change({ ...limit, ...part });
  return (
    <>
      <SizeField
        label={words.limit}
        text={limit.at}
        unit={unit}
        asked={asked}
        onInput={(at) => set({ at })}
      />
      {asked && limit.at.trim() === '' && <Missing line={words.limitMissing} />}
      <Select
        label={words.means}
        options={limitMeanings.map((value) => ({ value, label: limitMeaningWords[value] }))}
        chosen={limit.means}
        onChoose={(means) => set({ means: means as LimitMeaning })}
      />
      <Toggle label={words.hundred} on={limit.hundred} onTap={() => set({ hundred: !limit.hundred })} />
      <span>{words.load}</span>
      <div class={styles.pair}>
        {loads.map((load) => (
          <Toggle
            key={load}
            label={loadWords[load].label}
            on={limit.loads.includes(load)}
            onTap={() =>
              set({
                loads: limit.loads.includes(load)
                  ? limit.loads.filter((each) => each !== load)
                  : loads.filter((each) => each === load || limit.loads.includes(each)),
              })
            }
          />
        ))}
      </div>
      {limit.loads.length === 0 && <span class={styles.soft}>{words.anyLoad}</span>}
      <SourceFields texts={limit} change={set} />
    </>
  );
}
