import { sealForm as words } from '../../words/en/sealing.ts';
import { forms } from '../../words/en/forms.ts';
import type { NotSealed } from './seal-walk.ts';

/** Why a walk was not sealed, and what to do about it. */
export function sealFailure({ kind }: NotSealed): string {
  switch (kind) {
    case 'no-key':
      return words.noKey;
    case 'too-large':
      return words.tooLarge;
    case 'clash':
      return words.clash;
    case 'made-by-newer':
    case 'newer-version':
      return forms.notSavedNewer;
    case 'unreadable':
    case 'altered':
      return words.notSealable;
    default:
      return forms.notSaved;
  }
}
