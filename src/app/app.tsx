import { ErrorBoundary, lazy, LocationProvider, Route, Router } from 'preact-iso';
import { Gone } from './screens/gone.tsx';
import { Home } from './screens/home.tsx';

const walk = () => import('./walk-screens.ts').then(({ walkScreens }) => walkScreens);
const desk = () => import('./desk-screens.ts').then(({ deskScreens }) => deskScreens);

const WalkScreen = lazy(() => walk().then((each) => each.WalkScreen));
const BeforeStart = lazy(() => walk().then((each) => each.BeforeStart));
const MachineScreen = lazy(() => desk().then((each) => each.MachineScreen));
const MachineEdit = lazy(() => desk().then((each) => each.MachineEdit));
const WorkEdit = lazy(() => desk().then((each) => each.WorkEdit));
const Sheets = lazy(() => desk().then((each) => each.Sheets));
const SheetScreen = lazy(() => desk().then((each) => each.SheetScreen));
const RuleSets = lazy(() => desk().then((each) => each.RuleSets));
const RuleSetScreen = lazy(() => desk().then((each) => each.RuleSetScreen));
const Settings = lazy(() => desk().then((each) => each.Settings));
const About = lazy(() => desk().then((each) => each.About));

/** Every screen by its address; the address is where one is, also after the app was killed. */
export function App() {
  return (
    <LocationProvider>
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
          <Route path="/machine/demo/:id" component={MachineScreen} />
          <Route path="/machine/:id" component={MachineScreen} />
          <Route path="/walk/:rest+" component={WalkScreen} />
          <Route path="/sheets" component={Sheets} />
          <Route path="/sheets/:rest+" component={SheetScreen} />
          <Route path="/rules" component={RuleSets} />
          <Route path="/rules/:rest+" component={RuleSetScreen} />
          <Route path="/settings" component={Settings} />
          <Route path="/about" component={About} />
          <Route default component={Gone} />
        </Router>
      </ErrorBoundary>
    </LocationProvider>
  );
}
