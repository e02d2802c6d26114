import type { PriceRows } from './price-rows.ts';

/** The classes of the columns below, by their starting sheet: excavators, then dozers and steel loaders. */
export const steelPriceClasses = [
  ['steel-mini', 'steel, mini excavator up to 4.5 t'],
  ['steel-5t', 'steel, excavator 4.5 to 7 t'],
  ['steel-8t', 'steel, excavator 7 to 10 t'],
  ['steel-13t', 'steel, excavator 10 to 15 t'],
  ['steel-17t', 'steel, excavator 15 to 19 t'],
  ['steel-23t', 'steel, excavator 19 to 28 t'],
  ['steel-32t', 'steel, excavator 28 to 40 t'],
  ['dozer-small', 'steel, dozer up to 12 t'],
  ['dozer-mid', 'steel, dozer 12 to 25 t'],
  ['dozer-large', 'steel, dozer over 25 t'],
] as const;

export const steelPriceRows: PriceRows = {
  // The chain alone: the shoes are moved over.
  'renew-chain': {
    euros: [900, 1200, 1800, 2800, 3800, 5000, 7500, 4500, 9000, 18_000],
    hours: [2, 2, 2.5, 3, 4, 5, 6, 5, 8, 12],
  },
  'turn-bushings': {
    euros: [150, 200, 300, 400, 500, 600, 800, 800, 1500, 3000],
    hours: [8, 8, 10, 12, 14, 16, 20, 16, 20, 28],
  },
  'change-link': {
    euros: [60, 80, 120, 180, 220, 280, 400, 250, 450, 800],
    hours: [3, 3, 3, 4, 4, 4, 5, 4, 5, 6],
  },
  'renew-shoes': {
    euros: [600, 800, 1200, 2000, 2600, 3500, 5500, 3000, 6000, 12_000],
    hours: [4, 4, 5, 6, 7, 8, 10, 6, 8, 10],
  },
  regrouser: {
    euros: [200, 250, 300, 400, 500, 600, 900, 600, 1000, 1800],
    hours: [8, 8, 10, 12, 14, 16, 20, 14, 18, 24],
  },
  'renew-pads': {
    euros: [700, 900, 1300, 1800, 2400, 3000, 4200, 2500, 4000, 6500],
    hours: [3, 3, 4, 5, 5, 6, 8, 5, 6, 8],
  },
  'renew-sprocket': {
    euros: [180, 250, 350, 450, 600, 800, 1200, 700, 1300, 2600],
    hours: [1, 1, 1.5, 2, 2, 2.5, 3, 3, 4, 6],
  },
  'renew-idler': {
    euros: [350, 450, 600, 900, 1200, 1500, 2200, 1200, 2200, 4500],
    hours: [1, 1, 1.5, 1.5, 2, 2, 3, 2, 3, 4],
  },
  'renew-bottom-roller': {
    euros: [120, 140, 170, 200, 220, 250, 350, 300, 500, 1000],
    hours: [0.5, 0.5, 0.75, 0.75, 1, 1, 1.5, 1, 1.5, 2],
  },
  'renew-carrier-roller': {
    euros: [90, 110, 130, 150, 180, 220, 300, 250, 400, 800],
    hours: [0.5, 0.5, 0.5, 0.75, 0.75, 1, 1.5, 1, 1.5, 2],
  },
  'renew-slide-plate': {
    euros: [60, 70, 90, 120, 140, 160, 200, 150, 200, 300],
    hours: [0.5, 0.5, 0.5, 0.75, 0.75, 1, 1, 0.75, 1, 1],
  },
  'mend-adjuster': {
    euros: [80, 100, 120, 150, 180, 220, 300, 200, 300, 500],
    hours: [1.5, 1.5, 2, 2, 2.5, 3, 4, 3, 4, 5],
  },
  'renew-spring': {
    euros: [250, 350, 500, 800, 1000, 1400, 2000, 1000, 1800, 3500],
    hours: [2, 2, 2.5, 3, 3, 4, 5, 4, 5, 6],
  },
  // No part is needed; a price of 0 is a price.
  'swap-sides': { euros: [0, 0, 0, 0, 0, 0, 0, 0, 0, 0], hours: [2, 2, 2.5, 3, 4, 5, 6, 5, 8, 12] },
  'mend-motor': {
    euros: [600, 800, 1100, 1500, 2000, 2600, 3600, 2000, 3500, 6000],
    hours: [4, 4, 5, 6, 7, 8, 10, 8, 10, 14],
  },
  'mend-frame': {
    euros: [150, 200, 300, 400, 500, 600, 900, 500, 800, 1500],
    hours: [4, 4, 5, 6, 8, 10, 12, 8, 10, 14],
  },
  'mend-suspension': {
    euros: [300, 400, 500, 700, 900, 1200, 1600, 900, 1600, 3000],
    hours: [3, 3, 4, 4, 5, 6, 8, 6, 8, 10],
  },
  'tighten-bolts': {
    euros: [20, 20, 30, 40, 50, 60, 80, 50, 80, 120],
    hours: [0.5, 0.5, 0.5, 0.75, 0.75, 1, 1, 0.75, 1, 1.5],
  },
  'adjust-sag': {
    euros: [5, 5, 5, 8, 8, 10, 10, 8, 10, 15],
    hours: [0.25, 0.25, 0.25, 0.25, 0.5, 0.5, 0.5, 0.5, 0.5, 0.5],
  },
  'mend-other': {
    euros: [50, 60, 80, 100, 120, 150, 200, 120, 200, 300],
    hours: [1, 1, 1.5, 1.5, 2, 2, 2.5, 2, 2.5, 3],
  },
};
