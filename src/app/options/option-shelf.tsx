import { useLocation } from 'preact-iso';
import { isDemo, partsOf, prefixOf, type RecordKey } from '../../core/keys.ts';
import type { Option } from '../../core/option.ts';
import { ok } from '../../core/result.ts';
import { trackKindWords } from '../../words/en/choices.ts';
import { common } from '../../words/en/common.ts';
import { forms } from '../../words/en/forms.ts';
import { optionShelf as words } from '../../words/en/option-form.ts';
import { entry } from '../../words/entry.ts';
import { formatter } from '../data/format.ts';
import { useLive, valueOf } from '../data/live.ts';
import { tell } from '../data/notice.ts';
import { store } from '../data/phone.ts';
import { foundIn } from '../data/record.ts';
import { notSavedLine } from '../data/saving.ts';
import { Button, ButtonLink, RowLink, RowText } from '../parts/button.tsx';
import { Screen } from '../parts/screen.tsx';
import styles from '../parts/forms.module.css';
import type { OptionPlace } from './option-edit.tsx';
import { copyOption, removeOption } from './save-option.ts';

export interface KeptOption {
  readonly key: RecordKey<'option'>;
  /** Absent for one of a newer build, which is kept and not read. */
  readonly value: Option | undefined;
}

async function optionsUnder(prefix: string) {
  const rows = await store.list({ prefix });
  if (!rows.ok) return rows;
  return ok(
    rows.value.flatMap((row): readonly KeptOption[] => {
      const { value, newer } = foundIn<Option>(row.versions);
      return value === undefined && !newer ? [] : [{ key: row.key as RecordKey<'option'>, value }];
    }),
  );
}

/** What is kept on this phone; of a demo machine what was entered for the demo, so that the two never mix. */
export function useOptions(machine: string | undefined): readonly KeptOption[] | undefined {
  const prefix = prefixOf('option', { demo: machine !== undefined && isDemo(machine) });
  return valueOf(useLive(`options ${prefix}`, [prefix], () => optionsUnder(prefix)));
}

/** `rubber with cores, €900 a side, for this machine` */
function lineOf(option: Option, machine: string | undefined): string {
  const { price, track, fitted } = option;
  const format = formatter.value;
  const bound = option.machine === undefined ? words.forAny : words.forOne;
  return [
    entry(trackKindWords, track)?.label,
    price ? words.aSide(format.money(price.minor, price.currency)) : words.noPrice,
    fitted === true ? words.onIt : machine !== undefined && bound,
  ]
    .filter(Boolean)
    .join(', ');
}

/** Options of this machine and of none in particular; entered once, compared wherever they fit. */
export function OptionShelf({ place }: { place: OptionPlace }) {
  const { base, machine } = place;
  const all = useOptions(machine);
  const here = all?.filter(({ value }) => value?.machine === undefined || value.machine === machine);
  return (
    <Screen
      wide
      title={words.title}
      sub={words.line}
      bar={
        <>
          <ButtonLink href={base}>{words.back}</ButtonLink>
          <ButtonLink look="main" href={`${base}/new`}>
            {words.add}
          </ButtonLink>
        </>
      }
    >
      {here?.length === 0 && <p>{words.none}</p>}
      <div class={styles.columns}>
        {here?.map((kept) => (
          <OptionRow key={kept.key} kept={kept} place={place} />
        ))}
      </div>
    </Screen>
  );
}

function OptionRow({ kept: { key, value }, place }: { kept: KeptOption; place: OptionPlace }) {
  const { route } = useLocation();
  const copy = async (): Promise<void> => {
    if (!value) return;
    const copied = await copyOption(value, isDemo(key));
    tell(copied.ok ? words.copied : notSavedLine(copied.error));
    if (copied.ok) route(`${place.base}/own/${partsOf(copied.value).id}`);
  };
  const remove = async (): Promise<void> => {
    const removed = await removeOption(key);
    if (removed.ok) tell(words.removed, removed.value);
    else tell(notSavedLine(removed.error));
  };
  if (!value) return <p class={styles.card}>{forms.newer}</p>;
  return (
    <div class={styles.item}>
      <RowLink href={`${place.base}/own/${partsOf(key).id}`}>
        <RowText name={value.name} line={lineOf(value, place.machine)} />
      </RowLink>
      <Button look="plain" onTap={() => void copy()}>
        {common.copy}
      </Button>
      <Button look="plain" onTap={() => void remove()}>
        {common.remove}
      </Button>
    </div>
  );
}
