import type { Shelf } from '../../core/assemble.ts';
import { isDemo, parseKey, prefixOf } from '../../core/keys.ts';
import { walksUpTo } from '../../core/outlook.ts';
import { ok, type Result } from '../../core/result.ts';
import { startingCostsFor } from '../../reference/cost-classes.ts';
import type { StorageError } from '../../storage/errors.ts';
import { store } from './phone.ts';
import { gather, shelfOf, take, type Rows } from './shelf-rows.ts';
import type { WalkModel } from './walk-model.ts';

/** So many walks of a machine are looked back on; older ones tell little of a part that is on it now. */
const lookBack = 40;

/** The records that the outlook of a walk is made of: all walks of its machine up to it, work, holds and prices. */
export async function outlookShelf({
  key,
  walk,
  machine,
  assembled,
}: WalkModel): Promise<Result<Shelf, StorageError>> {
  const rows: Rows = new Map();
  const demo = isDemo(key);
  let error = await gather(rows, store.list({ prefix: prefixOf('walk', { demo }) }));
  const before = walksUpTo(shelfOf(rows), key, walk).slice(-lookBack);
  for (const [each] of before) {
    const parts = parseKey(each);
    if (parts?.kind !== 'walk') continue;
    error ??= await gather(rows, store.list({ prefix: prefixOf('reading', { owner: parts.id, demo }) }));
  }
  const owner = parseKey(walk.machine);
  if (owner?.kind === 'machine') {
    error ??= await gather(rows, store.list({ prefix: prefixOf('work', { owner: owner.id, demo }) }));
    error ??= await gather(rows, store.list({ prefix: prefixOf('hold', { owner: owner.id, demo }) }));
  }
  const starting = startingCostsFor(machine);
  const { sheetKeys, rulesKey } = assembled;
  const books = [machine.prices, machine.rates, starting.prices, starting.rates];
  error ??= await take(rows, [walk.machine, sheetKeys.left, sheetKeys.right, rulesKey, ...books]);
  for (const [, each] of before) error ??= await take(rows, [each.sheet?.key, each.rules?.key]);
  return error === undefined ? ok(shelfOf(rows)) : { ok: false, error };
}
