import {
  meanPressureKpa,
  peakRigidKpa,
  type ContactKind,
  type ContactLength,
} from '../../core/ground-pressure.ts';
import { sides, type Machine } from '../../core/machine.ts';
import { unreachable } from '../../core/result.ts';
import { parseCount } from '../../core/typed.ts';
import { parseTrackSize } from '../../core/track-size.ts';
import type { groundOpenWords, groundSizeWords } from '../../words/en/ground.ts';
import { mmOf, type TypedLength } from './haul-form.ts';

export type GroundSize = keyof typeof groundSizeWords;
export type GroundOpen = GroundSize | keyof typeof groundOpenWords;

/** What was typed of the tracks; the machine's record speaks for the rest. */
export interface GroundForm {
  readonly kind?: ContactKind;
  readonly sizes: Readonly<Partial<Record<GroundSize, TypedLength>>>;
  readonly count?: string;
}

export const emptyGround: GroundForm = { sizes: {} };

export const sizesOf: Readonly<Record<ContactKind, readonly GroundSize[]>> = {
  'centres-sinkage': ['centres', 'height'],
  centres: ['centres'],
  'end-rollers': ['rollers'],
  'end-rollers-pitch': ['rollers', 'pitch'],
  measured: ['length'],
};

/** Width in mm that the size of either side's track says. */
export const recordWidthMm = (machine: Machine | undefined): number | undefined =>
  sides
    .map((side) => parseTrackSize(machine?.[side]?.size ?? '')?.widthMm)
    .find((width) => width !== undefined);

export const kindOf = (form: GroundForm): ContactKind => form.kind ?? 'centres-sinkage';

type SizesMm = Readonly<Partial<Record<GroundSize, number>>>;

/** The sizes so far in mm, with what the record knows of the width. */
export function sizesMm(form: GroundForm, machine: Machine | undefined): SizesMm {
  const typed = Object.entries(form.sizes).map(([name, size]) => [name, mmOf(size)] as const);
  const record = recordWidthMm(machine);
  return { ...(record !== undefined && { width: record }), ...Object.fromEntries(typed) };
}

/** The length on the ground from sizes that are all there; 0 stands for one that is not. */
function contactOf(kind: ContactKind, mm: SizesMm): ContactLength {
  const { centres = 0, height = 0, rollers = 0, pitch = 0, length = 0 } = mm;
  switch (kind) {
    case 'centres-sinkage':
      return { kind, centresMm: centres, trackHeightMm: height };
    case 'centres':
      return { kind, centresMm: centres };
    case 'end-rollers':
      return { kind, rollersMm: rollers };
    case 'end-rollers-pitch':
      return { kind, rollersMm: rollers, pitchMm: pitch };
    case 'measured':
      return { kind, lengthMm: length };
    default:
      return unreachable(kind);
  }
}

interface Open {
  readonly kind: 'open';
  readonly open: readonly GroundOpen[];
}

export type MeanAnswer =
  | Open
  | {
      readonly kind: 'mean';
      readonly contact: ContactLength;
      readonly massKg: number;
      readonly widthMm: number;
      readonly kpa: number;
    };

const missing = (mm: SizesMm, wanted: readonly GroundSize[]): readonly GroundSize[] =>
  wanted.filter((name) => mm[name] === undefined);

/** Mean ground pressure, or what it still needs. */
export function meanAnswer(kind: ContactKind, mm: SizesMm, massKg: number | undefined): MeanAnswer {
  const contact = contactOf(kind, mm);
  const { width = 0 } = mm;
  const open = [
    ...(massKg === undefined ? (['mass'] as const) : []),
    ...missing(mm, ['width', ...sizesOf[kind]]),
  ];
  const kpa = meanPressureKpa(massKg ?? 0, width, contact);
  if (open.length > 0 || massKg === undefined || kpa === undefined) return { kind: 'open', open };
  return { kind: 'mean', contact, massKg, widthMm: width, kpa };
}

export type PeakAnswer = Open | { readonly kind: 'rubber' } | { readonly kind: 'peak'; readonly kpa: number };

/** Rollers of one side as typed, or as the machine's shape has them. */
export function countOf(form: GroundForm, machine: Machine | undefined): number | undefined {
  if (form.count === undefined) return machine?.shape.bottomRollers;
  const read = parseCount(form.count);
  return read.ok ? read.value : undefined;
}

/** Peaks under the rollers of a chain, or what they still need; of a belt of rubber none is worked out. */
export function peakAnswer(
  mm: SizesMm,
  massKg: number | undefined,
  count: number | undefined,
  isBelt: boolean,
): PeakAnswer {
  if (isBelt) return { kind: 'rubber' };
  const { width = 0, pitch = 0, diameter = 0 } = mm;
  const open = [
    ...(massKg === undefined ? (['mass'] as const) : []),
    ...missing(mm, ['width', 'pitch', 'diameter']),
    ...(count === undefined ? (['count'] as const) : []),
  ];
  const rollers = { massKg: massKg ?? 0, rollersPerSide: count ?? 0, widthMm: width, rollerMm: diameter };
  const kpa = peakRigidKpa(rollers, pitch);
  return open.length > 0 || kpa === undefined ? { kind: 'open', open } : { kind: 'peak', kpa };
}
