import { loadOutlook } from './data/outlook.ts';
import { AheadLead } from './screens/ahead-lead.tsx';
import { PricesScreen, RatesScreen } from './screens/cost-book.tsx';
import { CostsShelf } from './screens/costs.tsx';
import { HoursLadder } from './screens/hours-ladder.tsx';
import { MendOrRenew } from './screens/mend-or-renew.tsx';
import { PlanView } from './screens/plan-view.tsx';
import { WearHistory } from './screens/wear-history.tsx';

/** What lies ahead and its screens, as one file that is loaded when the first of them is wanted. */
export const aheadScreens = {
  PricesScreen,
  RatesScreen,
  CostsShelf,
  AheadLead,
  HoursLadder,
  MendOrRenew,
  PlanView,
  WearHistory,
  loadOutlook,
};
export type AheadScreens = typeof aheadScreens;
