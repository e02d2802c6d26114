import { minorDigits } from '../../core/currency.ts';
import { isJobKind } from '../../core/job-kinds.ts';
import { round6 } from '../../core/quantity.ts';
import { parseMoney, type Typed } from '../../core/typed.ts';
import { jobWords } from '../../words/en/ahead.ts';
import { contract as words } from '../../words/en/contract.ts';
import { itemName } from '../../words/en/items.ts';
import { sourceMarkWords } from '../../words/en/sources.ts';
import { capital } from '../../words/outcome-text.ts';
import { formatter } from '../data/format.ts';
import { Toggle } from '../parts/choices.tsx';
import { Field } from '../parts/field.tsx';
import { Fold } from '../parts/fold.tsx';
import { NumberField } from '../parts/number-field.tsx';
import {
  parseLife,
  partTexts,
  type ContractFaults,
  type ContractTexts,
  type PartTexts,
} from './contract-texts.ts';

export interface FormProps {
  readonly texts: ContractTexts;
  readonly faults: ContractFaults;
  readonly change: (part: Partial<ContractTexts>) => void;
}

interface NumberProps extends FormProps {
  readonly name: string;
  readonly label: string;
  readonly text: string;
  readonly hint?: string;
  readonly onInput: (text: string) => void;
}

/** An amount in the currency of the contract. */
export function Amount({ texts: { currency }, faults, name, ...field }: NumberProps) {
  return (
    <NumberField
      {...field}
      asked={faults.includes(name)}
      parse={(text) => parseMoney(text, minorDigits(currency))}
      spell={(minor) => formatter.value.moneyField(minor, currency)}
    />
  );
}

/** A plain number: hours, percent, days. */
export function Plain({
  faults,
  name,
  parse,
  ...field
}: NumberProps & { readonly parse: (text: string) => Typed<number> }) {
  return (
    <NumberField
      {...field}
      asked={faults.includes(name)}
      parse={parse}
      spell={(value) => String(round6(value))}
    />
  );
}

const nameOf = (what: string): string =>
  isJobKind(what) ? capital(jobWords[what]) : words.each(capital(itemName(what)));

/** What is agreed on one part: its price, the labour, its standard life and where the price is from. */
export function PartFields({ what, ...form }: FormProps & { readonly what: string }) {
  const { texts, faults, change } = form;
  const part = partTexts(texts, what);
  const set = (more: Partial<PartTexts>): void =>
    change({ parts: { ...texts.parts, [what]: { ...part, ...more } } });
  const isWaived = texts.waived.includes(what);
  const hasPrice = part.minor.trim() !== '' || part.labour.trim() !== '';
  const line = [
    hasPrice ? words.partLine(part.minor, part.labour, texts.currency) : words.noPrice,
    ...(hasPrice && part.mark !== 'entered' ? [sourceMarkWords[part.mark]] : []),
    ...(isWaived ? [words.waived.toLowerCase()] : []),
  ].join(' · ');
  return (
    <Fold title={nameOf(what)} line={line} open={faults.some((each) => each.startsWith(`${what}.`))}>
      <Amount
        {...form}
        name={`${what}.minor`}
        label={words.minor}
        text={part.minor}
        onInput={(minor) => set({ minor, mark: 'entered' })}
      />
      <Amount
        {...form}
        name={`${what}.labour`}
        label={words.labourMinor}
        text={part.labour}
        onInput={(labour) => set({ labour, mark: 'entered' })}
      />
      {texts.charges === 'damage-and-wear' && isJobKind(what) && (
        <Plain
          {...form}
          name={`${what}.life`}
          label={words.life}
          hint={words.lifeHint}
          text={part.life}
          parse={parseLife}
          onInput={(life) => set({ life })}
        />
      )}
      <Field
        label={words.source}
        hint={words.sourceHint}
        value={part.source}
        onInput={(source) => set({ source, mark: 'entered' })}
      />
      <Toggle
        label={words.waived}
        on={isWaived}
        onTap={() =>
          change({
            waived: isWaived ? texts.waived.filter((each) => each !== what) : [...texts.waived, what],
          })
        }
      />
    </Fold>
  );
}
