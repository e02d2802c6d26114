import type { Outlook } from '../core/outlook.ts';
import type { PartFact } from '../core/part-facts.ts';
import { factAsk } from '../core/part-kinds.ts';
import type { OrderGroup, OrderLine, OrderWhen, PartsToOrder } from '../core/parts-to-order.ts';
import { whyOpen } from '../words/ahead-text.ts';
import { csvHeads, csvWords } from '../words/en/csv.ts';
import { sideNames } from '../words/en/items.ts';
import {
  factWords,
  fromWords,
  howWords,
  orderHeads as heads,
  ordering,
  partNames,
} from '../words/en/ordering.ts';
import { entry } from '../words/entry.ts';
import { doubtTexts, whyTexts } from '../words/order-text.ts';
import { csvOf, type Cell, type Column } from './csv-cells.ts';
import { walkColumns, type CsvReader, type WalkOf } from './csv.ts';
import { dayIn } from './due-day.ts';

/** A walk with the parts to order after it. */
export interface OrderedWalkOf extends WalkOf {
  readonly order: PartsToOrder;
  readonly outlook: Pick<Outlook, 'week' | 'meterOffset'>;
}

interface Row extends OrderedWalkOf {
  readonly when: OrderWhen;
  readonly line: OrderLine;
  /** Absent for a part of which nothing has to be known. */
  readonly fact: PartFact | undefined;
}

function whenCell({ when }: Row): Cell {
  if (when.kind === 'later') return ordering.later;
  if (when.kind === 'unplanned') return ordering.unplanned(whyOpen(when.open));
  return when.inHours === 0 ? csvWords.now : undefined;
}

function dayCell({ when, walk, outlook }: Row): Cell {
  const at = when.kind === 'visit' ? dayIn(walk, outlook.week, when.inHours) : undefined;
  return at && 'day' in at ? at.day : undefined;
}

const whenColumns: readonly Column<Row>[] = [
  { head: heads.when, cell: whenCell },
  { head: heads.inHours, cell: ({ when }) => (when.kind === 'visit' ? when.inHours : undefined) },
  {
    head: heads.atMeter,
    cell: ({ when, outlook }) => (when.kind === 'visit' ? when.hours - outlook.meterOffset : undefined),
  },
  { head: heads.day, cell: dayCell },
];

const partColumns = ({ format }: CsvReader): readonly Column<Row>[] => [
  { head: heads.part, cell: ({ line }) => partNames[line.kind] },
  { head: csvHeads.side, cell: ({ line }) => sideNames[line.side] },
  { head: heads.positions, cell: ({ line }) => line.numbers.join(', ') },
  { head: heads.count, cell: ({ line }) => line.count },
  { head: heads.partNumber, cell: ({ line }) => line.partNumber },
  { head: heads.match, cell: ({ line }) => (line.match ? csvWords.yes : csvWords.no) },
  { head: heads.why, cell: ({ line }) => whyTexts(line, format).join('; ') },
];

const isLength = ({ name }: PartFact): boolean => {
  const { kind } = factAsk(name);
  return kind === 'length' || kind === 'spaces';
};

/** Texts as they are, choices in words, counts as numbers; lengths have a column of their own. */
function valueCell(fact: PartFact): Cell {
  const { name, value } = fact;
  if (value === undefined || isLength(fact)) return undefined;
  return typeof value === 'string' ? (entry<string>(factWords[name].choices ?? {}, value) ?? value) : value;
}

const mmCell = (fact: PartFact): Cell => (isLength(fact) ? fact.value : undefined);

const factColumns: readonly Column<Row>[] = [
  { head: heads.fact, cell: ({ fact }) => fact && factWords[fact.name].name },
  { head: heads.value, cell: ({ fact }) => fact && valueCell(fact) },
  { head: heads.valueMm, cell: ({ fact }) => fact && mmCell(fact) },
  { head: heads.within, cell: ({ fact }) => (fact?.uMm === undefined ? undefined : 2 * fact.uMm) },
  { head: heads.spaces, cell: ({ fact }) => fact?.spaces },
  { head: heads.again, cell: ({ fact }) => fact?.again },
  { head: heads.how, cell: ({ fact }) => fact && howWords[fact.how] },
  { head: heads.from, cell: ({ fact }) => fact?.from && fromWords[fact.from] },
  { head: heads.question, cell: ({ fact }) => fact && doubtTexts(fact).join(' ') },
];

const rowsOf = (of: OrderedWalkOf, { when, lines }: OrderGroup): readonly Row[] =>
  lines
    .filter(({ out }) => !out)
    .flatMap((line) => {
      const facts = line.facts.length === 0 ? [undefined] : line.facts;
      return facts.map((fact): Row => ({ ...of, when, line, fact }));
    });

/** The parts to order as a table, a row for each fact of each part; what is left out is not in it. */
export const orderCsv = (of: OrderedWalkOf, reader: CsvReader): string =>
  csvOf(
    [
      ...walkColumns,
      ...whenColumns,
      ...partColumns(reader),
      ...factColumns,
      { head: csvHeads.walk, cell: ({ key }) => key },
    ],
    of.order.groups.flatMap((group) => rowsOf(of, group)),
    reader.style,
  );
