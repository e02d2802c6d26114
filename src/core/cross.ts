import type { Open } from './reason.ts';
import { stateKey, type ItemState } from './states.ts';
import type { Depth } from './walk.ts';

const partner = (
  states: ReadonlyMap<string, ItemState>,
  state: ItemState,
  itemId: string,
): ItemState | undefined => states.get(stateKey(state.place, itemId));

/** Sag judged by eye is enough for a short walk; a full walk says that it was not measured. */
function bySight(open: readonly Open[], depth: Depth): readonly Open[] {
  const others = open.filter(({ kind }) => kind !== 'not-read');
  return depth === 'short' ? others : [...others, { kind: 'by-eye', params: {} }];
}

/**
 * What the reading of one item says of another: sag by eye stands in for sag, and a worn idler flange hides
 * tread wear, so that an idler depth without its flange is open.
 */
export function crossRead(
  states: ReadonlyMap<string, ItemState>,
  depth: Depth,
): ReadonlyMap<string, ItemState> {
  const seen = new Map(states);
  for (const [key, state] of states) {
    if (state.item.id === 'sag' && !state.known && partner(states, state, 'sag-by-eye')?.known) {
      seen.set(key, { ...state, open: bySight(state.open, depth) });
    }
    if (state.item.id === 'idler-tread' && state.known && !partner(states, state, 'idler-flange')?.known) {
      seen.set(key, { ...state, open: [...state.open, { kind: 'flange-unknown', params: {} }] });
    }
  }
  return seen;
}
