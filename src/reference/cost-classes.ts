import type { StartingCosts } from '../core/costs-for.ts';
import { isRubber, type Machine, type TrackKind } from '../core/machine.ts';
import { classOf } from './sheet-classes.ts';

const middle = ['steel-13t', 'steel-17t', 'steel-23t', 'dozer-small', 'dozer-mid'];
const heavy = ['steel-32t', 'dozer-large'];

/** Rates go by how heavy the tracks are that have to be handled. */
function ratesFor(id: string): string {
  if (heavy.includes(id)) return 'rate/starting-heavy';
  return middle.includes(id) ? 'rate/starting-mid' : 'rate/starting';
}

/** The starting price list and rates for a machine; none where no class fits it. */
export function startingCostsFor({
  kind,
  shape,
  massKg,
}: Pick<Machine, 'kind' | 'shape' | 'massKg'>): StartingCosts {
  const id = classOf(kind, shape, massKg);
  return id === undefined ? {} : { prices: `price/starting-${id}`, rates: ratesFor(id) };
}

/** The key of the starting price list for a kind of track on a machine; undefined where no class fits it. */
export function startingPricesFor(
  machine: Pick<Machine, 'kind' | 'shape' | 'massKg'>,
  track: TrackKind,
): string | undefined {
  // Steel for a small loader or carrier is nearer to that of an excavator of its mass than to a dozer's.
  const kind = machine.kind === 'dozer' || isRubber({ track }) ? machine.kind : 'excavator';
  return startingCostsFor({ ...machine, kind, shape: { ...machine.shape, track } }).prices;
}
