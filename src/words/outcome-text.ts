import type { ItemOutcome } from '../core/score.ts';
import type { ItemState } from '../core/states.ts';
import type { Formatter } from './format.ts';
import { placeName } from './en/items.ts';
import { pad } from './en/pad.ts';
import { sagStateWords } from './en/sag.ts';
import { step as words } from './en/walk.ts';
import { sizeOf } from './size-of.ts';

/** What is known of an item, in a few words. */
export function stateText(state: ItemState, format: Formatter): string {
  if (state.sag) return `${format.length(state.sag.valueMm)}, ${sagStateWords[state.sag.state]}`;
  if (state.sampled) return sizeOf(state.item.id, state.sampled.worst.mm, format);
  if (state.finding !== undefined) {
    const label = format.finding(state.item.id, state.finding);
    return state.count === undefined ? label : `${label}, ${words.countOf(state.count)}`;
  }
  const [crack] = state.cracks;
  if (!crack) return words.notReadYet;
  if (crack.lengthMm === 0 && crack.depthMm === 0) return words.crackNone;
  const size = words.crackRead(format.depth(crack.lengthMm), format.depth(crack.depthMm));
  return crack.cordVisible ? `${size}, ${words.cordSeen}` : size;
}

/** Percent worn with its uncertainty, or nothing. */
export const wearText = ({ wear }: ItemState, format: Formatter): string | undefined =>
  wear && pad.wornWithin(format.percent(wear.percent), format.percent(wear.expanded));

/** Where an outcome stands, as a mechanic says it. */
export const outcomePlace = ({ state }: Pick<ItemOutcome, 'state'>): string =>
  placeName({
    side: state.side,
    component: state.item.component,
    ...(state.number !== undefined && { number: state.number }),
  });

/** The same text as the beginning of a line. */
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
