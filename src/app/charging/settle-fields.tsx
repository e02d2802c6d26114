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
import { settleLine } from './settle-line.ts';
import forms from '../parts/forms.module.css';

interface SettleProps {
  readonly walk: RecordKey<'walk'>;
  readonly line: ChargeLine;
  readonly currency: string;
}

/** What both sides agree on about one line: charged or not, why, and how much where the line cannot say. */
export function SettleFields({ walk, line, currency }: SettleProps) {
  const [typed, setTyped] = useDraft(`settle/${walk}/${line.id}`, { why: '', amount: '' });
  const [asked, setAsked] = useState(false);
  const needsAmount = line.partMinor === undefined;
  const parse = (text: string) => parseMoney(text, minorDigits(currency));
  const settle = async (is: 'charged' | 'not-charged'): Promise<void> => {
    const amount = parse(typed.amount);
    if (is === 'charged' && needsAmount && !amount.ok) {
      setAsked(true);
      if (amount.error.kind === 'empty') tell(words.needsAmount);
      return;
    }
    const minor = needsAmount && amount.ok ? { minor: amount.value } : {};
    const why = typed.why.trim();
    const saved = await settleLine(walk, line.id, {
      is,
      ...(why !== '' && { why }),
      ...(is === 'charged' && minor),
    });
    tell(saved.ok ? words.settled : notSavedLine(saved.error));
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
      {needsAmount && (
        <NumberField
          label={words.settleAmount(currency)}
          text={typed.amount}
          hint={words.needsAmount}
          asked={asked}
          parse={parse}
          spell={(minor) => formatter.value.moneyField(minor, currency)}
          onInput={(amount) => setTyped({ ...typed, amount })}
        />
      )}
      <Button onTap={() => void settle('charged')}>{words.chargeIt}</Button>
      <Button onTap={() => void settle('not-charged')}>{words.leaveIt}</Button>
    </div>
  );
}
