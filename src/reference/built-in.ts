import type { BuiltIn } from '../core/assemble.ts';
import { startingPrices } from './prices.ts';
import { startingRates } from './rates.ts';
import { life } from './life.ts';
import { startingRules, startingRulesKey } from './rules-starting.ts';
import { startingSheets } from './sheets.ts';
import { toolUncertainty } from './tools.ts';

/** All that comes with the app for scoring and planning: sheets, rule sets, prices and rates by key, and what the tools can read. */
export const builtIn: BuiltIn = {
  limits: Object.fromEntries(startingSheets.map(({ key, value }) => [key, value])),
  rules: { [startingRulesKey]: startingRules },
  prices: Object.fromEntries(startingPrices.map(({ key, value }) => [key, value])),
  rates: Object.fromEntries(startingRates.map(({ key, value }) => [key, value])),
  tools: toolUncertainty,
  life,
};
