import { horizonHours, type PartHours } from '../core/hours-left.ts';
import type { Machine } from '../core/machine.ts';
import type { Reason } from '../core/reason.ts';
import type { ItemOutcome } from '../core/score.ts';
import type { Source } from '../core/source.ts';
import { stateKey, type ItemState } from '../core/states.ts';
import type { Walk } from '../core/walk.ts';
import { callWords, meanwhileWords, openCall } from '../words/en/calls.ts';
import { purposeWords } from '../words/en/choices.ts';
import { csvHeads as heads, csvWords as words } from '../words/en/csv.ts';
import { historyFaultWords } from '../words/en/history.ts';
import { placeName } from '../words/en/items.ts';
import { noteWords } from '../words/en/notes.ts';
import { openLine } from '../words/en/open.ts';
import { sourceMarkWords } from '../words/en/sources.ts';
import type { Formatter } from '../words/format.ts';
import { csvOf, type Cell, type Column, type CsvStyle } from './csv-cells.ts';
import { dayOf, isoMoment } from './iso-moment.ts';

/** How a reader reads: the pair of marks, and sentences in the reader's units. */
export interface CsvReader {
  readonly style: CsvStyle;
  readonly format: Formatter;
  readonly reasonText: (reason: Reason) => string;
}

/** A walk with its machine. */
export interface WalkOf {
  readonly key: string;
  readonly walk: Walk;
  readonly machine: Machine;
}

/** A scored walk; hours left are those of its machine at this walk, where they are known. */
export interface ScoredWalkOf extends WalkOf {
  readonly outcomes: readonly ItemOutcome[];
  readonly parts?: readonly PartHours[];
}

interface Row extends WalkOf {
  readonly outcome: ItemOutcome;
  readonly state: ItemState;
  readonly part: PartHours | undefined;
}

/** Columns that say which machine and walk a row is of. */
export const walkColumns: readonly Column<WalkOf>[] = [
  { head: heads.machine, cell: ({ machine }) => machine.name },
  { head: heads.pin, cell: ({ machine }) => machine.pin },
  { head: heads.started, cell: ({ walk }) => isoMoment(walk.startedAt) },
  { head: heads.day, cell: ({ walk }) => dayOf(walk.startedAt) },
  { head: heads.meter, cell: ({ walk }) => walk.meterHours },
];

const most = (values: readonly number[]): Cell => (values.length === 0 ? undefined : Math.max(...values));

function findingOf({ item, finding, passed }: ItemState, { format }: CsvReader): Cell {
  if (finding !== undefined) return format.finding(item.id, finding);
  return passed ? words.passed : undefined;
}

function cordOf({ cracks }: ItemState): Cell {
  if (cracks.length === 0) return undefined;
  return cracks.some(({ cordVisible }) => cordVisible) ? words.yes : words.no;
}

const readColumns = (reader: CsvReader): readonly Column<Row>[] => [
  { head: heads.finding, cell: ({ state }) => findingOf(state, reader) },
  { head: heads.count, cell: ({ state }) => state.count },
  { head: heads.share, cell: ({ state: { share } }) => share && share * 100 },
  { head: heads.size, cell: ({ state }) => state.sampled?.worst.mm },
  { head: heads.sizeU, cell: ({ state }) => state.sampled?.worst.uMm },
  { head: heads.spots, cell: ({ state }) => state.sampled?.samples },
  { head: heads.mean, cell: ({ state }) => state.sampled?.meanMm },
  { head: heads.fresh, cell: ({ state }) => state.wear?.newMm },
  { head: heads.limit, cell: ({ state }) => state.wear?.limitMm },
  { head: heads.worn, cell: ({ state }) => state.wear?.percent },
  { head: heads.wornWithin, cell: ({ state }) => state.wear?.expanded },
  { head: heads.sag, cell: ({ state }) => state.sag?.valueMm },
  { head: heads.sagLow, cell: ({ state }) => state.sag?.lowMm },
  { head: heads.sagHigh, cell: ({ state }) => state.sag?.highMm },
  { head: heads.crackLength, cell: ({ state }) => most(state.cracks.map(({ lengthMm }) => lengthMm)) },
  { head: heads.crackDepth, cell: ({ state }) => most(state.cracks.map(({ depthMm }) => depthMm)) },
  { head: heads.cord, cell: ({ state }) => cordOf(state) },
];

