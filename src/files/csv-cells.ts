import { safeLocale } from '../words/locale.ts';

/** Delimiter and decimal mark go together: a spreadsheet that writes 1,5 takes the semicolon for its lists. */
export type CsvStyle = 'comma-point' | 'semicolon-comma';

const marks: Readonly<Record<CsvStyle, { readonly delimiter: string; readonly decimal: string }>> = {
  'comma-point': { delimiter: ',', decimal: '.' },
  'semicolon-comma': { delimiter: ';', decimal: ',' },
};

/** What a cell holds; nothing where it is not known or does not apply. */
export type Cell = string | number | undefined;

/** A column of rows of one kind. */
export interface Column<Row> {
  readonly head: string;
  readonly cell: (row: Row) => Cell;
}

/** The pair that spreadsheets of this locale read numbers in. */
export function csvStyleOf(locale: string): CsvStyle {
  const parts = new Intl.NumberFormat(safeLocale(locale), { numberingSystem: 'latn' }).formatToParts(1.5);
  const decimal = parts.find(({ type }) => type === 'decimal')?.value;
  return decimal === ',' ? 'semicolon-comma' : 'comma-point';
}

/** Blanks, marks without width and controls that a spreadsheet passes over before it looks for a formula. */
const blanks = String.raw`[\s\u200b-\u200f\u2060\u0000-\u0020]*`;
// What begins a formula, also in the full width that some input methods write; = + - @ and the controls by
// OWASP ASVS 5.0, 1.2.10, the full width forms from memory.
const triggers = String.raw`[=+\-@\uff1d\uff0b\uff0d\uff20\t\r\u0000]`;
const runs = new RegExp(`^${blanks}${triggers}`);
/** A file that is opened by the other pair begins new cells at line ends and at the other delimiter. */
const runsWithin = new RegExp(String.raw`([\r\n;,])(?=${blanks}${triggers})`, 'g');

/** A text that no spreadsheet takes for a formula: with `'` before what would start one. */
export function guarded(text: string, style: CsvStyle): string {
  const { delimiter } = marks[style];
  const within = text.replace(runsWithin, (mark) => (mark === delimiter ? mark : `${mark}'`));
  return runs.test(text) ? `'${within}` : within;
}

/** A number to six decimals, without those that say nothing; one that is none has no cell. */
function numberText(value: number, style: CsvStyle): string {
  if (!Number.isFinite(value)) return '';
  const digits = Math.abs(value) < 1e21 ? value.toFixed(6).replace(/\.?0+$/, '') : String(value);
  return digits === '-0' ? '0' : digits.replace('.', marks[style].decimal);
}

const quoted = (text: string): string =>
  /[",;\r\n\t]|^\s|\s$/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;

function cellText(cell: Cell, style: CsvStyle): string {
  if (cell === undefined) return '';
  return quoted(typeof cell === 'number' ? numberText(cell, style) : guarded(cell, style));
}

const byteOrderMark = '\ufeff';

/**
 * A table as CSV (RFC 4180) with its byte order mark, without which spreadsheets misread UTF-8. Texts that could run
 * as formulas are guarded; numbers are numbers and keep their sign.
 */
export function csvOf<Row>(columns: readonly Column<Row>[], rows: readonly Row[], style: CsvStyle): string {
  const line = (cells: readonly Cell[]): string =>
    `${cells.map((cell) => cellText(cell, style)).join(marks[style].delimiter)}\r\n`;
  const lines = rows.map((row) => line(columns.map(({ cell }) => cell(row))));
  return byteOrderMark + line(columns.map(({ head }) => head)) + lines.join('');
}
