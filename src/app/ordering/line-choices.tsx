import { isDemo } from '../../core/keys.ts';
import type { Ordered } from '../../core/machine.ts';
import type { OrderLine } from '../../core/parts-to-order.ts';
import { parseCount } from '../../core/typed.ts';
import { ordering as words } from '../../words/en/ordering.ts';
import { formatter } from '../data/format.ts';
import { tell } from '../data/notice.ts';
import { notSavedLine } from '../data/saving.ts';
import { useDraft, useSaveOnLeave } from '../data/use-draft.ts';
import { Button } from '../parts/button.tsx';
import { Toggle } from '../parts/choices.tsx';
import { Field } from '../parts/field.tsx';
import { Fold } from '../parts/fold.tsx';
import forms from '../parts/forms.module.css';
import { NumberField } from '../parts/number-field.tsx';
import { saveChoice } from './save-order.ts';
import type { OrderModel } from './use-order.ts';

type Choice = Partial<Omit<Ordered, 'line' | 'walk'>>;

/** Keeps what is chosen for a line; the draft that it was typed in goes with it. */
export function useChoose({ machineKey, walk }: OrderModel, { id }: OrderLine) {
  return (choice: Choice, drafts: readonly string[] = []): void =>
    void saveChoice(machineKey, { line: id, walk: walk.key, ...choice }, drafts).then((saved) => {
      if (!saved.ok) tell(notSavedLine(saved.error));
    });
}

interface LineProps {
  readonly line: OrderLine;
  readonly order: OrderModel;
}

/** Part number, whether it has to match, how many, or not at all. */
export function LineChoices({ line, order }: LineProps) {
  const choose = useChoose(order, line);
  const set = [line.partNumber, line.match ? words.match : undefined].filter(Boolean).join(' · ');
  return (
    <Fold title={words.more} line={set === '' ? undefined : set}>
      <Typed line={line} order={order} />
      <Toggle
        label={words.match}
        line={words.matchLine}
        on={line.match}
        onTap={() => choose({ match: !line.match })}
      />
      <Button onTap={() => choose({ out: true })}>{words.out}</Button>
    </Fold>
  );
}

/** What is typed is kept when the field or the screen is left. */
function Typed({ line, order }: LineProps) {
  const choose = useChoose(order, line);
  const key = `${isDemo(order.walk.key) ? 'demo/' : ''}order/${order.walk.key}/${line.id}`;
  const own = line.count === line.counted ? '' : String(line.count ?? '');
  const initial = { partNumber: line.partNumber ?? '', count: own };
  const [draft, setDraft] = useDraft(key, initial);
  const count = parseCount(draft.count);
  const keep = (): void => {
    const isCount = count.ok || draft.count.trim() === '';
    if (!isCount || (draft.partNumber === initial.partNumber && draft.count === initial.count)) return;
    const partNumber = draft.partNumber.trim().slice(0, 80);
    choose(
      { partNumber: partNumber === '' ? undefined : partNumber, count: count.ok ? count.value : undefined },
      [key],
    );
  };
  useSaveOnLeave(keep);
  const counted = line.counted === undefined ? words.countedOpen : formatter.value.number(line.counted);
  return (
    <div class={forms.form} onFocusOut={keep}>
      <Field
        label={words.partNumber}
        value={draft.partNumber}
        onInput={(partNumber) => setDraft({ ...draft, partNumber })}
      />
      <NumberField
        whole
        label={words.count}
        hint={words.countHint(counted)}
        text={draft.count}
        parse={parseCount}
        spell={String}
        onInput={(text) => setDraft({ ...draft, count: text })}
      />
    </div>
  );
}
