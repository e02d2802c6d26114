import { gammaQ } from './special.ts';

/** Wear that only grows, by independent gamma steps; wear in percent. */
export interface GammaWear {
  /** Wear left to the limit; above 0. */
  readonly left: number;
  /** Shape gained per hour; above 0. Mean wear per hour is this × scale. */
  readonly shapePerHour: number;
  /** Scale in percent, above 0: the variance per percent of mean wear. */
  readonly scale: number;
}

/**
 * P(the limit is reached within so many hours) = Q(shape·t, left/scale), since wear never falls: J. M. van Noortwijk,
 * A survey of the application of gamma processes in maintenance (Reliability Engineering & System Safety 94, 2009).
 * 0 at and before 0 hours. Undefined unless the numbers are finite, and left, shape and scale above 0.
 */
export function gammaWearWithin({ left, shapePerHour, scale }: GammaWear, hours: number): number | undefined {
  if (![left, shapePerHour, scale].every((each) => each > 0 && each < Infinity)) return undefined;
  const shape = shapePerHour * hours;
  const steps = left / scale;
  if (!Number.isFinite(shape) || !Number.isFinite(steps)) return undefined;
  return shape <= 0 ? 0 : gammaQ(shape, steps);
}
