import { useMemo, useState } from 'preact/hooks';
import { wearingKinds, isValued } from '../../core/appraisal-parts.ts';
import { settingsOf, type AppraisalSettings } from '../../core/appraisal-settings.ts';
import { appraisalText, type AppraisalText } from '../../words/appraisal-text.ts';
import { appraisal as words } from '../../words/en/appraisal.ts';
import { notSavedLine } from '../data/saving.ts';
import { verdict } from '../../words/en/verdict.ts';
import { formatter } from '../data/format.ts';
import { tell } from '../data/notice.ts';
import { walkPath } from '../data/paths.ts';
import { useAhead, type Ahead } from '../data/use-ahead.ts';
import type { WalkModel } from '../data/walk-model.ts';
import { ButtonLink } from '../parts/button.tsx';
import { Facts } from '../parts/facts.tsx';
import { Screen, Section } from '../parts/screen.tsx';
import { useIsSealed } from '../sealing/verdict-actions.tsx';
import styles from '../screens/walk.module.css';
import own from './appraisal.module.css';
import { AppraisalChoices, LookFor } from './appraisal-choices.tsx';
import { Lines, Texts } from './appraisal-lines.tsx';
import { AppraisalPage } from './appraisal-page.tsx';
import { appraised, keepChoices } from './appraised.ts';

interface AppraisalProps {
  readonly model: WalkModel;
  /** What the address names after `appraisal`. */
  readonly rest: readonly string[];
}

/** What the undercarriage is worth: the sums and what they lean on, or the page that both sides read. */
export function AppraisalScreen({ model, rest }: AppraisalProps) {
  const ahead = useAhead(model);
  if (typeof ahead === 'object' && rest[1] === 'page') return <AppraisalPage model={model} ahead={ahead} />;
  return (
    <Screen
      wide
      title={words.title}
      sub={model.machine.name}
      bar={
        <>
          <ButtonLink href={walkPath(model.key, 'verdict')}>{verdict.title}</ButtonLink>
          <ButtonLink look="main" href={walkPath(model.key, 'appraisal/page')}>
            {words.page}
          </ButtonLink>
        </>
      }
    >
      {typeof ahead === 'object' ? (
        <Appraised model={model} ahead={ahead} />
      ) : (
        <p role="status">{ahead === 'failed' ? words.failed : words.working}</p>
      )}
    </Screen>
  );
}

function Appraised({ model, ahead: { outlook } }: { model: WalkModel; ahead: Ahead }) {
  const isSealed = useIsSealed(model.key);
  const [chosen, setChosen] = useState<AppraisalSettings>();
  const settings = chosen ?? settingsOf(model.walk);
  const format = formatter.value;
  const text = useMemo(
    () =>
      appraisalText({
        appraisal: appraised(model, outlook, chosen ?? settingsOf(model.walk)),
        rubber: outlook.rubber,
        format,
      }),
    [model, outlook, chosen, format],
  );
  const change = (next: AppraisalSettings): void => {
    setChosen(next);
    void keepChoices(model.key, next).then((saved) => !saved.ok && tell(notSavedLine(saved.error)));
  };
  const kinds = wearingKinds(model.machine.shape).filter(isValued);
  return (
    <div class={styles.columns}>
      <div class={styles.column}>
        <Answers text={text} />
        {model.walk.purpose !== 'appraisal' && <p class={styles.quiet}>{words.notAppraisal}</p>}
        {isSealed === true && <p class={styles.quiet}>{words.sealedNow}</p>}
        <AppraisalChoices settings={settings} kinds={kinds} onChange={change} />
        <Lines title={words.deductLines} lines={text.deduction} none={words.deductNone} />
        <Lines title={words.spendLines} lines={text.spend} more={text.spendMore} />
        <Lines title={words.valueLines} lines={text.value} none={words.valueNone} />
      </div>
      <div class={styles.column}>
        <Texts title={words.valueOpen} lines={text.valueOpen} none={words.valueOpenNone} />
        <Lines title={words.stated} first={text.stated} lines={text.statedLines} />
        <Texts title={words.meter} lines={text.meter} />
        <Texts title={words.signs} lines={text.signs} none={words.signsNone} />
        <Texts title={words.notVerified} lines={text.notVerified} none={words.allVerified} />
        <LookFor settings={settings} onChange={change} />
        <Texts title={words.basis} lines={words.basisLines} />
      </div>
    </div>
  );
}

/** The three sums first, each with what it means. */
function Answers({ text }: { text: AppraisalText }) {
  return (
    <>
      <section class={own.sums} role="status" aria-label={words.title}>
        <dl class={styles.answers}>
          {text.answers.map(({ ask, say }) => (
            <div key={ask}>
              <dt>{ask}</dt>
              <dd>{say}</dd>
            </div>
          ))}
        </dl>
      </section>
      <Facts facts={text.worst} />
      <Section title="">
        {text.answers.map(({ ask, more }) => (
          <p key={ask} class={styles.quiet}>
            <strong>{ask}.</strong> {more.join(' ')}
          </p>
        ))}
        <p class={styles.quiet}>{words.estimate}</p>
      </Section>
    </>
  );
}
