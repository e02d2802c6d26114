import { isDemo } from '../../core/keys.ts';
import { machine as machineWords } from '../../words/en/machine.ts';
import { ordering as words } from '../../words/en/ordering.ts';
import { tell } from '../data/notice.ts';
import { pinHints } from '../data/pin.ts';
import { notSavedLine } from '../data/saving.ts';
import { useDraft } from '../data/use-draft.ts';
import { Button } from '../parts/button.tsx';
import { Facts } from '../parts/facts.tsx';
import { Field } from '../parts/field.tsx';
import { Section } from '../parts/screen.tsx';
import { pinLine } from '../screens/machine-plate.tsx';
import { savePin } from './save-order.ts';
import type { OrderModel } from './use-order.ts';

/** The machine as a parts desk looks it up; a PIN that is missing is asked for here. */
export function PinCard({ order: { machine, machineKey } }: { order: OrderModel }) {
  const draftKey = `${isDemo(machineKey) ? 'demo/' : ''}pin/${machineKey}`;
  const [draft, setDraft] = useDraft(draftKey, { text: '' });
  const pin = draft.text.trim().slice(0, 40);
  const keep = async (): Promise<void> => {
    const saved = await savePin(machineKey, pin, [draftKey]);
    tell(saved.ok ? words.pinSaved : notSavedLine(saved.error));
  };
  const name = [machine.maker, machine.model].filter(Boolean).join(' ');
  return (
    <Section title={words.machine}>
      <Facts
        facts={[
          [words.model, name],
          [machineWords.pin, machine.pin],
        ]}
      />
      {pinHints(machine.pin ?? '').map((hint) => (
        <p key={hint}>{pinLine(hint, machine.pin ?? '')}</p>
      ))}
      {machine.pin === undefined && (
        <>
          <p>{words.pinMissing}</p>
          <Field
            label={words.pinAsk}
            value={draft.text}
            hint={pinHints(draft.text).map((hint) => pinLine(hint, draft.text))[0]}
            onInput={(text) => setDraft({ text })}
          />
          <Button disabled={pin === ''} onTap={() => void keep()}>
            {words.pinSave}
          </Button>
        </>
      )}
    </Section>
  );
}
