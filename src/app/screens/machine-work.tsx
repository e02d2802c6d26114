import { valueIn } from '../../core/assemble.ts';
import { isDemo, parseKey, prefixOf, type RecordKey } from '../../core/keys.ts';
import { lengthUnits } from '../../core/quantity.ts';
import { ok } from '../../core/result.ts';
import type { Work } from '../../core/walk.ts';
import { makeDates } from '../../words/dates.ts';
import { workKindWords } from '../../words/en/choices.ts';
import { common } from '../../words/en/common.ts';
import { placeName } from '../../words/en/items.ts';
import { machine as words, workForm } from '../../words/en/machine.ts';
import { removeWork } from '../actions/work.ts';
import { formatter } from '../data/format.ts';
import { preferences } from '../data/preferences.ts';
import { useLive, valueOf } from '../data/live.ts';
import { tell } from '../data/notice.ts';
import { machinePath } from '../data/paths.ts';
import { store } from '../data/phone.ts';
import { notSavedLine } from '../data/saving.ts';
import { Button, ButtonLink, RowText } from '../parts/button.tsx';
import { Section } from '../parts/screen.tsx';
import styles from '../parts/forms.module.css';

/** What was done to a machine, newest first. */
export function MachineWork({ machine }: { machine: RecordKey<'machine'> }) {
  const owner = parseKey(machine);
  const prefix =
    owner?.kind === 'machine' ? prefixOf('work', { owner: owner.id, demo: isDemo(machine) }) : machine;
  const work = valueOf(useLive(`work of ${machine}`, [prefix], () => workUnder(prefix)));
  const remove = async (key: RecordKey<'work'>): Promise<void> => {
    const removed = await removeWork(key);
    if (removed.ok) tell(workForm.removed, removed.value);
    else tell(notSavedLine(removed.error));
  };
  return (
    <Section title={words.work}>
      {work?.length === 0 && <p>{words.noWork}</p>}
      {work?.map(({ key, value }) => (
        <div key={key} class={styles.item}>
          <RowText name={whatOf(value)} line={whenOf(value)} />
          <Button look="plain" onTap={() => void remove(key)}>
            {common.remove}
          </Button>
        </div>
      ))}
      <ButtonLink href={machinePath(machine, 'work')}>{words.addWork}</ButtonLink>
    </Section>
  );
}

async function workUnder(prefix: string) {
  const rows = await store.list({ prefix, reverse: true });
  if (!rows.ok) return rows;
  return ok(
    rows.value.flatMap(({ key, versions }) => {
      const value = valueIn<Work>(versions);
      return value ? [{ key: key as RecordKey<'work'>, value }] : [];
    }),
  );
}

/** `fitted new: left track` */
function whatOf({ kind, side, component, number }: Work): string {
  if (component === undefined) return workKindWords[kind];
  const place = placeName({ side: side ?? 'whole', component, ...(number !== undefined && { number }) });
  return workForm.whatWhere(workKindWords[kind], place);
}

function whenOf({ on, meterHours, newMm, newUnit, note }: Work): string {
  const format = formatter.value;
  const dates = makeDates(preferences.value.locale);
  return [
    on && dates.date(on),
    meterHours !== undefined && format.hours(meterHours),
    newMm !== undefined && workForm.newWas(sizeText(newMm, newUnit)),
    note,
  ]
    .filter((part) => typeof part === 'string' && part !== '')
    .join(' · ');
}

/** In the unit in which it was typed. */
function sizeText(mm: number, unit: unknown): string {
  const typed = lengthUnits.find((each) => each === unit);
  return typed ? formatter.value.inUnit(mm, typed) : formatter.value.length(mm);
}
