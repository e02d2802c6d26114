import { useMemo } from 'preact/hooks';
import { callRank } from '../../core/calls.ts';
import { flipsOf } from '../../core/flips.ts';
import { parkingNotAsked } from '../../core/groups.ts';
import { factsOf, type ItemOutcome } from '../../core/score.ts';
import { shownCall } from '../../core/verdict.ts';
import { callWords, meanwhileWords, openCall } from '../../words/en/calls.ts';
import { common } from '../../words/en/common.ts';
import { purposeWords } from '../../words/en/choices.ts';
import { openWords } from '../../words/en/open.ts';
import { appraisalVerdict, verdict as words } from '../../words/en/verdict.ts';
import { walk } from '../../words/en/walk.ts';
import { outcomePlace } from '../../words/outcome-text.ts';
import { finishWalk } from '../actions/walk.ts';
import { formatter } from '../data/format.ts';
import { useAhead, type Ahead } from '../data/use-ahead.ts';
import { loadSealing } from '../data/load-sealing.ts';
import { useLoaded } from '../data/use-loaded.ts';
import { walkPath } from '../data/paths.ts';
import { sizeText } from '../data/tool.ts';
import type { WalkModel } from '../data/walk-model.ts';
import { Button, ButtonLink } from '../parts/button.tsx';
import { CallMark } from '../parts/call-mark.tsx';
import { Screen, Section } from '../parts/screen.tsx';
import { OutcomeCard } from './outcome-card.tsx';
import { PhotosOf } from './photos-here.tsx';
import { PurposeAnswers } from './purpose-answers.tsx';
import styles from './walk.module.css';

/** The verdict: what drives it, what is open, what could flip it, then every item. */
export function Verdict({ model }: { model: WalkModel }) {
  const { verdict, outcomes } = model.scored;
  const finished = model.walk.finishedAt !== undefined;
  const known = outcomes.filter(({ state }) => state.known);
  const call = shownCall(verdict);
  const ahead = useAhead(model);
  const sealing = useLoaded(loadSealing);
  const shown = new Set(verdict.drivers);
  const others = known
    .filter((each) => each.atLeast !== 'run' && !shown.has(each))
    .sort((a, b) => callRank(b.atLeast) - callRank(a.atLeast));
  return (
    <Screen
      wide
      title={words.title}
      sub={`${model.machine.name} · ${purposeWords[model.walk.purpose].label}`}
      bar={
        <>
          <ButtonLink href={walkPath(model.key, 'map')}>{words.goBack}</ButtonLink>
          {finished ? (
            sealing && <sealing.VerdictMain model={model} />
          ) : (
            <Button look="main" disabled={known.length === 0} onTap={() => void finishWalk(model.key)}>
              {verdict.openParking.length + verdict.openOther.length > 0 ? walk.finishAnyway : walk.finish}
            </Button>
          )}
        </>
      }
    >
      {known.length === 0 && <p>{words.noReadings}</p>}
      <div class={styles.columns}>
        <div class={styles.column}>
          <section class={styles.big} role="status" aria-label={words.title}>
            <CallMark call={call} size={34} />
            <span>{call === 'open' ? openCall.line : callWords[call].line}</span>
            <span>
              {words.meanwhile(meanwhileWords[verdict.meanwhile].word)}.{' '}
              {meanwhileWords[verdict.meanwhile].line}
            </span>
            {!verdict.settled && call !== 'open' && <span>{words.openLine}</span>}
          </section>
          {sealing && <sealing.SealNote model={model} />}
          <Lead ahead={ahead} model={model} />
          <PurposeWay model={model} />
          <PurposeAnswers model={model} />
          <Flips model={model} />
          {isReady(ahead) && <ahead.screens.HoursLadder model={model} outlook={ahead.outlook} />}
          {isReady(ahead) && <ahead.screens.PlanView model={model} outlook={ahead.outlook} />}
          {isReady(ahead) && <ahead.screens.MendOrRenew outlook={ahead.outlook} />}
          <ButtonLink href={walkPath(model.key, 'order')}>{words.order}</ButtonLink>
          <ButtonLink href={walkPath(model.key, 'options')}>{words.options}</ButtonLink>
          <p class={styles.quiet}>{words.aid}</p>
        </div>
        <div class={styles.column}>
          {verdict.drivers.length > 0 && (
            <Section title={words.reasons}>
              {[...verdict.drivers, ...others].map((outcome) => (
                <OutcomeCard
                  key={`${outcome.state.place}${outcome.state.item.id}`}
                  outcome={outcome}
                  model={model}
                />
              ))}
            </Section>
          )}
          <OpenList model={model} />
          <NotAsked model={model} />
          <Section title={words.everyItem}>
            {known
              .filter(({ atLeast, state }) => atLeast === 'run' && !state.passed)
              .map((outcome) => (
                <OutcomeCard
                  key={`${outcome.state.place}${outcome.state.item.id}`}
                  outcome={outcome}
                  model={model}
                />
              ))}
            <Passed outcomes={known.filter(({ state }) => state.passed)} />
          </Section>
          {model.rental && <model.rental.Links model={model} />}
          <PhotosOf walk={model.key} />
          <ButtonLink look="plain" href={walkPath(model.key, 'report')}>
            {words.report}
          </ButtonLink>
          <ButtonLink look="plain" href={walkPath(model.key, 'hand-over')}>
            {words.handOver}
          </ButtonLink>
          {finished && sealing && <sealing.VerdictAgain model={model} />}
          <ButtonLink look="plain" href="/">
            {common.toHome}
          </ButtonLink>
        </div>
      </div>
    </Screen>
  );
}

