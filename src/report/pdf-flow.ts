import type { Ink } from './pdf-ink.ts';
import type { Box, Element } from './pdf-tree.ts';

/** Ink and whom it belongs to; what belongs to nobody is decoration, which no one is read aloud. */
export interface Part {
  readonly owner?: Element;
  readonly inks: readonly Ink[];
  /** Of a figure, from the top left corner of its piece. */
  readonly box?: Box;
}

/** What a page never cuts. Heights are points. */
export interface Piece {
  readonly height: number;
  /** Free space above, which the top of a page swallows. */
  readonly gap: number;
  /** On the same page as the piece after it. */
  readonly keep: boolean;
  readonly parts: readonly Part[];
  /** The head of the table that this piece is a row of: said again where a page begins with it. */
  readonly head?: Piece;
}

/** A piece and where it stands, in points from the top of the page's content. */
export interface Placed {
  readonly piece: Piece;
  readonly top: number;
}

/** Puts pieces on pages of this height, in order; a page begins anew only when it must. */
export function paginate(pieces: readonly Piece[], height: number): readonly (readonly Placed[])[] {
  const pages: Placed[][] = [[]];
  let used = 0;
  for (const group of groupsOf(pieces)) {
    const needs = heightOf(group);
    const isTooLong = used > 0 && used + (group[0]?.gap ?? 0) + needs > height;
    if (isTooLong && needs + headHeight(group[0]) <= height) used = newPage(pages);
    for (const piece of group) {
      if (used > 0 && used + piece.gap + piece.height > height) used = newPage(pages);
      used = place(pages, used, piece);
    }
  }
  return pages;
}

/** Pieces that want to stay together, each run with the piece that it was kept for. */
function groupsOf(pieces: readonly Piece[]): readonly (readonly Piece[])[] {
  const groups: Piece[][] = [];
  let open: Piece[] | undefined;
  for (const piece of pieces) {
    if (open === undefined) groups.push((open = []));
    open.push(piece);
    if (!piece.keep) open = undefined;
  }
  return groups;
}

const headHeight = (piece: Piece | undefined): number => piece?.head?.height ?? 0;

/** Without the gap above the first. */
const heightOf = (group: readonly Piece[]): number =>
  group.reduce((sum, piece, index) => sum + (index === 0 ? 0 : piece.gap) + piece.height, 0);

function newPage(pages: Placed[][]): number {
  pages.push([]);
  return 0;
}

function place(pages: Placed[][], used: number, piece: Piece): number {
  const page = pages.at(-1) ?? [];
  let top = used === 0 ? 0 : used + piece.gap;
  if (used === 0 && piece.head !== undefined) {
    page.push({ piece: said(piece.head), top: 0 });
    top = piece.head.height;
  }
  page.push({ piece, top });
  return top + piece.height;
}

/** The head once more, as decoration: in the tree it stands once. */
const said = (head: Piece): Piece => ({ ...head, parts: head.parts.map(({ inks }) => ({ inks })) });
