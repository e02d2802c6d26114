import { lengthUnits, type LengthUnit } from '../../core/quantity.ts';
import { parseLength } from '../../core/typed.ts';
import { unitNames } from '../../words/en/choices.ts';
import { spellIn } from '../data/sheet-form.ts';
import { NumberField } from '../parts/number-field.tsx';

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
