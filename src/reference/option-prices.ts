import type { Costs } from '../core/costs.ts';
import type { TrackKind } from '../core/machine.ts';
import type { OptionPrices } from '../core/option-cost.ts';
import type { OptionMachine } from '../core/option-life.ts';
import { startingPricesFor } from './cost-classes.ts';
import { startingPrices } from './prices.ts';

/** Prices for any kind of track on a machine: its own list, its rates, and the starting list of its class with such tracks. */
export const optionPrices =
  (machine: OptionMachine, { prices, rates, open }: Pick<Costs, 'prices' | 'rates' | 'open'>) =>
  (track: TrackKind): OptionPrices => {
    const key = startingPricesFor(machine, track);
    return { prices, rates, open, starting: startingPrices.find((each) => each.key === key)?.value };
  };
