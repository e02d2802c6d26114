import type { PartHours } from './hours-left.ts';
import { isRubber, type TrackKind } from './machine.ts';
import type { LearntLife } from './option-life.ts';
import type { Walk } from './walk.ts';
import { momentsOf } from './wear-filter.ts';

/** Fewer readings than this say more of the book than of the machine. */
const enoughReadings = 2;

/**
 * How long tracks of this kind last on this machine by its own walks: the part that is done first, on either side.
 * Undefined while no part has been read often enough.
 */
export function learntLife(
  track: TrackKind,
  parts: readonly PartHours[],
  { ground, turning }: Pick<Walk, 'ground' | 'turning'>,
): LearntLife | undefined {
  const items = isRubber({ track }) ? ['lug-depth'] : ['link-height', 'pitch'];
  const lives = parts.flatMap(({ history, state }) => {
    if (!state || !items.includes(history.item.id) || history.points.length < enoughReadings) return [];
    const { mean, sd } = momentsOf(state);
    return [{ track, hours: 100 / Math.exp(mean), spread: sd, ground, turning }];
  });
  return lives.sort((a, b) => a.hours - b.hours)[0];
}
