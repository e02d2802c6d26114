import { parsePlace } from '../core/keys.ts';
import type { Observed, ObservedOf } from '../core/readings.ts';
import { meanSagMm } from '../core/sag.ts';
import { isSized, sizeOf } from '../core/sizes.ts';
import type { PlacedReading } from '../core/states.ts';
import { fromPhoto, toolWords, unitShort, unseenWords } from '../words/en/choices.ts';
import { csvHeads as heads, csvWords as words } from '../words/en/csv.ts';
import { placeName } from '../words/en/items.ts';
import { sagMethodWords } from '../words/en/sag.ts';
import { entry } from '../words/entry.ts';
import { csvOf, type Cell, type Column } from './csv-cells.ts';
import { walkColumns, type CsvReader, type WalkOf } from './csv.ts';
import { isoMoment } from './iso-moment.ts';

/** A walk with what was read on it. */
export interface ReadWalkOf extends WalkOf {
  readonly readings: readonly PlacedReading[];
}

interface Row extends WalkOf {
  readonly at: PlacedReading;
  readonly what: Observed;
}

function sizeCell({ reading }: PlacedReading): Cell {
  return isSized(reading.what) ? sizeOf(reading, reading.what, {}).mm : undefined;
}

type Typed = ObservedOf<'length' | 'pitch' | 'tread' | 'pair' | 'sag' | 'crack'>;

const isTyped = (what: Observed): what is Typed =>
  what.kind === 'sag' || what.kind === 'crack' || isSized(what);

function typedCell(what: Observed): Cell {
  const typed = isTyped(what) ? (what.typed ?? []) : [];
  if (typeof typed === 'string') return typed;
  return typed.length === 0 ? undefined : typed.join(' / ');
}

function unitCell(what: Observed): Cell {
  const unit = isTyped(what) ? what.unit : undefined;
  return unit && unitShort[unit];
}

function findingCell({ item }: PlacedReading, what: Observed, { format }: CsvReader): Cell {
  if (what.kind === 'pass') return words.passed;
  return what.kind === 'finding' ? format.finding(item, what.finding) : undefined;
}

const foundColumns = (reader: CsvReader): readonly Column<Row>[] => [
  { head: heads.finding, cell: ({ at, what }) => findingCell(at, what, reader) },
  { head: heads.count, cell: ({ what }) => (what.kind === 'finding' ? what.count : undefined) },
  {
    head: heads.share,
    cell: ({ what }) => (what.kind === 'finding' && what.share !== undefined ? what.share * 100 : undefined),
  },
  { head: heads.notSeen, cell: ({ what }) => (what.kind === 'unseen' ? unseenWords[what.why] : undefined) },
];

const sizeColumns: readonly Column<Row>[] = [
  { head: heads.sizeRead, cell: ({ at }) => sizeCell(at) },
  { head: heads.sag, cell: ({ what }) => (what.kind === 'sag' ? meanSagMm(what) : undefined) },
  {
    head: heads.sagMethod,
    cell: ({ what }) => (what.kind === 'sag' ? sagMethodWords[what.method].reads : undefined),
  },
  { head: heads.crackLengthRead, cell: ({ what }) => (what.kind === 'crack' ? what.lengthMm : undefined) },
  { head: heads.crackDepthRead, cell: ({ what }) => (what.kind === 'crack' ? what.depthMm : undefined) },
  {
    head: heads.cord,
    cell: ({ what }) => (what.kind === 'crack' ? (what.cordVisible ? words.yes : words.no) : undefined),
  },
  { head: heads.typed, cell: ({ what }) => typedCell(what) },
  { head: heads.unit, cell: ({ what }) => unitCell(what) },
];

function toolCell({ reading: { tool, from } }: PlacedReading): Cell {
  if (from) return fromPhoto;
  return tool === undefined ? undefined : (entry<string>(toolWords, tool) ?? tool);
}

const columns = (reader: CsvReader): readonly Column<Row>[] => [
  ...walkColumns,
  { head: heads.place, cell: ({ at }) => placeName(parsePlace(at.place)) },
  { head: heads.item, cell: ({ at }) => reader.format.item(at.item) },
  { head: heads.number, cell: ({ at }) => at.n },
  { head: heads.spot, cell: ({ at }) => at.reading.spot },
  ...foundColumns(reader),
  ...sizeColumns,
  { head: heads.tool, cell: ({ at }) => toolCell(at) },
  { head: heads.readAt, cell: ({ at }) => isoMoment(at.reading.at) },
  { head: heads.note, cell: ({ at }) => at.reading.note },
  { head: heads.walk, cell: ({ key }) => key },
];

/** Readings as a table, a row for each as it was made; lengths in mm, and as the person typed them. */
export function readingsCsv(walks: readonly ReadWalkOf[], reader: CsvReader): string {
  const rows = walks.flatMap(({ readings, ...walk }) =>
    readings.map((at): Row => ({ ...walk, at, what: at.reading.what })),
  );
  return csvOf(columns(reader), rows, reader.style);
}
