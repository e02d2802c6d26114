/** One case of all that is not known, in standard deviations; the same inputs are drawn together for every option. */
export interface Draw {
  /** Life of all tracks on this job. */
  readonly life: number;
  /** How often tracks are cut. */
  readonly damage: number;
  /** Wear on the rest of the undercarriage. */
  readonly rest: number;
  /** How steel's life goes by that of rubber. */
  readonly steel: number;
  /** What an option has for itself: its life, its price. */
  readonly own: readonly [Own, Own];
}

export interface Own {
  readonly life: number;
  readonly price: number;
}

export const middleOwn: Own = { life: 0, price: 0 };

/** The case in which everything is as it is expected. */
export const middleDraw: Draw = { life: 0, damage: 0, rest: 0, steel: 0, own: [middleOwn, middleOwn] };

const count = 256;

/** Where the sequences of Halton (1960) begin: far enough in that those of the larger primes no longer go together. */
const start = 409;
const primes = [2, 3, 5, 7, 11, 13, 17, 19];

/** The digits of a number to a base, mirrored behind the point. */
function mirrored(n: number, base: number): number {
  let [left, unit, value] = [n, 1, 0];
  while (left > 0) {
    unit /= base;
    value += unit * (left % base);
    left = Math.floor(left / base);
  }
  return value;
}

/** Two normal values from two uniform ones (Box and Muller 1958). */
function normals(u: number, v: number): readonly [number, number] {
  const radius = Math.sqrt(-2 * Math.log(u));
  return [radius * Math.cos(2 * Math.PI * v), radius * Math.sin(2 * Math.PI * v)];
}

function drawAt(n: number): Draw {
  const at = primes.map((prime) => mirrored(start + n, prime));
  const [a = 0.5, b = 0.5, c = 0.5, d = 0.5, e = 0.5, f = 0.5, g = 0.5, h = 0.5] = at;
  const [life, damage] = normals(a, b);
  const [rest, steel] = normals(c, d);
  const [ownLife, ownPrice] = normals(e, f);
  const [otherLife, otherPrice] = normals(g, h);
  const own = [
    { life: ownLife, price: ownPrice },
    { life: otherLife, price: otherPrice },
  ] as const;
  return { life, damage, rest, steel, own };
}

const once = Array.from({ length: count }, (_, n) => drawAt(n));

/** A fixed set of cases in which the two options of a pair change places: which of them stands first changes nothing. */
export const draws: readonly Draw[] = once.flatMap((each) => [
  each,
  { ...each, own: [each.own[1], each.own[0]] },
]);

/** The place of the case that differs from this one only in which option has which luck of its own. */
export const swapped = (at: number): number => at ^ 1;

/** What one in ten cases lies below, the middle, and what one in ten lies above. */
export interface Spread {
  readonly low: number;
  readonly middle: number;
  readonly high: number;
}

/** The middle eight of ten of these values: the ends are as many cases from either side. */
export function eightOfTen(values: Float64Array): readonly [number, number] {
  const sorted = values.slice().sort();
  const skip = Math.floor(values.length / 10);
  return [sorted[skip] ?? Number.NaN, sorted[values.length - 1 - skip] ?? Number.NaN];
}
