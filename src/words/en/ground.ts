import type { ContactKind } from '../../core/ground-pressure.ts';

/** Mean pressure under the tracks, and peaks under the rollers. */
export const groundPressure = {
  title: 'Ground pressure',
  line: 'Under the tracks on average, and in peaks under the rollers',
  lead: 'Good for comparing machines and track widths, not for saying what a ground bears.',
  width: 'Width of the track or shoe',
  widthFromSize: 'From the size in the machine’s record.',
  kind: 'How is the length on the ground taken?',
  rollers: 'Bottom rollers a side',
  rollersFromShape: 'From the machine’s record.',
  mean: 'On average',
  length: (length: string): string => `Length on the ground: ${length}`,
  lengthOf: (centres: string, share: string, height: string, length: string): string =>
    `Length on the ground: ${centres} + ${share} × ${height} = ${length}`,
  area: (width: string, length: string, area: string): string =>
    `Two tracks: 2 × ${width} × ${length} = ${area}`,
  pressure: (mass: string, gravity: string, area: string): string => `${mass} × ${gravity} m/s² on ${area}`,
  both: (kpa: string, psi: string): string => `${kpa} kPa (${psi} psi)`,
  range: (low: string, high: string): string => `${low} to ${high} kPa`,
  sameWay: 'Compare only with figures whose length is taken in the same way.',
  usual: 'What is usual',
  peaks: 'Peaks under the rollers',
  peakOf: (kpa: string, times: string): string => `About ${kpa} kPa, ${times} times the average.`,
  peak: (kpa: string): string => `About ${kpa} kPa.`,
  peakOnly:
    'For ranking machines only: mean maximum pressure after Rowland, 1.26 × weight ÷ (2 × rollers × width × √(pitch × diameter)), kilonewtons and metres.',
  peakRubber:
    'Of a rubber track no such figure is worked out: the formula wants stiff links, or air in the wheels. The peaks stand right under the rollers.',
  soft: 'Where that stands among what soft ground bears',
} as const;

export const groundSizeWords = {
  width: { label: groundPressure.width, name: 'the width' },
  centres: { label: 'Idler centre to sprocket centre', name: 'idler to sprocket' },
  height: { label: 'Height of the track', name: 'the track’s height' },
  rollers: { label: 'First to last bottom roller, centres', name: 'first to last roller' },
  pitch: { label: 'Pitch of the chain', name: 'the pitch' },
  length: { label: 'Length on the ground', name: 'the length on the ground' },
  diameter: { label: 'Diameter of a bottom roller', name: 'the roller’s diameter' },
} as const;

export const groundOpenWords = { mass: 'the machine’s mass', count: 'the number of rollers' } as const;

interface Choice {
  readonly label: string;
  readonly line: string;
}

export const contactWords: Readonly<Record<ContactKind, Choice>> = {
  'centres-sinkage': {
    label: 'sunk in a little',
    line: 'Idler to sprocket, and a third of the track’s height.',
  },
  centres: { label: 'idler to sprocket', line: 'The track lies flat from end to end.' },
  'end-rollers': { label: 'first to last roller', line: 'The ends of the track stand clear of the ground.' },
  'end-rollers-pitch': {
    label: 'first to last roller and a pitch',
    line: 'The same, with one pitch of the chain.',
  },
  measured: { label: 'measured', line: 'On firm ground, from where it touches to where it leaves.' },
};

export const usualPressureWords = {
  mini: 'Mini excavator',
  midi: 'Midi excavator',
  'excavator-20-t': 'Excavator of 20 t',
  'excavator-35-t': 'Excavator of 35 t',
  'track-loader': 'Compact track loader',
} as const;

export const groundWords = {
  'fine-soil': 'Wet fine soil, temperate climate',
  'fine-soil-wet-climate': 'Wet fine soil, tropical climate',
  bog: 'Bog',
  'floating-mat': 'Floating mat of roots',
  snow: 'Snow',
} as const;

export const bearingWords = {
  desirable: (limit: string): string => `well within: up to ${limit} kPa`,
  satisfactory: (limit: string): string => `still good: up to ${limit} kPa`,
  most: (limit: string): string => `at its limit: ${limit} kPa at most`,
  over: (limit: string): string => `too much: ${limit} kPa at most`,
} as const;
