import { unreachable } from '../core/result.ts';
import type { Block } from './blocks.ts';
import { cardPieces, isCard, type Card } from './pdf-cards.ts';
import type { Piece } from './pdf-flow.ts';
import { circleSteps, rule } from './pdf-ink.ts';
import { decorated, paragraphPieces, type Desk } from './pdf-lines.ts';
import { callShape, careShape, wearBar } from './pdf-marks.ts';
import { marginLine, type } from './pdf-paper.ts';
import { rowPieces } from './pdf-row.ts';
import { tablePieces } from './pdf-table.ts';
import { drawable } from './pdf-text.ts';
import { addElement } from './pdf-tree.ts';

type Of<K extends Block['kind']> = Extract<Block, { kind: K }>;

/** Everything that the blocks draw, in reading order; their elements are added to the tree on the way. */
export function piecesOf(blocks: readonly Block[], desk: Desk): readonly Piece[] {
  const pieces: Piece[] = [];
  let level = 0;
  for (let at = 0; at < blocks.length; at++) {
    const block = blocks[at];
    if (block === undefined) break;
    if (isCard(block)) {
      const cards = cardsFrom(blocks, at);
      pieces.push(...cardPieces(cards, desk));
      at += cards.length - 1;
    } else if (block.kind === 'heading') {
      // A reader of headings must not meet a third level right under the first.
      level = Math.min(block.level, level + 1);
      pieces.push(...headingPieces(block, level, desk));
    } else {
      const own = blockPieces(block, level, desk);
      pieces.push(
        ...(isJoined(block, blocks[at + 1]) ? own.map((piece) => ({ ...piece, keep: true })) : own),
      );
    }
  }
  return pieces;
}

/** What is said of one part stays together: its wear, its call and how it was read. */
const isJoined = (block: Block, next: Block | undefined): boolean =>
  (block.kind === 'bar' && next?.kind === 'call') || (block.kind === 'call' && next?.kind === 'facts');

/** Cards of one kind that follow each other stand side by side. */
function cardsFrom(blocks: readonly Block[], start: number): readonly Card[] {
  const cards: Card[] = [];
  for (const block of blocks.slice(start)) {
    if (!isCard(block) || block.kind !== blocks[start]?.kind) break;
    cards.push(block);
  }
  return cards;
}

function blockPieces(
  block: Exclude<Block, Card | Of<'heading'>>,
  level: number,
  desk: Desk,
): readonly Piece[] {
  switch (block.kind) {
    case 'text':
      return textPieces(block, desk);
    case 'list':
      return listPieces(block, desk);
    case 'facts':
      return factPieces(block, desk);
    case 'table':
      return tablePieces(block, desk);
    case 'call':
      return callPieces(block, level, desk);
    case 'bar':
      return barPieces(block, desk);
    default:
      return unreachable(block);
  }
}

const headingLooks = {
  1: { size: type.title, gap: 14 },
  2: { size: type.section, gap: 20 },
  3: { size: type.part, gap: 12 },
} as const;
const headingRoles = ['H1', 'H1', 'H2', 'H3'] as const;

function headingPieces({ level, text }: Of<'heading'>, depth: number, desk: Desk): readonly Piece[] {
  const look = headingLooks[level];
  const lines = desk.type.lines(text, desk.width, look.size.size);
  if (lines.length === 0) return [];
  const owner = addElement(desk.root, headingRoles[depth] ?? 'H3', { title: drawable(text) });
  const [first, ...rest] = paragraphPieces(lines, owner, { ...look, bold: true }).map((piece) => ({
    ...piece,
    keep: true,
  }));
  if (first === undefined || level !== 2) return first === undefined ? [] : [first, ...rest];
  return [decorated(first, [rule([marginLine - 26, -5, desk.width, -5], 'accent', 0.9)]), ...rest];
}

function textPieces({ text, role }: Of<'text'>, desk: Desk): readonly Piece[] {
  const size = role === 'lead' ? type.lead : role === 'small' ? type.small : type.body;
  const lines = desk.type.lines(text, desk.width, size.size);
  if (lines.length === 0) return [];
  const colour = role === 'small' ? 'soft' : 'ink';
  const [first, ...rest] = paragraphPieces(lines, addElement(desk.root, 'P'), { size, colour, gap: 6 });
  if (first === undefined) return [];
  return [role === 'caution' ? decorated(first, careShape(marginLine - 22, 0, 13)) : first, ...rest];
}

