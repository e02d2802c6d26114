import type { Choice, Way } from '../../core/mend.ts';
import { isPlanned, type Outlook } from '../../core/outlook.ts';
import { ahead as words, effectWords, jobWords, notFeasibleWords } from '../../words/en/ahead.ts';
import { aboutHours, aboutMoney, jobText, partPlace } from '../../words/ahead-text.ts';
import { formatter } from '../data/format.ts';
import { Section } from '../parts/screen.tsx';
import forms from '../parts/forms.module.css';
import styles from './ahead.module.css';

interface MendProps {
  readonly outlook: Outlook;
}

/** Each planned job against the other ways: cost for each hour gained, and what being wrong costs. */
export function MendOrRenew({ outlook }: MendProps) {
  const { plan, choices } = outlook;
  if (!isPlanned(plan)) return null;
  const told = choices.filter(({ ways }) => ways.length > 0);
  return (
    <>
      {told.length > 0 && (
        <Section title={words.mend}>
          {told.map((choice) => (
            <Ways key={choice.job.id} choice={choice} currency={plan.currency} />
          ))}
        </Section>
      )}
      <WhenWrong outlook={outlook} />
    </>
  );
}

function wayLine({ minor, hoursGained }: Way, currency: string): string {
  const format = formatter.value;
  return words.gains(aboutHours(hoursGained, format), aboutMoney(minor, currency, format));
}

function Ways({ choice: { job, ways, closed }, currency }: { choice: Choice; currency: string }) {
  const format = formatter.value;
  return (
    <div class={styles.visit}>
      <h3>{jobText({ job })}</h3>
      <ol class={styles.ways}>
        {ways.map((way) => (
          <li key={way.kind}>
            <strong>
              {jobWords[way.kind]}: {words.perHour(format.money(Math.round(way.perHour), currency))}
            </strong>
            <span>{wayLine(way, currency)}</span>
            {way.effects.map((effect) => (
              <span key={effect} class={forms.soft}>
                {effectWords[effect]}
              </span>
            ))}
          </li>
        ))}
      </ol>
      {closed.length > 0 && (
        <p class={forms.soft}>
          {words.closed}:{' '}
          {closed.map(({ kind, why }) => `${jobWords[kind]} (${notFeasibleWords[why]})`).join('; ')}.
        </p>
      )}
    </div>
  );
}

/** What a wrong call costs, and the reading that is most worth taking again. */
function WhenWrong({ outlook: { plan, wrong, worth } }: MendProps) {
  const format = formatter.value;
  if (!isPlanned(plan) || wrong.length === 0) return null;
  const all = [...plan.visits.flatMap(({ jobs }) => jobs), ...plan.later];
  const [best] = worth;
  const lines = wrong.flatMap(({ id, if: when, chance, minor }) => {
    const each = all.find(({ job }) => job.id === id);
    // Less than one whole unit in the mean is nothing to decide by.
    if (!each || chance * minor < 100) return [];
    const money = aboutMoney(minor, plan.currency, format);
    const line =
      when === 'late'
        ? words.wrongLate(jobText(each), format.percent(chance * 100), money)
        : words.wrongEarly(jobText(each), money);
    return [{ id, line, risk: chance * minor }];
  });
  return (
    <Section title={words.wrong}>
      {lines.length === 0 && <p>{words.wrongLittle}</p>}
      <ul class={forms.bullets}>
        {lines
          .sort((a, b) => b.risk - a.risk)
          .slice(0, 3)
          .map(({ id, line }) => (
            <li key={id}>{line}</li>
          ))}
      </ul>
      <p>
        {best && best.minor >= 100
          ? words.worth(
              format.item(best.part.history.item.id),
              partPlace(best.part),
              aboutMoney(best.minor, plan.currency, format),
            )
          : words.worthNothing}
      </p>
    </Section>
  );
}
