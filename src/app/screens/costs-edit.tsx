import { useLocation } from 'preact-iso';
import { useState } from 'preact/hooks';
import { rateNames, type PriceList, type Rates } from '../../core/costs.ts';
import { minorDigits } from '../../core/currency.ts';
import { isJobKind, jobTraits } from '../../core/job-kinds.ts';
import type { RecordKey } from '../../core/keys.ts';
import { round6 } from '../../core/quantity.ts';
import { parseMoney } from '../../core/typed.ts';
import { jobWords } from '../../words/en/ahead.ts';
import { common } from '../../words/en/common.ts';
import { costs as words, rateWords } from '../../words/en/costs.ts';
import { forms } from '../../words/en/forms.ts';
import { bookDraftKey, saveBook } from '../actions/books.ts';
import { dropDraft } from '../actions/saved.ts';
import type { Book } from '../data/books.ts';
import {
  kindsIn,
  parseLabour,
  pricesForm,
  pricesOf,
  ratesForm,
  ratesOf,
  type CostsFaults,
  type CostsForm,
} from '../data/costs-form.ts';
import { formatter } from '../data/format.ts';
import { tell } from '../data/notice.ts';
import { bookPath } from '../data/paths.ts';
import { notSavedLine } from '../data/saving.ts';
import { showFirstFault } from '../data/show-fault.ts';
import { useDraft } from '../data/use-draft.ts';
import { Button, ButtonLink } from '../parts/button.tsx';
import { Field } from '../parts/field.tsx';
import { NumberField } from '../parts/number-field.tsx';
import { Screen, Section } from '../parts/screen.tsx';
import styles from '../parts/forms.module.css';

interface CostsEditProps {
  readonly book: Book<'price'> | Book<'rate'>;
  readonly value: PriceList | Rates;
}

const isList = (value: PriceList | Rates): value is PriceList => 'lines' in value;

const formOf = (value: PriceList | Rates, stamp: string | undefined): CostsForm =>
  isList(value) ? pricesForm(value, stamp) : ratesForm(value, stamp);

/** Changes one of the phone's own price lists, or its rates. */
export function CostsEdit({ book, value }: CostsEditProps) {
  const { route } = useLocation();
  const [start] = useState(() => formOf(value, book.stamp));
  const key = book.key as RecordKey<'price' | 'rate'>;
  const draftKey = bookDraftKey(key);
  const [form, setForm] = useDraft(draftKey, start);
  const [faults, setFaults] = useState<CostsFaults>([]);
  const save = async (): Promise<void> => {
    const made = isList(value) ? pricesOf(form, value) : ratesOf(form, value);
    if (!made.ok) {
      setFaults(made.error);
      tell(forms.mend);
      showFirstFault();
      return;
    }
    const saved = await saveBook(key, made.value, draftKey);
    tell(saved.ok ? words.saved : notSavedLine(saved.error));
    if (saved.ok) route(bookPath(key), true);
  };
  const drop = (): void => {
    const kept = form;
    setForm(formOf(value, book.stamp));
    void dropDraft(draftKey);
    tell(forms.dropped, () => setForm(kept));
  };
  return (
    <Screen
      wide
      title={isList(value) ? words.editTitle : words.ratesEditTitle}
      bar={
        <>
          <ButtonLink href={bookPath(key)}>{common.back}</ButtonLink>
          <Button look="main" onTap={() => void save()}>
            {words.save}
          </Button>
        </>
      }
    >
      {form.base !== book.stamp && <p role="status">{forms.changedElsewhere}</p>}
      <Field
        label={words.name}
        value={form.name}
        fault={faults.includes('name') ? words.nameMissing : undefined}
        onInput={(name) => setForm({ ...form, name })}
      />
      <Field
        label={words.currency}
        hint={words.currencyHint}
        value={form.currency}
        fault={faults.includes('currency') ? words.currencyWrong : undefined}
        onInput={(currency) => setForm({ ...form, currency: currency.trim().toUpperCase() })}
      />
      {isList(value) ? (
        <Lines list={value} form={form} faults={faults} setForm={setForm} />
      ) : (
        rateNames.map((name) => (
          <Amount
            key={name}
            name={name}
            label={rateWords[name]}
            form={form}
            faults={faults}
            setForm={setForm}
          />
        ))
      )}
      <Button look="plain" onTap={drop}>
        {forms.drop}
      </Button>
    </Screen>
  );
}

interface PartProps {
  readonly form: CostsForm;
  readonly faults: CostsFaults;
  readonly setForm: (form: CostsForm) => void;
}

function Amount({ name, label, form, faults, setForm }: PartProps & { name: string; label: string }) {
  const { currency, amounts } = form;
  return (
    <NumberField
      label={label}
      text={amounts[name] ?? ''}
      asked={faults.includes(name)}
      parse={(text) => parseMoney(text, minorDigits(currency))}
      spell={(minor) => formatter.value.moneyField(minor, currency)}
      onInput={(text) => setForm({ ...form, amounts: { ...amounts, [name]: text } })}
    />
  );
}

function Lines({ list, form, faults, setForm }: PartProps & { list: PriceList }) {
  const part = { form, faults, setForm };
  return (
    <div class={styles.columns}>
      {kindsIn(list).map((job) => (
        <Section key={job} title={isJobKind(job) ? jobWords[job] : job}>
          <Amount
            {...part}
            name={job}
            label={`${words.parts}, ${words.each[isJobKind(job) ? jobTraits[job].per : 'side']}`}
          />
          <NumberField
            label={words.labour}
            text={form.hours[job] ?? ''}
            asked={faults.includes(`hours/${job}`)}
            parse={parseLabour}
            spell={(hours) => String(round6(hours))}
            onInput={(text) => setForm({ ...form, hours: { ...form.hours, [job]: text } })}
          />
        </Section>
      ))}
    </div>
  );
}
