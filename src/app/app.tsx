import { ErrorBoundary, lazy, LocationProvider, Route, Router } from 'preact-iso';
import { Gone } from './screens/gone.tsx';
import { Home } from './screens/home.tsx';
import { WalkScreen } from './screens/walk.tsx';

// What a walk needs is in the first file; the rest is fetched when opened, out of the same precache.
const BeforeStart = lazy(() => import('./screens/before-start.tsx').then((each) => each.BeforeStart));
const MachineScreen = lazy(() => import('./screens/machine.tsx').then((each) => each.MachineScreen));
const MachineEdit = lazy(() => import('./screens/machine-edit.tsx').then((each) => each.MachineEdit));
const WorkEdit = lazy(() => import('./screens/work-edit.tsx').then((each) => each.WorkEdit));
const Sheets = lazy(() => import('./screens/sheets.tsx').then((each) => each.Sheets));
const SheetScreen = lazy(() => import('./screens/sheet.tsx').then((each) => each.SheetScreen));
const RuleSets = lazy(() => import('./screens/rule-sets.tsx').then((each) => each.RuleSets));
const RuleSetScreen = lazy(() => import('./screens/rule-set.tsx').then((each) => each.RuleSetScreen));
const Settings = lazy(() => import('./screens/settings.tsx').then((each) => each.Settings));
const About = lazy(() => import('./screens/about.tsx').then((each) => each.About));

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
