import { horizonHours, type PartHours } from '../../core/hours-left.ts';
import { isPlanned, type Outlook } from '../../core/outlook.ts';
import { planHorizonHours, type JobPlan, type Visit } from '../../core/job-plan.ts';
import { ahead as words } from '../../words/en/ahead.ts';
import { makeDates } from '../../words/dates.ts';
import {
  aboutHours,
  aboutMoney,
  aheadWhen,
  jobsText,
  leftText,
  partName,
  whyOpen,
} from '../../words/ahead-text.ts';
import { formatter } from '../data/format.ts';
import { preferences } from '../data/preferences.ts';
import type { WalkModel } from '../data/walk-model.ts';
import forms from '../parts/forms.module.css';

interface AheadProps {
  readonly model: WalkModel;
  readonly outlook: Outlook;
}

/** The meter reading and the day of something so many hours from the walk. */
export function whenText(model: WalkModel, outlook: Outlook, inHours: number): string {
  const dates = makeDates(preferences.value.locale);
  return aheadWhen(model.walk, outlook, inHours, { format: formatter.value, dates });
}

const isFigured = (part: PartHours): part is PartHours & { readonly left: NonNullable<PartHours['left']> } =>
  part.left !== undefined && part.left.low <= horizonHours;

function visitText({ model, outlook }: AheadProps, plan: JobPlan, visit: Visit, isFirst: boolean): string {
  const what = jobsText(visit.jobs);
  const money = aboutMoney(visit.outlayMinor, plan.currency, formatter.value);
  if (visit.inHours === 0) return words.now(what, money);
  return (isFirst ? words.by : words.thenBy)(whenText(model, outlook, visit.inHours), what, money);
}

function answer(props: AheadProps): string {
  const format = formatter.value;
  const { plan, hours } = props.outlook;
  const first = hours.parts.find(isFigured);
  if (!isPlanned(plan)) {
    const [open] = plan.open;
    return open ? words.costsOpen(whyOpen(open)) : words.noFigures;
  }
  const [visit] = plan.visits;
  if (visit) return visitText(props, plan, visit, true);
  const within = aboutHours(planHorizonHours, format);
  if (first) return words.nothingFirst(within, partName(first, format), leftText(first.left, format));
  return hours.parts.some(({ left }) => left) ? words.nothing(within) : words.noFigures;
}

/** The visit after the first, so that what is done now does not hide what is coming. */
function next(props: AheadProps): string | undefined {
  const { plan } = props.outlook;
  const visit = isPlanned(plan) ? plan.visits[1] : undefined;
  return isPlanned(plan) && visit ? visitText(props, plan, visit, false) : undefined;
}

/** The answer in one sentence: what, by when, about how much. */
export function AheadLead(props: AheadProps) {
  const then = next(props);
  const open = props.outlook.hours.parts.filter((part) => part.open.length > 0).length;
  return (
    <section class={forms.lead} aria-label={words.plan}>
      <p class={forms.first}>{answer(props)}</p>
      {then !== undefined && <p>{then}</p>}
      {open > 0 && <p>{words.someOpen(open)}</p>}
      <p class={forms.soft}>{words.allEstimate}</p>
    </section>
  );
}
