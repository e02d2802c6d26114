import { byState, outcomesOfStep } from '../../core/progress.ts';
import { callRank } from '../../core/calls.ts';
import type { ItemOutcome } from '../../core/score.ts';
import { common } from '../../words/en/common.ts';
import { saveReadings, takeBack } from '../actions/walk.ts';
import { formatter } from '../data/format.ts';
import { receipt } from '../data/receipt.ts';
import { stateText, wearText } from '../../words/outcome-text.ts';
import { stepTitle } from '../data/describe.ts';
import { sizeText } from '../data/tool.ts';
import type { WalkModel } from '../data/walk-model.ts';
import { Button } from './button.tsx';
import { CallMark } from './call-mark.tsx';
import styles from './receipt-line.module.css';

async function undo(): Promise<void> {
  const last = receipt.value;
  if (!last) return;
  receipt.value = undefined;
  const kept = new Set(last.before.map(({ place, item, n }) => `${place}/${item}/${n}`));
  const gone = last.made.filter(({ place, item, n }) => !kept.has(`${place}/${item}/${n}`));
  if (gone.length > 0) await takeBack(last.walk, gone);
  if (last.before.length > 0) await saveReadings(last.walk, last.before);
}

/** A reading that cannot be judged is shown as open; one of several still to come is not. */
const isOpen = ({ atLeast, open }: ItemOutcome): boolean =>
  atLeast === 'run' && open.some(({ kind }) => kind !== 'not-read');

/** What came of the reading just saved, with its call, and a way back. */
export function ReceiptLine({ model }: { model: WalkModel }) {
  const last = receipt.value;
  if (!last || last.walk !== model.key) return <p class={styles.line} role="status" />;
  const format = formatter.value;
  const outcomes = outcomesOfStep(last.step, byState(model.scored.outcomes));
  const worst = [...outcomes].sort((a, b) => callRank(b.atLeast) - callRank(a.atLeast))[0];
  if (!worst) return <p class={styles.line} role="status" />;
  const { state } = worst;
  const spot = last.step.kind === 'measure' && state.sampled;
  const value = spot ? sizeText(state.item.id, state.sampled.worst.mm) : stateText(state, format);
  const what =
    outcomes.length === 1 || worst.atLeast !== 'run'
      ? `${format.item(state.item.id)} ${value}`
      : stepTitle(last.step);
  return (
    <div class={styles.line} role="status">
      <span class={styles.text}>
        <CallMark call={isOpen(worst) ? 'open' : worst.atLeast} size={18} />
        <span>
          {what}
          {wearText(state, format) === undefined ? '' : `, ${wearText(state, format)}`}. {common.saved}.
        </span>
      </span>
      <Button look="plain" onTap={() => void undo()}>
        {common.undo}
      </Button>
    </div>
  );
}
