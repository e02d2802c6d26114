import { About } from './screens/about.tsx';
import { MachineEdit } from './screens/machine-edit.tsx';
import { MachineScreen } from './screens/machine.tsx';
import { RuleSetScreen } from './screens/rule-set.tsx';
import { RuleSets } from './screens/rule-sets.tsx';
import { Settings } from './screens/settings.tsx';
import { SheetScreen } from './screens/sheet.tsx';
import { Sheets } from './screens/sheets.tsx';
import { WorkEdit } from './screens/work-edit.tsx';

/** Everything around the walks, as one file. */
export const deskScreens = {
  About,
  MachineEdit,
  MachineScreen,
  RuleSetScreen,
  RuleSets,
  Settings,
  SheetScreen,
  Sheets,
  WorkEdit,
};
