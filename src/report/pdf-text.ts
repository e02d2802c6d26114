import type { FontData } from './pdf-font.ts';

/** What is drawn for a character that the font lacks, or that is none. */
const replacement = 0xfffd;

/** Characters drawn with one font, as code points; `actual` is what they stand for when they cannot be drawn. */
export interface Run {
  readonly codes: readonly number[];
  readonly actual?: string;
}

/** One line as drawn; its width without spaces at the end, in thousandths of the type size. */
export interface Line {
  readonly runs: readonly Run[];
  readonly width: number;
}

/**
 * Text as it may be drawn: composed, without what is invisible or turns the reading order around, and with a
 * visible mark for what is no character. Of the control characters, only a new line keeps its meaning.
 */
export function drawable(text: string): string {
  return text
    .replace(/\r\n?|[\u0085\u2028\u2029]/g, '\n')
    .replace(/\t/g, ' ')
    .replace(/\p{Default_Ignorable_Code_Point}/gu, '')
    .replace(/(?!\n)[\p{Cc}\p{Cs}]/gu, '\uFFFD')
    .normalize('NFC');
}

/** Measures and breaks text in one font. */
export interface Typesetter {
  /** Lines no wider than `width` at type size `size`; a word that is wider is broken. Nothing to read is no line. */
  readonly lines: (text: string, width: number, size: number) => readonly Line[];
  /** The widest line of the text when nothing is broken, at type size `size`. */
  readonly widest: (text: string, size: number) => number;
  /** The widest word, at type size `size`. */
  readonly widestWord: (text: string, size: number) => number;
  /** The characters of all lines so far. */
  readonly used: ReadonlySet<number>;
}

/** A typesetter for a font. */
export function typesetter(font: FontData): Typesetter {
  const advanceOf = (code: number): number =>
    font.advance(font.glyphs.get(code) ?? font.glyphs.get(replacement) ?? 0);
  const measure = (text: string): number => {
    let sum = 0;
    for (const character of text) sum += advanceOf(character.codePointAt(0) ?? replacement);
    return sum;
  };
  const widestOf = (texts: readonly string[], size: number): number =>
    texts.reduce((most, text) => Math.max(most, (measure(text) * size) / 1000), 0);
  const used = new Set<number>();
  const lineOf = (line: string): Line => {
    const runs = runsOf(line, font);
    for (const { codes } of runs) codes.forEach((code) => used.add(code));
    return { runs, width: measure(line.trimEnd()) };
  };
  return {
    used,
    lines: (text, width, size) =>
      paragraphs(text)
        .flatMap((paragraph) => breakLines(paragraph, (width * 1000) / size, measure))
        .map(lineOf),
    widest: (text, size) => widestOf(paragraphs(text), size),
    widestWord: (text, size) =>
      widestOf(
        paragraphs(text).flatMap((paragraph) => paragraph.split(' ')),
        size,
      ),
  };
}

function paragraphs(text: string): readonly string[] {
  return drawable(text)
    .split('\n')
    .map((line) => line.replace(/ +/g, ' ').trim())
    .filter((line) => line !== '');
}

/** A line that ends at a space keeps it, so that the words stay apart where the text is taken out. */
function breakLines(text: string, width: number, measure: (text: string) => number): readonly string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (measure(longer) <= width) line = longer;
    else {
      if (line !== '') lines.push(`${line} `);
      const pieces = breakWord(word, width, measure);
      lines.push(...pieces.slice(0, -1));
      line = pieces.at(-1) ?? '';
    }
  }
  return [...lines, line];
}

/** At least one character to a piece, and a mark stays with its letter. */
function breakWord(word: string, width: number, measure: (text: string) => number): readonly string[] {
  if (measure(word) <= width) return [word];
  const pieces: string[] = [];
  let piece = '';
  let used = 0;
  for (const character of word.match(/\P{M}\p{M}*|\p{M}+/gu) ?? []) {
    const wide = measure(character);
    if (piece !== '' && used + wide > width) {
      pieces.push(piece);
      piece = '';
      used = 0;
    }
    piece += character;
    used += wide;
  }
  return [...pieces, piece];
}

function runsOf(line: string, { glyphs }: FontData): readonly Run[] {
  const runs: { codes: number[]; actual?: string }[] = [];
  for (const character of line) {
    const code = character.codePointAt(0) ?? replacement;
    const last = runs.at(-1);
    if (glyphs.has(code)) {
      if (last !== undefined && last.actual === undefined) last.codes.push(code);
      else runs.push({ codes: [code] });
    } else if (last?.actual !== undefined) {
      last.codes.push(replacement);
      last.actual += character;
    } else runs.push({ codes: [replacement], actual: character });
  }
  return runs;
}
