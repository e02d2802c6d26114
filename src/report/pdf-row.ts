import type { Part, Piece } from './pdf-flow.ts';
import type { Ink } from './pdf-ink.ts';
import { linesInk, type Setting } from './pdf-lines.ts';
import type { Line } from './pdf-text.ts';
import type { Element } from './pdf-tree.ts';

/** Text beside other text. */
export interface Cell {
  readonly owner: Element;
  readonly lines: readonly Line[];
  readonly setting: Setting;
}

/** Lengths are points. */
export interface RowLook {
  readonly gap: number;
  /** Above and below the text. */
  readonly padding: number;
  readonly leastHeight: number;
  /** A row that is taller is cut between its lines, into slices of a tenth of a page or so. */
  readonly mostHeight: number;
  /** Short cells stand at the foot of the row. */
  readonly atFoot?: boolean;
  readonly rules: (height: number) => readonly Ink[];
}

const slicesInRow = 6;

/** Cells side by side as one piece; as more than one where a page would not hold it. */
export function rowPieces(cells: readonly Cell[], look: RowLook): readonly Piece[] {
  const leading = Math.max(1, ...cells.map(({ setting }) => setting.size.leading));
  const most = Math.max(1, ...cells.map(({ lines }) => lines.length));
  const isWhole = most * leading + 2 * look.padding <= look.mostHeight;
  const fitting = isWhole ? most : Math.max(1, Math.floor(look.mostHeight / slicesInRow / leading));
  return Array.from({ length: Math.ceil(most / fitting) }, (_, slice) => {
    const isLast = (slice + 1) * fitting >= most;
    const shown = Math.min(fitting, most - slice * fitting);
    const above = slice === 0 ? look.padding : 0;
    const height = Math.max(above + shown * leading + (isLast ? look.padding : 0), look.leastHeight);
    const parts = cells.map(({ owner, lines, setting }): Part => {
      const own = lines.slice(slice * fitting, slice * fitting + shown);
      const top = above + (look.atFoot === true ? (shown - own.length) * leading : 0);
      return { owner, inks: linesInk(own, top, setting) };
    });
    const rules = isLast ? [{ inks: look.rules(height) }] : [];
    return { height, gap: slice === 0 ? look.gap : 0, keep: false, parts: [...rules, ...parts] };
  });
}
