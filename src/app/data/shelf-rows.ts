import type { Shelf } from '../../core/assemble.ts';
import { parseKey, type RecordKey } from '../../core/keys.ts';
import type { Result } from '../../core/result.ts';
import type { Version } from '../../core/versions.ts';
import type { StorageError } from '../../storage/errors.ts';
import type { RecordRow } from '../../storage/schema.ts';
import { store } from './phone.ts';

/** Records read so far, by key. */
export type Rows = Map<string, readonly Version[]>;

/** Adds what a list answers; the error if it does not. */
export async function gather(
  rows: Rows,
  ask: Promise<Result<readonly RecordRow[], StorageError>>,
): Promise<StorageError | undefined> {
  const answer = await ask;
  if (!answer.ok) return answer.error;
  for (const { key, versions } of answer.value) rows.set(key, versions);
  return undefined;
}

/** Adds records by key; what is no key, or known already, is passed over. */
export async function take(
  rows: Rows,
  keys: readonly (string | undefined)[],
): Promise<StorageError | undefined> {
  for (const key of keys) {
    if (key === undefined || rows.has(key) || !parseKey(key)) continue;
    const answer = await store.read(key as RecordKey);
    if (!answer.ok) return answer.error;
    rows.set(key, answer.value);
  }
  return undefined;
}

/** The records as core reads them. */
export const shelfOf = (rows: Rows): Shelf => ({
  get: (key) => rows.get(key) ?? [],
  under: (prefix) =>
    [...rows].flatMap(([key, versions]) =>
      key.startsWith(prefix) ? [[key as RecordKey, versions] as const] : [],
    ),
});
