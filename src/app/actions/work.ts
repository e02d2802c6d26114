import { isDemo, makeKey, parseKey, type Id, type RecordKey } from '../../core/keys.ts';
import type { Result } from '../../core/result.ts';
import type { Work } from '../../core/walk.ts';
import type { StorageError } from '../../storage/errors.ts';
import type { NotEditable } from '../../storage/store.ts';
import { put, removeWithUndo, save, type Saved } from './saved.ts';

/** The draft of the form that notes work on this machine; drafts of the demo are wiped with it. */
export const workDraftKey = (machine: RecordKey<'machine'>): string =>
  [...(isDemo(machine) ? ['demo'] : []), 'form', 'work', machine].join('/');

/** Notes work: one record for each side that it was done on, all or none. */
export function saveWork(
  machine: RecordKey<'machine'>,
  work: readonly { readonly id: Id; readonly value: Work }[],
): Promise<Saved> {
  const parts = parseKey(machine);
  const owner = (parts?.kind === 'machine' ? parts.id : '') as Id;
  const demo = isDemo(machine);
  return save(
    work.map(({ id, value }) => put(makeKey({ kind: 'work', machine: owner, id, demo }), value)),
    [workDraftKey(machine)],
  );
}

/** Removes noted work; answers how to bring it back. */
export const removeWork = (
  key: RecordKey<'work'>,
): Promise<Result<() => Promise<Saved>, StorageError | NotEditable>> => removeWithUndo([key]);
