import { useState } from 'preact/hooks';
import type { Place } from '../../core/keys.ts';
import { unseenReasons, type UnseenReason } from '../../core/readings.ts';
import { unseenWords } from '../../words/en/choices.ts';
import { walk } from '../../words/en/walk.ts';
import { markUnseen } from '../actions/walk.ts';
import type { WalkModel } from '../data/walk-model.ts';
import { Button } from '../parts/button.tsx';
import { Choices } from '../parts/choices.tsx';

interface NotSeenProps {
  readonly model: WalkModel;
  readonly place: Place;
  readonly items: readonly string[];
  readonly spot: number;
  readonly onDone: () => void;
}

/** What could not be reached is said with its reason, never skipped in silence. */
export function NotSeen({ model, place, items, spot, onDone }: NotSeenProps) {
  const [open, setOpen] = useState(false);
  const mark = (why: UnseenReason): void => {
    void markUnseen(model.key, place, items, spot, why).then(({ ok }) => ok && onDone());
  };
  if (!open) {
    return (
      <Button look="plain" onTap={() => setOpen(true)}>
        {walk.couldNot}
      </Button>
    );
  }
  return (
    <Choices
      title={walk.couldNotAsk}
      narrow
      chosen={undefined}
      options={unseenReasons.map((value) => ({ value, label: unseenWords[value] }))}
      onChoose={mark}
    />
  );
}
