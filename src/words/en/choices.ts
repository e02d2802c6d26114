import type { LimitMeaning, Load } from '../../core/limits.ts';
import type { MachineKind, Shape, TrackKind } from '../../core/machine.ts';
import type { LengthUnit } from '../../core/quantity.ts';
import type { UnseenReason } from '../../core/readings.ts';
import type { Corner, Depth, Purpose, Start } from '../../core/walk.ts';

/** A label of a choice and, where the label alone does not say it, a line under it. */
export interface Choice {
  readonly label: string;
  readonly line?: string;
}

export const machineKindWords: Readonly<Record<MachineKind, string>> = {
  excavator: 'excavator',
  'track-loader': 'compact track loader',
  dozer: 'dozer',
  carrier: 'tracked carrier',
  other: 'other',
};

export const trackKindWords: Readonly<Record<TrackKind, Choice>> = {
  'rubber-cored': { label: 'rubber with cores', line: 'Steel cores inside; the sprocket pushes on steel.' },
  'rubber-coreless': { label: 'rubber belt', line: 'No steel cores; the sprocket pushes on rubber lugs.' },
  steel: { label: 'steel', line: 'Links, pins and steel shoes.' },
  'steel-pads': { label: 'steel with pads', line: 'Steel shoes with bolt-on or clip-on rubber pads.' },
  'rubber-shoes': { label: 'rubber shoes on chain', line: 'Each rubber shoe is bolted to the chain.' },
};

export const driveWords: Readonly<Record<Shape['drive'], Choice>> = {
  oval: { label: 'oval', line: 'The sprocket is low, in line with the idler.' },
  high: { label: 'high drive', line: 'The sprocket stands high; the track makes a triangle.' },
};

export const suspensionWords: Readonly<Record<Shape['suspension'], string>> = {
  rigid: 'rigid',
  bogie: 'bogies',
  torsion: 'torsion arms',
};

export const flangeWords: Readonly<Record<Shape['flanges'], string>> = {
  single: 'single flange',
  double: 'double flange',
  mixed: 'single and double',
};

export const tensionerWords: Readonly<Record<Shape['tensioner'], Choice>> = {
  grease: { label: 'grease adjuster', line: 'Pumped with a grease gun.' },
  spring: { label: 'threaded spring', line: 'Set with a nut; on some small loaders.' },
};

export const purposeWords: Readonly<Record<Purpose, Choice>> = {
  jobsite: { label: 'jobsite call', line: 'May it move, may it work, until when?' },
  'hand-out': { label: 'rental hand-out', line: 'Is it fit to go out; is the proof complete?' },
  'rental-return': { label: 'rental return', line: 'Can it go out again; is anything chargeable?' },
  appraisal: { label: 'appraisal', line: 'What to deduct, what was not verified?' },
};

export const depthWords: Readonly<Record<Depth, Choice>> = {
  short: { label: 'short walk', line: 'About five minutes. Any doubt opens the full item.' },
  full: { label: 'full walk', line: '30 to 90 minutes, every item measured.' },
};

export const cornerWords: Readonly<Record<Corner, string>> = {
  'front-left': 'front left',
  'rear-left': 'rear left',
  'rear-right': 'rear right',
  'front-right': 'front right',
};

export const startWords: Readonly<Record<Start, Choice>> = {
  walk: { label: 'walk round', line: 'The machine stands; look and measure.' },
  'track-off': { label: 'the track is off', line: 'First find out why it came off.' },
  'drive-first': { label: 'drive it first', line: '20–30 m both ways, both speeds.' },
};

export const groundWords = {
  'soft-soil': 'soft soil',
  mixed: 'mixed',
  gravel: 'gravel',
  rock: 'rock',
  demolition: 'demolition',
  paving: 'paving',
} as const;

export const turningWords = { little: 'few turns', some: 'some turns', much: 'turns all day' } as const;

export const loadWords: Readonly<Record<Load, Choice>> = {
  light: { label: 'light', line: 'Little shock: soil, sand, light work.' },
  average: { label: 'average', line: 'Some shock: mixed work.' },
  heavy: { label: 'heavy', line: 'Much shock: rock, demolition, full loads.' },
};

export const limitMeaningWords: Readonly<Record<LimitMeaning, string>> = {
  turn: 'turn limit',
  service: 'service limit',
  replace: 'replace limit',
  destruction: 'destruction limit',
};

/** Why something could not be reached. */
export const unseenWords: Readonly<Record<UnseenReason, string>> = {
  guarded: 'behind a guard',
  mud: 'under mud',
  unsafe: 'not safe to reach',
  'no-tool': 'no tool for it',
  'no-time': 'no time',
  'not-fitted': 'not on this machine',
  other: 'another reason',
};

/** By tool id. */
export const toolWords = {
  caliper: 'caliper',
  'depth-gauge': 'depth gauge',
  'tread-gauge': 'tread gauge',
  rule: 'steel rule',
  tape: 'tape',
  straightedge: 'straightedge and rule',
  'bolt-or-dowel': 'bolt or dowel of known size',
  eye: 'by eye',
} as const;

/** In place of a tool: the size was measured in a picture, which is kept with its marks. */
export const fromPhoto = 'from photo';

export const unitNames: Readonly<Record<LengthUnit, Choice>> = {
  mm: { label: 'millimetres', line: '18.3 mm' },
  in: { label: 'inches, decimal', line: '0.72 in' },
  'in/32': { label: '32nds of an inch', line: '23/32 in, as on a tread gauge' },
  'in/16': { label: 'inches and 16ths', line: '27 1/4 in, as on a tape' },
};

export const unitShort: Readonly<Record<LengthUnit, string>> = {
  mm: 'mm',
  in: 'in',
  'in/32': '/32 in',
  'in/16': 'in',
};

export const massUnitWords = { kg: 'kilograms', lb: 'pounds' } as const;

export const workKindWords = {
  fitted: 'fitted new',
  turned: 'turned',
  swapped: 'swapped sides',
  'link-removed': 'link removed',
  'meter-changed': 'hour meter changed',
  adjusted: 'adjusted',
  repaired: 'repaired',
} as const;
