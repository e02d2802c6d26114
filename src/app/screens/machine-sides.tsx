import type { Side } from '../../core/machine.ts';
import { sides } from '../../core/machine.ts';
import { parseTrackSize } from '../../core/track-size.ts';
import { sideNames } from '../../words/en/items.ts';
import { machineForm, machineHints } from '../../words/en/machine.ts';
import type { Book } from '../data/books.ts';
import { formatter } from '../data/format.ts';
import { bookOptions } from '../data/sheet-choice.ts';
import { Field } from '../parts/field.tsx';
import { Section } from '../parts/screen.tsx';
import { Select } from '../parts/select.tsx';
import { Hours, type FormPartProps } from './machine-plate.tsx';

type SidesProps = FormPartProps & { readonly sheets: readonly Book<'limits'>[] | undefined };

/** What may differ from one side to the other. */
export const MachineSides = (props: SidesProps) => (
  <>
    {sides.map((side) => (
      <OneSide key={side} side={side} {...props} />
    ))}
  </>
);

/** A whole size says how long the loop is, so that a miscounted link shows. */
function sizeHint(text: string): string {
  const size = parseTrackSize(text);
  return size ? machineHints.loop(formatter.value.length(size.loopMm)) : machineForm.sizeHint;
}

function OneSide({ side, sheets, ...props }: SidesProps & { side: Side }) {
  const { texts, change } = props;
  return (
    <Section title={machineForm.sideTitle(sideNames[side])}>
      <Field
        label={machineForm.make}
        value={texts[`${side}Make`]}
        onInput={(text) => change(`${side}Make`, text)}
      />
      <Field
        label={machineForm.size}
        hint={sizeHint(texts[`${side}Size`])}
        value={texts[`${side}Size`]}
        onInput={(text) => change(`${side}Size`, text)}
      />
      <Hours field={`${side}Fitted`} {...props} />
      <Select
        label={machineForm.sheet}
        chosen={texts[`${side}Sheet`]}
        options={[{ value: '', label: machineHints.sameSheet }, ...bookOptions(sheets)]}
        onChoose={(value) => change(`${side}Sheet`, value)}
      />
    </Section>
  );
}
