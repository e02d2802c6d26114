import { findingLabel, itemName } from './en/items.ts';
import type { Formatter, Preferences } from './format.ts';
import { makeNumbers } from './numbers.ts';

/** Numbers, units and the names of items for one person. */
export const makeFormatter = (preferences: Preferences): Formatter => ({
  ...makeNumbers(preferences),
  item: itemName,
  finding: findingLabel,
});
