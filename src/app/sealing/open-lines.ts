import { callRank } from '../../core/calls.ts';
import { outcomePlace } from '../../words/outcome-text.ts';
import { formatter } from '../data/format.ts';
import type { WalkModel } from '../data/walk-model.ts';

/** What is open, each place and item once; what could park the machine first, and of that the worst. */
export function openLines({ scored }: WalkModel): readonly string[] {
  const { openParking, openOther } = scored.verdict;
  const sorted = [openParking, openOther].flatMap((list) =>
    [...list].sort((a, b) => callRank(b.atLeast) - callRank(a.atLeast)),
  );
  const lines = sorted.map((each) => `${outcomePlace(each)}: ${formatter.value.item(each.state.item.id)}`);
  return [...new Set(lines)];
}
