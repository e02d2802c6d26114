/**
 * The hanging span of a track as a cable: w is force per length, L the span, s the sag, all in one consistent
 * set of units. Bending stiffness is left out, so that absolute tension of rubber is an estimate.
 */

/** Horizontal tension of a parabola, T = w·L²/(8·s); infinite for no sag. Source: statics of cables. */
export const parabolaTension = (w: number, span: number, sag: number): number =>
  (w * span * span) / (8 * sag);

/** Sag of a parabola for a horizontal tension. */
export const parabolaSag = (w: number, span: number, tension: number): number =>
  (w * span * span) / (8 * tension);

/** Largest tension, at the ends: the horizontal part and half the span's weight. */
export const endTension = (w: number, span: number, horizontal: number): number =>
  Math.hypot(horizontal, (w * span) / 2);

/** Angle at the ends of a parabola, in degrees. */
export const endAngleDegrees = (w: number, span: number, horizontal: number): number =>
  (Math.atan((w * span) / (2 * horizontal)) * 180) / Math.PI;

/** Length that a sagged span has more than a straight one, 8·s²/(3·L). */
export const extraLength = (span: number, sag: number): number => (8 * sag * sag) / (3 * span);

/** Exact sag of a catenary for a horizontal tension, (T/w)·(cosh(w·L/2T) − 1). */
export const catenarySag = (w: number, span: number, tension: number): number =>
  (tension / w) * (Math.cosh((w * span) / (2 * tension)) - 1);

/** Tension at one sag as a multiple of the tension at another: T ∝ 1/s. */
export const tensionRatio = (otherSag: number, sag: number): number => otherSag / sag;

/** Idler travel that takes up a length of slack: half of it, since the loop passes the idler twice. */
export const idlerTravel = (slack: number): number => slack / 2;

/** Slack that n links make when each pitch has grown. */
export const slackOfLinks = (links: number, growth: number): number => links * growth;

/** Below this true sag the parabola says too little about a track to be shown. */
export const leastSagMm = 5;

/**
 * Idler travel in mm between two true sags over the spans that hang; undefined at or below 5 mm, where links
 * and stiffness rule instead of weight.
 */
export function travelBetween(
  nowMm: number,
  wantedMm: number,
  spanMm: number,
  spans: number,
): number | undefined {
  if (Math.min(nowMm, wantedMm) <= leastSagMm) return undefined;
  return idlerTravel(spans * (extraLength(spanMm, nowMm) - extraLength(spanMm, wantedMm)));
}
