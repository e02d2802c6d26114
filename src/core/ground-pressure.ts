import { kgPerLb, standardGravity } from './quantity.ts';
import { unreachable } from './result.ts';

/** kPa per psi, exact by the pound, the inch and standard gravity (NIST SP 811). */
export const kpaPerPsi = (kgPerLb * standardGravity) / (0.0254 * 0.0254 * 1000);

/**
 * The share of the track's height that a track on soft ground gains in length by sinking in; from memory of
 * ISO 16754 and of older excavator data sheets, not looked up.
 */
export const sinkageShare = 0.35;

/**
 * The length of track on the ground, by the definition that it was taken by, in mm: two figures for the same
 * machine are compared only where it is the same one.
 */
export type ContactLength =
  | { readonly kind: 'centres-sinkage'; readonly centresMm: number; readonly trackHeightMm: number }
  | { readonly kind: 'centres'; readonly centresMm: number }
  | { readonly kind: 'end-rollers'; readonly rollersMm: number }
  | { readonly kind: 'end-rollers-pitch'; readonly rollersMm: number; readonly pitchMm: number }
  | { readonly kind: 'measured'; readonly lengthMm: number };

export const contactKinds = [
  'centres-sinkage',
  'centres',
  'end-rollers',
  'end-rollers-pitch',
  'measured',
] as const satisfies readonly ContactLength['kind'][];

export type ContactKind = ContactLength['kind'];

/** The length on the ground in mm: `centres` from idler to sprocket, `end-rollers` from first to last roller. */
export function contactLengthMm(contact: ContactLength): number {
  switch (contact.kind) {
    case 'centres-sinkage':
      return contact.centresMm + sinkageShare * contact.trackHeightMm;
    case 'centres':
      return contact.centresMm;
    case 'end-rollers':
      return contact.rollersMm;
    case 'end-rollers-pitch':
      return contact.rollersMm + contact.pitchMm;
    case 'measured':
      return contact.lengthMm;
    default:
      return unreachable(contact);
  }
}

const isSize = (value: number): boolean => value > 0 && value < Infinity;

/** Weight over area in kPa, m·g/A; undefined unless mass (kg) and area (m²) are above 0. */
export const pressureKpa = (
  massKg: number,
  areaM2: number,
  gravity: number = standardGravity,
): number | undefined => (isSize(massKg) && isSize(areaM2) ? (massKg * gravity) / areaM2 / 1000 : undefined);

/** Mean ground pressure in kPa under two tracks, m·g/(2·b·L); undefined unless every size is above 0. */
export const meanPressureKpa = (
  massKg: number,
  widthMm: number,
  contact: ContactLength,
): number | undefined => pressureKpa(massKg, (2 * widthMm * contactLengthMm(contact)) / 1e6);

/** What carries a machine: weight in kg, bottom rollers of one side, track width and roller diameter in mm. */
export interface Rollers {
  readonly massKg: number;
  readonly rollersPerSide: number;
  readonly widthMm: number;
  readonly rollerMm: number;
}

/**
 * Mean maximum pressure in kPa under the rollers of a track of rigid links, 1.26·W/(2·n·b·√(p·D)); for ranking
 * only. Undefined unless every size is above 0. Source: Rowland 1972, in the form without the share of a link
 * that is rigid.
 */
export function peakRigidKpa(rollers: Rollers, pitchMm: number): number | undefined {
  const { massKg, rollersPerSide, widthMm, rollerMm } = rollers;
  const under = (2 * rollersPerSide * widthMm * Math.sqrt(pitchMm * rollerMm)) / 1e6;
  const kpa = pressureKpa(massKg, under);
  return kpa === undefined ? undefined : 1.26 * kpa;
}

/** What a kind of ground bears of mean maximum pressure, in kPa. */
export interface GroundLimit {
  readonly desirable: number;
  readonly satisfactory: number;
  readonly most: number;
}

/** Where a mean maximum pressure in kPa stands among what a ground bears; a limit belongs to its own side. */
export function bearing(limit: GroundLimit, peakKpa: number): 'desirable' | 'satisfactory' | 'most' | 'over' {
  if (peakKpa <= limit.desirable) return 'desirable';
  if (peakKpa <= limit.satisfactory) return 'satisfactory';
  return peakKpa <= limit.most ? 'most' : 'over';
}
