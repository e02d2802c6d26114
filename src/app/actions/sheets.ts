import { makeKey, type RecordKey } from '../../core/keys.ts';
import type { LimitSheet } from '../../core/limits.ts';
import { ok, type Result } from '../../core/result.ts';
import type { StorageError } from '../../storage/errors.ts';
import type { NotEditable } from '../../storage/store.ts';
import { sheets } from '../../words/en/sheets.ts';
import { newId } from '../data/moment.ts';
import { put, removeWithUndo, save, type Saved } from './saved.ts';

/** The draft of a sheet's form; a new sheet has one form on a phone. */
export const sheetDraftKey = (key: RecordKey<'limits'> | undefined): string => `form/${key ?? 'limits/new'}`;

/** Copies a sheet to be edited; the copy remembers which version of which sheet it came from. */
export async function copySheet(
  key: RecordKey<'limits'>,
  { version, ...sheet }: LimitSheet,
  stamp: string | undefined,
): Promise<Result<RecordKey<'limits'>, StorageError | NotEditable>> {
  const copy = makeKey({ kind: 'limits', id: newId() });
  const origin = { key, version: version ?? stamp ?? '' };
  const saved = await save([put(copy, { ...sheet, name: sheets.copyOf(sheet.name), origin })]);
  return saved.ok ? ok(copy) : saved;
}

/** Saves a sheet as its form has it; the draft goes in the same transaction. */
export const saveSheet = (key: RecordKey<'limits'>, sheet: LimitSheet, draftKey: string): Promise<Saved> =>
  save([put(key, sheet)], [draftKey]);

/** Removes one of the phone's own sheets; answers how to bring it back. */
export const removeSheet = (
  key: RecordKey<'limits'>,
): Promise<Result<() => Promise<Saved>, StorageError | NotEditable>> => removeWithUndo([key]);
