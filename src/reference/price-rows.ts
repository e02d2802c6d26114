import type { PriceLine } from '../core/costs.ts';
import { jobKinds, type JobKind } from '../core/job-kinds.ts';
import { estimate } from './sources.ts';

/** Parts in whole euros and hours of labour for each class of a table, in its order. */
export interface PriceRow {
  readonly euros: readonly number[];
  readonly hours: readonly number[];
}

export type PriceRows = Readonly<Partial<Record<JobKind, PriceRow>>>;

/** No brand, no shop, no quote: round figures that grow with the machine. */
export const invented = estimate(
  'Invented round starting figure for the class, no price of anyone. Put your own in its place.',
);

/** The lines of one class: the figures that stand in its column. */
export const linesAt = (rows: PriceRows, column: number): readonly PriceLine[] =>
  jobKinds.flatMap((job) => {
    const [euros, labourHours] = [rows[job]?.euros[column], rows[job]?.hours[column]];
    if (euros === undefined || labourHours === undefined) return [];
    return [{ job, minor: euros * 100, labourHours, source: invented }];
  });
