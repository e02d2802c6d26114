import { assemble } from '../../core/assemble.ts';
import { isHandOutFor, markedIn } from '../../core/hand-out.ts';
import { parseKey, type RecordKey } from '../../core/keys.ts';
import { score, type Scored } from '../../core/score.ts';
import type { PlacedReading, ScoreInput } from '../../core/states.ts';
import { makeDates } from '../../words/dates.ts';
import { loadBuiltIn } from '../data/built-in.ts';
import { preferences } from '../data/preferences.ts';
import { shelfFor } from '../data/walk-model.ts';

/** The hand-out walk that a return is led by and held against. */
export interface HandedOut {
  readonly key: RecordKey<'walk'>;
  /** The day on which it was finished, as people read it. */
  readonly day: string;
  readonly input: ScoreInput;
  readonly marked: readonly PlacedReading[];
  readonly scored: Scored;
}

async function inputOf(key: RecordKey<'walk'>): Promise<ScoreInput | undefined> {
  const shelf = await shelfFor(key);
  const assembled = shelf.ok ? assemble(shelf.value, await loadBuiltIn(), key) : undefined;
  return assembled?.ok ? assembled.value.input : undefined;
}

/** The walk of that key as the hand-out of a return; undefined where it is none of its, or is not on this phone. */
export async function handedOutIn(
  key: string | undefined,
  back: { readonly key: string | undefined; readonly machine: string },
): Promise<HandedOut | undefined> {
  if (key === undefined || parseKey(key)?.kind !== 'walk') return undefined;
  const walkKey = key as RecordKey<'walk'>;
  const input = await inputOf(walkKey);
  if (!input || !isHandOutFor(back, walkKey, input.walk)) return undefined;
  const { walk, readings } = input;
  const at = walk.finishedAt ?? walk.startedAt;
  const day = at ? makeDates(preferences.value.locale).day(at) : '';
  return { key: walkKey, input, day, marked: markedIn(readings), scored: score(input) };
}
