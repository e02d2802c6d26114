import { chargedFor, hourBases, labourShares } from '../../core/contract.ts';
import { grounds } from '../../core/use.ts';
import { groundWords } from '../../words/en/choices.ts';
import { chargesWords, contract as words, hoursWords, labourWords } from '../../words/en/contract.ts';
import { Choices, Toggle } from '../parts/choices.tsx';
import { DateField } from '../parts/date-field.tsx';
import { Field } from '../parts/field.tsx';
import { Fold } from '../parts/fold.tsx';
import { Section } from '../parts/screen.tsx';
import { Amount, Plain, type FormProps } from './contract-part.tsx';
import { parseCutOff, parseDays, parseLife, parsePercent } from './contract-texts.ts';

/** Parties and days. */
export function WhoAndWhen({ texts, change }: FormProps) {
  const text = (name: 'number' | 'owner' | 'renter') => (
    <Field label={words[name]} value={texts[name]} onInput={(value) => change({ [name]: value })} />
  );
  const day = (name: 'from' | 'to') => (
    <DateField label={words[name]} value={texts[name]} onInput={(value) => change({ [name]: value })} />
  );
  return (
    <Section title={words.who}>
      {text('number')}
      {text('owner')}
      {text('renter')}
      {day('from')}
      {day('to')}
    </Section>
  );
}

/** What is charged beside the hire, and where wear is, by which hours. */
export function Charges(form: FormProps) {
  const { texts, change } = form;
  return (
    <>
      <Choices
        title={words.pays}
        chosen={texts.charges}
        options={chargedFor.map((value) => ({ value, ...chargesWords[value] }))}
        onChoose={(charges) => change({ charges })}
      />
      <Field
        label={words.clause}
        hint={words.clauseHint}
        lines={3}
        value={texts.clause}
        onInput={(clause) => change({ clause })}
      />
      {texts.charges === 'damage-and-wear' && <Wear {...form} />}
    </>
  );
}

function Wear(form: FormProps) {
  const { texts, change } = form;
  return (
    <Section title={words.wear}>
      <Choices
        title={words.hours}
        chosen={texts.hours}
        options={hourBases.map((value) => ({ value, ...hoursWords[value] }))}
        onChoose={(hours) => change({ hours })}
      />
      {texts.hours !== 'meter' && (
        <Plain
          {...form}
          name="hoursCount"
          label={texts.hours === 'billed' ? words.hoursBilled : words.hoursIncluded}
          text={texts.hoursCount}
          parse={parseLife}
          onInput={(hoursCount) => change({ hoursCount })}
        />
      )}
      <Plain
        {...form}
        name="allowance"
        label={words.allowance}
        hint={words.allowanceHint}
        text={texts.allowance}
        parse={parsePercent}
        onInput={(allowance) => change({ allowance })}
      />
    </Section>
  );
}

/** How labour, haulage, an old part and tax are reckoned. */
export function Reckoning(form: FormProps) {
  const { texts, change } = form;
  return (
    <>
      <Choices
        title={words.labour}
        chosen={texts.labour}
        options={labourShares.map((value) => ({ value, ...labourWords[value] }))}
        onChoose={(labour) => change({ labour })}
      />
      <Plain
        {...form}
        name="cutOff"
        label={words.cutOff}
        hint={words.cutOffHint}
        text={texts.cutOff}
        parse={parseCutOff}
        onInput={(cutOff) => change({ cutOff })}
      />
      <Amount
        {...form}
        name="haulage"
        label={words.haulage}
        hint={words.haulageHint}
        text={texts.haulage}
        onInput={(haulage) => change({ haulage })}
      />
      {texts.haulage.trim() !== '' && (
        <Field
          label={words.source}
          hint={words.sourceHint}
          value={texts.haulageSource}
          onInput={(haulageSource) => change({ haulageSource })}
        />
      )}
      <Plain
        {...form}
        name="tax"
        label={words.tax}
        text={texts.tax}
        parse={parsePercent}
        onInput={(tax) => change({ tax })}
      />
    </>
  );
}

/** Ground, days and what else was agreed. */
export function Rules(form: FormProps) {
  const { texts, change } = form;
  const days = (name: 'replyDays' | 'keptDays') => (
    <Plain
      {...form}
      name={name}
      label={words[name]}
      text={texts[name]}
      parse={parseDays}
      onInput={(value) => change({ [name]: value })}
    />
  );
  return (
    <Section title={words.rules}>
      <Fold
        title={words.grounds}
        line={texts.grounds.map((each) => groundWords[each]).join(', ') || words.groundsHint}
      >
        {grounds.map((ground) => {
          const on = texts.grounds.includes(ground);
          const others = texts.grounds.filter((each) => each !== ground);
          return (
            <Toggle
              key={ground}
              label={groundWords[ground]}
              on={on}
              onTap={() => change({ grounds: on ? others : [...others, ground] })}
            />
          );
        })}
      </Fold>
      {days('replyDays')}
      {days('keptDays')}
      <Field label={words.note} lines={3} value={texts.note} onInput={(note) => change({ note })} />
    </Section>
  );
}
