import type { Piece } from './pdf-flow.ts';
import type { Colour, Ink } from './pdf-ink.ts';
import type { TypeSize } from './pdf-paper.ts';
import type { Line, Typesetter } from './pdf-text.ts';
import type { Element } from './pdf-tree.ts';

/** What blocks are laid out with: widths and heights are points. */
export interface Desk {
  readonly type: Typesetter;
  readonly width: number;
  readonly height: number;
  readonly root: Element;
  readonly pictures: ReadonlyMap<string, { readonly width: number; readonly height: number }>;
}

/** How lines are set. */
export interface Setting {
  readonly size: TypeSize;
  readonly bold?: boolean;
  readonly colour?: Colour;
  readonly x?: number;
  /** The right edge that the lines end at, where they do not begin at the left. */
  readonly right?: number;
}

/** Ink of lines one below the other, the first one's top at `top`. */
export function linesInk(lines: readonly Line[], top: number, setting: Setting): readonly Ink[] {
  const { size, leading } = setting.size;
  return lines.map((line, index) => ({
    kind: 'text',
    x: setting.right === undefined ? (setting.x ?? 0) : setting.right - (line.width * size) / 1000,
    // Capitals, 0.73 em high in our font, stand in the middle of the line.
    y: top + index * leading + (leading + 0.73 * size) / 2,
    size,
    bold: setting.bold ?? false,
    colour: setting.colour ?? 'ink',
    line,
  }));
}

/** Lines of one paragraph as pieces that pages may part, but never after the first or before the last line. */
export function paragraphPieces(
  lines: readonly Line[],
  owner: Element,
  { gap, ...setting }: Setting & { readonly gap: number },
): readonly Piece[] {
  return lines.map((line, index) => ({
    height: setting.size.leading,
    gap: index === 0 ? gap : 0,
    keep: (index === 0 && lines.length > 1) || (index > 0 && index === lines.length - 2),
    parts: [{ owner, inks: linesInk([line], 0, setting) }],
  }));
}

/** The piece with more ink that belongs to nobody, painted first. */
export const decorated = (piece: Piece, inks: readonly Ink[]): Piece => ({
  ...piece,
  parts: [{ inks }, ...piece.parts],
});
