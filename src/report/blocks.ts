import type { Call } from '../core/calls.ts';

/** A table: its first column names the row, and a head or row that is cut by a page is said again. */
export interface TableBlock {
  readonly kind: 'table';
  readonly caption: string;
  readonly head: readonly string[];
  /** Columns of figures, which stand to the right. */
  readonly figures: readonly number[];
  /** On a form: empty cells are to be filled in by hand, and stand as boxes. */
  readonly blank?: true;
  /** Each row has as many cells as the head. */
  readonly rows: readonly (readonly string[])[];
}

/** A part of a report, in reading order; what it is, and never how it looks. */
export type Block =
  | { readonly kind: 'heading'; readonly level: 1 | 2 | 3; readonly text: string }
  | { readonly kind: 'text'; readonly text: string; readonly role?: 'lead' | 'caution' | 'small' }
  | { readonly kind: 'list'; readonly items: readonly string[] }
  | { readonly kind: 'facts'; readonly rows: readonly (readonly [name: string, value: string])[] }
  | TableBlock
  | { readonly kind: 'call'; readonly call: Call | 'open'; readonly word: string; readonly text: string }
  /** Percent worn as a length, from 0, ± `expanded`; the limit is at 100. `text` says the same in words. */
  | { readonly kind: 'bar'; readonly percent: number; readonly expanded?: number; readonly text: string }
  | { readonly kind: 'photo'; readonly sha256: string; readonly alt: string; readonly caption: string }
  | {
      readonly kind: 'signature';
      readonly name: string;
      readonly role: string;
      /** As in a person's record; none leaves an empty line to sign on. */
      readonly strokes: readonly (readonly number[])[];
      readonly alt: string;
    }
  /** A QR code that holds `content`. */
  | { readonly kind: 'code'; readonly content: string; readonly alt: string; readonly caption: string };

/** What was found on a machine, ready to be shown, printed or written as a PDF: one text for all of them. */
export interface Report {
  /** BCP 47. */
  readonly lang: string;
  readonly title: string;
  /** One line for the head of every page. */
  readonly running: string;
  /** The page's number in words; the renderer counts. */
  readonly pageOf: (page: number, pages: number) => string;
  readonly blocks: readonly Block[];
}
