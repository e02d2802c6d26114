import type { Sourced } from '../../core/life.ts';
import { figureNames, type Figures } from '../../core/option-tables.ts';
import { round6 } from '../../core/quantity.ts';
import { parseHours, parseLength, parseMass } from '../../core/typed.ts';
import { grounds, turnings } from '../../core/use.ts';
import {
  groundWords,
  machineKindWords,
  massUnitWords,
  turningWords,
  unitShort,
} from '../../words/en/choices.ts';
import { figureWords } from '../../words/en/option-facts.ts';
import { optionForm } from '../../words/en/option-form.ts';
import { options as words } from '../../words/en/options.ts';
import { sourceMarkWords } from '../../words/en/sources.ts';
import { useBooks } from '../data/books.ts';
import { formatter } from '../data/format.ts';
import { bookOptions } from '../data/sheet-choice.ts';
import { Choices } from '../parts/choices.tsx';
import { Fold } from '../parts/fold.tsx';
import { NumberField } from '../parts/number-field.tsx';
import { Section } from '../parts/screen.tsx';
import { Select } from '../parts/select.tsx';
import { Stepper } from '../parts/stepper.tsx';
import styles from '../parts/forms.module.css';
import { optionsOf } from '../screens/machine-shape.tsx';
import {
  lengthUnitOf,
  massIn,
  massText,
  massUnitOf,
  onlyGround,
  parseYear,
  partsOf,
  type ControlTexts,
} from './controls.ts';

interface ControlsProps {
  readonly texts: ControlTexts;
  readonly change: (part: ControlTexts) => void;
  /** Asked alone: what machine it is, is asked here. */
  readonly alone: boolean;
  readonly figures: Figures | undefined;
}

const at = (texts: ControlTexts, field: string): string => texts[field] ?? '';

/** Everything that the answer hangs on; each change answers at once. */
export function OptionControls(props: ControlsProps) {
  return (
    <>
      {props.alone && <MachineKind {...props} />}
      <Section title={words.work}>
        <Ground {...props} />
        <Choices
          title={words.turning}
          narrow
          options={optionsOf(turningWords)}
          chosen={turnings.find((each) => each === at(props.texts, 'turning'))}
          onChoose={(turning) => props.change({ turning })}
        />
        <HoursAYear {...props} />
        <YesNo {...props} field="noMarks" title={words.noMarks} yes={words.noMarksYes} no={words.noMarksNo} />
        <YesNo {...props} field="noise" title={words.noise} yes={words.noiseYes} no={words.noiseNo} />
        <YesNo {...props} field="steel" title={words.steel} yes={words.steelYes} no={words.steelNo} />
      </Section>
      <MoreMachine {...props} />
      <OwnFigures {...props} />
    </>
  );
}

interface YesNoProps extends ControlsProps {
  readonly field: string;
  readonly title: string;
  readonly yes: string;
  readonly no: string;
}

/** A second tap on what is chosen takes it back: not said is an answer too. */
function YesNo({ texts, change, field, title, yes, no }: YesNoProps) {
  const options = [
    { value: 'yes', label: yes },
    { value: 'no', label: no },
  ];
  return (
    <Choices
      title={title}
      narrow
      options={options}
      chosen={at(texts, field)}
      onChoose={(value) => change({ [field]: value === at(texts, field) ? '' : value })}
    />
  );
}

/** Sizes that machines commonly come in, in kg: common practice, no source; only to tap in the place of typing. */
const commonKg = [1700, 2700, 5500, 8500, 14_000, 23_000];

function MachineKind({ texts, change }: ControlsProps) {
  const unit = massUnitOf(texts);
  const format = formatter.value;
  const kg = massIn(texts, 'mass');
  const sizes = commonKg.map((value) => ({ value, label: format.mass(value) }));
  return (
    <Section title={words.machine}>
      <Choices
        title={words.kind}
        narrow
        options={optionsOf(machineKindWords)}
        chosen={at(texts, 'kind')}
        onChoose={(kind) => change({ kind })}
      />
      <Choices
        title={words.size}
        narrow
        options={sizes}
        chosen={commonKg.find((each) => kg !== undefined && Math.abs(kg - each) < 1)}
        onChoose={(value) => change({ mass: massText(value, unit) })}
      />
      <NumberField
        label={optionForm.inUnit(words.mass, massUnitWords[unit])}
        text={at(texts, 'mass')}
        parse={(text) => parseMass(text, unit)}
        spell={({ value }) => String(round6(value))}
        onInput={(mass) => change({ mass })}
      />
    </Section>
  );
}

