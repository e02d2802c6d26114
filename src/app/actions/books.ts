import { makeKey, type RecordKey } from '../../core/keys.ts';
import type { LimitSheet } from '../../core/limits.ts';
import { ok, type Result } from '../../core/result.ts';
import type { RuleSet } from '../../core/rules.ts';
import type { StorageError } from '../../storage/errors.ts';
import type { NotEditable } from '../../storage/store.ts';
import { sheets } from '../../words/en/sheets.ts';
import type { BookKind } from '../data/books.ts';
import { newId } from '../data/moment.ts';
import { put, removeWithUndo, save, type Saved } from './saved.ts';

/** The draft of a book's form; a new sheet has one form on a phone. */
export const bookDraftKey = (key: RecordKey<BookKind> | undefined): string => `form/${key ?? 'limits/new'}`;

/** Copies a sheet or rule set to be edited; the copy remembers which version of which one it came from. */
export async function copyBook<K extends BookKind>(
  kind: K,
  key: RecordKey<K>,
  { version, ...value }: LimitSheet | RuleSet,
  stamp: string | undefined,
): Promise<Result<RecordKey<BookKind>, StorageError | NotEditable>> {
  const copy = makeKey<BookKind>({ kind, id: newId() });
  const origin = { key, version: version ?? stamp ?? '' };
  const saved = await save([put(copy, { ...value, name: sheets.copyOf(value.name), origin })]);
  return saved.ok ? ok(copy) : saved;
}

/** Saves a sheet or rule set as its form has it; the draft goes in the same transaction. */
export const saveBook = (
  key: RecordKey<BookKind>,
  value: LimitSheet | RuleSet,
  draftKey: string,
): Promise<Saved> => save([put(key, value)], [draftKey]);

/** Removes one of the phone's own; answers how to bring it back. */
export const removeBook = (
  key: RecordKey<BookKind>,
): Promise<Result<() => Promise<Saved>, StorageError | NotEditable>> => removeWithUndo([key]);
