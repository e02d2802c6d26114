// Distribution functions of mathematics, as plain numbers. Arguments outside of the stated range are bugs.
import { assert } from './result.ts';
import { root } from './root.ts';

const rootTwoPi = Math.sqrt(2 * Math.PI);

// W. J. Cody, Rational Chebyshev approximations for the error function, Math. Comp. 23 (1969), scaled to the normal
// distribution. Written out, since a loop over the coefficients takes four times as long and a forecast asks
// tens of thousands of times.

/** (Φ(x) − ½) / x for |x| < 0.67448975, by the square of x. */
const nearRatio = (s: number): number =>
  ((((0.06568233791820745 * s + 2.2352520354606837) * s + 161.02823106855587) * s + 1067.6894854603709) * s +
    18154.98125334356) /
  ((((s + 47.20258190468824) * s + 976.0985517377767) * s + 10260.932208618979) * s + 45507.78933502673);

/** exp(x²/2)·Φ(−x) for x from 0.67448975 to √32. */
const middleRatio = (x: number): number =>
  ((((((((1.0765576773720192e-8 * x + 0.39894151208813466) * x + 8.883149794388377) * x + 93.50665613217785) *
    x +
    597.2702763948002) *
    x +
    2494.5375852903726) *
    x +
    6848.190450536283) *
    x +
    11602.65143764735) *
    x +
    9842.714838383978) /
  ((((((((x + 22.266688044328117) * x + 235.387901782625) * x + 1519.3775994075547) * x + 6485.558298266761) *
    x +
    18615.571640885097) *
    x +
    34900.95272114598) *
    x +
    38912.00328609327) *
    x +
    19685.42967685999);

/** 1/√(2π) − x·exp(x²/2)·Φ(−x), times x², for x from √32 on, by 1/x². */
const farRatio = (s: number): number =>
  (((((0.023073441764940174 * s + 0.215898534057957) * s + 0.12740116116024736) * s + 0.022235277870649807) *
    s +
    0.0014216191932278934) *
    s +
    0.000029112874951168793) /
  (((((s + 1.284260096144911) * s + 0.4682382124808651) * s + 0.06598813786892856) * s +
    0.0037823963320275824) *
    s +
    0.00007297515550839662);

/**
 * The upper tail of the standard normal distribution without its exponential, exp(x²/2)·Φ(−x), for x ≥ 0. It neither
 * underflows nor overflows: ½ at 0, about 1/(x·√(2π)) far out.
 */
export function scaledTail(x: number): number {
  assert(x >= 0, 'the upper half');
  if (x < 0.67448975) return Math.exp((x * x) / 2) * (0.5 - x * nearRatio(x * x));
  if (x < 5.65685425) return middleRatio(x);
  const inverse = 1 / (x * x);
  return (1 / rootTwoPi - inverse * farRatio(inverse)) / x;
}

/** Φ(x), the standard normal distribution function; also in the lower tail relative to itself. */
export function normalCdf(x: number): number {
  assert(!Number.isNaN(x), 'a number');
  if (x > -0.67448975 && x < 0.67448975) return 0.5 + x * nearRatio(x * x);
  const tail = Math.exp((x * x) / -2) * scaledTail(Math.abs(x));
  return x < 0 ? tail : 1 - tail;
}

/** ln Φ(x), far below where Φ(x) itself is 0. */
export function logNormalCdf(x: number): number {
  assert(!Number.isNaN(x), 'a number');
  return x < 0 ? Math.log(scaledTail(-x)) - (x * x) / 2 : Math.log1p(-Math.exp((x * x) / -2) * scaledTail(x));
}

/** The x with Φ(x) = p, for p from 0 to 1; infinite at both ends. */
export function normalQuantile(p: number): number {
  assert(p >= 0 && p <= 1, 'a probability');
  if (p > 0.5) return -normalQuantile(1 - p);
  if (p === 0) return -Infinity;
  // ln Φ is concave and its slope is φ/Φ: from the left of the root Newton's steps only go right.
  const wanted = Math.log(p);
  let x = -Math.sqrt(-2 * wanted);
  for (let round = 0; round < 50; round += 1) {
    const step = (wanted - logNormalCdf(x)) * rootTwoPi * scaledTail(-x);
    if (!(step > 1e-16 * (1 - x))) break;
    x = Math.min(0, x + step);
  }
  return x;
}

/** From here on seven terms of Stirling's series are exact to the last bit. */
const stirlingFrom = 10;

/** ln Γ(x) − (x − ½)·ln x + x − ln √(2π) for x ≥ 10: Abramowitz and Stegun, Handbook (1964), 6.1.41. */
function stirlingRest(x: number): number {
  const s = 1 / (x * x);
  return (
    (1 / 12 -
      s * (1 / 360 - s * (1 / 1260 - s * (1 / 1680 - s * (1 / 1188 - s * (691 / 360360 - s / 156)))))) /
    x
  );
}

/** ln Γ(x) for x > 0. */
export function lnGamma(x: number): number {
  assert(x > 0 && x < Infinity, 'an argument of the gamma function above 0');
  let product = 1;
  let y = x;
  for (; y < stirlingFrom; y += 1) product *= y;
  return (y - 0.5) * Math.log(y) - y + Math.log(rootTwoPi) + stirlingRest(y) - Math.log(product);
}