/** One ground with one tap; several with their parts, folded away. */
function Ground(props: ControlsProps) {
  const { texts, change } = props;
  const parts = partsOf(texts);
  const sum = parts.reduce((total, [, each]) => total + each, 0);
  const [only] = parts;
  const isMixed = parts.length > 1;
  const line = words.shares(
    parts.map(([ground, each]) =>
      words.share(groundWords[ground], formatter.value.percent((each / sum) * 100)),
    ),
  );
  const isHard = parts.some(([ground]) => ground === 'rock' || ground === 'demolition');
  return (
    <>
      <Choices
        title={words.ground}
        narrow
        options={optionsOf(groundWords)}
        chosen={isMixed ? undefined : only?.[0]}
        onChoose={(ground) => change(onlyGround(ground))}
      />
      <Fold title={words.mix} line={isMixed ? line : words.mixLine}>
        {grounds.map((ground) => (
          <Stepper
            key={ground}
            label={groundWords[ground]}
            value={parts.find(([each]) => each === ground)?.[1] ?? 0}
            least={0}
            most={10}
            onChange={(value) => change({ [`ground-${ground}`]: value === 0 ? '' : String(value) })}
          />
        ))}
      </Fold>
      {isHard && (
        <YesNo {...props} field="sharp" title={words.sharp} yes={words.sharpYes} no={words.sharpNo} />
      )}
    </>
  );
}

function HoursAYear({ texts, change, figures }: ControlsProps) {
  const usual = figures && formatter.value.hours(figures.hoursAYear.value);
  return (
    <NumberField
      label={words.hours}
      hint={usual && words.hoursHint(usual)}
      text={at(texts, 'hours')}
      parse={parseYear}
      spell={(hours) => String(round6(hours))}
      onInput={(hours) => change({ hours })}
    />
  );
}

function MoreMachine(props: ControlsProps) {
  const { texts, change, alone } = props;
  const [massUnit, unit] = [massUnitOf(texts), lengthUnitOf(texts)];
  return (
    <Fold title={words.moreMachine} line={words.moreMachineLine}>
      <NumberField
        label={optionForm.inUnit(words.trailer, massUnitWords[massUnit])}
        text={at(texts, 'trailer')}
        parse={(text) => parseMass(text, massUnit)}
        spell={({ value }) => String(round6(value))}
        onInput={(trailer) => change({ trailer })}
      />
      {(['width', 'contact', 'roller', 'pitch'] as const).map((field) => (
        <NumberField
          key={field}
          label={optionForm.inUnit(words[field], unitShort[unit])}
          text={at(texts, field)}
          parse={(text) => parseLength(text, unit)}
          spell={({ mm }) => formatter.value.field(mm, unit)}
          onInput={(text) => change({ [field]: text })}
        />
      ))}
      {alone && <Books {...props} />}
    </Fold>
  );
}

/** Of a machine that is kept here they are chosen with the machine. */
function Books({ texts, change }: ControlsProps) {
  const prices = useBooks('price');
  const rates = useBooks('rate');
  const starting = { value: '', label: words.byClass };
  return (
    <>
      <Select
        label={words.prices}
        options={[starting, ...bookOptions(prices)]}
        chosen={at(texts, 'prices')}
        onChoose={(value) => change({ prices: value })}
      />
      <Select
        label={words.rates}
        options={[starting, ...bookOptions(rates)]}
        chosen={at(texts, 'rates')}
        onChoose={(value) => change({ rates: value })}
      />
    </>
  );
}

function hintOf({ value, source: { mark, text } }: Sourced): string {
  const word = sourceMarkWords[mark];
  return words.figureHint(
    formatter.value.number(value),
    text.toLowerCase().includes(word) ? text : [word, text].join(' ').trim(),
  );
}

/** Every figure that is taken where nobody gave one, to be put right by whoever knows better. */
function OwnFigures({ texts, change, figures }: ControlsProps) {
  if (!figures) return null;
  return (
    <Fold title={words.figures} line={words.figuresLine}>
      <div class={styles.form}>
        {figureNames.map((name) => (
          <NumberField
            key={name}
            label={figureWords[name]}
            hint={hintOf(figures[name])}
            text={at(texts, `own-${name}`)}
            parse={parseHours}
            spell={(value) => String(round6(value))}
            onInput={(text) => change({ [`own-${name}`]: text })}
          />
        ))}
      </div>
    </Fold>
  );
}
