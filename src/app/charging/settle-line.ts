import { isDemo, partsOf, prefixOf, type RecordKey } from '../../core/keys.ts';
import { ok } from '../../core/result.ts';
import type { Settled } from '../../core/walk.ts';
import { dropDraft, type Saved } from '../actions/saved.ts';
import { changeWalk } from '../actions/walk.ts';
import { store } from '../data/phone.ts';

/** Where what is typed about a line is kept until it is settled. */
export const settleDraftKey = (walk: RecordKey<'walk'>, line: string): string => `settle/${walk}/${line}`;

/**
 * Writes down what was agreed about a line, or opens it again; what else the walk says stays as it is on disk. A
 * sealed walk stays as it was sealed.
 */
export async function settleLine(
  walk: RecordKey<'walk'>,
  line: string,
  settled: Settled | undefined,
): Promise<Saved> {
  const prefix = prefixOf('seal', { owner: partsOf(walk).id, demo: isDemo(walk) });
  const seals = await store.list({ prefix, limit: 1 });
  if (!seals.ok) return seals;
  if (seals.value.length > 0) return ok();
  const saved = await changeWalk(walk, (now) => ({
    settled: [...(now.settled ?? []).filter((each) => each.line !== line), ...(settled ? [settled] : [])],
  }));
  if (saved.ok) await dropDraft(settleDraftKey(walk, line));
  return saved;
}
