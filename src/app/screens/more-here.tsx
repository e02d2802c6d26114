import { useState } from 'preact/hooks';
import { isNeeded } from '../../core/groups.ts';
import { itemsOf } from '../../core/items.ts';
import type { Place } from '../../core/keys.ts';
import type { Shown } from '../../core/photo.ts';
import type { Step } from '../../core/steps.ts';
import { itemName } from '../../words/en/items.ts';
import { step as words, walk } from '../../words/en/walk.ts';
import { markUnseen, openItem } from '../actions/walk.ts';
import { useFlow } from '../data/step-flow.ts';
import type { WalkModel } from '../data/walk-model.ts';
import { unseenReasons, type UnseenReason } from '../../core/readings.ts';
import { unseenWords } from '../../words/en/choices.ts';
import { walkPath, workPath } from '../data/paths.ts';
import { Button, ButtonLink } from '../parts/button.tsx';
import { Choices } from '../parts/choices.tsx';
import { HelpButton } from './help-button.tsx';
import { PhotosHere } from './photos-here.tsx';

interface MoreHereProps {
  readonly model: WalkModel;
  readonly step: Step;
  /** The part at hand, where the step covers several. */
  readonly place?: Place;
  readonly onCutOff?: (shown: Shown) => void;
}

/** Below the question: help, what could not be reached, and items that this walk does not ask for by itself. */
export function MoreHere({ model, step, place = step.place, onCutOff }: MoreHereProps) {
  const flow = useFlow(model, step);
  const [asking, setAsking] = useState(false);
  const [opening, setOpening] = useState(false);
  const more = itemsOf(step.component, model.machine.shape).filter((item) => !isNeeded(item, model.walk));
  const items = step.items.map(({ id }) => id);
  const at = { component: step.component, side: step.side, from: walkPath(model.key, step.id) };
  const mark = (why: UnseenReason): void => {
    const made = items.map((item) => ({ place: step.place, item, n: step.spot }));
    void flow.saveAnd(() => markUnseen(model.key, step.place, items, step.spot, why), made);
  };
  return (
    <>
      {model.rental?.lookNote(model, step)}
      <PhotosHere
        walk={model.key}
        step={step.id}
        place={place}
        items={items}
        onCutOff={onCutOff}
        measures={step.kind === 'sag' || step.items[0]?.ask.kind === 'length'}
      />
      <HelpButton topic={step.items[0]?.id ?? ''} />
      <Button look="plain" pressed={asking} onTap={() => setAsking(!asking)}>
        {walk.couldNot}
      </Button>
      {asking && (
        <Choices
          title={walk.couldNotAsk}
          narrow
          chosen={undefined}
          options={unseenReasons.map((value) => ({ value, label: unseenWords[value] }))}
          onChoose={mark}
        />
      )}
      {step.component !== 'machine' && (
        <ButtonLink look="plain" href={workPath(model.walk.machine, at)}>
          {words.workHere}
        </ButtonLink>
      )}
      {more.length > 0 && (
        <Button look="plain" pressed={opening} onTap={() => setOpening(!opening)}>
          {words.opensMore}
        </Button>
      )}
      {opening && (
        <Choices
          title={words.opensMore}
          narrow
          chosen={undefined}
          options={more.map(({ id }) => ({ value: id, label: itemName(id) }))}
          onChoose={(id) => void openItem(model.key, id)}
        />
      )}
    </>
  );
}
