import { ErrorBoundary, lazy, LocationProvider, Route, Router } from 'preact-iso';
import { loadRental } from './data/load-rental.ts';
import { loadSealing } from './data/load-sealing.ts';
import { Broken } from './screens/broken.tsx';
import { Gone } from './screens/gone.tsx';
import { Home } from './screens/home.tsx';

const later = () => import('./later-screens.ts').then(({ laterScreens }) => laterScreens);

const books = () => import('./book-screens.ts').then(({ bookScreens }) => bookScreens);

const ahead = () => import('./ahead-screens.ts').then(({ aheadScreens }) => aheadScreens);

const Inbox = lazy(() => import('./handover/inbox.tsx').then((each) => each.Inbox));

const Form = lazy(() => import('./reporting/form-screen.tsx').then((each) => each.FormScreen));

const About = lazy(() => later().then((each) => each.About));
const BeforeStart = lazy(() => later().then((each) => each.BeforeStart));
const MachineEdit = lazy(() => later().then((each) => each.MachineEdit));
const MachineScreen = lazy(() => later().then((each) => each.MachineScreen));
const Settings = lazy(() => later().then((each) => each.Settings));
const WalkScreen = lazy(() => later().then((each) => each.WalkScreen));
const WorkEdit = lazy(() => later().then((each) => each.WorkEdit));

const ContractScreen = lazy(() => loadRental().then((each) => each.ContractScreen));

const CheckScreen = lazy(() => loadSealing().then((each) => each.CheckScreen));
const SealScreen = lazy(() => loadSealing().then((each) => each.SealScreen));
const SealsScreen = lazy(() => loadSealing().then((each) => each.SealsScreen));

const RuleSetScreen = lazy(() => books().then((each) => each.RuleSetScreen));
const RuleSets = lazy(() => books().then((each) => each.RuleSets));
const SheetScreen = lazy(() => books().then((each) => each.SheetScreen));
const Sheets = lazy(() => books().then((each) => each.Sheets));

const HaulingScreen = lazy(() => import('./options/hauling-screen.tsx').then((each) => each.HaulingScreen));

const CostsShelf = lazy(() => ahead().then((each) => each.CostsShelf));
const PricesScreen = lazy(() => ahead().then((each) => each.PricesScreen));
const RatesScreen = lazy(() => ahead().then((each) => each.RatesScreen));
const WearHistory = lazy(() => ahead().then((each) => each.WearHistory));

const Options = lazy(() => import('./options/options-at.tsx').then((each) => each.Options));

/** Every screen by its address; the address is where one is, also after the app was killed. */
export function App() {
  return (
    <LocationProvider>
      <Broken>
        <ErrorBoundary>
          <Router>
            <Route path="/" component={Home} />
            <Route path="/machine/new" component={MachineEdit} />
            <Route path="/machine/:id/edit" component={MachineEdit} />
            <Route path="/machine/demo/:id/edit" component={MachineEdit} />
            <Route path="/machine/:id/start" component={BeforeStart} />
            <Route path="/machine/demo/:id/start" component={BeforeStart} />
            <Route path="/machine/:id/work" component={WorkEdit} />
            <Route path="/machine/demo/:id/work" component={WorkEdit} />
            <Route path="/machine/:id/contract" component={ContractScreen} />
            <Route path="/machine/demo/:id/contract" component={ContractScreen} />
            <Route path="/machine/:id/form" component={Form} />
            <Route path="/machine/demo/:id/form" component={Form} />
            <Route path="/machine/:id/history" component={WearHistory} />
            <Route path="/machine/demo/:id/history" component={WearHistory} />
            <Route path="/machine/:id/hauling" component={HaulingScreen} />
            <Route path="/machine/demo/:id/hauling" component={HaulingScreen} />
            <Route path="/machine/:id/options/:rest*" component={Options} />
            <Route path="/machine/demo/:id/options/:rest*" component={Options} />
            <Route path="/machine/demo/:id" component={MachineScreen} />
            <Route path="/machine/:id" component={MachineScreen} />
            <Route path="/walk/:id/seal" component={SealScreen} />
            <Route path="/walk/:id/seals" component={SealsScreen} />
            <Route path="/walk/:rest+" component={WalkScreen} />
            <Route path="/sheets" component={Sheets} />
            <Route path="/sheets/:rest+" component={SheetScreen} />
            <Route path="/rules" component={RuleSets} />
            <Route path="/rules/:rest+" component={RuleSetScreen} />
            <Route path="/prices" component={CostsShelf} />
            <Route path="/prices/:rest+" component={PricesScreen} />
            <Route path="/rates/:rest+" component={RatesScreen} />
            <Route path="/hauling" component={HaulingScreen} />
            <Route path="/tracks/:rest*" component={Options} />
            <Route path="/settings" component={Settings} />
            <Route path="/inbox" component={Inbox} />
            <Route path="/check" component={CheckScreen} />
            <Route path="/about" component={About} />
            <Route default component={Gone} />
          </Router>
        </ErrorBoundary>
      </Broken>
    </LocationProvider>
  );
}
