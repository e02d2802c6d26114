import { useLocation } from 'preact-iso';
import { useMemo } from 'preact/hooks';
import { isDemo, makeKey, prefixOf, type Id, type RecordKey } from '../../core/keys.ts';
import type { Machine } from '../../core/machine.ts';
import { knownUse } from '../../core/option-current.ts';
import { learntLife } from '../../core/option-learnt.ts';
import type { LearntLife } from '../../core/option-life.ts';
import { options as words } from '../../words/en/options.ts';
import { useLive, valueOf } from '../data/live.ts';
import { walksOf } from '../data/machine-walks.ts';
import { fromPath, machinePath, walkPath } from '../data/paths.ts';
import { useRecord } from '../data/record.ts';
import { useAhead } from '../data/use-ahead.ts';
import { useWalk } from '../data/use-walk.ts';
import type { WalkModel } from '../data/walk-model.ts';
import { Screen } from '../parts/screen.tsx';
import { Gone } from '../screens/gone.tsx';
import { Compare } from './compare.tsx';
import { useCurrency, type Subject } from './comparison.ts';
import { OptionChange, OptionForm } from './option-edit.tsx';
import { OptionsPaper } from './options-paper.tsx';
import { OptionShelf } from './option-shelf.tsx';

/** What to put on: a machine's own address, or the question asked alone at `/tracks`. */
export function Options() {
  const { path } = useLocation();
  return path.startsWith('/tracks') ? <Alone /> : <OfMachine />;
}

/** The rubber-or-steel question, without a walk and without a machine. */
function Alone() {
  const { path } = useLocation();
  const subject = useMemo(
    (): Subject => ({
      base: '/tracks',
      back: '/',
      name: undefined,
      machineKey: undefined,
      machine: undefined,
      use: {},
    }),
    [],
  );
  return <OptionsAt subject={subject} rest={path.split('/').slice(2)} />;
}

/** What to put on a machine instead, on the ground of its last walk. */
function OfMachine() {
  const { path } = useLocation();
  const at = fromPath('machine', path);
  const found = valueOf(useRecord<Machine>(at?.key));
  if (!at) return <Gone />;
  if (!found) return <Screen title={words.title}>{null}</Screen>;
  if (!found.value) return <Gone />;
  return <OneMachine machineKey={at.key} machine={found.value} rest={at.rest.slice(1)} />;
}

interface OneMachineProps {
  readonly machineKey: RecordKey<'machine'>;
  readonly machine: Machine;
  readonly rest: readonly string[];
}

function OneMachine({ machineKey, machine, rest }: OneMachineProps) {
  const prefix = prefixOf('walk', { demo: isDemo(machineKey) });
  const walks = valueOf(useLive(`last walk of ${machineKey}`, [prefix], () => walksOf(machineKey)));
  if (!walks) return <Screen title={words.title}>{null}</Screen>;
  const last = walks.find(({ walk }) => walk.finishedAt !== undefined);
  const places = { base: machinePath(machineKey, 'options'), back: machinePath(machineKey) };
  const of = { machineKey, machine, rest, ...places };
  return last ? <AfterWalk key={last.key} walkKey={last.key} of={of} /> : <Asked of={of} model={undefined} />;
}

function AfterWalk({ walkKey, of }: { walkKey: RecordKey<'walk'>; of: AskedOf }) {
  const state = useWalk(walkKey);
  if (state.kind === 'loading') return <Screen title={words.title}>{null}</Screen>;
  return state.kind === 'ready' ? (
    <Walked of={of} model={state.model} />
  ) : (
    <Asked of={of} model={undefined} />
  );
}

/** The same from a walk, on the ground that it was walked on. */
export function WalkOptions({ model, rest }: { model: WalkModel; rest: readonly string[] }) {
  const { key, walk, machine } = model;
  const places = { base: walkPath(key, 'options'), back: walkPath(key, 'verdict') };
  return <Walked of={{ machineKey: walk.machine, machine, rest: rest.slice(1), ...places }} model={model} />;
}

interface AskedOf extends Pick<Subject, 'base' | 'back'> {
  readonly machineKey: string;
  readonly machine: Machine;
  readonly rest: readonly string[];
}

/** How long tracks last on this machine by its own walks, once that is worked out. */
function Walked({ of, model }: { of: AskedOf; model: WalkModel }) {
  const ahead = useAhead(model);
  const parts = typeof ahead === 'object' ? ahead.outlook.hours.parts : undefined;
  const learnt = useMemo(
    () => parts && learntLife(model.machine.shape.track, parts, model.walk),
    [parts, model],
  );
  return <Asked of={of} model={model} learnt={learnt} />;
}

interface AskedProps {
  readonly of: AskedOf;
  readonly model: WalkModel | undefined;
  readonly learnt?: LearntLife | undefined;
}

function Asked({ of: { base, back, machineKey, machine, rest }, model, learnt }: AskedProps) {
  const walk = model?.walk;
  const subject = useMemo((): Subject => {
    const use = knownUse(machine, walk);
    return { base, back, name: machine.name, machineKey, machine, use, learnt };
  }, [base, back, machineKey, machine, walk, learnt]);
  return <OptionsAt subject={subject} rest={rest} />;
}

const isId = (text: string): text is Id => /^[0-9a-z-]{1,64}$/.test(text);

function OptionsAt({ subject, rest }: { subject: Subject; rest: readonly string[] }) {
  const [screen = '', id = ''] = rest;
  const machine = subject.machineKey as RecordKey<'machine'> | undefined;
  const place = { base: subject.base, machine, currency: useCurrency(subject) };
  if (screen === '') return <Compare subject={subject} />;
  if (screen === 'print') return <OptionsPaper subject={subject} />;
  if (screen === 'new') return <OptionForm key="new" place={place} />;
  if (screen === 'own' && id === '') return <OptionShelf place={place} />;
  if (screen !== 'own' || !isId(id)) return <Gone />;
  const demo = machine !== undefined && isDemo(machine);
  return <OptionChange place={place} known={makeKey<'option'>({ kind: 'option', id, demo })} />;
}
