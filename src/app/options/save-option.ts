import { makeKey, type RecordKey } from '../../core/keys.ts';
import type { Option } from '../../core/option.ts';
import { ok, type Result } from '../../core/result.ts';
import type { Use } from '../../core/use.ts';
import type { StorageError } from '../../storage/errors.ts';
import type { NotEditable } from '../../storage/store.ts';
import { sheets } from '../../words/en/sheets.ts';
import { put, removeWithUndo, save, type Saved } from '../actions/saved.ts';
import { newId } from '../data/moment.ts';

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

/** What a machine's tracks are chosen for becomes part of its record. */
export const keepUse = (machine: RecordKey<'machine'>, use: Use): Promise<Saved> =>
  save([{ key: machine, edit: (now) => ({ ...now, use }) }]);
