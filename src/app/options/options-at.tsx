import { useLocation } from 'preact-iso';
import { useMemo } from 'preact/hooks';
import { isDemo, makeKey, type Id, type RecordKey } from '../../core/keys.ts';
import type { Machine } from '../../core/machine.ts';
import type { Use } from '../../core/use.ts';
import type { Walk } from '../../core/walk.ts';
import { options as words } from '../../words/en/options.ts';
import { valueOf } from '../data/live.ts';
import { fromPath, machinePath, walkPath } from '../data/paths.ts';
import { useRecord } from '../data/record.ts';
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

const weeksAYear = 52;

/** What is known of a machine's work: what was kept with it, else its last walk and its hours a week. */
function knownOf(machine: Machine, walk: Walk | undefined): Use {
  const { hoursPerWeek, use } = machine;
  return {
    ...(walk?.ground && { ground: { [walk.ground]: 10 } }),
    ...(walk?.turning && { turning: walk.turning }),
    ...(hoursPerWeek !== undefined &&
      hoursPerWeek > 0 && { hoursAYear: Math.max(1, Math.round(hoursPerWeek * weeksAYear)) }),
    ...use,
  };
}

/** What to put on a machine instead. */
function OfMachine() {
  const { path } = useLocation();
  const at = fromPath('machine', path);
  const found = valueOf(useRecord<Machine>(at?.key));
  const machine = found?.value;
  const key = at?.key;
  const subject = useMemo(
    (): Subject | undefined =>
      machine &&
      key && {
        base: machinePath(key, 'options'),
        back: machinePath(key),
        name: machine.name,
        machineKey: key,
        machine,
        use: knownOf(machine, undefined),
      },
    [machine, key],
  );
  if (!at) return <Gone />;
  if (!found) return <Screen title={words.title}>{null}</Screen>;
  if (!subject) return <Gone />;
  return <OptionsAt subject={subject} rest={at.rest.slice(1)} />;
}

interface WalkOptionsProps {
  readonly model: WalkModel;
  readonly rest: readonly string[];
}

/** The same from a walk, on the ground that it was walked on. */
export function WalkOptions({ model, rest }: WalkOptionsProps) {
  const { key, walk, machine } = model;
  const subject = useMemo(
    (): Subject => ({
      base: walkPath(key, 'options'),
      back: walkPath(key, 'verdict'),
      name: machine.name,
      machineKey: walk.machine,
      machine,
      use: knownOf(machine, walk),
    }),
    [key, walk, machine],
  );
  return <OptionsAt subject={subject} rest={rest.slice(1)} />;
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
