import type { Sourced } from '../core/life.ts';
import type { TrackKind } from '../core/machine.ts';
import type { NamedOption } from '../core/option-answer.ts';
import type { OptionTables, SourcedFact, TrackFact } from '../core/option-tables.ts';
import type { Source } from '../core/source.ts';
import { life } from './life.ts';
import { common, estimate, fromMemory, practice } from './sources.ts';

const said = (value: number, source: Source): Sourced => ({ value, source });
const commonly = (text: string): Source => practice(`${text}: common practice, no source`);
const guessed = (value: number, text: string): Sourced => said(value, estimate(`${text}: our estimate`));

const fact = (name: TrackFact, source: Source = common): SourcedFact => ({ fact: name, source });

const causes: Source = {
  mark: 'published',
  text: 'Fast lug wear from spinning and pivoting on concrete, gravel and hot asphalt: JCB HTD-5 service manual, pp. J-20 to J-26',
};

const rubberFacts = [
  fact('rides-quieter'),
  fact('rock-cuts-it'),
  fact('turning-wears-it', causes),
  fact('cut-takes-all'),
  fact('marks-when-turning'),
];
const steelFacts = [fact('stands-rock'), fact('mended-by-part'), fact('hard-on-the-rest')];
const padFacts = [...steelFacts, fact('scuffs-hot-asphalt')];

const mostRubber = (value: number, text: string): Sourced => said(value, fromMemory(text));
const pitches: Source = { mark: 'published', text: 'Rubber track pitches, rubbertrackscanada.com, no date' };

const plain = (id: string, name: string, track: TrackKind): NamedOption => ({
  id,
  option: { v: 1, name, track },
});

/** The choice between kinds of track for a machine that nobody has named any option for. */
export const plainOptions = (now: TrackKind): readonly NamedOption[] => [
  now === 'rubber-coreless'
    ? plain('plain-belt', 'Rubber belt without cores', 'rubber-coreless')
    : plain('plain-rubber', 'Rubber track with cores', 'rubber-cored'),
  plain('plain-steel', 'Steel track', 'steel'),
  plain('plain-steel-pads', 'Steel track with rubber pads', 'steel-pads'),
];

/** What a comparison of tracks starts from until somebody puts in better. */
export const optionTables: OptionTables = {
  life,
  figures: {
    steelLife: said(2, commonly('About two sets of rubber tracks to one of steel on like work')),
    steelLifeSpread: guessed(1.3, 'How far off that may be, up or down, eight times of ten'),
    breakShare: guessed(0.5, 'Shoes and links of steel that break where a rubber track would be cut once'),
    restOnSteel: guessed(
      0.75,
      'Rollers and idlers under steel last this share of what they do under rubber; that steel is harder on them is common practice',
    ),
    restSpread: guessed(1.5, 'How far off wear on rollers, idlers and sprockets may be, eight times of ten'),
    sprocketSetsRubber: said(2, commonly('Sprockets are changed with every second set of rubber tracks')),
    sprocketSetsSteel: said(1, commonly('Sprockets are changed with the chain')),
    usualRubberMostKg: guessed(10_000, 'Up to here a machine counts as compact or mid-size'),
    steelHeavierLowKg: said(100, commonly('A steel outfit on a mid-size machine weighs at least this more')),
    steelHeavierHighKg: said(300, commonly('A steel outfit on a mid-size machine weighs up to this more')),
    hoursAYear: guessed(600, 'Hours that a compact machine works in a year'),
    ratePercent: guessed(6, 'What money costs in a year'),
    horizonYears: guessed(5, 'How long the machine is kept on the tracks chosen now'),
    priceSpread: guessed(1.3, 'How far off a starting price may be, up or down, eight times of ten'),
    lifeSpread: guessed(1.4, 'How far off a life figure without a range may be, eight times of ten'),
    makeSpread: guessed(1.2, 'How far two makes of one kind lie apart on one job, eight times of ten'),
    sharpCuts: guessed(
      6,
      'How many times as often tracks are cut where rock or rubble is sharp; that sharp rock cuts rubber is common practice',
    ),
    damageSpread: guessed(2, 'How far off the number of cut tracks may be, up or down, eight times of ten'),
  },
  wholeRubberMostKg: {
    excavator: mostRubber(15_000, 'Whole rubber tracks are made for excavators up to about 15 t'),
    'track-loader': mostRubber(10_000, 'Whole rubber tracks are made for track loaders up to about 10 t'),
    carrier: mostRubber(30_000, 'Whole rubber tracks are made for carriers up to about 30 t'),
    dozer: mostRubber(6000, 'Whole rubber tracks are made for the smallest dozers alone'),
    other: mostRubber(15_000, 'Whole rubber tracks are made up to about 15 t'),
  },
  rubberOnlyPitchMm: { values: [60, 72, 84, 86, 87, 90, 100, 125, 150], source: pitches },
  steelPitchMm: {
    values: [48, 52.5, 54, 55, 56, 71, 72.5, 73, 81, 81.5, 83, 83.5, 96, 109, 142, 144, 146, 163, 167],
    source: pitches,
  },
  facts: {
    'rubber-cored': rubberFacts,
    'rubber-coreless': rubberFacts,
    steel: [...steelFacts, fact('spoils-paving'), fact('rides-louder')],
    'steel-pads': padFacts,
    'rubber-shoes': padFacts,
  },
};
