import { BeforeStart } from './screens/before-start.tsx';
import { WalkScreen } from './screens/walk.tsx';

/** All that a walk needs, as one file: smaller and sooner there than one for each screen. */
export const walkScreens = { BeforeStart, WalkScreen };