function listPieces({ items }: Of<'list'>, desk: Desk): readonly Piece[] {
  const set = items.map((item) => desk.type.lines(item, desk.width - 14, type.body.size));
  const told = set.filter((lines) => lines.length > 0);
  if (told.length === 0) return [];
  const list = addElement(desk.root, 'L');
  return told.flatMap((lines) => {
    const owner = addElement(addElement(list, 'LI'), 'LBody');
    const [first, ...rest] = paragraphPieces(lines, owner, { size: type.body, x: 14, gap: 3 });
    if (first === undefined) return [];
    const dot = { kind: 'path', fill: 'accent', steps: circleSteps(4, type.body.leading / 2, 1.6) } as const;
    return [decorated(first, [dot]), ...rest];
  });
}

/** Short names stand in a column of one width, from list to list. */
const leastName = 46;

function factPieces({ rows }: Of<'facts'>, desk: Desk): readonly Piece[] {
  const names = Math.max(0, ...rows.map(([name]) => desk.type.widest(name, type.body.size)));
  const width = Math.min(Math.max(names + 0.01, leastName), 0.38 * desk.width);
  const x = width + 16;
  if (rows.length === 0) return [];
  const list = addElement(desk.root, 'L');
  return rows.flatMap(([name, value], index) => {
    const item = addElement(list, 'LI');
    const cell = (owner: 'Lbl' | 'LBody', text: string, left: number, room: number) => ({
      owner: addElement(item, owner),
      lines: desk.type.lines(text, room, type.body.size),
      setting: { size: type.body, x: left, colour: owner === 'Lbl' ? 'soft' : 'ink' } as const,
    });
    const cells = [cell('Lbl', name, 0, width), cell('LBody', value, x, desk.width - x)];
    const pieces = rowPieces(cells, { ...plainRow(desk), gap: index === 0 ? 8 : 2 });
    // The first is not left alone.
    return pieces.map((piece) => ({ ...piece, keep: index === 0 && rows.length > 1 }));
  });
}

const plainRow = (desk: Desk) => ({
  gap: 5,
  padding: 0,
  leastHeight: 0,
  mostHeight: 0.6 * desk.height,
  rules: () => [],
});

/** Large for the machine, smaller for one of its parts, which has a heading of the third level. */
function callPieces({ call, word, text }: Of<'call'>, level: number, desk: Desk): readonly Piece[] {
  const owner = addElement(desk.root, 'P');
  const size = level === 3 ? type.partCall : type.call;
  const big = desk.type.lines(word, desk.width, size.size);
  const words = paragraphPieces(big, owner, { size, bold: true, gap: level === 3 ? 5 : 12 });
  const lines = desk.type.lines(text, desk.width, type.body.size);
  const told = paragraphPieces(lines, owner, { size: type.body, gap: 1 });
  const [first, ...rest] = words.map((piece) => ({ ...piece, keep: told.length > 0 }));
  const side = size.leading - 2;
  const shape = callShape(call, marginLine - 16 - side / 2, 1, side);
  if (first === undefined) return told.map((piece, index) => (index === 0 ? decorated(piece, shape) : piece));
  return [decorated(first, shape), ...rest, ...told];
}

/** Where bars begin, as a share of the width; left of it stands what they say. */
const barStart = 0.5;

function barPieces({ percent, text }: Of<'bar'>, desk: Desk): readonly Piece[] {
  const left = barStart * desk.width;
  const lines = desk.type.lines(text, left - 14, type.body.size);
  const bar = wearBar(percent, left, 3.5, desk.width - left);
  if (lines.length === 0) return [{ height: type.body.leading, gap: 5, keep: false, parts: [{ inks: bar }] }];
  const cell = { owner: addElement(desk.root, 'P'), lines, setting: { size: type.body } };
  const [first, ...rest] = rowPieces([cell], plainRow(desk));
  return first === undefined ? [] : [decorated(first, bar), ...rest];
}
