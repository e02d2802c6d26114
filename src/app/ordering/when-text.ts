import type { OrderWhen } from '../../core/parts-to-order.ts';
import { aheadWhen, whyOpen } from '../../words/ahead-text.ts';
import { makeDates } from '../../words/dates.ts';
import { ordering as words } from '../../words/en/ordering.ts';
import { formatter } from '../data/format.ts';
import { preferences } from '../data/preferences.ts';
import type { OrderModel } from './use-order.ts';

/** By when the parts of a group have to be there: the visit's hours and day, or why it has none. */
export function whenTitle(when: OrderWhen, { walk, outlook }: OrderModel): string {
  if (when.kind === 'later') return words.later;
  if (when.kind === 'unplanned') return words.unplanned(whyOpen(when.open));
  if (when.inHours === 0) return words.now;
  const dates = makeDates(preferences.value.locale);
  return words.by(aheadWhen(walk.walk, outlook, when.inHours, { format: formatter.value, dates }));
}
