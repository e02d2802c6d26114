import encodeQr from 'qr';
import { assert, unreachable } from '../core/result.ts';
import type { Block } from './blocks.ts';
import type { Part, Piece } from './pdf-flow.ts';
import { rectangleSteps, rule, type Ink, type Step } from './pdf-ink.ts';
import { linesInk, type Desk } from './pdf-lines.ts';
import { type } from './pdf-paper.ts';
import { drawable, type Line } from './pdf-text.ts';
import { addElement, type Element } from './pdf-tree.ts';

/** A picture with what is said below it. */
export type Card = Extract<Block, { kind: 'photo' | 'signature' | 'code' }>;

export const isCard = (block: Block): block is Card =>
  block.kind === 'photo' || block.kind === 'signature' || block.kind === 'code';

const between = 18;
/** Heights of pictures in points. */
const photoHeight = 190;
const signatureHeight = 64;
/** A QR code's side in points: 34 mm, so that a module of a long one still has half a millimetre. */
const codeSide = 96;

/** Two cards to a row, each with its words below; words that do not fit below go on over the whole width. */
export function cardPieces(cards: readonly Card[], desk: Desk): readonly Piece[] {
  const pieces: Piece[] = [];
  for (let at = 0; at < cards.length; at += 2) pieces.push(...cardRow(cards.slice(at, at + 2), desk));
  return pieces;
}

/** Lines of a caption that stand below the picture; a longer one is rare, and follows as pieces of its own. */
const mostLines = 12;

interface Laid {
  readonly parts: readonly Part[];
  readonly height: number;
  readonly rest: readonly Line[];
  readonly caption: Element;
}

function cardRow(cards: readonly Card[], desk: Desk): readonly Piece[] {
  const width = (desk.width - between) / 2;
  const laid = cards.map((card, index) => layCard(card, index * (width + between), width, desk));
  const height = Math.max(...laid.map((each) => each.height));
  const row: Piece = { height, gap: 10, keep: false, parts: laid.flatMap(({ parts }) => parts) };
  const rests = laid.flatMap(({ rest, caption }, index) =>
    rest.map((line): Piece => {
      const setting = { size: type.small, colour: 'soft', x: index * (width + between) } as const;
      const parts = [{ owner: caption, inks: linesInk([line], 0, setting) }];
      return { height: type.small.leading, gap: 0, keep: false, parts };
    }),
  );
  return [row, ...rests];
}

function layCard(card: Card, x: number, width: number, desk: Desk): Laid {
  const group = addElement(desk.root, 'Div');
  const figure = addElement(group, 'Figure', { alt: drawable(card.alt) });
  const { inks, box } = pictureOf(card, x, width, desk);
  const caption = addElement(group, 'Caption');
  const lines = wordsOf(card).flatMap((text) => desk.type.lines(text, width, type.small.size));
  const top = box[3] + 4;
  const below = lines.slice(0, mostLines);
  const words = linesInk(below, top, { size: type.small, colour: 'soft', x });
  return {
    parts: [
      { owner: figure, inks, box },
      { owner: caption, inks: words },
    ],
    height: top + below.length * type.small.leading,
    rest: lines.slice(mostLines),
    caption,
  };
}

function wordsOf(card: Card): readonly string[] {
  if (card.kind !== 'signature') return [card.caption];
  return [card.name, card.role];
}

interface Picture {
  readonly inks: readonly Ink[];
  readonly box: readonly [number, number, number, number];
}

function pictureOf(card: Card, x: number, width: number, desk: Desk): Picture {
  switch (card.kind) {
    case 'photo':
      return photoPicture(card, x, width, desk);
    case 'signature':
      return signaturePicture(card.strokes, x, width);
    case 'code':
      return codePicture(card.content, x);
    default:
      return unreachable(card);
  }
}

/** As large as the card allows; a crossed frame where the picture is not to be had. */
function photoPicture(
  { sha256 }: Extract<Card, { kind: 'photo' }>,
  x: number,
  width: number,
  desk: Desk,
): Picture {
  const size = desk.pictures.get(sha256);
  if (size === undefined) return missingPicture(x, width);
  const scale = Math.min(width / size.width, photoHeight / size.height);
  const shown = { width: size.width * scale, height: size.height * scale };
  return {
    inks: [{ kind: 'image', sha256, x, y: 0, ...shown }],
    box: [x, 0, x + shown.width, shown.height],
  };
}

