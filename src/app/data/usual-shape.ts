import type { MachineKind, Shape, TrackKind } from '../../core/machine.ts';

type Usual = readonly [
  drive: Shape['drive'],
  idlers: number,
  bottomRollers: number,
  carrierRollers: number,
  suspension: Shape['suspension'],
  flanges: Shape['flanges'],
];

// Common practice, no source: what most machines of the kind have. Only a start for the drawing, which the
// person sees before saving; no reading and no call leans on it.
const usual: Record<MachineKind, { readonly rubber: Usual; readonly steel: Usual }> = {
  excavator: {
    rubber: ['oval', 1, 4, 1, 'rigid', 'double'],
    steel: ['oval', 1, 7, 2, 'rigid', 'double'],
  },
  'track-loader': {
    rubber: ['high', 2, 5, 0, 'rigid', 'double'],
    steel: ['oval', 1, 6, 1, 'rigid', 'double'],
  },
  dozer: {
    rubber: ['high', 2, 5, 0, 'rigid', 'double'],
    steel: ['oval', 1, 7, 2, 'rigid', 'mixed'],
  },
  carrier: {
    rubber: ['oval', 1, 6, 1, 'rigid', 'double'],
    steel: ['oval', 1, 6, 1, 'rigid', 'double'],
  },
  other: {
    rubber: ['oval', 1, 4, 1, 'rigid', 'double'],
    steel: ['oval', 1, 6, 1, 'rigid', 'double'],
  },
};

/** What the undercarriage of such a machine usually looks like. */
export function usualShape(kind: MachineKind, track: TrackKind): Shape {
  const row = usual[kind][track === 'rubber-cored' || track === 'rubber-coreless' ? 'rubber' : 'steel'];
  const [drive, idlers, bottomRollers, carrierRollers, suspension, flanges] = row;
  return {
    track,
    drive,
    idlers,
    bottomRollers,
    carrierRollers,
    slidePlate: false,
    suspension: track === 'rubber-coreless' ? 'torsion' : suspension,
    flanges,
    tensioner: 'grease',
  };
}
