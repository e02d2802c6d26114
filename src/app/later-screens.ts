import { About } from './screens/about.tsx';
import { BeforeStart } from './screens/before-start.tsx';
import { MachineEdit } from './screens/machine-edit.tsx';
import { MachineScreen } from './screens/machine.tsx';
import { Settings } from './screens/settings.tsx';
import { WalkScreen } from './screens/walk.tsx';
import { WorkEdit } from './screens/work-edit.tsx';

/** Every screen but the first, as one file: several would be larger, since they share most of their code. */
export const laterScreens = {
  About,
  BeforeStart,
  MachineEdit,
  MachineScreen,
  Settings,
  WalkScreen,
  WorkEdit,
};
