import { byState, outcomesOfStep } from '../../core/progress.ts';
import type { ItemOutcome } from '../../core/score.ts';
import type { Step } from '../../core/steps.ts';
import { looksThen as words } from '../../words/en/rental-walks.ts';
import { itemName } from '../../words/en/items.ts';
import { outcomePlace, stateText } from '../../words/outcome-text.ts';
import { formatter } from '../data/format.ts';
import type { WalkModel } from '../data/walk-model.ts';
import styles from '../screens/walk.module.css';

const isSound = ({ state: { item, finding, cracks } }: ItemOutcome): boolean =>
  item.ask.kind === 'finding'
    ? finding === item.ask.findings[0]
    : cracks.every(({ lengthMm, depthMm }) => lengthMm * depthMm === 0);

const found = (outcome: ItemOutcome): string =>
  `${outcomePlace(outcome)}: ${itemName(outcome.state.item.id)} ${stateText(outcome.state, formatter.value)}`;

/** Beside a look of a return: what the hand-out found there, so that what is new stands out. */
export function lookNote({ rental }: WalkModel, step: Step) {
  if (!rental?.handOut || step.kind !== 'look') return null;
  const then = outcomesOfStep(step, byState(rental.handOut.scored.outcomes));
  const faults = then.filter((each) => each.state.known && !isSound(each));
  const names = then.flatMap(({ state }) => (state.known ? [] : [itemName(state.item.id)]));
  const unseen = [...new Set(names)].join(', ');
  const isAllSound = faults.length === 0 && unseen === '';
  return (
    <p class={styles.quiet}>
      {isAllSound && words.sound}
      {faults.length > 0 && words.found(faults.map(found).join('; '))}{' '}
      {unseen !== '' && words.notSeen(unseen)}
    </p>
  );
}
