import type { PriceRows } from './price-rows.ts';

/** The classes of the columns below, by their starting sheet. */
export const rubberPriceClasses = [
  ['rubber-mini', 'rubber, mini excavator up to 6 t'],
  ['rubber-midi', 'rubber, midi excavator over 6 t'],
  ['rubber-carrier', 'rubber, carrier or dumper'],
  ['rubber-loader', 'rubber with cores, compact track loader'],
  ['rubber-loader-coreless', 'rubber belt without cores, compact track loader'],
] as const;

export const rubberPriceRows: PriceRows = {
  // Lifting and taking the track off are rates; these hours are what is left of about two.
  'renew-track': { euros: [1000, 1800, 1400, 1400, 1800], hours: [1, 1.5, 1.5, 1, 1.5] },
  'renew-sprocket': { euros: [180, 300, 250, 250, 400], hours: [0.5, 0.75, 0.75, 0.5, 1] },
  'renew-idler': { euros: [350, 600, 400, 450, 450], hours: [0.5, 0.75, 0.75, 0.5, 0.5] },
  'renew-bottom-roller': { euros: [120, 200, 160, 180, 200], hours: [0.5, 0.5, 0.5, 0.5, 0.5] },
  'renew-carrier-roller': { euros: [90, 150, 120, 150, 150], hours: [0.5, 0.5, 0.5, 0.5, 0.5] },
  'renew-slide-plate': { euros: [60, 100, 80, 80, 80], hours: [0.5, 0.5, 0.5, 0.5, 0.5] },
  'mend-adjuster': { euros: [80, 120, 100, 100, 100], hours: [1.5, 1.5, 1.5, 1.5, 1.5] },
  'renew-spring': { euros: [250, 450, 350, 350, 350], hours: [2, 2, 2, 2, 2] },
  // No part is needed; a price of 0 is a price.
  'swap-sides': { euros: [0, 0, 0, 0, 0], hours: [1, 1.5, 1.5, 1, 1.5] },
  'mend-motor': { euros: [600, 1000, 700, 900, 900], hours: [4, 5, 4, 4, 4] },
  'mend-frame': { euros: [150, 250, 200, 200, 200], hours: [4, 5, 4, 4, 4] },
  'mend-suspension': { euros: [300, 500, 350, 400, 600], hours: [3, 3, 3, 3, 4] },
  'tighten-bolts': { euros: [20, 30, 30, 30, 30], hours: [0.5, 0.5, 0.5, 0.5, 0.5] },
  'adjust-sag': { euros: [5, 5, 5, 5, 5], hours: [0.25, 0.25, 0.25, 0.25, 0.25] },
  'mend-other': { euros: [50, 80, 60, 60, 60], hours: [1, 1.5, 1, 1, 1] },
};
