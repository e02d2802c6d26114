import { postures, sagMethods, type SagMethod } from '../../core/limits.ts';
import type { LengthUnit } from '../../core/quantity.ts';
import { parseLength } from '../../core/typed.ts';
import { postureWords, sagMethodWords } from '../../words/en/sag.ts';
import { sheets as words } from '../../words/en/sheets.ts';
import type { SagRow } from '../data/sheet-rows.ts';
import { Button } from '../parts/button.tsx';
import { Choices } from '../parts/choices.tsx';
import { Missing } from '../parts/missing.tsx';
import { NumberField } from '../parts/number-field.tsx';
import { Select } from '../parts/select.tsx';
import { SizeField, unitOptions } from './size-field.tsx';
import { SourceFields } from './source-fields.tsx';

interface SagFieldsProps {
  readonly row: SagRow;
  readonly asked: boolean;
  readonly change: (row: SagRow) => void;
  readonly remove: () => void;
}

const cleanChoices = ['', 'clean', 'working-dirt'] as const;

/** One sag value of a sheet: how it is read, from what to what is right, and where that is from. */
export function SagFields({ row, asked, change, remove }: SagFieldsProps) {
  const set = (part: Partial<SagRow>): void => change({ ...row, ...part });
  const size = (field: 'low' | 'high' | 'taut' | 'derailAbove') => (
    <SizeField
      label={words[field]}
      text={row[field]}
      unit={row.unit}
      asked={asked}
      onInput={(text) => set({ [field]: text })}
    />
  );
  return (
    <>
      <Select
        label={words.method}
        options={sagMethods.map((value) => ({ value, label: sagMethodWords[value].name }))}
        chosen={row.method}
        hint={sagMethodWords[row.method].how}
        onChoose={(method) => set({ method: method as SagMethod })}
      />
      <Choices
        title={words.posture}
        narrow
        options={postures.map((value) => ({ value, label: postureWords[value] }))}
        chosen={row.posture}
        onChoose={(posture) => set({ posture })}
      />
      <Select
        label={words.clean}
        options={cleanChoices.map((value) => ({ value, label: words.cleanPrint[value || 'unsaid'] }))}
        chosen={row.clean}
        onChoose={(clean) => set({ clean: cleanChoices.find((each) => each === clean) ?? '' })}
      />
      <Select
        label={words.unit}
        options={unitOptions}
        chosen={row.unit}
        onChoose={(unit) => set({ unit: unit as LengthUnit })}
      />
      {size('low')}
      {size('high')}
      {asked && (row.low.trim() === '' || row.high.trim() === '') && <Missing line={words.bandMissing} />}
      {size('taut')}
      {size('derailAbove')}
      {row.method === 'deflection' && (
        <NumberField
          label={words.loadN}
          text={row.loadN}
          asked={asked}
          parse={(text) => parseLength(text, 'mm')}
          spell={({ value }) => String(value)}
          onInput={(loadN) => set({ loadN })}
        />
      )}
      <SourceFields texts={row} change={set} />
      <Button look="plain" onTap={remove}>
        {words.removeSag}
      </Button>
    </>
  );
}
