import { makeKey, type RecordKey } from '../../core/keys.ts';
import type { Option } from '../../core/option.ts';
import { err, ok, type Result } from '../../core/result.ts';
import type { Use } from '../../core/use.ts';
import { displayed } from '../../core/versions.ts';
import type { StorageError } from '../../storage/errors.ts';
import type { NotEditable } from '../../storage/store.ts';
import { sheets } from '../../words/en/sheets.ts';
import { put, removeWithUndo, save, type Saved } from '../actions/saved.ts';
import { newId } from '../data/moment.ts';
import { store } from '../data/phone.ts';

type Failed = StorageError | NotEditable;

/** The draft of an option's form; a new option has one form on a phone. */
export const optionDraftKey = (key: RecordKey<'option'> | undefined, demo: boolean): string =>
  `${demo ? 'demo/' : ''}form/${key ?? 'option/new'}`;

/** Saves an option as its form has it; the draft goes in the same transaction. */
export const saveOption = (key: RecordKey<'option'>, value: Option, draftKey: string): Promise<Saved> =>
  save([put(key, value)], [draftKey]);

/** Copies an option, to be changed where the other one differs. */
export async function copyOption(value: Option, demo: boolean): Promise<Result<RecordKey<'option'>, Failed>> {
  const key = makeKey<'option'>({ kind: 'option', id: newId(), demo });
  const saved = await save([put(key, { ...value, name: sheets.copyOf(value.name), fitted: false })]);
  return saved.ok ? ok(key) : saved;
}

/** Removes an option; answers how to bring it back. */
export const removeOption = (key: RecordKey<'option'>): Promise<Result<() => Promise<Saved>, Failed>> =>
  removeWithUndo([key]);

/** What a machine's tracks are chosen for becomes part of its record; a machine that is gone stays gone. */
export async function keepUse(key: RecordKey<'machine'>, use: Use): Promise<Saved> {
  const found = await store.read(key);
  if (!found.ok) return found;
  const machine = displayed(found.value)?.value;
  if (machine === undefined) return err({ kind: 'unknown', detail: key });
  return save([{ key, edit: (now = machine) => ({ ...now, use }) }]);
}
