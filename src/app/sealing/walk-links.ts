import { valueIn } from '../../core/assemble.ts';
import { isDemo, parseKey, prefixOf, type RecordKey } from '../../core/keys.ts';
import { ok } from '../../core/result.ts';
import type { Walk } from '../../core/walk.ts';
import type { Stored } from '../../storage/store.ts';
import { store } from '../data/phone.ts';

/** A walk that corrects another one or is corrected by it. */
export interface LinkedWalk {
  readonly key: RecordKey<'walk'>;
  /** Absent where it is not on this phone. */
  readonly walk: Walk | undefined;
}

export interface WalkLinks {
  readonly corrects: LinkedWalk | undefined;
  readonly correctedBy: readonly LinkedWalk[];
}

const pageSize = 200;

/** Which walk this one corrects, and which correct it; looks through the walks of all machines page by page. */
export async function linksOf(key: RecordKey<'walk'>, { corrects }: Walk): Promise<Stored<WalkLinks>> {
  const correctedBy: LinkedWalk[] = [];
  const prefix = prefixOf('walk', { demo: isDemo(key) });
  let after: string | undefined;
  do {
    const rows = await store.list({ prefix, limit: pageSize, ...(after !== undefined && { after }) });
    if (!rows.ok) return rows;
    for (const row of rows.value) {
      const walk = valueIn<Walk>(row.versions);
      if (walk?.corrects === key) correctedBy.push({ key: row.key as RecordKey<'walk'>, walk });
    }
    after = rows.value.length < pageSize ? undefined : rows.value.at(-1)?.key;
  } while (after !== undefined);
  if (corrects === undefined || parseKey(corrects)?.kind !== 'walk')
    return ok({ corrects: undefined, correctedBy });
  const found = await store.read(corrects as RecordKey);
  if (!found.ok) return found;
  const linked = { key: corrects as RecordKey<'walk'>, walk: valueIn<Walk>(found.value) };
  return ok({ corrects: linked, correctedBy });
}
