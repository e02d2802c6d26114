import { normalCdf, scaledTail } from './special.ts';

/** A Wiener process that starts at 0; distance in any unit, time in hours. */
export interface Drifting {
  /** To the mark that is watched; above 0. */
  readonly distance: number;
  /** Mean way per hour; above 0. */
  readonly drift: number;
  /** Variance per hour is kappa × drift, in the unit of distance; above 0. */
  readonly kappa: number;
}

/** When the mark is reached first. */
export interface FirstPassage {
  /** P(reached within so many hours); 0 at and before 0. */
  readonly cdf: (hours: number) => number;
  /** Density per hour; 0 at and before 0. */
  readonly pdf: (hours: number) => number;
  readonly meanHours: number;
  /** In hours squared. */
  readonly variance: number;
}

/**
 * The inverse Gaussian distribution of the hours to the first passage, with mean d/r and shape d²/(κ·r): Folks and
 * Chhikara, The inverse Gaussian distribution and its statistical application (J. Royal Statistical Society B 40,
 * 1978). Undefined unless distance, drift and kappa are finite and above 0.
 */
export function firstPassage({ distance, drift, kappa }: Drifting): FirstPassage | undefined {
  if (![distance, drift, kappa].every((each) => each > 0 && each < Infinity)) return undefined;
  const cdf = (hours: number): number => {
    const travelled = drift * hours;
    if (!(travelled > 0)) return 0;
    if (travelled === Infinity) return 1;
    const spread = Math.sqrt(kappa * travelled);
    const short = (distance - travelled) / spread;
    // e^(2d/κ)·Φ(−far) without the exponential that overflows: 2d/κ = far²/2 − short²/2.
    const back = Math.exp((short * short) / -2) * scaledTail((distance + travelled) / spread);
    return Math.min(1, normalCdf(-short) + back);
  };
  const pdf = (hours: number): number => {
    const travelled = drift * hours;
    if (!(travelled > 0) || travelled === Infinity) return 0;
    const spread = Math.sqrt(kappa * travelled);
    const short = (distance - travelled) / spread;
    return (distance / hours / spread / Math.sqrt(2 * Math.PI)) * Math.exp((short * short) / -2);
  };
  return { cdf, pdf, meanHours: distance / drift, variance: (kappa * distance) / drift / drift };
}
