import type { BuiltIn } from '../core/assemble.ts';
import { startingRules, startingRulesKey } from './rules-starting.ts';
import { startingSheets } from './sheets.ts';
import { toolUncertainty } from './tools.ts';

/** All that comes with the app for scoring: sheets and rule sets by key, and what the tools can read. */
export const builtIn: BuiltIn = {
  limits: Object.fromEntries(startingSheets.map(({ key, value }) => [key, value])),
  rules: { [startingRulesKey]: startingRules },
  tools: toolUncertainty,
};
