import { toMm } from './quantity.ts';
import { sagBand, type SagOutcome } from './sag.ts';
import { leastSagMm, tensionRatio, travelBetween } from './tension.ts';

export interface SagAdvice {
  /** Tension now as a multiple of the tension at the middle of the band. */
  readonly tension: number;
  /** Idler travel to the middle of the band in mm, outwards positive; absent while the span is not known. */
  readonly idlerTravelMm?: number;
}

/**
 * What a true sag says of tension and idler travel. Undefined where the method does not give true sag, or where
 * the sag read or wanted is at or below 5 mm. Bending stiffness is left out: for rubber it is an estimate.
 */
export function sagAdvice(sag: SagOutcome): SagAdvice | undefined {
  if (sag.trueMm === undefined) return undefined;
  const band = sagBand(sag.spec);
  // The same offset that turned the reading into true sag turns the band into it.
  const wantedMm = toMm((band.low + band.high) / 2, sag.spec.unit) - (sag.valueMm - sag.trueMm);
  if (Math.min(sag.trueMm, wantedMm) <= leastSagMm) return undefined;
  const travel =
    sag.spanMm === undefined ? undefined : travelBetween(sag.trueMm, wantedMm, sag.spanMm, sag.spans);
  return {
    tension: tensionRatio(wantedMm, sag.trueMm),
    ...(travel !== undefined && { idlerTravelMm: travel }),
  };
}
