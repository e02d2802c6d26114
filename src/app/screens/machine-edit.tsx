import { useLocation } from 'preact-iso';
import { useState } from 'preact/hooks';
import { makeKey, type RecordKey } from '../../core/keys.ts';
import type { Machine } from '../../core/machine.ts';
import type { Version } from '../../core/versions.ts';
import { common } from '../../words/en/common.ts';
import { forms } from '../../words/en/forms.ts';
import { machineForm } from '../../words/en/machine.ts';
import { dropDraft } from '../actions/saved.ts';
import { machineDraftKey, saveMachine } from '../actions/machine.ts';
import { useBooks } from '../data/books.ts';
import { preferences } from '../data/preferences.ts';
import { machineOf, machineTexts, massOf, shapeOf } from '../data/machine-form.ts';
import type { MachineDraft, MachineField, MachineFaults } from '../data/machine-form.ts';
import { newId } from '../data/moment.ts';
import { tell } from '../data/notice.ts';
import { fromPath, machinePath } from '../data/paths.ts';
import { useRecord } from '../data/record.ts';
import { notSavedLine } from '../data/saving.ts';
import { showFirstFault } from '../data/show-fault.ts';
import { fittingSheet } from '../data/sheet-choice.ts';
import { useDraft } from '../data/use-draft.ts';
import { valueOf } from '../data/live.ts';
import { Button, ButtonLink } from '../parts/button.tsx';
import { Screen } from '../parts/screen.tsx';
import { ClashNotice } from './clash-notice.tsx';
import { Gone } from './gone.tsx';
import { describeMachine } from './machine-facts.tsx';
import { MachineFields } from './machine-fields.tsx';

/** Adds a machine or changes one. */
export function MachineEdit() {
  const { path } = useLocation();
  const key = path === '/machine/new' ? undefined : fromPath('machine', path)?.key;
  const found = valueOf(useRecord<Machine>(key));
  if (path === '/machine/new') return <MachineForm before={undefined} known={undefined} clash={[]} />;
  if (!found) return <Screen title={machineForm.editTitle}>{null}</Screen>;
  if (!found.value) return <Gone />;
  return <MachineForm key={key} before={found.value} known={key} clash={found.clash} />;
}

interface MachineFormProps {
  readonly before: Machine | undefined;
  readonly known: RecordKey<'machine'> | undefined;
  readonly clash: readonly Version[];
}

function MachineForm({ before, known, clash }: MachineFormProps) {
  const { route } = useLocation();
  // Made when the form opens, so that a second tap saves the same machine again and not another.
  const [key] = useState(() => known ?? makeKey({ kind: 'machine', id: newId() }));
  const draftKey = machineDraftKey(known);
  const [draft, setDraft] = useDraft<MachineDraft>(draftKey, {});
  const [faults, setFaults] = useState<MachineFaults>([]);
  const sheets = useBooks('limits');
  const ruleSets = useBooks('rules');
  const prices = useBooks('price');
  const rates = useBooks('rate');
  const unit = preferences.value.mass;
  const texts = machineTexts(before, draft, unit);
  const shape = shapeOf(texts, before?.shape);
  const massKg = massOf(texts, unit);
  const fits = fittingSheet(texts.kind, shape, massKg);
  const change = (field: MachineField, text: string): void => {
    setDraft({ ...draft, [field]: text });
    setFaults(faults.filter((each) => each !== field));
  };
  const save = async (): Promise<void> => {
    const made = machineOf(before, texts, unit, fits);
    if (!made.ok) {
      setFaults(made.error);
      showFirstFault();
      return;
    }
    const saved = await saveMachine(key, made.value, draftKey);
    tell(saved.ok ? machineForm.saved : notSavedLine(saved.error));
    if (saved.ok) route(machinePath(key), true);
  };
  const drop = (): void => {
    const kept = draft;
    setDraft({});
    void dropDraft(draftKey);
    tell(forms.dropped, () => setDraft(kept));
  };
  const isTouched = Object.keys(draft).length > 0;
  return (
    <Screen
      wide
      title={known ? machineForm.editTitle : machineForm.addTitle}
      bar={
        <>
          <ButtonLink href={known ? machinePath(known) : '/'}>{common.back}</ButtonLink>
          <Button look="main" onTap={() => void save()}>
            {machineForm.save}
          </Button>
        </>
      }
    >
      {known && <ClashNotice recordKey={known} clash={clash} describe={describeMachine} />}
      <MachineFields
        {...{ texts, shape, massKg, fits, sheets, ruleSets, prices, rates, faults, change }}
        own={known}
      />
      {isTouched && (
        <Button look="plain" onTap={drop}>
          {forms.drop}
        </Button>
      )}
    </Screen>
  );
}