function missingPicture(x: number, width: number): Picture {
  const height = 60;
  const frame: Ink = { kind: 'path', stroke: 'line', width: 0.7, steps: rectangleSteps(x, 0, width, height) };
  const cross = [
    rule([x, 0, x + width, height], 'faint', 0.7),
    rule([x, height, x + width, 0], 'faint', 0.7),
  ];
  return { inks: [...cross, frame], box: [x, 0, x + width, height] };
}

/** Strokes as large as the card allows, above the line that was signed on. */
function signaturePicture(strokes: readonly (readonly number[])[], x: number, width: number): Picture {
  const line = rule([x, signatureHeight, x + width, signatureHeight], 'ink', 0.7);
  const numbers = strokes.flat();
  assert(numbers.every(Number.isFinite), 'a point of a signature is not a number');
  const box = [x, 0, x + width, signatureHeight] as const;
  if (numbers.length < 2) return { inks: [line], box };
  const place = placer(strokes, x, width);
  const steps = strokes.flatMap((stroke) => strokeSteps(stroke, place));
  return { inks: [{ kind: 'path', stroke: 'ink', width: 1.2, steps }, line], box };
}

type Place = (x: number, y: number) => readonly [number, number];

function placer(strokes: readonly (readonly number[])[], x: number, width: number): Place {
  const of = (odd: 0 | 1): readonly number[] =>
    strokes.flatMap((stroke) => stroke.filter((_, index) => index % 2 === odd));
  const least = (values: readonly number[]): number => values.reduce((a, b) => Math.min(a, b), Infinity);
  const most = (values: readonly number[]): number => values.reduce((a, b) => Math.max(a, b), -Infinity);
  const [xs, ys] = [of(0), of(1)];
  const [left, bottom] = [least(xs), most(ys)];
  const room = { width: width - 8, height: signatureHeight - 8 };
  const scale = Math.min(
    room.width / (most(xs) - left || 1),
    room.height / (bottom - least(ys) || 1),
    0.6 * width,
  );
  return (px, py) => [x + 4 + (px - left) * scale, signatureHeight - 4 - (bottom - py) * scale];
}

/** A tap leaves a dot: a line as short as its pen is wide. */
function strokeSteps(stroke: readonly number[], place: Place): readonly Step[] {
  const steps: Step[] = [];
  for (let at = 0; at + 1 < stroke.length; at += 2) {
    const [x, y] = place(stroke[at] ?? 0, stroke[at + 1] ?? 0);
    steps.push([at === 0 ? 'move' : 'line', x, y]);
    if (stroke.length < 4) steps.push(['line', x + 0.6, y]);
  }
  return steps;
}

/** Bytes that the largest QR code holds at medium correction (ISO/IEC 18004, table 7). */
const mostBytes = 2331;

/** Squares on white; content that no code can hold leaves an empty frame. */
function codePicture(content: string, x: number): Picture {
  const box = [x, 0, x + codeSide, codeSide] as const;
  const frame: Ink = {
    kind: 'path',
    stroke: 'line',
    width: 0.5,
    steps: rectangleSteps(x, 0, codeSide, codeSide),
  };
  if (new TextEncoder().encode(content).length > mostBytes) return { inks: [frame], box };
  const rows = encodeQr(content, 'raw', { ecc: 'medium', border: 4 });
  const module = codeSide / rows.length;
  const steps = rows.flatMap((row, y) =>
    runsOf(row).flatMap(([from, to]) =>
      rectangleSteps(x + from * module, y * module, (to - from) * module, module),
    ),
  );
  return { inks: [{ kind: 'path', fill: 'ink', steps }], box };
}

/** From where to where a row is dark. */
function runsOf(row: readonly boolean[]): readonly (readonly [number, number])[] {
  const runs: [number, number][] = [];
  row.forEach((isDark, index) => {
    const last = runs.at(-1);
    if (!isDark) return;
    if (last?.[1] === index) last[1] = index + 1;
    else runs.push([index, index + 1]);
  });
  return runs;
}
