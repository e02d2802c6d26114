import { makeKey, type RecordKey } from '../../core/keys.ts';
import { ok, type Result } from '../../core/result.ts';
import type { RuleSet } from '../../core/rules.ts';
import type { StorageError } from '../../storage/errors.ts';
import type { NotEditable } from '../../storage/store.ts';
import { sheets } from '../../words/en/sheets.ts';
import { newId } from '../data/moment.ts';
import { put, removeWithUndo, save, type Saved } from './saved.ts';

/** The draft of a rule set's form. */
export const rulesDraftKey = (key: RecordKey<'rules'>): string => `form/${key}`;

/** Copies a rule set to be edited; the copy remembers which version of which set it came from. */
export async function copyRules(
  key: RecordKey<'rules'>,
  { version, ...set }: RuleSet,
  stamp: string | undefined,
): Promise<Result<RecordKey<'rules'>, StorageError | NotEditable>> {
  const copy = makeKey({ kind: 'rules', id: newId() });
  const origin = { key, version: version ?? stamp ?? '' };
  const saved = await save([put(copy, { ...set, name: sheets.copyOf(set.name), origin })]);
  return saved.ok ? ok(copy) : saved;
}

/** Saves a rule set as its form has it; the draft goes in the same transaction. */
export const saveRules = (key: RecordKey<'rules'>, set: RuleSet, draftKey: string): Promise<Saved> =>
  save([put(key, set)], [draftKey]);

/** Removes one of the phone's own rule sets; answers how to bring it back. */
export const removeRules = (
  key: RecordKey<'rules'>,
): Promise<Result<() => Promise<Saved>, StorageError | NotEditable>> => removeWithUndo([key]);
