import { sagAdvice } from '../../core/sag-advice.ts';
import type { SagOutcome } from '../../core/sag.ts';
import type { ItemOutcome } from '../../core/score.ts';
import { sagAsk } from '../../words/en/sag.ts';
import { noteWords } from '../../words/en/notes.ts';
import { meanwhileWords } from '../../words/en/calls.ts';
import { verdict as words } from '../../words/en/verdict.ts';
import { outcomePlace, stateText, wearText } from '../../words/outcome-text.ts';
import { reasonText } from '../data/describe.ts';
import { formatter } from '../data/format.ts';
import { walkPath } from '../data/paths.ts';
import type { WalkModel } from '../data/walk-model.ts';
import { CallMark } from '../parts/call-mark.tsx';
import { SourceLine } from '../parts/source-line.tsx';
import { WearBar } from '../parts/wear-bar.tsx';
import styles from './walk.module.css';

/** Tension and idler travel, only where true sag is known. */
function SagNote({ sag }: { sag: SagOutcome }) {
  const advice = sagAdvice(sag);
  if (!advice || sag.state === 'right') return null;
  const format = formatter.value;
  const travel = advice.idlerTravelMm;
  const say = travel !== undefined && travel < 0 ? sagAsk.travelIn : sagAsk.travelOut;
  return (
    <span class={styles.quiet}>
      {sagAsk.tension(format.number(Math.round(advice.tension * 10) / 10))}
      {travel !== undefined && ` ${say(format.length(Math.abs(travel)))}`}
    </span>
  );
}

/** Where the marks are seen that the size was measured with; undefined where it was read otherwise. */
function marksPath(model: WalkModel, { state: { place, item, sampled } }: ItemOutcome): string | undefined {
  const all = model.assembled.input.readings.filter((each) => each.place === place && each.item === item.id);
  const measured = all.filter(({ reading }) => reading.from);
  const worst = measured.find(({ n, reading }) => (reading.spot ?? n) === sampled?.worst.spot) ?? measured[0];
  if (!worst?.reading.from) return undefined;
  const { spot = worst.n, from } = worst.reading;
  const step = model.steps.find(
    (each) => each.place === place && each.spot === spot && each.items.includes(item),
  );
  const path = walkPath(model.key, `photos.${from.photo}.measure`);
  return step ? `${path}?from=${step.id}` : path;
}

/** One item: what was read, its call, why, from which rule and source, and what it leans on. */
export function OutcomeCard({ outcome, model }: { outcome: ItemOutcome; model: WalkModel }) {
  const format = formatter.value;
  const { state, reasons, notes } = outcome;
  const worn = wearText(state, format);
  const step = model.steps.find(({ items, side }) => side === state.side && items.includes(state.item));
  const evidence = marksPath(model, outcome);
  return (
    <article class={styles.reason}>
      <strong>
        {format.item(state.item.id)}, {outcomePlace(outcome)}: {stateText(state, format)}
      </strong>
      {state.wear && worn !== undefined && (
        <>
          <WearBar percent={state.wear.percent} expanded={state.wear.expanded} label={worn} />
          <span>{worn}</span>
        </>
      )}
      {state.sag && <SagNote sag={state.sag} />}
      <CallMark call={outcome.open.length > 0 && outcome.atLeast === 'run' ? 'open' : outcome.atLeast} />
      {outcome.atLeast !== 'run' && <span>{words.meanwhile(meanwhileWords[outcome.meanwhile].word)}</span>}
      {reasons.map((reason) => (
        <span key={reason.rule}>
          {reasonText(reason, format)}{' '}
          <span class={styles.quiet}>
            {words.rule(reason.rule)} {reason.source && <SourceLine source={reason.source} />}
          </span>
        </span>
      ))}
      {notes.map(({ kind }) => (
        <span key={kind} class={styles.quiet}>
          {noteWords[kind]}
        </span>
      ))}
      {step && evidence && (
        <a class={styles.again} href={evidence}>
          {words.fromPhoto}
        </a>
      )}
      {step && (
        <a class={styles.again} href={walkPath(model.key, step.id)}>
          {words.readAgain}
        </a>
      )}
    </article>
  );
}
