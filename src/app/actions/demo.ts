import type { RecordValue } from '../../core/versions.ts';
import { ok, type Result } from '../../core/result.ts';
import type { StorageError } from '../../storage/errors.ts';
import type { NotEditable } from '../../storage/store.ts';
import { store } from '../data/phone.ts';

type Done = Result<undefined, StorageError | NotEditable>;

/** Puts the demo machines with their walks on this phone, apart from real data. */
export async function addDemo(): Promise<Done> {
  const { demoRecords } = await import('../../reference/demo.ts');
  const writes = demoRecords().map(({ key, value }) => ({ key, value: value as unknown as RecordValue }));
  const written = await store.write(writes);
  return written.ok ? ok() : written;
}

/** Takes everything of the demo away for good. */
export const removeDemo = (): Promise<Done> => store.wipeDemo();
