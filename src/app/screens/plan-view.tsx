import { isPlanned, type Outlook } from '../../core/outlook.ts';
import type { CostedJob } from '../../core/job-costs.ts';
import type { JobPlan, OpenJob, Visit } from '../../core/job-plan.ts';
import type { RecordKey } from '../../core/keys.ts';
import { ahead as words } from '../../words/en/ahead.ts';
import { costs as costWords } from '../../words/en/costs.ts';
import { callWords } from '../../words/en/calls.ts';
import { useLocation } from 'preact-iso';
import { ownCosts } from '../actions/books.ts';
import { clearHold, setHold } from '../actions/holds.ts';
import { aboutHours, aboutMoney, jobText, whyOpen } from '../../words/ahead-text.ts';
import { formatter } from '../data/format.ts';
import { tell } from '../data/notice.ts';
import { bookPath } from '../data/paths.ts';
import { notSavedLine } from '../data/saving.ts';
import type { Saved } from '../actions/saved.ts';
import type { WalkModel } from '../data/walk-model.ts';
import { Button, ButtonLink } from '../parts/button.tsx';
import { Fold } from '../parts/fold.tsx';
import { Section } from '../parts/screen.tsx';
import { SourceLine } from '../parts/source-line.tsx';
import { whenText } from './ahead-lead.tsx';
import forms from '../parts/forms.module.css';
import styles from './ahead.module.css';

interface PlanProps {
  readonly model: WalkModel;
  readonly outlook: Outlook;
}

/** The job plan: what on which visit, what it costs, what it saves, and what the person fixes. */
export function PlanView({ model, outlook }: PlanProps) {
  const { plan } = outlook;
  return (
    <Section title={words.plan}>
      {isPlanned(plan) && <Planned model={model} outlook={outlook} plan={plan} />}
      <OpenJobs open={plan.open} model={model} />
      <PricesLine outlook={outlook} model={model} />
    </Section>
  );
}

function Planned({ plan, ...rest }: PlanProps & { readonly plan: JobPlan }) {
  const format = formatter.value;
  const { visits, later } = plan;
  return (
    <>
      {visits.length === 0 && <p>{words.noJobs}</p>}
      {visits.map((visit) => (
        <VisitCard key={visit.hours} visit={visit} plan={plan} {...rest} />
      ))}
      {later.length > 0 && (
        <div class={styles.visit}>
          <h3>{words.later}</h3>
          <p class={forms.soft}>{words.laterLine(aboutHours(plan.horizonHours, format))}</p>
          {later.map((each) => (
            <JobCard key={each.job.id} each={each} plan={plan} visit={undefined} {...rest} />
          ))}
        </div>
      )}
      {visits.length > 0 && (
        <ul class={forms.bullets}>
          <li>{savesText(plan, plan.everythingNowMinor, words.everythingNow)}</li>
          <li>{savesText(plan, plan.eachWhenDueMinor, words.eachWhenDue)}</li>
        </ul>
      )}
      {visits.length > 0 && <p class={forms.soft}>{words.reckoned}</p>}
      {plan.kept && <p class={forms.soft}>{words.kept}</p>}
      {!plan.exact && (
        <p class={forms.soft}>{words.notExact(format.money(plan.boundMinor, plan.currency))}</p>
      )}
    </>
  );
}

function savesText(
  { costMinor, currency, horizonHours }: JobPlan,
  otherMinor: number,
  other: string,
): string {
  const format = formatter.value;
  const saved = otherMinor - costMinor;
  // Below one whole unit nobody saves anything.
  return saved < 100
    ? words.savesNothing(other)
    : words.saves(aboutMoney(saved, currency, format), aboutHours(horizonHours, format), other);
}

interface VisitProps extends PlanProps {
  readonly visit: Visit;
  readonly plan: JobPlan;
}

function VisitCard({ visit, plan, ...rest }: VisitProps) {
  const format = formatter.value;
  const title =
    visit.inHours === 0 ? words.visitNow : words.byThen(whenText(rest.model, rest.outlook, visit.inHours));
  return (
    <div class={styles.visit}>
      <h3>{title}</h3>
      <p>
        <strong>{words.outlay(aboutMoney(visit.outlayMinor, plan.currency, format))}</strong>
        {visit.setUpMinor > 0 && (
          <span class={forms.soft}> {words.setUp(format.money(visit.setUpMinor, plan.currency))}</span>
        )}
      </p>
      {visit.jobs.map((each) => (
        <JobCard key={each.job.id} each={each} plan={plan} visit={visit} {...rest} />
      ))}
    </div>
  );
}

interface JobProps extends PlanProps {
  readonly each: CostedJob;
  readonly plan: JobPlan;
  readonly visit: Visit | undefined;
}

