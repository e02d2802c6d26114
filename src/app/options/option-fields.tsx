import { minorDigits } from '../../core/currency.ts';
import { parseMoney } from '../../core/typed.ts';
import { round6 } from '../../core/quantity.ts';
import { trackKindWords } from '../../words/en/choices.ts';
import { optionForm as words } from '../../words/en/option-form.ts';
import { formatter } from '../data/format.ts';
import { Choices, Toggle } from '../parts/choices.tsx';
import { Field } from '../parts/field.tsx';
import { Fold } from '../parts/fold.tsx';
import { Missing } from '../parts/missing.tsx';
import styles from '../parts/forms.module.css';
import { optionsOf } from '../screens/machine-shape.tsx';
import { at, Numbered, Written, type OptionFieldsProps } from './option-field.tsx';
import { Fit } from './option-match.tsx';
import { parseFitting, parseLife, parseMonths, parsePercent, stepsShown } from './option-texts.ts';

/** What an option is, what it costs, how long it lasts and what has to match. */
export function OptionFields({ hasMachine, ...props }: OptionFieldsProps & { hasMachine: boolean }) {
  const { texts, faults, change } = props;
  return (
    <div class={styles.columns}>
      <div class={styles.form}>
        <Written {...props} field="name" label={words.name} hint={words.nameHint} fault={words.nameMissing} />
        <Choices
          title={words.track}
          options={optionsOf(trackKindWords)}
          chosen={at(texts, 'track')}
          onChoose={(track) => change({ track })}
        />
        {faults.includes('track') && <Missing line={words.trackMissing} />}
        <Money {...props} />
        <Life {...props} />
      </div>
      <div class={styles.form}>
        <Choices
          title={words.origin}
          narrow
          options={optionsOf(words.origins)}
          chosen={at(texts, 'origin')}
          onChoose={(origin) => change({ origin: origin === at(texts, 'origin') ? '' : origin })}
        />
        <Written {...props} field="make" label={words.make} />
        <Warranty {...props} />
        <Fit {...props} />
        {hasMachine && <Bound {...props} />}
        <Written {...props} field="note" label={words.note} lines={3} />
      </div>
    </div>
  );
}

function Bound({ texts, change }: OptionFieldsProps) {
  const toggled = (field: string): string => (at(texts, field) === 'yes' ? '' : 'yes');
  const isBound = at(texts, 'bound') === 'yes';
  return (
    <>
      <Toggle
        label={words.bound}
        line={words.boundLine}
        on={isBound}
        onTap={() => change({ bound: toggled('bound') })}
      />
      {isBound && (
        <Toggle
          label={words.fitted}
          line={words.fittedLine}
          on={at(texts, 'fitted') === 'yes'}
          onTap={() => change({ fitted: toggled('fitted') })}
        />
      )}
    </>
  );
}

const spellHours = (hours: number): string => String(round6(hours));

function Money(props: OptionFieldsProps) {
  const { texts, faults, change } = props;
  const currency = at(texts, 'currency');
  return (
    <>
      <Numbered
        {...props}
        field="price"
        label={words.price}
        hint={words.priceHint}
        parse={(text) => parseMoney(text, minorDigits(currency))}
        spell={(minor) => formatter.value.moneyField(minor, currency)}
      />
      {at(texts, 'price') !== '' && (
        <>
          <Field
            label={words.currency}
            value={currency}
            fault={faults.includes('currency') ? words.currencyWrong : undefined}
            onInput={(text) => change({ currency: text.trim().toUpperCase() })}
          />
          <Written {...props} field="priceSource" label={words.priceSource} hint={words.priceSourceHint} />
        </>
      )}
      <Numbered
        {...props}
        field="fittingHours"
        label={words.fitting}
        hint={words.fittingHint}
        parse={parseFitting}
        spell={spellHours}
      />
    </>
  );
}

function Life(props: OptionFieldsProps) {
  const { texts, faults } = props;
  const wrong = faults.some((each) => /^life(?:Low|High|Source)$/.test(each));
  const range = { ...props, parse: parseLife, spell: spellHours, odd: words.lifeWrong };
  return (
    <>
      <Numbered
        {...props}
        field="life"
        label={words.life}
        hint={words.lifeHint}
        parse={parseLife}
        spell={spellHours}
      />
      {at(texts, 'life') !== '' && (
        <Fold title={words.lifeRange} line={words.lifeRangeLine} open={wrong}>
          <Numbered {...range} field="lifeLow" label={words.lifeLow} />
          <Numbered {...range} field="lifeHigh" label={words.lifeHigh} />
          <Written {...props} field="lifeSource" label={words.lifeSource} />
        </Fold>
      )}
    </>
  );
}

function Warranty(props: OptionFieldsProps) {
  const { texts, faults } = props;
  const steps = Array.from({ length: stepsShown(texts) }, (_, step) => step);
  const isWrong = faults.some((each) => /^(?:months|toHours|percent)/.test(each));
  return (
    <Fold title={words.warranty} line={words.warrantyLine} open={isWrong}>
      <Numbered {...props} field="months" whole label={words.months} parse={parseMonths} spell={String} />
      {steps.map((step) => (
        <div key={step} class={styles.pair}>
          <Numbered
            {...props}
            field={`toHours${step}`}
            label={words.toHours(step + 1)}
            odd={words.stepOdd}
            parse={parseLife}
            spell={spellHours}
          />
          <Numbered
            {...props}
            field={`percent${step}`}
            label={words.percent(step + 1)}
            parse={parsePercent}
            spell={spellHours}
          />
        </div>
      ))}
    </Fold>
  );
}
