import type { RateName, Rates } from '../core/costs.ts';
import { rateNames } from '../core/costs.ts';
import { invented } from './price-rows.ts';
import { costsVersion } from './prices.ts';

interface StartingRates {
  readonly key: string;
  readonly value: Rates;
}

const about =
  'Invented round figures, so that a plan has something to start from. They are no offer of anyone: copy them and put in what you pay and what standing still costs you.';

const ratesOf = (key: string, name: string, euros: Readonly<Record<RateName, number>>): StartingRates => {
  const each = rateNames.map((rate) => [rate, { minor: euros[rate] * 100, source: invented }] as const);
  const figures = Object.fromEntries(each) as Pick<Rates, RateName>;
  return {
    key,
    value: {
      v: 1,
      name: `Starting rates: ${name}`,
      about,
      currency: 'EUR',
      ...figures,
      version: costsVersion,
    },
  };
};

const light = ratesOf('rate/starting', 'rubber tracks, steel excavators up to 10 t', {
  labourPerHour: 70,
  callOut: 120,
  liftSide: 20,
  trackOffSide: 60,
  downtimePerHour: 40,
  breakdown: 600,
});

const middle = ratesOf('rate/starting-mid', 'steel excavators 10 to 28 t, dozers up to 25 t', {
  labourPerHour: 80,
  callOut: 180,
  liftSide: 60,
  trackOffSide: 240,
  downtimePerHour: 70,
  breakdown: 1500,
});

const heavy = ratesOf('rate/starting-heavy', 'steel excavators over 28 t, dozers over 25 t', {
  labourPerHour: 90,
  callOut: 250,
  liftSide: 120,
  trackOffSide: 600,
  downtimePerHour: 120,
  breakdown: 3500,
});

/** What a workshop and a standing machine cost, by how heavy the tracks are that have to be handled. */
export const startingRates: readonly StartingRates[] = [light, middle, heavy];
