import { RuleSetScreen } from './screens/rule-set.tsx';
import { RuleSets } from './screens/rule-sets.tsx';
import { SheetScreen } from './screens/sheet.tsx';
import { Sheets } from './screens/sheets.tsx';

/** Limit sheets and rule sets, read and edited; one file, since few walks begin there. */
export const bookScreens = { RuleSetScreen, RuleSets, SheetScreen, Sheets };
