import type { CurrentTrack } from './option-match.ts';
import type { NamedOption } from './option-answer.ts';
import type { FitFacts } from './option.ts';
import type { Machine } from './machine.ts';
import type { Use } from './use.ts';
import type { Walk } from './walk.ts';
import { parseTrackSize } from './track-size.ts';

/** What the designation of a track says of it, as moulded on its inner face. */
export function fitFromSize(size: string | undefined): FitFacts | undefined {
  const parsed = size === undefined ? undefined : parseTrackSize(size);
  if (!parsed) return undefined;
  const read = <T>(value: T) => ({ value, how: 'read' as const });
  return { widthMm: read(parsed.widthMm), pitchMm: read(parsed.pitchMm), links: read(parsed.links) };
}

const weeksAYear = 52;

/** What is known of a machine's work: what its record says of it, else its last walk and its hours a week. */
export function knownUse(
  { hoursPerWeek, use }: Pick<Machine, 'hoursPerWeek' | 'use'>,
  walk: Pick<Walk, 'ground' | 'turning'> | undefined,
): Use {
  return {
    ...(walk?.ground && { ground: { [walk.ground]: 10 } }),
    ...(walk?.turning && { turning: walk.turning }),
    ...(hoursPerWeek !== undefined &&
      hoursPerWeek > 0 && { hoursAYear: Math.max(1, Math.round(hoursPerWeek * weeksAYear)) }),
    ...use,
  };
}

/**
 * What is on a machine now: the option that is marked as fitted, or its kind of track with the size of either
 * side; undefined for a machine that has yet to get its tracks.
 */
export function currentTrack(
  { shape, left, right, use }: Pick<Machine, 'shape' | 'left' | 'right' | 'use'>,
  options: readonly NamedOption[],
): CurrentTrack | undefined {
  if (use?.noTracksYet === true) return undefined;
  const fitted = options.find(({ option }) => option.fitted === true)?.option;
  const bySize = fitFromSize(left?.size) ?? fitFromSize(right?.size);
  if (!fitted) return { track: shape.track, fit: bySize };
  return { track: fitted.track, fit: { ...bySize, ...fitted.fit }, massKg: fitted.massKg?.value };
}
