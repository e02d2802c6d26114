import { useLocation } from 'preact-iso';
import { isDemo, type RecordKey } from '../../core/keys.ts';
import type { Machine } from '../../core/machine.ts';
import { machineKindWords } from '../../words/en/choices.ts';
import { common } from '../../words/en/common.ts';
import { forms } from '../../words/en/forms.ts';
import { machine as words } from '../../words/en/machine.ts';
import { demo } from '../../words/en/settings.ts';
import { exportMachine } from '../actions/files.ts';
import { removeMachine } from '../actions/machine.ts';
import { useLive, valueOf } from '../data/live.ts';
import { walksOf, type MachineWalk } from '../data/machine-walks.ts';
import { tell } from '../data/notice.ts';
import { fromPath, machinePath, walkPath } from '../data/paths.ts';
import { useRecord, type Found } from '../data/record.ts';
import { notSavedLine } from '../data/saving.ts';
import { Button, ButtonLink } from '../parts/button.tsx';
import { Screen } from '../parts/screen.tsx';
import { TrackMap } from '../parts/track-map.tsx';
import styles from '../parts/forms.module.css';
import { ClashNotice } from './clash-notice.tsx';
import { Gone } from './gone.tsx';
import { describeMachine, MachineFacts } from './machine-facts.tsx';
import { MachineWalks } from './machine-walks.tsx';
import { MachineWork } from './machine-work.tsx';

/** One machine: what it is, its walks, the work done to it. */
export function MachineScreen() {
  const { path } = useLocation();
  const key = fromPath('machine', path)?.key;
  const found = valueOf(useRecord<Machine>(key));
  if (key === undefined) return <Gone />;
  if (!found) return <Screen title={words.facts}>{null}</Screen>;
  if (found.newer) return <Screen title={words.facts}>{forms.newer}</Screen>;
  if (!found.value) return <Gone />;
  return <OneMachine machineKey={key} machine={found.value} found={found} />;
}

interface OneMachineProps {
  readonly machineKey: RecordKey<'machine'>;
  readonly machine: Machine;
  readonly found: Found<Machine>;
}

function OneMachine({ machineKey, machine, found }: OneMachineProps) {
  const demoPrefix = isDemo(machineKey) ? 'demo/' : '';
  const watched = ['walk/', 'reading/', 'machine/', 'limits/', 'rules/'].map((each) => demoPrefix + each);
  const walks = valueOf(useLive(`walks of ${machineKey}`, watched, () => walksOf(machineKey)));
  const sub = [machineKindWords[machine.kind], machine.maker, machine.model].filter(Boolean).join(' · ');
  return (
    <Screen wide title={machine.name} sub={sub} bar={<Bar machineKey={machineKey} walks={walks} />}>
      {isDemo(machineKey) && <p class={styles.soft}>{demo.invented}</p>}
      <ClashNotice recordKey={machineKey} clash={found.clash} describe={describeMachine} />
      <div class={styles.columns}>
        <div class={styles.form}>
          <TrackMap shape={machine.shape} side="left" />
          {walks && <MachineWalks walks={walks} />}
          {walks?.some(({ walk }) => walk.finishedAt !== undefined) && (
            <ButtonLink href={machinePath(machineKey, 'history')}>{words.wearHistory}</ButtonLink>
          )}
          {underWay(walks) && (
            <ButtonLink href={machinePath(machineKey, 'start')}>{words.newWalk}</ButtonLink>
          )}
        </div>
        <div class={styles.form}>
          <MachineFacts machine={machine} />
          <ButtonLink href={machinePath(machineKey, 'edit')}>{words.edit}</ButtonLink>
          <ButtonLink href={machinePath(machineKey, 'contract')}>{words.contract}</ButtonLink>
          <ButtonLink href={machinePath(machineKey, 'options')}>{words.options}</ButtonLink>
          <ButtonLink href={machinePath(machineKey, 'form')}>{words.paperForm}</ButtonLink>
          <ButtonLink href={machinePath(machineKey, 'hauling')}>{words.hauling}</ButtonLink>
          <MachineWork machine={machineKey} />
          {walks && <Leave machineKey={machineKey} name={machine.name} hasWalks={walks.length > 0} />}
        </div>
      </div>
    </Screen>
  );
}

interface BarProps {
  readonly machineKey: RecordKey<'machine'>;
  readonly walks: readonly MachineWalk[] | undefined;
}

const underWay = (walks: readonly MachineWalk[] | undefined): MachineWalk | undefined =>
  walks?.find(({ walk }) => walk.finishedAt === undefined);

/** A walk under way is gone on with; a new one is the main thing only when there is none. */
function Bar({ machineKey, walks }: BarProps) {
  const open = underWay(walks);
  return (
    <>
      <ButtonLink href="/">{common.back}</ButtonLink>
      {open ? (
        <ButtonLink look="main" href={walkPath(open.key)}>
          {words.goOn}
        </ButtonLink>
      ) : (
        <ButtonLink look="main" href={machinePath(machineKey, 'start')}>
          {words.startWalk}
        </ButtonLink>
      )}
    </>
  );
}

interface LeaveProps {
  readonly machineKey: RecordKey<'machine'>;
  readonly name: string;
  readonly hasWalks: boolean;
}

/** Taking the machine's walks along as a file; a machine without walks can be removed. */
function Leave({ machineKey, name, hasWalks }: LeaveProps) {
  const remove = async (): Promise<void> => {
    const removed = await removeMachine(machineKey);
    if (removed.ok) tell(words.removed, removed.value);
    else tell(notSavedLine(removed.error));
  };
  if (hasWalks)
    return <Button onTap={() => void exportMachine(machineKey, name)}>{words.exportWalkFile}</Button>;
  return (
    <Button look="plain" onTap={() => void remove()}>
      {words.remove}
    </Button>
  );
}
