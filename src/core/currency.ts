import * as z from 'zod/mini';

/** The code of a currency by ISO 4217. */
export const currencySchema = z.string().check(z.regex(/^[A-Z]{3}$/));

/** An amount in minor units of its currency; nothing that is paid for a track comes near the most. */
export const priceMinorSchema = z.int().check(z.gte(0), z.lte(1e12));

// Engines disagree on these, since some ask CLDR what is usual in shops: a stored amount may not depend on that.
const digits: Readonly<Record<number, readonly string[]>> = {
  0: [
    'BIF',
    'CLP',
    'DJF',
    'GNF',
    'ISK',
    'JPY',
    'KMF',
    'KRW',
    'PYG',
    'RWF',
    'UGX',
    'UYI',
    'VND',
    'VUV',
    'XAF',
    'XOF',
    'XPF',
  ],
  3: ['BHD', 'IQD', 'JOD', 'KWD', 'LYD', 'OMR', 'TND'],
  4: ['CLF', 'UYW'],
};

/** Decimals of a currency (ISO 4217, list one: minor unit); 2 for one that is not in the list. */
export function minorDigits(currency: string): number {
  const found = Object.entries(digits).find(([, currencies]) => currencies.includes(currency));
  return found ? Number(found[0]) : 2;
}
