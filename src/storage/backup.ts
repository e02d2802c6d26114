import { isDemo } from '../core/keys.ts';
import { ok, type Result } from '../core/result.ts';
import type { Version } from '../core/versions.ts';
import type { Database } from './database.ts';
import type { StorageError } from './errors.ts';
import { listRecords } from './reading.ts';
import type { CountsAhead, Merged, Stored } from './store.ts';

const rowsAtOnce = 200;

/** All records but the demo's; each batch is read for itself, so that a phone full of walks fits in memory. */
export async function* exportVersions(database: Database): AsyncGenerator<Stored<readonly Version[]>> {
  let after: string | undefined;
  for (;;) {
    const page = { prefix: '', limit: rowsAtOnce, ...(after !== undefined && { after }) };
    const rows = await listRecords(database, page);
    if (!rows.ok) {
      yield rows;
      return;
    }
    after = rows.value.at(-1)?.key;
    if (after === undefined) return;
    const versions = rows.value.filter(({ key }) => !isDemo(key)).flatMap((row) => row.versions);
    if (versions.length > 0) yield ok(versions);
  }
}

/** How far the counters of a whole backup may be ahead of an empty phone: a fleet's, and far below the end. */
export const furthestInBackup = 2 ** 40;

/** Merges batch after batch and adds up; stops at the first failure, after which repeating is safe. */
export async function importVersions(
  batches: AsyncIterable<readonly Version[]> | Iterable<readonly Version[]>,
  merge: (versions: readonly Version[]) => Promise<Result<Merged, StorageError | CountsAhead>>,
): Promise<Result<Merged, StorageError | CountsAhead>> {
  let total: Merged = { added: 0, known: 0, clashes: [] };
  for await (const batch of batches) {
    const merged = await merge(batch);
    if (!merged.ok) return merged;
    const { added, known, clashes } = merged.value;
    total = {
      added: total.added + added,
      known: total.known + known,
      clashes: [...total.clashes, ...clashes],
    };
  }
  return ok(total);
}
