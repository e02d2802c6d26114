import type { Item } from './items.ts';
import type { ItemLimits, Load } from './limits.ts';
import { toMm } from './quantity.ts';
import type { Params } from './reason.ts';
import { wear, type Size } from './wear.ts';

/** Outside these percentages a reading is asked about; an estimate, wide enough for parts over nominal. */
const plausiblePercent = { least: -30, most: 250 };

/** A pitch further than this from the new one was most likely divided by the wrong number of links. */
const plausiblePitchShare = 0.12;

/**
 * Why a size cannot well be right, as parameters of the question to ask; undefined when it may be. Five pins
 * span four links: a pitch divided by one too many is a fifth too short.
 */
export function plausibility(item: Item, size: Size, limits?: ItemLimits, load?: Load): Params | undefined {
  if (size.mm < 0) return { why: 'negative', mm: size.mm };
  const [least, most] = item.plausibleMm ?? [0, Infinity];
  if (size.mm < least || size.mm > most) return { why: 'range', mm: size.mm, leastMm: least, mostMm: most };
  if (!limits?.new) return undefined;
  const newMm = toMm(limits.new.at, limits.unit);
  if (item.ask.kind === 'pitch' && Math.abs(size.mm - newMm) > newMm * plausiblePitchShare) {
    return { why: 'pitch', mm: size.mm, newMm };
  }
  const worn = wear(limits, size, load);
  if (worn && (worn.percent < plausiblePercent.least || worn.percent > plausiblePercent.most)) {
    return { why: 'percent', mm: size.mm, percent: worn.percent, newMm, limitMm: worn.limitMm };
  }
  return undefined;
}
