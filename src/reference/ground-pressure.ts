import type { ContactKind, GroundLimit } from '../core/ground-pressure.ts';
import { kpaPerPsi } from '../core/ground-pressure.ts';
import type { Source } from '../core/source.ts';
import { fromMemory, published } from './sources.ts';

/** Where each definition of the length on the ground is from. */
export const contactSources: Readonly<Record<ContactKind, Source>> = {
  'centres-sinkage': fromMemory(
    'ISO 16754 in outline: centres of idler and sprocket, and 0.35 of the track’s height for sinking in',
  ),
  centres: published('JCMA Construction Machinery Handbook 2016, 4.4, p. 214: a track set flat'),
  'end-rollers': published('JCMA Construction Machinery Handbook 2016, 4.4, p. 214: a boat-shaped track'),
  'end-rollers-pitch': published('Student design note ukrbukva 69478, eq. 3.15: end rollers and one pitch'),
  measured: { mark: 'measured', text: '' },
};

export const grounds = ['fine-soil', 'fine-soil-wet-climate', 'bog', 'floating-mat', 'snow'] as const;
export type Ground = (typeof grounds)[number];

interface GroundRow extends GroundLimit {
  readonly ground: Ground;
  readonly source: Source;
}

const rowland = fromMemory('Rowland’s limits as Wong, Theory of Ground Vehicles, gives them');

const row = (ground: Ground, desirable: number, satisfactory: number, most: number): GroundRow => ({
  ground,
  desirable,
  satisfactory,
  most,
  source: rowland,
});

/** Mean maximum pressure in kPa that soft ground bears; of 25 to 30 kPa for snow the lower is taken. */
export const groundLimits: readonly GroundRow[] = [
  row('fine-soil', 150, 200, 300),
  row('fine-soil-wet-climate', 90, 140, 240),
  row('bog', 30, 50, 60),
  row('floating-mat', 5, 10, 15),
  row('snow', 10, 25, 40),
];

interface UsualPressure {
  readonly machine: 'mini' | 'midi' | 'excavator-20-t' | 'excavator-35-t' | 'track-loader';
  readonly lowKpa: number;
  readonly highKpa: number;
  readonly source: Source;
}

const remembered = fromMemory('Usual figures of data sheets');

/** Mean ground pressures in kPa that are usual, to see whether one reckoned is of the right size. */
export const usualPressures: readonly UsualPressure[] = [
  { machine: 'mini', lowKpa: 25, highKpa: 35, source: remembered },
  { machine: 'midi', lowKpa: 30, highKpa: 40, source: remembered },
  { machine: 'excavator-20-t', lowKpa: 40, highKpa: 50, source: remembered },
  { machine: 'excavator-35-t', lowKpa: 60, highKpa: 70, source: remembered },
  {
    machine: 'track-loader',
    lowKpa: 2.5 * kpaPerPsi,
    highKpa: 4 * kpaPerPsi,
    source: published('Equipment World; Grounds Maintenance magazine: 2.5 to 4 psi'),
  },
];
