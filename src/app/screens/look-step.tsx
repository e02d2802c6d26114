import { useState } from 'preact/hooks';
import type { Item } from '../../core/items.ts';
import { makePlace, parsePlace, type Place } from '../../core/keys.ts';
import { stateKey, type ItemState } from '../../core/states.ts';
import { common } from '../../words/en/common.ts';
import { groupPass, itemName } from '../../words/en/items.ts';
import { groupWords } from '../../words/en/stops.ts';
import { step as words, walk } from '../../words/en/walk.ts';
import { passStep } from '../actions/walk.ts';
import { stateText } from '../../words/outcome-text.ts';
import { stepTitle } from '../data/describe.ts';
import { formatter } from '../data/format.ts';
import { isAnswered, pathBefore, takenBackAt, useFlow } from '../data/step-flow.ts';
import { useTop } from '../data/use-top.ts';
import { Button, ButtonLink } from '../parts/button.tsx';
import { Screen } from '../parts/screen.tsx';
import { FindingPanel } from './finding-panel.tsx';
import { MoreHere } from './more-here.tsx';
import { StepHead, stepSub, type StepProps } from './step-head.tsx';
import partStyles from '../parts/parts.module.css';
import styles from './walk.module.css';

const placeFor = ({ step }: StepProps, number: number | undefined): Place =>
  makePlace({ side: step.side, component: step.component, ...(number !== undefined && { number }) });

/** A group looked at by eye: all fine in one tap, or each item and part with its own finding. */
export function LookStep({ model, step }: StepProps) {
  const flow = useFlow(model, step);
  const numbered = step.numbers.length > 1;
  const [number, setNumber] = useState<number | undefined>(
    step.numbers.length === 1 ? step.numbers[0] : undefined,
  );
  const [open, setOpen] = useState<Item>();
  useTop(open);
  const format = formatter.value;
  const stateAt = (item: Item, at: number | undefined): ItemState | undefined =>
    model.outcomes.get(stateKey(placeFor({ model, step }, at), item.id))?.state;
  // Parts with a reading of their own are the exceptions; the rest is what a pass speaks for.
  const read = (item: Item, at: number | undefined): boolean => {
    const state = stateAt(item, at);
    return state !== undefined && state.known && !state.passed;
  };
  const except = numbered ? step.numbers.filter((at) => step.items.some((item) => read(item, at))) : [];
  // What could not be reached is an answer too, and no pass may turn it into fine.
  const answered = isAnswered(model, step);
  const pass = (seen: 'whole' | 'half'): void => {
    const again = takenBackAt(model, step);
    const made = [{ place: step.place, item: step.pass, n: 1 }, ...again];
    void flow.saveAnd(() => passStep(model.key, step, seen, again), made);
  };
  if (open) {
    return (
      <FindingPanel
        model={model}
        step={step}
        item={open}
        place={placeFor({ model, step }, number)}
        onDone={() => setOpen(undefined)}
      />
    );
  }
  const isTrack = step.component === 'track' && step.group !== 'off';
  const { depth, purpose } = model.walk;
  // What goes out proves something only where the whole loop was seen.
  const asksLoop = isTrack && (depth === 'full' || purpose === 'hand-out') && !answered;
  // A short walk rolls half of the track past; all else is seen whole or not passed.
  const usual = isTrack && !asksLoop ? 'half' : 'whole';
  return (
    <Screen
      title={stepTitle(step)}
      sub={stepSub(model, step)}
      bar={
        <>
          <ButtonLink href={pathBefore(model, step)}>{common.back}</ButtonLink>
          <Button look="main" onTap={() => (answered ? flow.goOn() : pass(usual))}>
            {passLabel(answered, asksLoop, model.progress.get(step.id)?.state === 'partly')}
          </Button>
        </>
      }
    >
      <StepHead model={model} step={step} />
      <p class={styles.question}>{groupWords[step.group].ask}</p>
      {numbered && <p class={styles.quiet}>{walk.exceptAsk}</p>}
      {numbered && (
        <div class={styles.numbers} role="group" aria-label={words.whichPart}>
          <Button look="plain" pressed={number === undefined} onTap={() => setNumber(undefined)}>
            {words.allParts}
          </Button>
          {step.numbers.map((each) => (
            <Button
              key={each}
              look="plain"
              pressed={number === each}
              label={words.part(each)}
              onTap={() => setNumber(each)}
            >
              {each}
              {except.includes(each) ? '!' : ''}
            </Button>
          ))}
        </div>
      )}
      {numbered && number === undefined ? (
        <p>
          {groupPass(step.component, step.numbers.length, except)}?{' '}
          {words.lookAt(step.items.map(({ id }) => itemName(id)).join(', '))}
        </p>
      ) : (
        <ul class={styles.items}>
          {step.items.map((item) => (
            <li key={item.id}>
              <button type="button" class={partStyles.row} onClick={() => setOpen(item)}>
                <strong>{itemName(item.id)}</strong>
                <span class={styles.value}>{textOf(stateAt(item, number))}</span>
              </button>
            </li>
          ))}
        </ul>
      )}
      {asksLoop && <Button onTap={() => pass('half')}>{words.halfSeen}</Button>}
      <MoreHere
        model={model}
        step={step}
        place={placeFor({ model, step }, number)}
        onCutOff={({ place, item }) => {
          setNumber(parsePlace(place).number);
          setOpen(step.items.find(({ id }) => id === item));
        }}
      />
    </Screen>
  );

  function textOf(state: ItemState | undefined): string {
    return state?.known ? stateText(state, format) : words.notReadYet;
  }
}

function passLabel(answered: boolean, loop: boolean, partly: boolean): string {
  if (answered) return common.next;
  if (loop) return words.wholeSeen;
  return partly ? words.restFine : walk.pass;
}
