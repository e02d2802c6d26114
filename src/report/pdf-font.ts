import { assert } from '../core/result.ts';

/** A TrueType font as read from its file; lengths are thousandths of the type size. */
export interface FontData {
  readonly bytes: DataView;
  readonly tables: ReadonlyMap<string, DataView>;
  /** The glyph of a character (a code point up to U+FFFF). */
  readonly glyphs: ReadonlyMap<number, number>;
  /** How far a glyph moves the pen. */
  readonly advance: (glyph: number) => number;
  readonly unitsPerEm: number;
  readonly ascent: number;
  readonly descent: number;
  readonly capHeight: number;
  /** xMin, yMin, xMax, yMax over all glyphs. */
  readonly box: readonly [number, number, number, number];
}

/** Reads a TrueType file as ISO/IEC 14496-22 lays it out: head, hhea, hmtx, maxp, OS/2 and a cmap of format 4. */
export function readFont(file: Uint8Array): FontData {
  const bytes = new DataView(file.buffer, file.byteOffset, file.byteLength);
  const tables = readTables(bytes);
  const head = tableOf(tables, 'head');
  const os2 = tableOf(tables, 'OS/2');
  const unitsPerEm = head.getUint16(18);
  const scaled = (table: DataView, at: number): number => (table.getInt16(at) * 1000) / unitsPerEm;
  return {
    bytes,
    tables,
    glyphs: readCharacters(tableOf(tables, 'cmap')),
    advance: readAdvances(tableOf(tables, 'hhea'), tableOf(tables, 'hmtx'), unitsPerEm),
    unitsPerEm,
    ascent: scaled(os2, 68),
    descent: scaled(os2, 70),
    // Fonts older than version 2 of the table say no height of capitals; 0.72 em is common.
    capHeight: os2.getUint16(0) < 2 ? 720 : scaled(os2, 88),
    box: [scaled(head, 36), scaled(head, 38), scaled(head, 40), scaled(head, 42)],
  };
}

/** A table of the font, which has to be there. */
export function tableOf(tables: ReadonlyMap<string, DataView>, tag: string): DataView {
  const table = tables.get(tag);
  assert(table !== undefined, `the font has no table ${tag}`);
  return table;
}

function readTables(file: DataView): ReadonlyMap<string, DataView> {
  const tables = new Map<string, DataView>();
  for (let row = 0; row < file.getUint16(4); row++) {
    const at = 12 + 16 * row;
    const tag = String.fromCharCode(...[0, 1, 2, 3].map((byte) => file.getUint8(at + byte)));
    const start = file.byteOffset + file.getUint32(at + 8);
    tables.set(tag, new DataView(file.buffer, start, file.getUint32(at + 12)));
  }
  return tables;
}

function readAdvances(hhea: DataView, hmtx: DataView, unitsPerEm: number): (glyph: number) => number {
  const counted = hhea.getUint16(34);
  return (glyph) => (hmtx.getUint16(4 * Math.min(glyph, counted - 1)) * 1000) / unitsPerEm;
}

/** The Unicode subtable of format 4; characters beyond U+FFFF are not in our fonts. */
function readCharacters(cmap: DataView): ReadonlyMap<number, number> {
  for (let row = 0; row < cmap.getUint16(2); row++) {
    const start = cmap.getUint32(4 + 8 * row + 4);
    if (cmap.getUint16(start) !== 4) continue;
    return readSegments(new DataView(cmap.buffer, cmap.byteOffset + start));
  }
  throw new Error('the font has no characters of format 4');
}

function readSegments(table: DataView): ReadonlyMap<number, number> {
  const glyphs = new Map<number, number>();
  const doubled = table.getUint16(6);
  for (let at = 14; at < 14 + doubled; at += 2) {
    const first = table.getUint16(at + doubled + 2);
    for (let code = first; code <= table.getUint16(at) && code < 0xffff; code++) {
      const glyph = glyphIn(table, at + 2 + doubled, doubled, code, code - first);
      if (glyph !== 0) glyphs.set(code, glyph);
    }
  }
  return glyphs;
}

function glyphIn(table: DataView, startAt: number, doubled: number, code: number, step: number): number {
  const delta = table.getUint16(startAt + doubled);
  const rangeAt = startAt + 2 * doubled;
  const range = table.getUint16(rangeAt);
  if (range === 0) return (code + delta) & 0xffff;
  const glyph = table.getUint16(rangeAt + range + 2 * step);
  return glyph === 0 ? 0 : (glyph + delta) & 0xffff;
}