const isReady = (ahead: Ahead | 'failed' | undefined): ahead is Ahead => typeof ahead === 'object';

/** The sums that the purpose asks for, one tap away. */
function PurposeWay({ model: { key, walk } }: { model: WalkModel }) {
  if (walk.purpose === 'rental-return')
    return <ButtonLink href={walkPath(key, 'charge')}>{words.chargeList}</ButtonLink>;
  if (walk.purpose === 'appraisal')
    return <ButtonLink href={walkPath(key, 'appraisal')}>{appraisalVerdict.page}</ButtonLink>;
  return null;
}

/** The answer in one sentence, in the place that it will have while it is worked out. */
function Lead({ ahead, model }: { ahead: Ahead | 'failed' | undefined; model: WalkModel }) {
  if (isReady(ahead)) return <ahead.screens.AheadLead model={model} outlook={ahead.outlook} />;
  return <p class={styles.quiet}>{ahead === 'failed' ? words.aheadFailed : words.aheadWorking}</p>;
}

/** Everything that was looked at and passed, by part, folded away. */
function Passed({ outcomes }: { outcomes: readonly ItemOutcome[] }) {
  const parts = new Map<string, string[]>();
  for (const outcome of outcomes) {
    const place = outcomePlace(outcome);
    parts.set(place, [...(parts.get(place) ?? []), formatter.value.item(outcome.state.item.id)]);
  }
  return (
    <details>
      <summary>{words.passed(outcomes.length)}</summary>
      <ul class={styles.items}>
        {[...parts].map(([place, items]) => (
          <li key={place}>
            <strong>{place}</strong>: {items.join(', ')}
          </li>
        ))}
      </ul>
    </details>
  );
}

/** What is not known: first what could park the machine; parts of one row are said together. */
function OpenList({ model }: { model: WalkModel }) {
  const { openParking, openOther } = model.scored.verdict;
  if (openParking.length + openOther.length === 0) return <p>{words.nothingOpen}</p>;
  return (
    <Section title={words.openTitle}>
      <p class={styles.quiet}>{words.openLine}</p>
      <ul class={styles.items}>
        {gathered([...openParking, ...openOther]).map(([text, outcome]) => (
          <li key={text} class={styles.reason}>
            <strong>{text}</strong>
            {outcome.open.map((open) => {
              const { what, mend } = openWords(open, formatter.value);
              return (
                <span key={open.kind}>
                  {what} {mend}
                </span>
              );
            })}
          </li>
        ))}
      </ul>
    </Section>
  );
}

/** What this depth leaves out although it could park the machine. */
function NotAsked({ model }: { model: WalkModel }) {
  const items = parkingNotAsked(model.machine, model.walk).map(({ id }) => formatter.value.item(id));
  return items.length === 0 ? null : <p class={styles.quiet}>{words.shortLeaves(items.join(', '))}</p>;
}

function gathered(outcomes: readonly ItemOutcome[]): readonly (readonly [string, ItemOutcome])[] {
  const lines = new Map<string, ItemOutcome>();
  for (const outcome of outcomes) {
    const name = `${outcomePlace(outcome)}: ${formatter.value.item(outcome.state.item.id)}`;
    lines.set(name, outcome);
  }
  return [...lines].sort(([, a], [, b]) => callRank(b.atLeast) - callRank(a.atLeast));
}

/** The one re-measurement that could turn the verdict, and by how much. */
function Flips({ model }: { model: WalkModel }) {
  const flips = useMemo(() => {
    const { input } = model.assembled;
    return input.rules ? flipsOf(factsOf(input), input.rules, model.scored) : [];
  }, [model]);
  const [first] = flips;
  if (!first) return <p class={styles.quiet}>{words.noFlip}</p>;
  const { state, byMm } = first;
  const sign = byMm < 0 ? '−' : '+';
  const by = `${sign}${sizeText(state.item.id, Math.abs(byMm))}`;
  return (
    <Section title={words.flip}>
      <p>
        {words.flipBy(
          formatter.value.item(state.item.id),
          outcomePlace({ state }),
          `${by} (${first.call === 'open' ? words.openTitle : callWords[first.call].word})`,
        )}
      </p>
    </Section>
  );
}
