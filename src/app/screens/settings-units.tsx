import { lengthUnits } from '../../core/quantity.ts';
import { massUnitWords, unitNames } from '../../words/en/choices.ts';
import { settings as words } from '../../words/en/settings.ts';
import { preferences, savePreferences } from '../data/preferences.ts';
import { Choices } from '../parts/choices.tsx';
import { Section } from '../parts/screen.tsx';
import styles from '../parts/forms.module.css';
import { optionsOf } from './machine-shape.tsx';

const units = lengthUnits.map((value) => ({ value, ...unitNames[value] }));

/** The units in which this person reads and types. */
export function SettingsUnits() {
  const { depth, length, mass } = preferences.value;
  return (
    <Section title={words.units}>
      <div class={styles.form}>
        <Choices
          title={words.depthUnit}
          options={units}
          chosen={depth}
          onChoose={(value) => void savePreferences({ depth: value })}
        />
        <Choices
          title={words.lengthUnit}
          options={units}
          chosen={length}
          onChoose={(value) => void savePreferences({ length: value })}
        />
        <Choices
          title={words.massUnit}
          narrow
          options={optionsOf(massUnitWords)}
          chosen={mass}
          onChoose={(value) => void savePreferences({ mass: value })}
        />
      </div>
    </Section>
  );
}
