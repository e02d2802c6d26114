import { items } from '../../core/items.ts';
import type { LengthUnit } from '../../core/quantity.ts';
import { parseLength } from '../../core/typed.ts';
import { itemName } from '../../words/en/items.ts';
import { sheets as words } from '../../words/en/sheets.ts';
import type { ItemRow, PositionChoice } from '../data/sheet-rows.ts';
import { Button } from '../parts/button.tsx';
import { Field } from '../parts/field.tsx';
import { Missing } from '../parts/missing.tsx';
import { NumberField } from '../parts/number-field.tsx';
import { Select } from '../parts/select.tsx';
import { Limits } from './sheet-edit-limits.tsx';
import { SizeField, unitOptions } from './size-field.tsx';
import { SourceFields } from './source-fields.tsx';

const sized = items.filter(({ ask }) => ['length', 'pitch', 'tread', 'pair'].includes(ask.kind));

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
