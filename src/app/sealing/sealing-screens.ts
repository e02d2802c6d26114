import { CheckScreen } from './check-screen.tsx';
import { ImportedSeals } from './imported-seals.tsx';
import { SealNote } from './seal-note.tsx';
import { SealScreen } from './seal-screen.tsx';
import { SealsScreen } from './seals-screen.tsx';
import { VerdictAgain, VerdictMain } from './verdict-actions.tsx';

/** All that the seal shows, as one file that is loaded when the first of it is wanted. */
export const sealingScreens = {
  CheckScreen,
  ImportedSeals,
  SealNote,
  SealScreen,
  SealsScreen,
  VerdictAgain,
  VerdictMain,
};
