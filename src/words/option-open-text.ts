import type { OptionOpen } from '../core/option-cost.ts';
import { unreachable } from '../core/result.ts';
import { ahead, jobWords } from './en/ahead.ts';
import { optionCostOpen as words } from './en/option-facts.ts';

/** Why an option has no cost, in a sentence. */
export function optionOpenText(open: OptionOpen): string {
  switch (open.kind) {
    case 'no-price':
      return words.noPrice(jobWords[open.job]);
    case 'no-prices':
      return ahead.noPrices;
    case 'no-rates':
      return words.noRates;
    case 'two-currencies':
      return ahead.twoCurrencies(open.prices, open.rates);
    case 'not-here':
      return ahead.notHere;
    case 'newer-version':
      return ahead.newerPrices;
    case 'other-currency':
      return words.otherCurrency(open.option, open.rates);
    case 'no-option-price':
      return words.noOptionPrice;
    default:
      return unreachable(open);
  }
}
