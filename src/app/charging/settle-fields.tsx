import { useState } from 'preact/hooks';
import { minorDigits } from '../../core/currency.ts';
import type { RecordKey } from '../../core/keys.ts';
import type { ChargeLine } from '../../core/rental-line.ts';
import { parseMoney } from '../../core/typed.ts';
import { charge as words } from '../../words/en/charge.ts';
import { formatter } from '../data/format.ts';
import { tell } from '../data/notice.ts';
import { notSavedLine } from '../data/saving.ts';
import { useDraft } from '../data/use-draft.ts';
import { Button } from '../parts/button.tsx';
import { Field } from '../parts/field.tsx';
import { NumberField } from '../parts/number-field.tsx';
import { settleDraftKey, settleLine } from './settle-line.ts';
import forms from '../parts/forms.module.css';

interface SettleProps {
  readonly walk: RecordKey<'walk'>;
  readonly line: ChargeLine;
  /** Undefined while there is no contract: no amount can be agreed on in no currency. */
  readonly currency: string | undefined;
}

/** As many letters as the record takes. */
const mostWhy = 400;

/** What both sides agree on about one line: charged or not, why, and how much where the line cannot say. */
export function SettleFields({ walk, line, currency }: SettleProps) {
  const [typed, setTyped] = useDraft(settleDraftKey(walk, line.id), { why: '', amount: '' });
  const [asked, setAsked] = useState(false);
  const needsAmount = line.partMinor === undefined;
  const parse = (text: string) => parseMoney(text, minorDigits(currency ?? ''));
  const settle = async (is: 'charged' | 'not-charged'): Promise<void> => {
    const amount = parse(typed.amount);
    if (is === 'charged' && needsAmount && !amount.ok) {
      setAsked(true);
      if (amount.error.kind === 'empty') tell(words.needsAmount);
      return;
    }
    const minor =
      needsAmount && amount.ok ? { minor: amount.value, ...(currency !== undefined && { currency }) } : {};
    const why = typed.why.trim().slice(0, mostWhy);
    const saved = await settleLine(walk, line.id, {
      line: line.id,
      is,
      ...(why !== '' && { why }),
      ...(is === 'charged' && minor),
    });
    tell(saved.ok ? words.settled : notSavedLine(saved.error));
    // The line goes to another part of the screen, and the button that was tapped with it.
    if (saved.ok) document.querySelector<HTMLElement>('h1')?.focus();
  };
  return (
    <div class={forms.form}>
      <strong>{words.settleAsk}</strong>
      <Field
        label={words.settleWhy}
        value={typed.why}
        lines={2}
        onInput={(why) => setTyped({ ...typed, why })}
      />
      {needsAmount && currency !== undefined && (
        <NumberField
          label={words.settleAmount(currency ?? '')}
          text={typed.amount}
          hint={words.needsAmount}
          asked={asked}
          parse={parse}
          spell={(minor) => formatter.value.moneyField(minor, currency ?? '')}
          onInput={(amount) => setTyped({ ...typed, amount })}
        />
      )}
      {currency === undefined ? (
        <p>{words.needsContract}</p>
      ) : (
        <Button onTap={() => void settle('charged')}>{words.chargeIt}</Button>
      )}
      <Button onTap={() => void settle('not-charged')}>{words.leaveIt}</Button>
    </div>
  );
}
