import type { ChangedPart } from '../../core/option-fit.ts';
import type { AnyField } from '../../core/option-match.ts';
import type { FigureName, TrackFact } from '../../core/option-tables.ts';

/** What has to match, in a sentence. */
export const fitNames: Readonly<Record<AnyField, string>> = {
  widthMm: 'the width',
  pitchMm: 'the pitch',
  links: 'the number of links',
  guide: 'where the guides run',
  hornWidthMm: 'the width of the guide horns',
  hornHeightMm: 'the height of the guide horns',
  rollersOn: 'what the rollers run on',
  sprocketBolts: 'the number of sprocket bolts',
  boltCircleMm: 'the bolt circle of the sprocket',
  boreMm: 'the bore of the sprocket',
  offsetMm: 'the offset of the sprocket',
};

/** Why a track cannot go on. */
export const against = {
  noSteelSaid: 'This track frame takes no steel, as you said.',
  noSteelPitch: 'Its pitch is one of frames that take rubber alone.',
  noSteelBelt: 'A frame for a rubber belt takes no steel.',
  beltFrame: 'A rubber belt and tracks of another kind need frames of their own.',
  notMade: (machine: string, most: string): string =>
    `Whole rubber tracks are not made for this size of ${machine}, above about ${most}; pads on steel shoes are.`,
  mismatch: (field: string, now: string, option: string): string =>
    `It does not match: ${field} (on the machine: ${now}; this track: ${option}).`,
  sprocket: (field: string, now: string, option: string): string =>
    `It will not bolt on: ${field} (on the machine: ${now}; this track: ${option}).`,
  paving: 'Paving must not be marked, and steel marks it.',
  trailer: (mass: string, most: string): string =>
    `With it the machine weighs about ${mass}, more than the ${most} that the trailer may carry.`,
} as const;

/** What is to be settled before it is bought. */
export const toSettle = {
  machine: (fields: string): string => `Read on the machine: ${fields}.`,
  option: (fields: string): string => `Ask whoever offers it: ${fields}.`,
  assumed: (fields: string): string => `Only assumed so far: ${fields}.`,
  mayNotMatch: (field: string, now: string, option: string): string =>
    `May not match: ${field} (on the machine: ${now}; this track: ${option}); one of them is only assumed.`,
  width: (now: string, option: string): string =>
    `Another width, ${option} in place of ${now}: look whether it clears the frame and the house.`,
  frame: 'Look in the manual whether the track frame takes steel.',
  mass: 'With the mass of the machine the trailer can be checked.',
  nearTrailer: (mass: string, most: string): string =>
    `With it the machine may weigh up to ${mass}; the trailer may carry ${most}. Weigh it.`,
  scuffs: 'Pads do not cut paving, but scuff hot asphalt when turning.',
} as const;

export const changedPartWords: Readonly<Record<ChangedPart, string>> = {
  sprocket: 'sprockets',
  'bottom-roller': 'bottom rollers',
  idler: 'idlers',
};

export const trackFactWords: Readonly<Record<TrackFact, string>> = {
  'spoils-paving': 'Steel cuts and breaks paving.',
  'scuffs-hot-asphalt': 'Pads scuff hot asphalt when turning.',
  'marks-when-turning': 'Rubber leaves marks when turning on the spot, little else.',
  'rides-quieter': 'Rides quieter and shakes less.',
  'rides-louder': 'Rides louder and shakes more.',
  'rock-cuts-it': 'Sharp rock and scrap cut it.',
  'stands-rock': 'Stands sharp rock and scrap.',
  'turning-wears-it': 'Most of its wear comes from turning on hard, rough ground.',
  'cut-takes-all': 'One cut cord takes the whole track.',
  'mended-by-part': 'A broken shoe or link is that part’s cost, not the track’s.',
  'hard-on-the-rest': 'Harder on rollers, idlers and sprockets.',
};

/** The figures that the comparison starts from, as the label of a field. */
export const figureWords: Readonly<Record<FigureName, string>> = {
  steelLife: 'Sets of rubber to one of steel, on like work',
  steelLifeSpread: 'How sure that is: up to so many times more or less',
  breakShare: 'Broken shoes or links for each cut rubber track',
  restOnSteel: 'Life of rollers and idlers on steel, as a share of that on rubber',
  restSpread: 'How sure that is: up to so many times more or less',
  sprocketSetsRubber: 'Sets of rubber tracks to one of sprockets',
  sprocketSetsSteel: 'Sets of steel chain to one of sprockets',
  wholeRubberMostKg: 'Heaviest machine with whole rubber tracks, kg',
  usualRubberMostKg: 'Heaviest machine on which rubber is the usual choice, kg',
  steelHeavierLowKg: 'Steel weighs more by at least, kg',
  steelHeavierHighKg: 'Steel weighs more by at most, kg',
  hoursAYear: 'Hours a year, where none are given',
  ratePercent: 'Interest a year, %',
  horizonYears: 'Years that are looked ahead',
  priceSpread: 'How sure a starting price is: up to so many times more or less',
  lifeSpread: 'How sure a life is that has no range: up to so many times more or less',
  sharpCuts: 'Cuts on sharp rock or rubble, as so many times those elsewhere',
  makeSpread: 'How far two makes of one kind lie apart: up to so many times more or less',
  damageSpread: 'How sure the rate of cuts is: up to so many times more or less',
  rubberYears: 'Years after which rubber is old',
};

/** Why an option has no cost. */
export const optionCostOpen = {
  noPrice: (job: string): string =>
    `Open: no price list has a line for it: ${job}. With the mass of the machine a starting list is taken.`,
  noRates: 'Open: no rates fit this machine. Choose some, or give its mass.',
  otherCurrency: (option: string, rates: string): string =>
    `Open: its price is in ${option}, labour and the rest in ${rates}; sums are never mixed. Choose rates in ${option}.`,
  noOptionPrice: 'Open: it has no price yet.',
} as const;
