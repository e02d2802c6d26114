import { writeFontFile } from './pdf-font-file.ts';
import { tableOf, type FontData } from './pdf-font.ts';

/** Flags of a part of a compound glyph (ISO/IEC 14496-22, glyf). */
const wordArguments = 1;
const oneScale = 8;
const moreParts = 32;
const twoScales = 64;
const fourScales = 128;

/** A font cut down to some glyphs: the file, and the new number of every old glyph. */
export interface CutFont {
  readonly file: Uint8Array;
  readonly numbers: ReadonlyMap<number, number>;
}

/** Cuts the font down to these glyphs, their parts and glyph 0; hints, names and characters are left out. */
export function cutFont(font: FontData, wanted: readonly number[]): CutFont {
  const outlines = outlinesOf(font);
  const kept = withParts(outlines, [0, ...wanted]);
  const numbers = new Map(kept.map((glyph, index) => [glyph, index]));
  const glyphs = kept.map((glyph) => renumbered(outlines(glyph), numbers));
  return { file: writeFontFile(tablesOf(font, kept, glyphs)), numbers };
}

type Outlines = (glyph: number) => DataView;

function outlinesOf({ tables }: FontData): Outlines {
  const glyf = tableOf(tables, 'glyf');
  const loca = tableOf(tables, 'loca');
  const isLong = tableOf(tables, 'head').getInt16(50) === 1;
  const offset = (glyph: number): number =>
    isLong ? loca.getUint32(4 * glyph) : 2 * loca.getUint16(2 * glyph);
  return (glyph) =>
    new DataView(glyf.buffer, glyf.byteOffset + offset(glyph), offset(glyph + 1) - offset(glyph));
}

/** Where the number of each part of a compound glyph is written; none in a plain one. */
function partsOf(outline: DataView): readonly number[] {
  if (outline.byteLength === 0 || outline.getInt16(0) >= 0) return [];
  const places: number[] = [];
  let flags = moreParts;
  for (let at = 10; (flags & moreParts) !== 0; at += sizeOfPart(flags)) {
    flags = outline.getUint16(at);
    places.push(at + 2);
  }
  return places;
}

function sizeOfPart(flags: number): number {
  const scale = flags & oneScale ? 2 : flags & twoScales ? 4 : flags & fourScales ? 8 : 0;
  return 4 + (flags & wordArguments ? 4 : 2) + scale;
}

function withParts(outlines: Outlines, wanted: readonly number[]): readonly number[] {
  const kept = new Set<number>();
  const add = (glyph: number): void => {
    if (kept.has(glyph)) return;
    kept.add(glyph);
    const outline = outlines(glyph);
    for (const at of partsOf(outline)) add(outline.getUint16(at));
  };
  wanted.forEach(add);
  return [...kept].sort((a, b) => a - b);
}

/** A copy, an even number of bytes long, whose parts go by their new numbers. */
function renumbered(outline: DataView, numbers: ReadonlyMap<number, number>): Uint8Array {
  const copy = new Uint8Array(outline.byteLength + (outline.byteLength % 2));
  copy.set(new Uint8Array(outline.buffer, outline.byteOffset, outline.byteLength));
  const view = new DataView(copy.buffer);
  for (const at of partsOf(outline)) view.setUint16(at, numbers.get(outline.getUint16(at)) ?? 0);
  return copy;
}

function tablesOf(font: FontData, kept: readonly number[], glyphs: readonly Uint8Array[]) {
  const ends = [0];
  for (const glyph of glyphs) ends.push((ends.at(-1) ?? 0) + glyph.length);
  const glyf = new Uint8Array(ends.at(-1) ?? 0);
  glyphs.forEach((glyph, index) => glyf.set(glyph, ends[index]));
  const metrics = metricsOf(font, kept);
  return {
    glyf,
    head: changed(font, 'head', (head) => {
      head.setUint32(8, 0);
      head.setInt16(50, 1);
    }),
    hhea: changed(font, 'hhea', (hhea) => hhea.setUint16(34, kept.length)),
    hmtx: metrics,
    loca: filled(4 * ends.length, (loca) => ends.forEach((end, index) => loca.setUint32(4 * index, end))),
    maxp: changed(font, 'maxp', (maxp) => maxp.setUint16(4, kept.length)),
  };
}

function metricsOf({ tables }: FontData, kept: readonly number[]): Uint8Array {
  const hmtx = tableOf(tables, 'hmtx');
  const counted = tableOf(tables, 'hhea').getUint16(34);
  const bearingAt = (glyph: number): number =>
    glyph < counted ? 4 * glyph + 2 : 4 * counted + 2 * (glyph - counted);
  return filled(4 * kept.length, (table) =>
    kept.forEach((glyph, index) => {
      table.setUint16(4 * index, hmtx.getUint16(4 * Math.min(glyph, counted - 1)));
      table.setInt16(4 * index + 2, hmtx.getInt16(bearingAt(glyph)));
    }),
  );
}

function changed({ tables }: FontData, tag: string, change: (copy: DataView) => void): Uint8Array {
  const table = tableOf(tables, tag);
  const copy = new Uint8Array(table.byteLength);
  copy.set(new Uint8Array(table.buffer, table.byteOffset, table.byteLength));
  change(new DataView(copy.buffer));
  return copy;
}

function filled(length: number, fill: (table: DataView) => void): Uint8Array {
  const bytes = new Uint8Array(length);
  fill(new DataView(bytes.buffer));
  return bytes;
}
