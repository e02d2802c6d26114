import { logPrior, logRates, type RatePrior } from './wear-filter.ts';

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
