import { isDemo, makeKey, partsOf, prefixOf, type Id, type RecordKey } from '../../core/keys.ts';
import { ok, type Result } from '../../core/result.ts';
import { displayed, isNewer, valueVersion } from '../../core/versions.ts';
import type { Walk } from '../../core/walk.ts';
import type { StorageError } from '../../storage/errors.ts';
import type { NotEditable, Write } from '../../storage/store.ts';
import { put, save } from '../actions/saved.ts';
import { newId } from '../data/moment.ts';
import { store } from '../data/phone.ts';
import type { WalkModel } from '../data/walk-model.ts';

/** What a correction does not take over: where it stood, that it was finished, and cautions, which are ticked anew. */
function startOf(walk: Walk, corrects: string): Walk {
  const { finishedAt: _finished, step: _step, cautions: _cautions, ...rest } = walk;
  return { ...rest, corrects };
}

/** Readings and photos of a walk as those of another one; each keeps when it was taken. */
async function copies(walkKey: RecordKey<'walk'>, to: Id): Promise<Result<readonly Write[], StorageError>> {
  const { id } = partsOf(walkKey);
  const demo = isDemo(walkKey);
  const writes: Write[] = [];
  for (const kind of ['reading', 'photo'] as const) {
    const rows = await store.list({ prefix: prefixOf(kind, { owner: id, demo }) });
    if (!rows.ok) return rows;
    for (const { key, versions } of rows.value) {
      const value = displayed(versions)?.value;
      if (value === undefined || isNewer(value, valueVersion)) continue;
      writes.push({ key: makeKey({ ...partsOf(key as RecordKey<typeof kind>), walk: to }), value });
    }
  }
  return ok(writes);
}

/**
 * Starts the walk that corrects a sealed one, with its machine, purpose and sheet and all that was read and taken: it is
 * the same walkaround, so it keeps the time at which that began. Answers its key.
 */
export async function correctWalk({
  key,
  walk,
}: WalkModel): Promise<Result<RecordKey<'walk'>, StorageError | NotEditable>> {
  const id = newId();
  const made = makeKey({ kind: 'walk', id, ...(isDemo(key) && { demo: true }) });
  const copied = await copies(key, id);
  if (!copied.ok) return copied;
  const saved = await save([put(made, startOf(walk, key)), ...copied.value]);
  return saved.ok ? ok(made) : saved;
}
