import { minorDigits } from '../core/currency.ts';
import type { CostedJob } from '../core/job-costs.ts';
import type { JobPlan, Visit } from '../core/job-plan.ts';
import type { Outlook } from '../core/outlook.ts';
import { jobWords } from '../words/en/ahead.ts';
import { callWords } from '../words/en/calls.ts';
import { csvHeads as heads, csvWords as words } from '../words/en/csv.ts';
import { sideNames } from '../words/en/items.ts';
import { csvOf, type Column } from './csv-cells.ts';
import { walkColumns, type CsvReader, type WalkOf } from './csv.ts';
import { dayIn } from './due-day.ts';

/** A walk with the job plan of its machine. */
export interface PlannedWalkOf extends WalkOf {
  readonly plan: JobPlan;
  readonly outlook: Pick<Outlook, 'week' | 'meterOffset'>;
}

interface Row extends PlannedWalkOf {
  readonly each: CostedJob;
  /** What lies beyond the horizon has no visit. */
  readonly visit: Visit | undefined;
  readonly visitName: string;
  /** What the visit shares between its jobs stands in its first row. */
  readonly isFirst: boolean;
}

function dayCell({ walk, outlook, visit }: Row): string | undefined {
  const at = visit && dayIn(walk, outlook.week, visit.inHours);
  return at && 'day' in at ? at.day : undefined;
}

const visitColumns: readonly Column<Row>[] = [
  { head: heads.visit, cell: ({ visitName }) => visitName },
  { head: heads.visitDay, cell: dayCell },
  { head: heads.visitMeter, cell: ({ visit, outlook }) => visit && visit.hours - outlook.meterOffset },
  { head: heads.visitIn, cell: ({ visit }) => visit?.inHours },
];

const jobColumns: readonly Column<Row>[] = [
  { head: heads.job, cell: ({ each }) => jobWords[each.job.kind] },
  { head: heads.side, cell: ({ each }) => sideNames[each.job.side] },
  { head: heads.count, cell: ({ each }) => each.job.count },
  { head: heads.call, cell: ({ each }) => callWords[each.job.call].word },
  { head: heads.dueIn, cell: ({ each }) => each.dueHours },
  { head: heads.labour, cell: ({ each }) => each.cost.labourHours },
];

/** Money in whole units with its decimals, the currency in the heading. */
function moneyColumns(currency: string): readonly Column<Row>[] {
  const unit = 10 ** minorDigits(currency);
  return [
    { head: words.parts(currency), cell: ({ each }) => each.cost.partsMinor / unit },
    { head: words.labour(currency), cell: ({ each }) => each.cost.labourMinor / unit },
    { head: words.downtime(currency), cell: ({ each }) => each.cost.downtimeMinor / unit },
    {
      head: words.setUp(currency),
      cell: ({ visit, isFirst }) => (visit && isFirst ? visit.setUpMinor / unit : undefined),
    },
  ];
}

function rowsOf(planned: PlannedWalkOf): readonly Row[] {
  const { visits, later } = planned.plan;
  const rows = visits.flatMap((visit, at) => {
    const visitName = visit.inHours <= 0 ? words.now : words.at(at + 1);
    return visit.jobs.map((each, nth): Row => ({ ...planned, each, visit, visitName, isFirst: nth === 0 }));
  });
  return [
    ...rows,
    ...later.map((each) => ({ ...planned, each, visit: undefined, visitName: words.later, isFirst: false })),
  ];
}

/** The job plan of a machine as a table, a row for each job; the money of a visit's rows adds up to what it costs. */
export const planCsv = (planned: PlannedWalkOf, { style }: CsvReader): string =>
  csvOf(
    [
      ...walkColumns,
      ...visitColumns,
      ...jobColumns,
      ...moneyColumns(planned.plan.currency),
      { head: heads.walk, cell: ({ key }) => key },
    ],
    rowsOf(planned),
    style,
  );
