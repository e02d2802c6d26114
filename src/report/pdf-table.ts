import type { TableBlock } from './blocks.ts';
import { columnsOf, type Column } from './pdf-columns.ts';
import type { Piece } from './pdf-flow.ts';
import { rule, type Ink } from './pdf-ink.ts';
import { paragraphPieces, type Desk, type Setting } from './pdf-lines.ts';
import { type } from './pdf-paper.ts';
import { rowPieces, type Cell } from './pdf-row.ts';
import { addElement, type Element } from './pdf-tree.ts';

const padding = 3;
/** Room to write in by hand, in points. */
const blankHeight = 22;
/** A row beside the head still has to fit on a page; shares of the page's height. */
const mostRow = 0.6;
const mostHead = 0.3;

/** Rows whole, the head above the first and again on each page that begins within the table. */
export function tablePieces(table: TableBlock, desk: Desk): readonly Piece[] {
  const element = addElement(desk.root, 'Table');
  const caption = captionPieces(table, desk, element);
  const columns = columnsOf(table, desk);
  const heads = headPieces(table, columns, desk, addElement(element, 'TR'));
  const [head] = heads;
  const isSaidAgain = heads.length === 1 && head !== undefined && head.height <= mostHead * desk.height;
  const rows = table.rows.flatMap((row) => bodyPieces(row, columns, desk, addElement(element, 'TR')));
  return [
    ...caption,
    ...heads.map((piece) => ({ ...piece, keep: rows.length > 0 })),
    ...rows.map((piece) => (isSaidAgain ? { ...piece, head } : piece)),
  ];
}

function captionPieces({ caption }: TableBlock, desk: Desk, table: Element): readonly Piece[] {
  const lines = desk.type.lines(caption, desk.width, type.body.size);
  if (lines.length === 0) return [];
  const setting = { size: type.body, bold: true, gap: 12 };
  const pieces = paragraphPieces(lines, addElement(table, 'Caption'), setting);
  return pieces.map((piece) => ({ ...piece, keep: true }));
}

function headPieces(
  table: TableBlock,
  columns: readonly Column[],
  desk: Desk,
  row: Element,
): readonly Piece[] {
  const cells = columns.map((column, index) =>
    cellOf(addElement(row, 'TH', { scope: 'Column' }), table.head[index], column, desk, {
      bold: true,
      colour: 'soft',
    }),
  );
  return rowPieces(cells, {
    gap: table.caption === '' ? 12 : 0,
    padding,
    leastHeight: 0,
    mostHeight: mostRow * desk.height,
    atFoot: true,
    rules: (height) => [rule([0, height, desk.width, height], 'ink', 0.9)],
  });
}

function bodyPieces(
  row: readonly string[],
  columns: readonly Column[],
  desk: Desk,
  element: Element,
): readonly Piece[] {
  const cells = columns.map((column, index) => {
    const owner = index === 0 ? addElement(element, 'TH', { scope: 'Row' }) : addElement(element, 'TD');
    return cellOf(owner, row[index], column, desk, {});
  });
  return rowPieces(cells, {
    gap: 0,
    padding,
    leastHeight: columns.at(-1)?.isBlank === true ? blankHeight : 0,
    mostHeight: mostRow * desk.height,
    rules: (height) => rowRules(columns, height, desk),
  });
}

function cellOf(
  owner: Element,
  text: string | undefined,
  { x, width, isFigure, size }: Column,
  desk: Desk,
  look: Omit<Setting, 'size'>,
): Cell {
  const lines = desk.type.lines(text ?? '', width, size.size);
  return { owner, lines, setting: { ...look, size, x, ...(isFigure ? { right: x + width } : {}) } };
}

function rowRules(columns: readonly Column[], height: number, desk: Desk): readonly Ink[] {
  const blank = columns.filter(({ isBlank }) => isBlank);
  const colour = blank.length > 0 ? 'line' : 'faint';
  return [
    rule([0, height, desk.width, height], colour, 0.6),
    ...blank.map(({ x }) => rule([x - 5, 0, x - 5, height], 'line', 0.4)),
  ];
}
