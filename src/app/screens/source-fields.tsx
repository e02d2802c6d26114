import { sourceMarks, type SourceMark } from '../../core/source.ts';
import { sheets as words } from '../../words/en/sheets.ts';
import { sourceMarkWords } from '../../words/en/sources.ts';
import type { SourceTexts } from '../data/sheet-rows.ts';
import { Field } from '../parts/field.tsx';
import { Select } from '../parts/select.tsx';

interface SourceFieldsProps {
  readonly texts: SourceTexts;
  readonly change: (part: Partial<SourceTexts>) => void;
}

/** Where a figure or a call is from, and how sure that is. */
export const SourceFields = ({ texts, change }: SourceFieldsProps) => (
  <>
    <Field
      label={words.source}
      value={texts.source}
      hint={texts.source.trim() === '' ? words.sourceMissing : words.sourceHint}
      onInput={(source) => change({ source })}
    />
    <Select
      label={words.mark}
      options={sourceMarks.map((value) => ({ value, label: sourceMarkWords[value] }))}
      chosen={texts.mark}
      onChoose={(mark) => change({ mark: mark as SourceMark })}
    />
  </>
);
