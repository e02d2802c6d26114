import type { ObservedAt } from '../../core/readings.ts';
import { makeDates } from '../../words/dates.ts';
import { preferences } from '../data/preferences.ts';

/** Day and time by the clock where it was, as this person reads them. */
export const momentOf = (at: ObservedAt): string => makeDates(preferences.value.locale).moment(at);
