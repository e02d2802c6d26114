import type { Report } from './blocks.ts';
import { operatorsOf, type Origin } from './pdf-content.ts';
import type { Part, Placed } from './pdf-flow.ts';
import { rule, type Ink } from './pdf-ink.ts';
import { linesInk } from './pdf-lines.ts';
import { marginLine, margins, papers, type, type Paper } from './pdf-paper.ts';
import { syntax } from './pdf-syntax.ts';
import type { Typesetter } from './pdf-text.ts';
import type { Element } from './pdf-tree.ts';

/** A page as its operators, and whose each of its marks is. */
export interface DrawnPage {
  readonly operators: string;
  readonly owners: readonly Element[];
}

/** What all pages are drawn with. */
export interface Press {
  readonly paper: Paper;
  readonly type: Typesetter;
  readonly report: Report;
  readonly pictureName: (sha256: string) => string;
}

/** Draws the pages. Each mark is told to its element, so that the tree knows where it stands. */
export function drawPages(pages: readonly (readonly Placed[])[], press: Press): readonly DrawnPage[] {
  return pages.map((placed, index) => drawPage(placed, index, pages.length, press));
}

function drawPage(placed: readonly Placed[], page: number, pages: number, press: Press): DrawnPage {
  const { height } = papers[press.paper];
  const owners: Element[] = [];
  const operators = [furniture(page, pages, press)];
  for (const { piece, top } of placed) {
    const at = { x: margins.left, y: height - margins.top - top };
    for (const part of piece.parts)
      if (part.inks.length > 0) operators.push(drawPart(part, at, page, owners, press));
  }
  return { operators: operators.join('\n'), owners };
}

function drawPart(part: Part, at: Origin, page: number, owners: Element[], press: Press): string {
  const drawn = part.inks.map((ink) => operatorsOf(ink, at, press.pictureName)).join('\n');
  const { owner, box } = part;
  if (owner === undefined) return marked('Artifact', '/Type /Layout', drawn);
  const id = owners.push(owner) - 1;
  owner.marks.push({ page, id });
  if (owner.title !== undefined) owner.place ??= { page, y: at.y };
  if (box !== undefined) owner.box = [at.x + box[0], at.y - box[3], at.x + box[2], at.y - box[1]];
  return marked(owner.role, syntax`/MCID ${id}`, drawn);
}

const marked = (tag: string, properties: string, drawn: string): string =>
  [`/${tag} <<${properties}>> BDC`, drawn, 'EMC'].join('\n');

/** What stands on every page: the running line, the page's number, the line of the margin. */
function furniture(page: number, pages: number, { paper, type: set, report, pictureName }: Press): string {
  const { width, height } = papers[paper];
  const right = width - margins.left - margins.right;
  const bottom = height - margins.top - margins.bottom;
  const draw = (subtype: string, inks: readonly Ink[]): string => {
    const at = { x: margins.left, y: height - margins.top };
    const drawn = inks.map((ink) => operatorsOf(ink, at, pictureName)).join('\n');
    return marked('Artifact', syntax`/Type ${subtype}`, drawn);
  };
  const small = { size: type.small, colour: 'soft' } as const;
  const running = set.lines(report.running, right, type.small.size).slice(0, 1);
  const number = set.lines(report.pageOf(page + 1, pages), right, type.small.size).slice(0, 1);
  return [
    draw('/Layout', [rule([marginLine, -18, marginLine, bottom + 12], 'accent', 0.6)]),
    draw('/Pagination /Subtype /Header', linesInk(running, -34, small)),
    draw('/Pagination /Subtype /Footer', linesInk(number, bottom + 22, { ...small, right })),
  ].join('\n');
}
