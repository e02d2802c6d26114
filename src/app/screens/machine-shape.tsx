import type { Shape } from '../../core/machine.ts';
import {
  driveWords,
  flangeWords,
  suspensionWords,
  tensionerWords,
  type Choice,
} from '../../words/en/choices.ts';
import { machineForm, machineHints } from '../../words/en/machine.ts';
import { shapeInWords } from '../../words/machine-text.ts';
import { formatter } from '../data/format.ts';
import type { MachineField } from '../data/machine-form.ts';
import { Choices, Toggle, type Option } from '../parts/choices.tsx';
import { Fold } from '../parts/fold.tsx';
import { Stepper } from '../parts/stepper.tsx';
import { TrackMap } from '../parts/track-map.tsx';
import styles from '../parts/forms.module.css';

/** Words by value as the options of a choice. */
export const optionsOf = <T extends string>(
  words: Readonly<Record<T, string | Choice>>,
): readonly Option<T>[] =>
  (Object.entries(words) as [T, string | Choice][]).map(([value, word]) => ({
    value,
    ...(typeof word === 'string' ? { label: word } : word),
  }));

interface MachineShapeProps {
  readonly shape: Shape;
  readonly change: (field: MachineField, text: string) => void;
}

/** The drawing of this machine, which settles front and sides, and everything that changes it. */
export function MachineShape({ shape, change }: MachineShapeProps) {
  const count = (field: 'idlers' | 'bottomRollers' | 'carrierRollers', least: number, most: number) => (
    <Stepper
      label={machineForm[field]}
      value={shape[field]}
      least={least}
      most={most}
      onChange={(value) => change(field, String(value))}
    />
  );
  return (
    <>
      <figure class={styles.stack}>
        <TrackMap shape={shape} side="left" />
        <figcaption class={styles.soft}>{machineHints.frontLine}</figcaption>
      </figure>
      <Fold title={machineHints.change} line={shapeInWords(shape, formatter.value)}>
        <p class={styles.soft}>{machineHints.shapeLine}</p>
        {count('bottomRollers', 0, 24)}
        {count('carrierRollers', 0, 4)}
        <Toggle
          label={machineForm.slidePlate}
          on={shape.slidePlate}
          onTap={() => change('slidePlate', shape.slidePlate ? 'no' : 'yes')}
        />
        {count('idlers', 1, 3)}
        <Choices
          title={machineForm.drive}
          options={optionsOf(driveWords)}
          chosen={shape.drive}
          onChoose={(value) => change('drive', value)}
        />
        <Choices
          title={machineForm.suspension}
          narrow
          options={optionsOf(suspensionWords)}
          chosen={shape.suspension}
          onChoose={(value) => change('suspension', value)}
        />
        <Choices
          title={machineForm.flanges}
          narrow
          options={optionsOf(flangeWords)}
          chosen={shape.flanges}
          onChoose={(value) => change('flanges', value)}
        />
        <Choices
          title={machineForm.tensioner}
          options={optionsOf(tensionerWords)}
          chosen={shape.tensioner}
          onChoose={(value) => change('tensioner', value)}
        />
      </Fold>
    </>
  );
}
