import { lazy, useLocation } from 'preact-iso';
import { useEffect } from 'preact/hooks';
import type { RecordKey } from '../../core/keys.ts';
import { common } from '../../words/en/common.ts';
import { hereKey } from '../actions/walk.ts';
import { fromPath, sequenceStep, walkPath } from '../data/paths.ts';
import { store } from '../data/phone.ts';
import { useWalk } from '../data/use-walk.ts';
import type { WalkModel } from '../data/walk-model.ts';
import { Screen } from '../parts/screen.tsx';
import { Gone } from './gone.tsx';
import { StepScreen } from './step.tsx';
import { Verdict } from './verdict.tsx';
import { WalkMap } from './walk-map.tsx';

const Photos = lazy(() => import('../photos/photo-screens.tsx').then((each) => each.Photos));
const Report = lazy(() => import('../reporting/report-screen.tsx').then((each) => each.ReportScreen));
const Charge = lazy(() => import('../charging/charge-screen.tsx').then((each) => each.ChargeScreen));
const Appraisal = lazy(() =>
  import('../appraisal/appraisal-screen.tsx').then((each) => each.AppraisalScreen),
);
const HandOver = lazy(() => import('../handover/hand-over.tsx').then((each) => each.HandOver));
const Order = lazy(() => import('../ordering/order-screen.tsx').then((each) => each.Order));
const Options = lazy(() => import('../options/options-at.tsx').then((each) => each.WalkOptions));

/** A walk at the step that the address names; without one, where it was left. */
export function WalkScreen() {
  const { path } = useLocation();
  const at = fromPath('walk', path);
  if (!at) return <Gone />;
  return <OpenWalk walkKey={at.key} rest={at.rest} />;
}

function OpenWalk({ walkKey, rest }: { walkKey: RecordKey<'walk'>; rest: readonly string[] }) {
  const state = useWalk(walkKey);
  if (state.kind === 'loading') {
    return (
      <Screen title={common.loading}>
        <span />
      </Screen>
    );
  }
  if (state.kind === 'failed') return <Gone />;
  const { model } = state;
  if (rest.length === 0) return <Resume model={model} />;
  if (rest[0] === 'verdict') return <Verdict model={model} />;
  if (rest[0] === 'photos') return <Photos model={model} rest={rest} />;
  if (rest[0] === 'report') return <Report model={model} />;
  if (rest[0] === 'charge') return <Charge model={model} rest={rest} />;
  if (rest[0] === 'appraisal') return <Appraisal model={model} rest={rest} />;
  if (rest[0] === 'hand-over') return <HandOver model={model} />;
  if (rest[0] === 'order') return <Order model={model} rest={rest} />;
  if (model.rental && rest[0] === 'sequence') return <model.rental.Sequence model={model} rest={rest} />;
  if (model.rental && rest[0] === 'hand-out') return <model.rental.HandOut model={model} />;
  if (rest[0] === 'options') return <Options model={model} rest={rest} />;
  const step = model.steps.find(({ id }) => id === rest.join('.'));
  return step ? <StepScreen key={step.id} model={model} step={step} /> : <WalkMap model={model} />;
}

/** Goes to the step at which the walk was left, else to the first one not answered, else to the verdict. */
function Resume({ model }: { model: WalkModel }) {
  const { route } = useLocation();
  useEffect(() => {
    void store.drafts.get(hereKey(model.key)).then((answer) => {
      const here = answer.ok ? answer.value : undefined;
      const shot = model.rental?.shots.map(({ id }) => sequenceStep(id)).find((id) => id === here);
      const left = model.steps.find(({ id }) => id === here);
      const todo = model.steps.find(({ id }) => model.progress.get(id)?.state === 'todo');
      const to = model.walk.finishedAt === undefined ? (shot ?? (left ?? todo)?.id) : undefined;
      route(walkPath(model.key, to ?? 'verdict'), true);
    });
  }, [model, route]);
  return (
    <Screen title={common.loading}>
      <span />
    </Screen>
  );
}
