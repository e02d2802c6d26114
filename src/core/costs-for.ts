import { isFromNewer, named, type BuiltIn, type Shelf } from './assemble.ts';
import type { CostOpen, Costs } from './costs.ts';
import type { Machine } from './machine.ts';
import { isClash } from './versions.ts';

/** The keys of the starting price list and rates for a machine; absent where no class fits it. */
export interface StartingCosts {
  readonly prices?: string | undefined;
  readonly rates?: string | undefined;
}

type Kind = 'price' | 'rate';

const missing: Readonly<Record<Kind, CostOpen>> = {
  price: { kind: 'no-prices' },
  rate: { kind: 'no-rates' },
};

function whyNot(shelf: Shelf, kind: Kind, key: string | undefined): CostOpen {
  if (key === undefined) return missing[kind];
  return { kind: isFromNewer(shelf.get(key)) ? 'newer-version' : 'not-here', key };
}

/** The price list and rates that a machine names, or those of its class, and what keeps its costs open. */
export function costsFor(
  shelf: Shelf,
  builtIn: Pick<BuiltIn, 'prices' | 'rates'>,
  machine: Pick<Machine, 'prices' | 'rates'>,
  starting: StartingCosts,
): Costs {
  const pricesKey = machine.prices ?? starting.prices;
  const ratesKey = machine.rates ?? starting.rates;
  const prices = named(shelf, 'price', pricesKey, builtIn.prices);
  const rates = named(shelf, 'rate', ratesKey, builtIn.rates);
  const open: CostOpen[] = [];
  if (!prices) open.push(whyNot(shelf, 'price', pricesKey));
  if (!rates) open.push(whyNot(shelf, 'rate', ratesKey));
  if (prices && rates && prices.currency !== rates.currency)
    open.push({ kind: 'two-currencies', prices: prices.currency, rates: rates.currency });
  const clashes = [pricesKey, ratesKey].flatMap((key) =>
    key !== undefined && isClash(shelf.get(key)) ? [key] : [],
  );
  return { prices, rates, pricesKey, ratesKey, open, clashes };
}
