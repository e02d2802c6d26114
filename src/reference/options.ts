import type { LifeTables, Sourced } from '../core/life.ts';
import type { TrackKind } from '../core/machine.ts';
import type { NamedOption } from '../core/option-answer.ts';
import type { OptionTables, SourcedFact, TrackFact } from '../core/option-tables.ts';
import type { Source } from '../core/source.ts';
import { common, estimate, fromMemory, practice } from './sources.ts';

const said = (value: number, source: Source): Sourced => ({ value, source });
const commonly = (text: string): Source => practice(`${text}: common practice, no source`);
const ours = estimate('Our estimate, none is published');
const guessed = (value: number): Sourced => said(value, ours);

const fact = (name: TrackFact, source: Source = common): SourcedFact => ({ fact: name, source });

const causes: Source = {
  mark: 'published',
  text: 'Causes of fast lug wear: JCB HTD-5 service manual, pp. J-20 to J-26',
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

const harder: Source = {
  mark: 'estimate',
  text: 'Steel is harder on them: common practice; by how much: our estimate',
};
const most = fromMemory('From memory, not looked up');
const remembered = (value: number): Sourced => said(value, most);
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
export const optionTablesWith = (life: LifeTables): OptionTables => ({
  life,
  figures: {
    steelLife: said(2, commonly('About two sets of rubber tracks to one of steel on like work')),
    // Spreads say how far off a figure may be, up or down, eight times of ten.
    steelLifeSpread: guessed(1.3),
    // Shoes and links of steel that break where a rubber track would be cut once.
    breakShare: guessed(0.5),
    restOnSteel: said(0.75, harder),
    restSpread: guessed(1.5),
    // Sprockets go with every second set of rubber tracks, or with the chain.
    sprocketSetsRubber: said(2, common),
    sprocketSetsSteel: said(1, common),
    // Up to here a machine counts as compact or mid-size.
    usualRubberMostKg: guessed(10_000),
    // What a steel outfit weighs more on a mid-size machine.
    steelHeavierLowKg: said(100, common),
    steelHeavierHighKg: said(300, common),
    hoursAYear: guessed(600),
    ratePercent: guessed(6),
    // How long the machine is kept on the tracks chosen now.
    horizonYears: guessed(5),
    priceSpread: guessed(1.3),
    lifeSpread: guessed(1.4),
    // How far two makes of one kind lie apart on one job.
    makeSpread: guessed(1.2),
    // How many times as often rubber is cut where rock or rubble is sharp.
    sharpCuts: guessed(6),
    damageSpread: guessed(2),
  },
  wholeRubberMostKg: {
    excavator: remembered(15_000),
    'track-loader': remembered(10_000),
    carrier: remembered(30_000),
    dozer: remembered(6000),
    other: remembered(15_000),
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
});
