import { compare, kgPerLb, type Comparison } from './quantity.ts';

/** A mass as a law or a plate prints it. */
export interface PrintedMass {
  readonly value: number;
  readonly unit: 'kg' | 'lb';
}

/** A printed mass in kg; the pound is exact (NIST SP 811). */
export const printedKg = ({ value, unit }: PrintedMass): number => (unit === 'kg' ? value : value * kgPerLb);

/** What weighs: `nose` is what the trailer puts on the truck. */
export const haulMasses = ['machine', 'attachments', 'fuel', 'chains', 'trailer', 'truck', 'nose'] as const;

/** What plates and papers allow: mass of the load, and of vehicles with their load. */
export const haulRatings = [
  'trailer-payload',
  'trailer-gross',
  'truck-tow',
  'truck-payload',
  'truck-gross',
  'combination',
] as const;

export type HaulMass = (typeof haulMasses)[number];
export type HaulRating = (typeof haulRatings)[number];
export type HaulField = HaulMass | HaulRating;

/** A machine on a trailer, or on the truck itself. What is not entered is absent, and stays open. */
export interface Haul {
  readonly on: 'trailer' | 'truck';
  /** kg of a driver whom the machine's mass counts and who does not ride on it; 0 where it counts none. */
  readonly operatorKg: number;
  readonly kg: Readonly<Partial<Record<HaulField, number>>>;
  /** The truck's plate shows no rating of the combination, which is not the same as not looked up. */
  readonly noCombination: boolean;
}

/** One line of a sum, in kg; the driver is taken off. */
export interface SumLine {
  readonly field: HaulField | 'operator';
  readonly kg: number;
}

/** A sum in kg as far as it is known: with `open` fields it is what the whole weighs at least. */
export interface Sum {
  readonly kg: number;
  readonly lines: readonly SumLine[];
  readonly open: readonly HaulField[];
}

const onDeck: readonly HaulMass[] = ['machine', 'attachments', 'fuel', 'chains'];

function linesOf(haul: Haul, field: HaulField): readonly SumLine[] {
  const kg = haul.kg[field];
  if (kg === undefined) return [];
  // No driver weighs more than the machine: a slip of the keys must not make the rest lighter.
  const operator = field === 'machine' ? Math.min(haul.operatorKg, kg) : 0;
  return [{ field, kg }, ...(operator > 0 ? [{ field: 'operator', kg: -operator } as const] : [])];
}

/** The sum of some fields; the driver goes off with the machine. */
export function sumOf(haul: Haul, fields: readonly HaulField[]): Sum {
  const lines = fields.flatMap((field) => linesOf(haul, field));
  return {
    kg: lines.reduce((sum, line) => sum + line.kg, 0),
    lines,
    open: fields.filter((field) => haul.kg[field] === undefined),
  };
}

/**
 * What ties hold down: the machine with its attachments, and by the mass that its plate gives. A driver in that mass
 * stays in it: taking one off could only ask for fewer ties.
 */
export const articleSum = (haul: Haul): Sum => sumOf({ ...haul, operatorKg: 0 }, ['machine', 'attachments']);

/** What stands on the deck. */
export const deckSum = (haul: Haul): Sum => sumOf(haul, onDeck);

/** The trailer with its load; nothing where there is none. */
export const trailerSum = (haul: Haul): Sum =>
  haul.on === 'trailer' ? sumOf(haul, [...onDeck, 'trailer']) : sumOf(haul, []);

/** The truck as its own wheels carry it: with its load, or with the trailer's nose. */
export const truckSum = (haul: Haul): Sum =>
  haul.on === 'trailer' ? sumOf(haul, ['truck', 'nose']) : sumOf(haul, [...onDeck, 'truck']);

/** Everything on the road. */
export const wholeSum = (haul: Haul): Sum =>
  haul.on === 'trailer' ? sumOf(haul, [...onDeck, 'trailer', 'truck']) : truckSum(haul);

/** A load against one rating: `over` by `byKg`, at least so much where the sum is open; `within` with so much to spare. */
export type RatingAnswer = { readonly rating: HaulRating; readonly sum: Sum } & (
  | { readonly kind: 'over' | 'within'; readonly ratingKg: number; readonly byKg: number }
  | { readonly kind: 'open'; readonly open: readonly HaulField[]; readonly ratingKg: number | undefined }
  | { readonly kind: 'no-rating' }
);

const trailerRatings: readonly (readonly [HaulRating, (haul: Haul) => Sum])[] = [
  ['trailer-payload', deckSum],
  ['trailer-gross', trailerSum],
  ['truck-tow', trailerSum],
  ['truck-gross', truckSum],
  ['combination', wholeSum],
];
const truckRatings: readonly (readonly [HaulRating, (haul: Haul) => Sum])[] = [
  ['truck-payload', deckSum],
  ['truck-gross', truckSum],
];

function against(haul: Haul, rating: HaulRating, sum: Sum): RatingAnswer {
  const ratingKg = haul.kg[rating];
  if (ratingKg === undefined) {
    if (rating === 'combination' && haul.noCombination) return { kind: 'no-rating', rating, sum };
    return { kind: 'open', rating, sum, ratingKg, open: [rating, ...sum.open] };
  }
  if (compare(sum.kg, '>', ratingKg)) return { kind: 'over', rating, sum, ratingKg, byKg: sum.kg - ratingKg };
  if (sum.open.length > 0) return { kind: 'open', rating, sum, ratingKg, open: sum.open };
  return { kind: 'within', rating, sum, ratingKg, byKg: ratingKg - sum.kg };
}

/** A payload is on few plates, and gross rating less empty mass says the same: it is asked for nowhere. */
const isExtra = (rating: HaulRating): boolean => rating === 'trailer-payload' || rating === 'truck-payload';

/** The load against every rating of trailer and truck that this haul has; a payload only where one is entered. */
export const ratingAnswers = (haul: Haul): readonly RatingAnswer[] =>
  (haul.on === 'trailer' ? trailerRatings : truckRatings)
    .filter(([rating]) => !isExtra(rating) || haul.kg[rating] !== undefined)
    .map(([rating, sum]) => against(haul, rating, sum(haul)));

export type Certainty = 'yes' | 'no' | 'open';

/** Compares what something weighs at least with a printed mass: certain where what is open cannot change it. */
export function certainly(
  known: Pick<Sum, 'kg' | 'open'>,
  op: Exclude<Comparison, '='>,
  limit: PrintedMass,
): Certainty {
  const holds = compare(known.kg, op, printedKg(limit));
  if (known.open.length === 0) return holds ? 'yes' : 'no';
  const grows = op === '>' || op === '>=';
  if (holds === grows) return holds ? 'yes' : 'no';
  return 'open';
}
