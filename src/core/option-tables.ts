import type { LifeTables, Sourced } from './life.ts';
import type { MachineKind, TrackKind } from './machine.ts';
import type { Source } from './source.ts';
import type { Use } from './use.ts';

/** What the comparison of tracks has to assume, each to be put in order by whoever knows better. */
export const figureNames = [
  'steelLife',
  'steelLifeSpread',
  'breakShare',
  'restOnSteel',
  'restSpread',
  'sprocketSetsRubber',
  'sprocketSetsSteel',
  'wholeRubberMostKg',
  'usualRubberMostKg',
  'steelHeavierLowKg',
  'steelHeavierHighKg',
  'hoursAYear',
  'ratePercent',
  'horizonYears',
  'priceSpread',
  'lifeSpread',
  'makeSpread',
  'sharpCuts',
  'damageSpread',
  'rubberYears',
] as const;
export type FigureName = (typeof figureNames)[number];

/** What is said of a kind of track without a number. */
export const trackFacts = [
  'spoils-paving',
  'scuffs-hot-asphalt',
  'marks-when-turning',
  'rides-quieter',
  'rides-louder',
  'rock-cuts-it',
  'stands-rock',
  'turning-wears-it',
  'cut-takes-all',
  'mended-by-part',
  'hard-on-the-rest',
] as const;
export type TrackFact = (typeof trackFacts)[number];

export interface SourcedFact {
  readonly fact: TrackFact;
  readonly source: Source;
}

/** All that a comparison of tracks starts from. */
export interface OptionTables {
  readonly life: LifeTables;
  readonly figures: Readonly<Record<Exclude<FigureName, 'wholeRubberMostKg' | 'rubberYears'>, Sourced>>;
  /** The heaviest machine of a kind that whole rubber tracks are made for. */
  readonly wholeRubberMostKg: Readonly<Record<MachineKind, Sourced>>;
  /** Pitches in mm of rubber tracks whose frame takes rubber alone, and of those that change places with steel. */
  readonly rubberOnlyPitchMm: { readonly values: readonly number[]; readonly source: Source };
  readonly steelPitchMm: { readonly values: readonly number[]; readonly source: Source };
  readonly facts: Readonly<Record<TrackKind, readonly SourcedFact[]>>;
}

/** The figures for one machine, with a person's own in the place of those they know better. */
export type Figures = Readonly<Record<FigureName, Sourced>>;

/** Figures that may be nothing; of the others a 0 is no figure at all. */
const mayBeZero: readonly FigureName[] = [
  'ratePercent',
  'breakShare',
  'steelHeavierLowKg',
  'steelHeavierHighKg',
];

/** The least that a figure may be that something is divided by. */
const leastFigure = 0.001;

/** The figures that count for a machine of this kind. */
export function figuresFor(tables: OptionTables, kind: MachineKind, own: Use['own'] = {}): Figures {
  const given = {
    ...tables.figures,
    wholeRubberMostKg: tables.wholeRubberMostKg[kind],
    rubberYears: tables.life.rubberYears,
  };
  const entered: Source = { mark: 'entered', text: '' };
  const each = figureNames.map((name) => {
    const value = Object.hasOwn(own, name) ? own[name] : undefined;
    const counts = value !== undefined && (value >= leastFigure || mayBeZero.includes(name));
    return [name, counts ? { value, source: entered } : given[name]] as const;
  });
  return Object.fromEntries(each) as Figures;
}
