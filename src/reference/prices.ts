import type { PriceList } from '../core/costs.ts';
import { linesAt, type PriceRows } from './price-rows.ts';
import { rubberPriceClasses, rubberPriceRows } from './prices-rubber.ts';
import { steelPriceClasses, steelPriceRows } from './prices-steel.ts';

interface Prices {
  readonly key: string;
  readonly value: PriceList;
}

export const costsVersion = '2026-1';

const about =
  'Invented round figures, so that a plan has something to start from. They are no offer and no price of anyone: copy the list and put in what you pay.';

const listsOf = (classes: readonly (readonly [string, string])[], rows: PriceRows): readonly Prices[] =>
  classes.map(([id, name], column) => ({
    key: `price/starting-${id}`,
    value: {
      v: 1,
      name: `Starting prices: ${name}`,
      about,
      currency: 'EUR',
      lines: [...linesAt(rows, column)],
      version: costsVersion,
    },
  }));

/** A starting price list for each class that has a starting sheet, rubber first, then steel by mass. */
export const startingPrices: readonly Prices[] = [
  ...listsOf(rubberPriceClasses, rubberPriceRows),
  ...listsOf(steelPriceClasses, steelPriceRows),
];
