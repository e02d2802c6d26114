import { limitMeanings, loads, type LimitMeaning } from '../../core/limits.ts';
import type { LengthUnit } from '../../core/quantity.ts';
import { limitMeaningWords, loadWords } from '../../words/en/choices.ts';
import { sheets as words } from '../../words/en/sheets.ts';
import { newLimitRow, type ItemRow, type LimitRow } from '../data/sheet-rows.ts';
import { Button } from '../parts/button.tsx';
import { Toggle } from '../parts/choices.tsx';
import { Missing } from '../parts/missing.tsx';
import { Select } from '../parts/select.tsx';
import styles from '../parts/forms.module.css';
import { SizeField } from './size-field.tsx';
import { SourceFields } from './source-fields.tsx';

interface LimitsProps {
  readonly row: ItemRow;
  readonly asked: boolean;
  readonly set: (part: Partial<ItemRow>) => void;
}

/** The limits of one size. */
export function Limits({ row, asked, set }: LimitsProps) {
  const change = (next: LimitRow): void =>
    set({ limits: row.limits.map((each) => (each.id === next.id ? next : each)) });
  return (
    <>
      {row.limits.map((limit) => (
        <div key={limit.id} class={styles.card}>
          <LimitFields limit={limit} unit={row.unit} asked={asked} change={change} />
          <Button look="plain" onTap={() => set({ limits: row.limits.filter(({ id }) => id !== limit.id) })}>
            {words.removeLimit}
          </Button>
        </div>
      ))}
      <Button onTap={() => set({ limits: [...row.limits, newLimitRow(row.limits.length === 0)] })}>
        {words.addLimit}
      </Button>
    </>
  );
}

interface LimitFieldsProps {
  readonly limit: LimitRow;
  readonly unit: LengthUnit;
  readonly asked: boolean;
  readonly change: (limit: LimitRow) => void;
}

function LimitFields({ limit, unit, asked, change }: LimitFieldsProps) {
  const set = (part: Partial<LimitRow>): void => change({ ...limit, ...part });
  return (
    <>
      <SizeField
        label={words.limit}
        text={limit.at}
        unit={unit}
        asked={asked}
        onInput={(at) => set({ at })}
      />
      {asked && limit.at.trim() === '' && <Missing line={words.limitMissing} />}
      <Select
        label={words.means}
        options={limitMeanings.map((value) => ({ value, label: limitMeaningWords[value] }))}
        chosen={limit.means}
        onChoose={(means) => set({ means: means as LimitMeaning })}
      />
      <Toggle label={words.hundred} on={limit.hundred} onTap={() => set({ hundred: !limit.hundred })} />
      <span>{words.load}</span>
      <div class={styles.pair}>
        {loads.map((load) => (
          <Toggle
            key={load}
            label={loadWords[load].label}
            on={limit.loads.includes(load)}
            onTap={() =>
              set({
                loads: limit.loads.includes(load)
                  ? limit.loads.filter((each) => each !== load)
                  : loads.filter((each) => each === load || limit.loads.includes(each)),
              })
            }
          />
        ))}
      </div>
      {limit.loads.length === 0 && <span class={styles.soft}>{words.anyLoad}</span>}
      <SourceFields texts={limit} change={set} />
    </>
  );
}
