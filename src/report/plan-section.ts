import type { CostedJob } from '../core/job-costs.ts';
import type { JobPlan, Visit } from '../core/job-plan.ts';
import type { Choice } from '../core/mend.ts';
import { isPlanned, type Outlook } from '../core/outlook.ts';
import { aboutHours, aboutMoney, aheadWhen, jobText, whyOpen } from '../words/ahead-text.ts';
import { ahead, effectWords, jobWords, notFeasibleWords } from '../words/en/ahead.ts';
import { callWords } from '../words/en/calls.ts';
import { report as words } from '../words/en/report.ts';
import { capital } from '../words/outcome-text.ts';
import type { Block } from './blocks.ts';
import { heading, list, section, text } from './parts.ts';
import type { ReportInput } from './report-input.ts';

/** The job plan with its money, what is not in it, and how else one could go on. */
export function planSection(of: ReportInput): readonly Block[] {
  const { outlook } = of;
  if (!outlook) return [];
  const { plan, choices } = outlook;
  const open = plan.open.map((each) => words.openAt(capital(jobText(each)), whyOpen(each)));
  return section(words.plan, [
    text(words.planLine, 'small'),
    ...(isPlanned(plan) ? planned(plan, outlook, of) : []),
    ...(open.length === 0 ? [] : [heading(3, ahead.openJobs), ...list(open)]),
    ...(isPlanned(plan) ? choices.flatMap((choice) => waysOf(choice, plan, of)) : []),
  ]);
}

function planned(plan: JobPlan, outlook: Outlook, of: ReportInput): readonly Block[] {
  const { visits, later, currency, horizonHours } = plan;
  const { format } = of;
  const horizon = aboutHours(horizonHours, format);
  return [
    ...(visits.length === 0 ? [text(ahead.noJobs)] : []),
    ...visits.flatMap((visit) => visitBlocks(visit, plan, outlook, of)),
    ...(later.length === 0
      ? []
      : [
          heading(3, ahead.later),
          text(ahead.laterLine(horizon)),
          ...list(later.map((each) => capital(`${jobText(each)}, ${whyText(each, of)}`))),
        ]),
    ...(visits.length === 0
      ? []
      : [
          ...list([
            savesText(plan, plan.everythingNowMinor, ahead.everythingNow, of),
            savesText(plan, plan.eachWhenDueMinor, ahead.eachWhenDue, of),
          ]),
          text(ahead.reckoned, 'small'),
        ]),
    ...(plan.kept ? [text(ahead.kept, 'small')] : []),
    ...(plan.exact ? [] : [text(ahead.notExact(format.money(plan.boundMinor, currency)), 'small')]),
  ];
}

function savesText(plan: JobPlan, otherMinor: number, other: string, { format }: ReportInput): string {
  const saved = otherMinor - plan.costMinor;
  // Below one whole unit nobody saves anything.
  return saved < 100
    ? ahead.savesNothing(other)
    : ahead.saves(aboutMoney(saved, plan.currency, format), aboutHours(plan.horizonHours, format), other);
}

function whyText({ job, dueHours }: CostedJob, { format }: ReportInput): string {
  if (job.call !== 'run') return ahead.asked(callWords[job.call].word);
  return Number.isFinite(dueHours) ? ahead.due(aboutHours(dueHours, format)) : '';
}

function visitBlocks(visit: Visit, plan: JobPlan, outlook: Outlook, of: ReportInput): readonly Block[] {
  const title =
    visit.inHours === 0 ? ahead.visitNow : ahead.byThen(aheadWhen(of.input.walk, outlook, visit.inHours, of));
  return [heading(3, title), visitTable(visit, plan, of)];
}

function visitTable(visit: Visit, { currency }: JobPlan, of: ReportInput): Block {
  const { format } = of;
  const money = (minor: number): string => format.money(minor, currency);
  const jobs = visit.jobs.map((each) => {
    const { partsMinor, labourHours, labourMinor, downtimeMinor } = each.cost;
    const labour = `${money(labourMinor)} (${format.hours(labourHours)})`;
    const sums = [money(partsMinor), labour, money(downtimeMinor), money(each.plannedMinor)];
    return [capital(jobText(each)), whyText(each, of), ...sums];
  });
  const blank = ['', '', '', ''];
  const setUp = visit.setUpMinor === 0 ? [] : [[words.setUp, ...blank, money(visit.setUpMinor)]];
  return {
    kind: 'table',
    caption: words.visitCaption,
    head: [words.job, words.because, words.parts, words.labour, words.standing, words.sum],
    figures: [2, 3, 4, 5],
    rows: [...jobs, ...setUp, [words.whole, ...blank, aboutMoney(visit.outlayMinor, currency, format)]],
  };
}

/** Each way to go on with a part: what it gains, costs, and does to its neighbours. */
function waysOf({ job, ways, closed }: Choice, { currency }: JobPlan, of: ReportInput): readonly Block[] {
  if (ways.length === 0) return [];
  const { format } = of;
  const title = `${words.other}: ${jobText({ job })}`;
  const effects = ways.flatMap((way) =>
    way.effects.map((effect) => words.openAt(capital(jobWords[way.kind]), effectWords[effect])),
  );
  const shut = closed.map(({ kind, why }) =>
    words.openAt(capital(jobWords[kind]), `${ahead.closed}: ${notFeasibleWords[why]}.`),
  );
  return [
    heading(3, title),
    {
      kind: 'table',
      caption: words.waysCaption,
      head: [words.way, words.gains, words.costs, words.anHour],
      figures: [1, 2, 3],
      rows: ways.map(({ kind, hoursGained, minor, perHour }) => [
        capital(jobWords[kind]),
        aboutHours(hoursGained, format),
        aboutMoney(minor, currency, format),
        format.money(Math.round(perHour), currency),
      ]),
    },
    ...list([...effects, ...shut]),
  ];
}
