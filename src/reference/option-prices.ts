import type { Costs } from '../core/costs.ts';
import type { TrackKind } from '../core/machine.ts';
import type { OptionPrices } from '../core/option-cost.ts';
import { isRubberTrack, type OptionMachine } from '../core/option-life.ts';
import { startingCostsFor } from './cost-classes.ts';
import { startingPrices } from './prices.ts';

/** The key of the starting price list for a kind of track on a machine; undefined where no class fits it. */
export function startingPricesFor(machine: OptionMachine, track: TrackKind): string | undefined {
  // Steel for a small loader or carrier is nearer to that of an excavator of its mass than to a dozer's.
  const kind = machine.kind === 'dozer' || isRubberTrack(track) ? machine.kind : 'excavator';
  return startingCostsFor({ ...machine, kind, shape: { ...machine.shape, track } }).prices;
}

/** Prices for any kind of track on a machine: its own list, its rates, and the starting list of its class with such tracks. */
export const optionPrices =
  (machine: OptionMachine, { prices, rates, open }: Pick<Costs, 'prices' | 'rates' | 'open'>) =>
  (track: TrackKind): OptionPrices => {
    const key = startingPricesFor(machine, track);
    return { prices, rates, open, starting: startingPrices.find((each) => each.key === key)?.value };
  };
