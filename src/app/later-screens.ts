import { About } from './screens/about.tsx';
import { BeforeStart } from './screens/before-start.tsx';
import { MachineEdit } from './screens/machine-edit.tsx';
import { MachineScreen } from './screens/machine.tsx';
import { RuleSetScreen } from './screens/rule-set.tsx';
import { RuleSets } from './screens/rule-sets.tsx';
import { Settings } from './screens/settings.tsx';
import { SheetScreen } from './screens/sheet.tsx';
import { Sheets } from './screens/sheets.tsx';
import { WalkScreen } from './screens/walk.tsx';
import { WorkEdit } from './screens/work-edit.tsx';

/** Every screen but the first, as one file: several would be larger, since they share most of their code. */
export const laterScreens = {
  About,
  BeforeStart,
  MachineEdit,
  MachineScreen,
  RuleSetScreen,
  RuleSets,
  Settings,
  SheetScreen,
  Sheets,
  WalkScreen,
  WorkEdit,
};
