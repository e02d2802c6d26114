import type { TableBlock } from './blocks.ts';
import type { Desk } from './pdf-lines.ts';
import { type, type TypeSize } from './pdf-paper.ts';

/** Where the text of a column stands; lengths are points. */
export interface Column {
  readonly x: number;
  readonly width: number;
  readonly isFigure: boolean;
  readonly size: TypeSize;
}

/** Between the text of two columns. */
const between = 10;
/** A long word does not make a column wider than this share of the table before it is broken. */
const mostWord = 0.3;

interface Wish {
  /** The widest word, so that none is broken. */
  readonly least: number;
  /** The widest cell in one line. */
  readonly most: number;
}

/** Widths by what the columns hold: whole words first, then the rest in proportion to what is missing to one line. */
export function columnsOf(table: TableBlock, desk: Desk): readonly Column[] {
  const count = Math.max(1, table.head.length);
  const gaps = Math.min(between, (0.4 * desk.width) / count);
  const size = sizeFor(desk.width / count);
  const room = desk.width - gaps * (count - 1);
  const wishes = Array.from({ length: count }, (_, index) => wishOf(table, index, size, room, desk));
  const widths = widthsOf(wishes, room);
  let x = 0;
  return widths.map((width, index) => {
    const column = { x, width, isFigure: table.figures.includes(index), size };
    x += width + gaps;
    return column;
  });
}

/** Smaller type where many columns share the page, so that at least one character fits. */
function sizeFor(share: number): TypeSize {
  if (share > 45) return type.table;
  const size = Math.min(7, share / 3);
  return { size, leading: 1.35 * size };
}

function wishOf(table: TableBlock, index: number, { size }: TypeSize, room: number, desk: Desk): Wish {
  const cells = [table.head[index] ?? '', ...table.rows.map((row) => row[index] ?? '')];
  const widest = (measure: (text: string, size: number) => number): number =>
    // A hair more than measured, so that rounding never breaks what just fits.
    Math.max(0, ...cells.map((cell) => measure(cell, size))) + 0.01;
  const least = Math.min(widest(desk.type.widestWord), mostWord * room);
  return { least: Math.max(least, size), most: Math.max(widest(desk.type.widest), size) };
}

function widthsOf(wishes: readonly Wish[], room: number): readonly number[] {
  const sum = (of: (wish: Wish) => number): number => wishes.reduce((all, wish) => all + of(wish), 0);
  const most = sum((wish) => wish.most);
  const least = sum((wish) => wish.least);
  // What is over goes to the columns in proportion, the first, which names the row, included.
  if (most <= room) return wishes.map((wish) => wish.most + ((room - most) * wish.most) / most);
  if (least >= room) return wishes.map((wish) => (wish.least * room) / least);
  const missing = most - least;
  return wishes.map((wish) => wish.least + ((room - least) * (wish.most - wish.least)) / missing);
}
