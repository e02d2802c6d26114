import { isDemo, parseKey, prefixOf, type RecordKey } from '../../core/keys.ts';
import type { Machine } from '../../core/machine.ts';
import type { Result } from '../../core/result.ts';
import type { StorageError } from '../../storage/errors.ts';
import type { NotEditable } from '../../storage/store.ts';
import { store } from '../data/phone.ts';
import { put, removeWithUndo, save, type Saved } from './saved.ts';

/** The draft of a machine's form; a new machine has one form on a phone. */
export const machineDraftKey = (key: RecordKey<'machine'> | undefined): string =>
  key === undefined ? 'form/machine' : `${isDemo(key) ? 'demo/' : ''}form/${key}`;

/** Saves a machine as the form has it; its draft goes in the same transaction. */
export const saveMachine = (key: RecordKey<'machine'>, machine: Machine, draftKey: string): Promise<Saved> =>
  save([put(key, machine)], [draftKey]);

/** Removes a machine that has no walks, with its work and holds; answers how to bring it back. */
export async function removeMachine(
  key: RecordKey<'machine'>,
): Promise<Result<() => Promise<Saved>, StorageError | NotEditable>> {
  const parts = parseKey(key);
  const owner = parts?.kind === 'machine' ? parts.id : undefined;
  const keys: RecordKey[] = [key];
  for (const kind of ['work', 'hold'] as const) {
    const rows = owner && (await store.list({ prefix: prefixOf(kind, { owner, demo: isDemo(key) }) }));
    if (rows?.ok === false) return rows;
    keys.push(...(rows?.value ?? []).map((row) => row.key));
  }
  return removeWithUndo(keys);
}