/** More terms than any series here needs at shapes that wear can have. */
const mostTerms = 1e6;

/** xᵃ·e⁻ˣ/Γ(a); for large a without the difference of large logarithms. */
function gammaFront(a: number, x: number): number {
  if (a < stirlingFrom) return Math.exp(a * Math.log(x) - x - lnGamma(a));
  const off = (x - a) / a;
  return (Math.sqrt(a) / rootTwoPi) * Math.exp(a * (Math.log1p(off) - off) - stirlingRest(a));
}

/** Q(a, x) = Γ(a, x)/Γ(a) for a > 0 and x ≥ 0: series below a + 1 (Abramowitz and Stegun 6.5.29), else fraction. */
export function gammaQ(a: number, x: number): number {
  assert(a > 0 && a < Infinity && x >= 0 && x < Infinity, 'shape and argument of the gamma distribution');
  if (x === 0) return 1;
  if (x >= a + 1) return gammaFront(a, x) * upperGammaFraction(a, x);
  let term = 1 / a;
  let sum = term;
  for (let n = 1; n < mostTerms && term > sum * (Number.EPSILON / 4); n += 1) {
    term *= x / (a + n);
    sum += term;
  }
  return Math.max(0, 1 - gammaFront(a, x) * sum);
}

/** Γ(a, x)·eˣ/xᵃ for x ≥ a + 1, which never underflows: continued fraction, Abramowitz and Stegun 6.5.31. */
export function upperGammaFraction(a: number, x: number): number {
  assert(a > 0 && x >= a + 1, 'far enough out for the fraction');
  if (x === Infinity) return 0;
  return fraction(
    (n) => n * (a - n),
    (n) => x + 2 * n + 1 - a,
  );
}

/** 1/(under(0) + over(1)/(under(1) + over(2)/(under(2) + …))), by Lentz's method (Applied Optics 15, 1976). */
function fraction(over: (n: number) => number, under: (n: number) => number): number {
  let rising = Infinity;
  let falling = 1 / under(0);
  let value = falling;
  for (let n = 1; n < mostTerms; n += 1) {
    falling = 1 / (under(n) + over(n) * falling);
    rising = under(n) + over(n) / rising;
    value *= rising * falling;
    if (Math.abs(rising * falling - 1) <= Number.EPSILON) break;
  }
  return value;
}

/** ln B(a, ½) for a > 0; for large a without the difference of large logarithms. */
function lnBetaOfHalf(a: number): number {
  const lnRootPi = Math.log(Math.PI) / 2;
  if (a < stirlingFrom) return lnGamma(a) + lnRootPi - lnGamma(a + 0.5);
  const ratio = a * Math.log1p(0.5 / a) - 0.5 + Math.log(a) / 2;
  return lnRootPi - ratio + stirlingRest(a) - stirlingRest(a + 0.5);
}

/** I(x; a, b) by its fraction (Abramowitz and Stegun 26.5.8), given xᵃ·(1 − x)ᵇ/B(a, b); good for x < (a+1)/(a+b+2). */
function betaShare(a: number, b: number, x: number, front: number): number {
  const over = (n: number): number => {
    const m = Math.floor(n / 2);
    const numerator = n % 2 === 0 ? m * (b - m) : -(a + m) * (a + b + m);
    return (numerator * x) / ((a + n - 1) * (a + n));
  };
  return (front / a) * fraction(over, () => 1);
}

/** P(T > |t|) of Student's t with df degrees of freedom: half of I(df/(df + t²); df/2, ½). */
function studentTail(t: number, df: number): number {
  const r = Math.abs(t) / Math.sqrt(df);
  const a = df / 2;
  const lnWhole = r < 1e8 ? Math.log1p(r * r) : 2 * Math.log(r);
  const inside = 1 / (1 + 1 / (r * r));
  const outside = 1 / (1 + r * r);
  const front = Math.exp(-a * lnWhole - lnBetaOfHalf(a)) * Math.sqrt(inside);
  if (outside < (a + 1) / (a + 2.5)) return betaShare(a, 0.5, outside, front) / 2;
  return 0.5 - betaShare(0.5, a, inside, front) / 2;
}

/** Distribution function of Student's t with df > 0 degrees of freedom, which need not be whole. */
export function studentCdf(t: number, df: number): number {
  assert(df > 0 && df < Infinity && !Number.isNaN(t), 'degrees of freedom above 0');
  return t < 0 ? studentTail(t, df) : 1 - studentTail(t, df);
}

/** The t below which Student's t with df > 0 degrees of freedom lies with probability p; infinite at 0 and 1. */
export function studentQuantile(p: number, df: number): number {
  assert(p >= 0 && p <= 1 && df > 0 && df < Infinity, 'a probability, and degrees of freedom above 0');
  if (p > 0.5) return -studentQuantile(1 - p, df);
  if (p === 0) return -Infinity;
  let low = -1;
  while (studentTail(low, df) > p) low *= 2;
  return p === 0.5 ? 0 : root((t) => studentTail(t, df) - p, low, low === -1 ? 0 : low / 2);
}
