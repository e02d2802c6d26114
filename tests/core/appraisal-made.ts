import type { AppraisalSettings } from '../../src/core/appraisal-settings.ts';
import { settingsOf } from '../../src/core/appraisal-settings.ts';
import type { Found } from '../../src/core/appraisal-work.ts';
import type { Costs, PriceLine } from '../../src/core/costs.ts';
import type { JobKind } from '../../src/core/job-kinds.ts';
import { score } from '../../src/core/score.ts';
import type { ScoreInput } from '../../src/core/states.ts';
import { entered, inputOf } from './made.ts';

/** Prices and rates made for a test: what a job costs in parts and hours, in minor units of one currency. */
export function costsOf(
  prices: Partial<Record<JobKind, readonly [minor: number, hours: number]>>,
  more: { source?: PriceLine['source']; currency?: string; rateCurrency?: string } = {},
): Costs {
  const { source = entered, currency = 'EUR', rateCurrency = currency } = more;
  const lines = Object.entries(prices).map(([job, [minor, labourHours]]) => ({
    job,
    minor,
    labourHours,
    source,
  }));
  const rate = (minor: number) => ({ minor, source: entered });
  return {
    prices: { v: 1, name: 'made up', currency, lines },
    rates: {
      v: 1,
      name: 'made up',
      currency: rateCurrency,
      labourPerHour: rate(6000),
      callOut: rate(10_000),
      liftSide: rate(2000),
      trackOffSide: rate(5000),
      downtimePerHour: rate(4000),
      breakdown: rate(60_000),
    },
    pricesKey: undefined,
    ratesKey: undefined,
    open:
      currency === rateCurrency ? [] : [{ kind: 'two-currencies', prices: currency, rates: rateCurrency }],
    clashes: [],
  };
}

/** A machine as it was found, scored from readings made for a test. */
export function foundOf(input: Parameters<typeof inputOf>[0], costs: Costs): Found {
  const whole: ScoreInput = inputOf(input);
  return { shape: whole.machine.shape, outcomes: score(whole).outcomes, parts: [], costs };
}

export const chosen = (part: Partial<AppraisalSettings> = {}): AppraisalSettings => ({
  ...settingsOf({}),
  ...part,
});
