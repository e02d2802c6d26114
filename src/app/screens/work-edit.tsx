import { useLocation } from 'preact-iso';
import { useState } from 'preact/hooks';
import { localDate } from '../../words/calendar.ts';
import type { RecordKey } from '../../core/keys.ts';
import { isRubber, sides, type Machine } from '../../core/machine.ts';
import { round6 } from '../../core/quantity.ts';
import { common } from '../../words/en/common.ts';
import { workForm as words } from '../../words/en/machine.ts';
import { saveWork, workDraftKey } from '../actions/work.ts';
import { preferences } from '../data/preferences.ts';
import { valueOf } from '../data/live.ts';
import { newId, observedNow } from '../data/moment.ts';
import { tell } from '../data/notice.ts';
import { fromPath, machinePath } from '../data/paths.ts';
import { useRecord } from '../data/record.ts';
import { notSavedLine } from '../data/saving.ts';
import { showFirstFault } from '../data/show-fault.ts';
import { useDraft } from '../data/use-draft.ts';
import { partsOf, workOf, type WorkFault, type WorkTexts } from '../data/work-form.ts';
import { Button, ButtonLink } from '../parts/button.tsx';
import { Screen } from '../parts/screen.tsx';
import { Gone } from './gone.tsx';
import { WorkFields } from './work-fields.tsx';

/** Notes work done to a machine. */
export function WorkEdit() {
  const { path } = useLocation();
  const key = fromPath('machine', path)?.key;
  const found = valueOf(useRecord<Machine>(key));
  if (key === undefined) return <Gone />;
  if (!found) return <Screen title={words.title}>{null}</Screen>;
  if (!found.value) return <Gone />;
  return <WorkForm key={key} machineKey={key} machine={found.value} />;
}

/** Today and the machine's hours stand there already; both can be changed. */
function startOf({ meterHours, shape }: Machine, noticed: Readonly<Record<string, string>>): WorkTexts {
  const component = partsOf(shape).find((each) => each === noticed['component']) ?? '';
  const side = sides.find((each) => each === noticed['side']) ?? '';
  const { utc, offsetMinutes } = observedNow();
  return {
    kind: '',
    component,
    side,
    number: '',
    on: localDate(utc, offsetMinutes) ?? '',
    meter: meterHours === undefined ? '' : String(round6(meterHours)),
    size: '',
    sheet: '',
    note: '',
    why: '',
    oldMeter: '',
  };
}

function WorkForm({ machineKey, machine }: { machineKey: RecordKey<'machine'>; machine: Machine }) {
  const { route, query } = useLocation();
  const [start] = useState(() => startOf(machine, query));
  // Only to where this app leads: the address bar is anybody's to fill in.
  const { from = '' } = query;
  const back = from.startsWith('/walk/') ? from : machinePath(machineKey);
  // Made when the form opens, so that a second tap saves the same work again and not another.
  const [ids] = useState(() => [newId(), newId()] as const);
  const [texts, setTexts] = useDraft(workDraftKey(machineKey), start);
  const [faults, setFaults] = useState<readonly WorkFault[]>([]);
  const { depth, length } = preferences.value;
  // Lugs are read with a gauge, all other parts with tape and caliper.
  const unit = texts.component === 'track' && isRubber(machine.shape) ? depth : length;
  const change = (part: Partial<WorkTexts>): void => {
    setTexts({ ...texts, ...part });
    setFaults(faults.filter((each) => !(each in part)));
  };
  const save = async (): Promise<void> => {
    const made = workOf(texts, machine.shape, unit);
    if (!made.ok) {
      setFaults(made.error);
      showFirstFault();
      return;
    }
    const work = made.value.map((value, at) => ({ id: at === 0 ? ids[0] : ids[1], value }));
    const saved = await saveWork(machineKey, work);
    tell(saved.ok ? words.saved : notSavedLine(saved.error));
    if (saved.ok) route(back, true);
  };
  return (
    <Screen
      title={words.title}
      sub={machine.name}
      bar={
        <>
          <ButtonLink href={back}>{common.back}</ButtonLink>
          <Button look="main" onTap={() => void save()}>
            {words.save}
          </Button>
        </>
      }
    >
      <WorkFields {...{ texts, faults, unit, change }} shape={machine.shape} />
    </Screen>
  );
}