const sourceOf = ({ wear, sag }: ItemState): Source | undefined =>
  wear?.chosen.limit.source ?? sag?.spec.source;

const joined = (sentences: readonly string[]): Cell =>
  sentences.length === 0 ? undefined : sentences.join(' ');

function callOf({ atLeast, open }: ItemOutcome): string {
  return atLeast === 'run' && open.length > 0 ? openCall.word : callWords[atLeast].word;
}

const judgedColumns = ({ format, reasonText }: CsvReader): readonly Column<Row>[] => [
  { head: heads.source, cell: ({ state }) => sourceOf(state)?.text },
  {
    head: heads.sourceMark,
    cell: ({ state }) => {
      const source = sourceOf(state);
      return source && sourceMarkWords[source.mark];
    },
  },
  { head: heads.call, cell: ({ outcome }) => callOf(outcome) },
  { head: heads.meanwhile, cell: ({ outcome }) => meanwhileWords[outcome.meanwhile].word },
  { head: heads.reason, cell: ({ outcome }) => joined(outcome.reasons.map(reasonText)) },
  { head: heads.open, cell: ({ outcome }) => joined(outcome.open.map((each) => openLine(each, format))) },
  { head: heads.notes, cell: ({ outcome }) => joined(outcome.notes.map(({ kind }) => noteWords[kind])) },
];

/** Why a part has no hours left, or which of its hours nobody can tell. */
function leftNote(part: PartHours | undefined, format: Formatter): Cell {
  const fault = part?.open[0];
  if (fault) return historyFaultWords[fault].what;
  return part?.left && !Number.isFinite(part.left.high)
    ? words.beyond(format.hours(horizonHours))
    : undefined;
}

const leftColumns = ({ format }: CsvReader): readonly Column<Row>[] => [
  { head: heads.leftLow, cell: ({ part }) => part?.left?.low },
  { head: heads.leftMiddle, cell: ({ part }) => part?.left?.middle },
  { head: heads.leftHigh, cell: ({ part }) => part?.left?.high },
  { head: heads.leftNote, cell: ({ part }) => leftNote(part, format) },
];

const placeOf = ({ side, item, number }: ItemState): string =>
  placeName({ side, component: item.component, ...(number !== undefined && { number }) });

const itemColumns = (reader: CsvReader): readonly Column<Row>[] => [
  ...walkColumns,
  { head: heads.purpose, cell: ({ walk }) => purposeWords[walk.purpose].label },
  { head: heads.place, cell: ({ state }) => placeOf(state) },
  { head: heads.item, cell: ({ state }) => reader.format.item(state.item.id) },
  ...readColumns(reader),
  ...judgedColumns(reader),
  ...leftColumns(reader),
  { head: heads.walk, cell: ({ key }) => key },
];

function rowsOf({ key, walk, machine, outcomes, parts = [] }: ScoredWalkOf): readonly Row[] {
  const byPlace = new Map(parts.map((part) => [stateKey(part.history.place, part.history.item.id), part]));
  return outcomes.map((outcome) => {
    const { state } = outcome;
    return { key, walk, machine, outcome, state, part: byPlace.get(stateKey(state.place, state.item.id)) };
  });
}

/** Walks as a table: a row for each item at each place, lengths in mm, percent worn from 0 to 100. */
export const itemsCsv = (walks: readonly ScoredWalkOf[], reader: CsvReader): string =>
  csvOf(itemColumns(reader), walks.flatMap(rowsOf), reader.style);