function whyText({ each }: Pick<JobProps, 'each'>): string {
  const { job, dueHours } = each;
  if (job.call !== 'run') return words.asked(callWords[job.call].word);
  return words.due(aboutHours(dueHours, formatter.value));
}

function JobCard({ each, plan, visit, model, outlook }: JobProps) {
  const format = formatter.value;
  const money = (minor: number): string => format.money(minor, plan.currency);
  const { cost, job } = each;
  const isHeld = outlook.holds.has(job.id);
  return (
    <Fold
      title={jobText(each)}
      line={`${money(each.plannedMinor)}, ${whyText({ each })}${isHeld ? `, ${words.isHeld}` : ''}`}
    >
      <dl class={forms.figures}>
        <div>
          <dt>{words.parts}</dt>
          <dd>{money(cost.partsMinor)}</dd>
        </div>
        <div>
          <dt>{words.labour(format.hours(cost.labourHours))}</dt>
          <dd>{money(cost.labourMinor)}</dd>
        </div>
        <div>
          <dt>{words.downtime}</dt>
          <dd>{money(cost.downtimeMinor)}</dd>
        </div>
      </dl>
      {[...new Map(cost.sources.map((source) => [source.text, source])).values()].map((source) => (
        <SourceLine key={source.text} source={source} />
      ))}
      <Holds job={job.id} visit={visit} model={model} isHeld={isHeld} />
    </Fold>
  );
}

interface HoldProps {
  readonly job: string;
  readonly visit: Visit | undefined;
  readonly model: WalkModel;
  readonly isHeld: boolean;
}

/** What the person fixes about a job; the plan is made anew around it. */
function Holds({ job, visit, model, isHeld }: HoldProps) {
  const machine = model.walk.machine as RecordKey<'machine'>;
  const meter = model.walk.meterHours;
  const done = async (saved: Promise<Saved>): Promise<void> => {
    const answer = await saved;
    if (!answer.ok) tell(notSavedLine(answer.error));
  };
  // Half an hour either way: a meter is read to tenths, and a sum of them is not exact.
  const at = (hours: number) => () =>
    void done(setHold(machine, job, { v: 1, from: Math.max(0, hours - 0.5), to: hours + 0.5 }));
  return (
    <div class={styles.holds}>
      {visit && meter !== undefined && visit.inHours > 0 && (
        <>
          <Button onTap={at(meter + visit.inHours)}>{words.holdHere}</Button>
          <Button onTap={at(meter)}>{words.holdNow}</Button>
        </>
      )}
      {!visit && meter !== undefined && <Button onTap={at(meter)}>{words.holdNow}</Button>}
      <Button onTap={() => void done(setHold(machine, job, { v: 1, skip: true }))}>{words.holdOut}</Button>
      {isHeld && <Button onTap={() => void done(clearHold(machine, job))}>{words.holdFree}</Button>}
    </div>
  );
}

function OpenJobs({ open, model }: { open: readonly OpenJob[]; model: WalkModel }) {
  if (open.length === 0) return null;
  return (
    <div class={styles.visit}>
      <h3>{words.openJobs}</h3>
      {open.map((each) => (
        <div key={each.job.id} class={styles.open}>
          <p>
            <strong>{jobText(each)}</strong>: {whyOpen(each)}
          </p>
          {(each.why.kind === 'held-off' || each.why.kind === 'no-visit') && (
            <Holds job={each.job.id} visit={undefined} model={model} isHeld />
          )}
        </div>
      ))}
    </div>
  );
}

function PricesLine({ outlook: { costs }, model }: PlanProps) {
  const { route } = useLocation();
  const { prices, rates, pricesKey, ratesKey } = costs;
  const isShared = model.machine.prices === undefined && model.machine.rates === undefined;
  const own = async (): Promise<void> => {
    if (!prices || !rates || pricesKey === undefined || ratesKey === undefined) return;
    const machine = model.walk.machine as RecordKey<'machine'>;
    const made = await ownCosts(machine, { key: pricesKey, value: prices }, { key: ratesKey, value: rates });
    tell(made.ok ? costWords.ownMade : notSavedLine(made.error));
    if (made.ok) route(`${bookPath(made.value)}/edit`);
  };
  return (
    <div class={styles.holds}>
      {prices && rates && <p class={forms.soft}>{words.pricesFrom(prices.name, rates.name)}</p>}
      {isShared && prices && rates && <Button onTap={() => void own()}>{costWords.own}</Button>}
      {pricesKey !== undefined && <ButtonLink href={bookPath(pricesKey)}>{words.changePrices}</ButtonLink>}
      {ratesKey !== undefined && <ButtonLink href={bookPath(ratesKey)}>{words.changeRates}</ButtonLink>}
    </div>
  );
}
