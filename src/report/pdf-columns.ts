import type { TableBlock } from './blocks.ts';
import type { Desk } from './pdf-lines.ts';
import { type, type TypeSize } from './pdf-paper.ts';

/** Where the text of a column stands; lengths are points. */
export interface Column {
  readonly x: number;
  readonly width: number;
  readonly isFigure: boolean;
  /** To write in by hand: nothing below the head, here and in all columns after it. */
  readonly isBlank: boolean;
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
  readonly isBlank: boolean;
}

/** Widths by what the columns hold: whole words first, then the rest in proportion to what is missing to one line. */
export function columnsOf(table: TableBlock, desk: Desk): readonly Column[] {
  const count = Math.max(1, table.head.length);
  const gaps = Math.min(between, (0.4 * desk.width) / count);
  const room = desk.width - gaps * (count - 1);
  const wishesAt = (size: TypeSize): readonly Wish[] =>
    Array.from({ length: count }, (_, index) => wishOf(table, index, size, room, desk));
  const fits = (size: TypeSize): boolean => wishesAt(size).reduce((sum, { least }) => sum + least, 0) <= room;
  const size = sizes.find(fits) ?? narrowest(room / count);
  const wishes = wishesAt(size);
  const widths = widthsOf(wishes, room);
  let x = 0;
  return widths.map((width, index) => {
    const isFigure = table.figures.includes(index);
    const column = { x, width, isFigure, size, isBlank: wishes[index]?.isBlank ?? false };
    x += width + gaps;
    return column;
  });
}

/** Sizes of type to try, so that no word has to be broken. */
const sizes: readonly TypeSize[] = [
  type.table,
  type.small,
  { size: 7, leading: 9.6 },
  { size: 6.2, leading: 8.6 },
];

/** Where words are broken anyway; small enough for some characters in each column. */
function narrowest(share: number): TypeSize {
  const size = Math.min(7, share / 3);
  return { size, leading: 1.37 * size };
}

function wishOf(table: TableBlock, index: number, { size }: TypeSize, room: number, desk: Desk): Wish {
  const cells = [table.head[index] ?? '', ...table.rows.map((row) => row[index] ?? '')];
  const widest = (measure: (text: string, size: number) => number): number =>
    // A hair more than measured, so that rounding never breaks what just fits.
    Math.max(0, ...cells.map((cell) => measure(cell, size))) + 0.01;
  const least = Math.min(widest(desk.type.widestWord), mostWord * room);
  const isEmptyFrom = (row: readonly string[]): boolean => row.slice(index).every((cell) => cell === '');
  const isBlank = index > 0 && table.rows.length > 0 && table.rows.every(isEmptyFrom);
  return { least: Math.max(least, size), most: Math.max(widest(desk.type.widest), size), isBlank };
}

function widthsOf(wishes: readonly Wish[], room: number): readonly number[] {
  const sum = (of: (wish: Wish) => number): number => wishes.reduce((all, wish) => all + of(wish), 0);
  const most = sum((wish) => wish.most);
  const least = sum((wish) => wish.least);
  if (most <= room) return withRest(wishes, room - most);
  if (least >= room) return wishes.map((wish) => (wish.least * room) / least);
  const missing = most - least;
  return wishes.map((wish) => wish.least + ((room - least) * (wish.most - wish.least)) / missing);
}

/** What is over goes to the columns to write in, alike; without such to all, in proportion. */
function withRest(wishes: readonly Wish[], rest: number): readonly number[] {
  const blank = wishes.filter(({ isBlank }) => isBlank);
  const sum = (of: readonly Wish[]): number => of.reduce((all, { most }) => all + most, 0);
  if (blank.length === 0) return wishes.map(({ most }) => most + (rest * most) / sum(wishes));
  const alike = (rest + sum(blank)) / blank.length;
  // A long head keeps its width where the share of all would be less.
  const least = Math.max(...blank.map(({ most }) => most));
  if (alike < least) return wishes.map(({ most, isBlank }) => most + (isBlank ? rest / blank.length : 0));
  return wishes.map(({ most, isBlank }) => (isBlank ? alike : most));
}
