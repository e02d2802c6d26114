import { displayed, type RecordValue, type Version } from '../../core/versions.ts';
import type { RecordKey } from '../../core/keys.ts';
import { ok, type Result } from '../../core/result.ts';
import type { StorageError } from '../../storage/errors.ts';
import type { NotEditable, Write } from '../../storage/store.ts';
import { store } from '../data/phone.ts';

/** Good once it is on disk. */
export type Saved = Result<undefined, StorageError | NotEditable>;

/** Makes records, all or none; the drafts that they came from leave with them. */
export async function save(writes: readonly Write[], dropDrafts: readonly string[] = []): Promise<Saved> {
  const written = await store.write(writes, { dropDrafts });
  return written.ok ? ok() : written;
}

export const put = (key: RecordKey, value: object): Write => ({ key, value: value as RecordValue });

/** Removes records and answers how to bring them back as they were. */
export async function removeWithUndo(
  keys: readonly RecordKey[],
): Promise<Result<() => Promise<Saved>, StorageError | NotEditable>> {
  const before: Write[] = [];
  for (const key of keys) {
    const found = await store.read(key);
    if (!found.ok) return found;
    const value = displayed(found.value)?.value;
    if (value !== undefined) before.push({ key, value });
  }
  const removed = await save(before.map(({ key }) => ({ key, removed: true })));
  return removed.ok ? ok(() => save(before)) : removed;
}

/** Settles a clash: this version counts, and covers the others. */
export const decide = (key: RecordKey, version: Version): Promise<Saved> =>
  save([
    version.value === undefined
      ? { key, removed: true, decides: true }
      : { key, value: version.value, decides: true },
  ]);

/** Throws a half-typed form away. */
export const dropDraft = (key: string): Promise<unknown> => store.drafts.delete(key);
