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

/**
 * The prior of the rate that makes the readings of all these parts likeliest together: empirical Bayes with the
 * marginal likelihood of each history over the fixed grid of rates (see `rateLikelihood`). Undefined for fewer than
 * `enoughHistories`. A part that was changed because it was worn counts by its readings like any other.
 */
export function learnPrior(histories: readonly Float64Array[]): RatePrior | undefined {
  if (histories.length < enoughHistories) return undefined;
  const likelihoods = histories.map(scaled);
  let best: RatePrior | undefined;
  let most = -Infinity;
  const count = (logRates.length - 1) * halfSteps + 1;
  const [first = 0, second = 0] = logRates;
  for (let at = 0; at < count; at += 1) {
    const centre = first + (at * (second - first)) / halfSteps;
    for (const spread of spreads) {
      const together = togetherOf(likelihoods, { centre, spread });
      // A hair's difference between engines must not change the choice.
      if (together > most + 1e-9) [best, most] = [{ centre, spread }, together];
    }
  }
  return best;
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

/** The readings of one part as the fleet learns from them; plain numbers, to be kept. */
export interface Pace {
  /** Id of the life figure that the fleet's own stands in for. */
  readonly figure: string;
  /** How likely each rate of the fixed grid makes the readings, as logarithms up to a constant. */
  readonly logs: readonly number[];
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

/** The lesson of one machine; parts about which something is open teach nothing. */
export function lessonOf({ parts }: Pick<Histories, 'parts'>, kappa: number): Lesson {
  const sure = parts.filter(({ faults }) => faults.length === 0);
  return {
    paces: sure.flatMap(({ figure, events, earlier }) =>
      [...earlier, events].filter(tellsPace).map((each) => ({
        figure: figure?.id ?? '',
        logs: [...rateLikelihood(each, kappa)].map(round6),
      })),
    ),
    lives: sure.flatMap(({ item, lives }) => (item.id === 'lug-depth' ? lives : [])),
  };
}

/** So many tracks have to be broken before their number says how often that happens. */
const enoughBroken = 3;

/** Puts the lessons of a fleet together. */
export function learn(lessons: readonly Lesson[]): Learnt {
  const byFigure = new Map<string, Float64Array[]>();
  for (const { figure, logs } of lessons.flatMap(({ paces }) => paces))
    addTo(byFigure, figure, Float64Array.from(logs));
  const rates = [...byFigure].flatMap(([figure, histories]) => {
    const prior = learnPrior(histories);
    return prior ? [[figure, prior] as const] : [];
  });
  const lives = lessons.flatMap((lesson) => lesson.lives);
  const hoursOf = (broke: boolean) => lives.filter((life) => life.broke === broke).map(({ hours }) => hours);
  const broken = hoursOf(true);
  const isEnough = lives.length >= enoughHistories && broken.length >= enoughBroken;
  const damage = isEnough ? fitWeibull(broken, hoursOf(false)) : undefined;
  return {
    rates: new Map(rates),
    counts: new Map([...byFigure].map(([figure, histories]) => [figure, histories.length])),
    ...(damage && { damage }),
  };
}
