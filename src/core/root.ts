import { assert } from './result.ts';

/** Halving alone brings the widest bracket of doubles to its last bit in fewer rounds. */
const mostRounds = 2200;

/**
 * Where `f` crosses 0 between two points at which it has opposite signs (a bug otherwise), to the last bits. Inverse
 * quadratic steps where they are safe, else halves: T. R. Chandrupatla, Advances in Engineering Software 28 (1997).
 */
export function root(f: (x: number) => number, from: number, to: number): number {
  let [older, newer, atOlder, atNewer] = [from, to, f(from), f(to)];
  if (atOlder === 0) return older;
  if (atNewer === 0) return newer;
  assert(atOlder > 0 !== atNewer > 0, 'the sign changes between the two ends');
  let step = 0.5;
  for (let round = 0; round < mostRounds; round += 1) {
    const next = newer + step * (older - newer);
    const atNext = f(next);
    let [third, atThird] = [newer, atNewer];
    if (atNext > 0 !== atNewer > 0) [third, atThird, older, atOlder] = [older, atOlder, newer, atNewer];
    [newer, atNewer] = [next, atNext];
    const best = Math.abs(atNewer) < Math.abs(atOlder) ? newer : older;
    const least = (2 * Number.EPSILON * Math.abs(best) + Number.MIN_VALUE) / Math.abs(older - newer);
    if (atNewer === 0 || !(least < 0.5)) return best;
    step = Math.min(1 - least, Math.max(least, interpolated(newer, older, third, atNewer, atOlder, atThird)));
  }
  return newer;
}

/** The step towards `b` at which a parabola through the three points is 0; a half where it cannot be trusted. */
function interpolated(a: number, b: number, c: number, atA: number, atB: number, atC: number): number {
  const xi = (a - b) / (c - b);
  const phi = (atA - atB) / (atC - atB);
  if (!(phi * phi < xi && (1 - phi) * (1 - phi) < 1 - xi)) return 0.5;
  return (
    (atA / (atB - atA)) * (atC / (atB - atC)) +
    (((c - a) / (b - a)) * (atA / (atC - atA)) * atB) / (atC - atB)
  );
}
