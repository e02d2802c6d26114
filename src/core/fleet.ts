import type { Histories, PartLife } from './history.ts';
import { addTo } from './lists.ts';
import { round6 } from './quantity.ts';
import { logPrior, logRates, rateLikelihood, type RatePrior, type WearEvent } from './wear-filter.ts';
import { fitWeibull, type Weibull } from './weibull.ts';

/** So many histories of a class there have to be before they stand in for the book. */
export const enoughHistories = 10;

/** Spreads that are tried: ten parts all alike are no proof that the eleventh is, so none is narrower. */
const spreads = Array.from({ length: 16 }, (_, at) => 0.12 * 1.15 ** at);

const halfSteps = 2;

/** Likelihoods scaled to at most 1, since only their shape over the rates counts. */
function scaled(logs: Float64Array): Float64Array {
  const most = logs.reduce((a, b) => Math.max(a, b), -Infinity);
  return logs.map((each) => Math.exp(each - most));
}

/** What is tried as middle and spread of the paces of a kind of part, and how likely it makes all histories. */
interface Tried extends RatePrior {
  readonly log: number;
}

function triedOn(histories: readonly Float64Array[]): readonly Tried[] {
  const likelihoods = histories.map(scaled);
  const [first = 0, second = 0] = logRates;
  const count = (logRates.length - 1) * halfSteps + 1;
  return Array.from({ length: count }, (_, at) => first + (at * (second - first)) / halfSteps).flatMap(
    (centre) =>
      spreads.map((spread) => ({ centre, spread, log: togetherOf(likelihoods, { centre, spread }) })),
  );
}

/**
 * The prior of the rate that histories teach: empirical Bayes with the marginal likelihood of each over the fixed grid
 * of rates (see `rateLikelihood`). How little a few histories say of middle and spread is part of the spread: the
 * likeliest pair alone would be too sure of itself. Undefined for fewer than `enoughHistories`. A part that was changed
 * because it was worn counts by its readings like any other.
 * @param count how many histories there are, where some stand for several
 */
export function learnPrior(
  histories: readonly Float64Array[],
  count = histories.length,
): RatePrior | undefined {
  if (count < enoughHistories) return undefined;
  const tried = triedOn(histories);
  const most = tried.reduce((best, { log }) => Math.max(best, log), -Infinity);
  const weights = tried.map(({ log }) => Math.exp(log - most));
  const sum = weights.reduce((a, b) => a + b, 0);
  const meanOf = (value: (each: Tried) => number): number =>
    tried.reduce((total, each, at) => total + (weights[at] ?? 0) * value(each), 0) / sum;
  const centre = meanOf((each) => each.centre);
  const spread = meanOf(
    (each) => each.spread * each.spread + (each.centre - centre) * (each.centre - centre),
  );
  return { centre, spread: Math.sqrt(spread) };
}

function togetherOf(likelihoods: readonly Float64Array[], prior: RatePrior): number {
  const weights = logRates.map((each) => Math.exp(logPrior(prior, each)));
  const sum = weights.reduce((a, b) => a + b, 0);
  let together = 0;
  for (const likelihood of likelihoods) {
    let one = 0;
    for (let g = 0; g < weights.length; g += 1) one += (weights[g] ?? 0) * (likelihood[g] ?? 0);
    together += Math.log(Math.max(1e-300, one / sum));
  }
  return together;
}

/** The readings of the like parts of one machine as the fleet learns from them; plain numbers, to be kept. */
export interface Pace {
  /** Id of the life figure that the fleet's own stands in for. */
  readonly figure: string;
  /** How likely each rate of the fixed grid makes the readings of one such part in the mean, as logarithms up to a constant. */
  readonly logs: readonly number[];
  /** So many parts. */
  readonly histories: number;
}

/** What one machine teaches. */
export interface Lesson {
  readonly paces: readonly Pace[];
  /** Lives of rubber tracks. */
  readonly lives: readonly PartLife[];
}

/** What the own fleet has taught. */
export interface Learnt {
  /** By the id of the life figure that it stands in for. */
  readonly rates: ReadonlyMap<string, RatePrior>;
  /** Histories that each rate is learnt from. */
  readonly counts: ReadonlyMap<string, number>;
  /** Hours that rubber tracks last until something other than wear ends them. */
  readonly damage?: Weibull;
}

/** A pace can be told from two readings, or from one where it is known when the part was new. */
const tellsPace = (events: readonly WearEvent[]): boolean =>
  events.filter(({ kind }) => kind === 'read').length >= (events[0]?.kind === 'fitted' ? 1 : 2);

/** The likelihoods of several parts as that of one, which is no surer than each of them. */
const asOne = (parts: readonly Float64Array[]): readonly number[] =>
  [...logRates.keys()].map((g) =>
    round6(parts.reduce((sum, each) => sum + (each[g] ?? 0), 0) / parts.length),
  );

/**
 * The lesson of one machine; parts about which something is open teach nothing. Like parts that ran together are one
 * history: they share ground, driver and sheet, and say nothing of how machines differ.
 */
export function lessonOf({ parts }: Pick<Histories, 'parts'>, kappa: number): Lesson {
  const sure = parts.filter(({ faults }) => faults.length === 0);
  const together = new Map<string, Float64Array[]>();
  for (const { figure, events, earlier } of sure) {
    // Those that are there now together, then those before.
    [events, ...[...earlier].reverse()].filter(tellsPace).forEach((each, generation) => {
      addTo(together, `${generation} ${figure?.id ?? ''}`, rateLikelihood(each, kappa));
    });
  }
  return {
    paces: [...together].map(([key, each]) => ({
      figure: key.slice(key.indexOf(' ') + 1),
      logs: asOne(each),
      histories: each.length,
    })),
    lives: sure.flatMap(({ item, lives }) => (item.id === 'lug-depth' ? lives : [])),
  };
}

/** So many tracks have to be broken before their number says how often that happens. */
const enoughBroken = 3;

/** So few machines say too little of how machines differ. */
const enoughMachines = 3;

/** Puts the lessons of a fleet together. */
export function learn(lessons: readonly Lesson[]): Learnt {
  const byFigure = new Map<string, Pace[]>();
  for (const pace of lessons.flatMap(({ paces }) => paces)) addTo(byFigure, pace.figure, pace);
  const counts = new Map(
    [...byFigure].map(([figure, paces]) => [figure, paces.reduce((sum, each) => sum + each.histories, 0)]),
  );
  const rates = [...byFigure].flatMap(([figure, paces]) => {
    const machines = lessons.filter((lesson) => lesson.paces.some((each) => each.figure === figure));
    const logs = paces.map((each) => Float64Array.from(each.logs));
    const prior = machines.length < enoughMachines ? undefined : learnPrior(logs, counts.get(figure));
    return prior ? [[figure, prior] as const] : [];
  });
  const lives = lessons.flatMap((lesson) => lesson.lives);
  const hoursOf = (broke: boolean) => lives.filter((life) => life.broke === broke).map(({ hours }) => hours);
  const broken = hoursOf(true);
  const isEnough = lives.length >= enoughHistories && broken.length >= enoughBroken;
  const damage = isEnough ? fitWeibull(broken, hoursOf(false)) : undefined;
  return { rates: new Map(rates), counts, ...(damage && { damage }) };
}
