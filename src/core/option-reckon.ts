import { capitalRecovery } from './money.ts';
import type { CostBasis } from './option-cost.ts';
import type { Draw, Own } from './option-draws.ts';
import { meanHours, spreadOf, type LifeBasis } from './option-life.ts';
import type { Figures } from './option-tables.ts';

/** What a cost hangs on besides the option itself. */
export interface Running {
  readonly hoursAYear: number;
  readonly horizonYears: number;
  /** Of money, a fraction a year. */
  readonly rate: number;
}

/** One option as it is priced in any case. */
export interface Priceable {
  readonly life: LifeBasis;
  readonly cost: CostBasis;
}

/** Cost in minor units an hour, by what it is for; their sum is what options are ranked by. */
export interface PerHour {
  readonly tracks: number;
  readonly fitting: number;
  /** Its share of wear on rollers, idlers and sprockets. */
  readonly rest: number;
  /** Shoes, links and pads changed while the tracks are on. */
  readonly parts: number;
  /** What a change of kind needs besides, over the hours that the machine is kept. */
  readonly besides: number;
}

export interface Reckoned {
  readonly lifeHours: number;
  readonly perHour: PerHour;
  readonly total: number;
}

/** Spreads that are the same for every option, as standard deviations of logarithms. */
export interface CommonSpreads {
  readonly damage: number;
  readonly rest: number;
  readonly steel: number;
}

export const commonSpreads = (figures: Figures): CommonSpreads => ({
  damage: spreadOf(figures.damageSpread.value),
  rest: spreadOf(figures.restSpread.value),
  steel: spreadOf(figures.steelLifeSpread.value),
});

/** Life and cost per hour of an option in one case of what is not known. */
export function reckon(
  { life, cost }: Priceable,
  running: Running,
  spreads: CommonSpreads,
  draw: Draw,
  own: Own,
): Reckoned {
  const { damage, rest, steel } = spreads;
  const { spread, makeSpread } = life;
  const luck = Math.sqrt(spread * spread - makeSpread * makeSpread) * draw.life + makeSpread * own.life;
  const ofSteel = life.byRubber ? steel * draw.steel : 0;
  const wearHours = life.wearHours * Math.exp(luck + ofSteel);
  const endsPerHour = life.damagePerHour * Math.exp(damage * draw.damage);
  const lifeHours = meanHours(wearHours, life.oldHours, life.breaksParts ? 0 : endsPerHour);
  const extraPads = cost.padsMinor * Math.max(0, 1 / cost.padHours - 1 / lifeHours);
  const wheels = cost.wheelsPerHour + cost.sprocketsMinor / (cost.sprocketSets * wearHours);
  const perHour = {
    tracks: (cost.tracksMinor * Math.exp(cost.priceSpread * own.price)) / lifeHours,
    fitting: cost.fittingMinor / lifeHours,
    rest: wheels * Math.exp(rest * draw.rest),
    parts: (life.breaksParts ? endsPerHour * cost.breakMinor : 0) + extraPads,
    besides: cost.besidesMinor / (running.horizonYears * running.hoursAYear),
  };
  const { tracks, fitting, parts, besides } = perHour;
  return { lifeHours, perHour, total: tracks + fitting + perHour.rest + parts + besides };
}

/**
 * Equal cost a year of renewing an option as long as the machine is kept on it, in minor units; undefined for a
 * rate of −1 or less.
 */
export function yearly(
  { cost }: Pick<Priceable, 'cost'>,
  { lifeHours, perHour }: Reckoned,
  { hoursAYear, horizonYears, rate }: Running,
): number | undefined {
  const ofTracks = capitalRecovery(rate, lifeHours / hoursAYear);
  const ofBesides = capitalRecovery(rate, horizonYears);
  if (ofTracks === undefined || ofBesides === undefined) return undefined;
  return (
    (cost.tracksMinor + cost.fittingMinor) * ofTracks +
    cost.besidesMinor * ofBesides +
    (perHour.rest + perHour.parts) * hoursAYear
  );
}
