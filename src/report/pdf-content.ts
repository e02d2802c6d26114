import { colours, type Colour, type Ink, type Step } from './pdf-ink.ts';
import { hex4, number, numbers, syntax } from './pdf-syntax.ts';
import type { Run } from './pdf-text.ts';

/** Where a piece stands on its page, in points from the page's lower left corner; y is its top. */
export interface Origin {
  readonly x: number;
  readonly y: number;
}

/** The operators that draw an ink (ISO 32000-1, 8 and 9); the font is F, a picture goes by `nameOf`. */
export function operatorsOf(ink: Ink, at: Origin, nameOf: (sha256: string) => string): string {
  switch (ink.kind) {
    case 'text':
      return textOperators(ink, at);
    case 'path':
      return pathOperators(ink, at);
    case 'image': {
      const place = numbers([ink.width, 0, 0, ink.height, at.x + ink.x, at.y - ink.y - ink.height]);
      return syntax`q ${place} cm /${nameOf(ink.sha256)} Do Q`;
    }
  }
}

/** Bold is the same letters with a line around them: a second font would double what a phone has to keep. */
const boldLine = 0.028;

function textOperators(ink: Extract<Ink, { kind: 'text' }>, at: Origin): string {
  const colour = numbers(colours[ink.colour]);
  const weight = ink.bold ? syntax`2 Tr ${colour} RG ${number(ink.size * boldLine)} w ` : '';
  const place = syntax`${numbers([at.x + ink.x, at.y - ink.y])} Td`;
  const shown = ink.line.runs.map(runOperators).join(' ');
  return syntax`q BT ${colour} rg ${weight}/F ${number(ink.size)} Tf ${place} ${shown} ET Q`;
}

function runOperators({ codes, actual }: Run): string {
  const shown = `<${codes.map((code) => hex4(code)).join('')}> Tj`;
  if (actual === undefined) return shown;
  const meant = Array.from({ length: actual.length }, (_, index) => hex4(actual.charCodeAt(index))).join('');
  return syntax`/Span <</ActualText <FEFF${meant}>>> BDC ${shown} EMC`;
}

function pathOperators(ink: Extract<Ink, { kind: 'path' }>, at: Origin): string {
  const paint = (colour: Colour | undefined, operator: string): string =>
    colour === undefined ? '' : `${numbers(colours[colour])} ${operator} `;
  const dash = ink.dash === undefined ? '' : `[${numbers(ink.dash)}] 0 d `;
  const pen = ink.stroke === undefined ? '' : `1 J 1 j ${number(ink.width ?? 1)} w ${dash}`;
  const steps = ink.steps.map((step) => stepOperator(step, at)).join(' ');
  const end = ink.fill === undefined ? 'S' : ink.stroke === undefined ? 'f' : 'B';
  return `q ${paint(ink.fill, 'rg')}${paint(ink.stroke, 'RG')}${pen}${steps} ${end} Q`;
}

const stepNames = { move: 'm', line: 'l', curve: 'c', close: 'h' } as const;

function stepOperator([verb, ...points]: Step, at: Origin): string {
  const placed = points.map((value, index) => (index % 2 === 0 ? at.x + value : at.y - value));
  return `${numbers(placed)} ${stepNames[verb]}`.trim();
}
