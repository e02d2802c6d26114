import { round6 } from './quantity.ts';

// Time value of money, with payments at the end of each period. Rates are fractions per period (0.07, not 7).
// Amounts are of one currency and unit and come back unrounded: what is shown or charged is rounded once, at the end.

const isRate = (rate: number): boolean => rate > -1 && rate < Infinity;

/**
 * Worth today of amounts due after one, two, three … periods: Σ aₖ/(1 + rate)ᵏ; 0 of none. Undefined for a rate of
 * −1 or less, and where an amount or the worth is not finite.
 */
export function presentWorth(rate: number, amounts: readonly number[]): number | undefined {
  if (!isRate(rate)) return undefined;
  const worth = amounts.reduceRight((sum, amount) => (sum + amount) / (1 + rate), 0);
  return Number.isFinite(worth) ? worth : undefined;
}

/**
 * The equal payment per period that pays back 1 within so many periods, rate/(1 − (1 + rate)⁻ⁿ); 1/n without
 * interest. Undefined for a rate of −1 or less, or without periods above 0.
 */
export function capitalRecovery(rate: number, periods: number): number | undefined {
  if (!isRate(rate) || !(periods > 0 && periods < Infinity)) return undefined;
  return rate === 0 ? 1 / periods : rate / -Math.expm1(-periods * Math.log1p(rate));
}

/** The equal amount per period worth as much as the amounts; undefined where either is, and for no amounts. */
export function equivalentCost(rate: number, amounts: readonly number[]): number | undefined {
  const worth = presentWorth(rate, amounts);
  const recovery = capitalRecovery(rate, amounts.length);
  return worth === undefined || recovery === undefined ? undefined : worth * recovery;
}

/** Cost spread over the hours that it bought; undefined for no hours, or a cost that is not finite. */
export function costPerHour(cost: number, hours: number): number | undefined {
  return Number.isFinite(cost) && hours > 0 && hours < Infinity ? cost / hours : undefined;
}

/** An amount in whole minor units; half a unit goes to the even one, which in the long run favours neither side. */
export function wholeMinor(minor: number): number {
  const exact = round6(minor);
  const below = Math.floor(exact);
  return exact - below === 0.5 ? 2 * Math.round(below / 2) : Math.round(exact);
}
