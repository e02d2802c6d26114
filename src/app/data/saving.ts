import type { StorageError } from '../../storage/errors.ts';
import type { NotEditable } from '../../storage/store.ts';
import { forms } from '../../words/en/forms.ts';

/** Why something was not saved; what is wrong with the storage itself the banner says. */
export function notSavedLine({ kind }: StorageError | NotEditable): string {
  if (kind === 'made-by-newer') return forms.notSavedNewer;
  return kind === 'clash' ? forms.notSavedClash : forms.notSaved;
}
