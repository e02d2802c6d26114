import { round6 } from '../../core/quantity.ts';
import { machineCosts as words } from '../../words/en/machine-costs.ts';
import type { Book } from '../data/books.ts';
import { parseWeek } from '../data/machine-form.ts';
import { bookOptions } from '../data/sheet-choice.ts';
import { NumberField } from '../parts/number-field.tsx';
import { Select } from '../parts/select.tsx';
import type { FormPartProps } from './machine-plate.tsx';

type CostsProps = FormPartProps & {
  readonly prices: readonly Book<'price'>[] | undefined;
  readonly rates: readonly Book<'rate'>[] | undefined;
};

/** Hours a week, and by which prices and rates the machine's jobs are reckoned. */
export function MachineCosts({ texts, asked, change, prices, rates }: CostsProps) {
  const starting = { value: '', label: words.fitting };
  return (
    <>
      <NumberField
        label={words.hoursPerWeek}
        hint={words.hoursPerWeekHint}
        text={texts.hoursPerWeek}
        asked={asked}
        parse={parseWeek}
        spell={(hours) => String(round6(hours))}
        onInput={(text) => change('hoursPerWeek', text)}
      />
      <Select
        label={words.machinePrices}
        options={[starting, ...bookOptions(prices)]}
        chosen={texts.prices}
        onChoose={(value) => change('prices', value)}
      />
      <Select
        label={words.machineRates}
        options={[starting, ...bookOptions(rates)]}
        chosen={texts.rates}
        onChoose={(value) => change('rates', value)}
      />
    </>
  );
}
