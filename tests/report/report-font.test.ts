import { expect, it } from 'vitest';
import { reportFont } from '../../src/app/report-font.mjs';
import { readFont, tableOf } from '../../src/report/pdf-font.ts';
import { cutFont } from '../../src/report/pdf-font-cut.ts';
import { font } from './make-pdf.ts';

it('[PD30] the font that is kept is the one that its script makes', async () => {
  expect(Buffer.compare(await reportFont(), font)).toBe(0);
});

const whole = readFont(font);
const glyphsOf = (text: string): readonly number[] =>
  Array.from(text, (character) => whole.glyphs.get(character.codePointAt(0) ?? 0) ?? 0);

/** The tables of a font file, by the rows of its directory alone. */
function tablesOf(file: Uint8Array): ReadonlyMap<string, DataView> {
  const view = new DataView(file.buffer, file.byteOffset, file.byteLength);
  return new Map(
    Array.from({ length: view.getUint16(4) }, (_, row): [string, DataView] => {
      const at = 12 + 16 * row;
      const tag = String.fromCharCode(...file.subarray(at, at + 4));
      return [
        tag,
        new DataView(file.buffer, file.byteOffset + view.getUint32(at + 8), view.getUint32(at + 12)),
      ];
    }),
  );
}

/** The points of a glyph as bytes, those of its parts one after the other. */
function pointsOf(tables: ReadonlyMap<string, DataView>, glyph: number): readonly number[] {
  const [glyf, loca] = [tableOf(tables, 'glyf'), tableOf(tables, 'loca')];
  const isLong = tableOf(tables, 'head').getInt16(50) === 1;
  const end = (at: number): number => (isLong ? loca.getUint32(4 * at) : 2 * loca.getUint16(2 * at));
  const [start, stop] = [end(glyph), end(glyph + 1)];
  if (start === stop) return [];
  if (glyf.getInt16(start) >= 0)
    return Array.from({ length: stop - start }, (_, at) => glyf.getUint8(start + at));
  const points: number[] = [];
  let flags = 0x20;
  for (let at = start + 10; flags & 0x20; at += 4 + (flags & 1 ? 4 : 2)) {
    flags = glyf.getUint16(at);
    expect(flags & 0xc8).toBe(0);
    points.push(...pointsOf(tables, glyf.getUint16(at + 2)));
  }
  return points;
}

it('[PD31] a font cut down has the outlines and widths of the whole, and right sums', () => {
  const wanted = glyphsOf('Aż½Ω−Ж é→ŻΆЇ�');
  expect(wanted).not.toContain(0);
  const { file, numbers } = cutFont(whole, wanted);
  const cut = tablesOf(file);
  expect(file.length).toBeLessThan(font.length / 5);
  for (const glyph of wanted) {
    const own = numbers.get(glyph) ?? 0;
    const trimmed = (points: readonly number[]): string => points.join().replace(/(?:,0)+$/, '');
    expect(trimmed(pointsOf(cut, own))).toBe(trimmed(pointsOf(whole.tables, glyph)));
    expect((tableOf(cut, 'hmtx').getUint16(4 * own) * 1000) / whole.unitsPerEm).toBe(whole.advance(glyph));
  }
  const view = new DataView(file.buffer);
  let sum = 0;
  for (let at = 0; at < file.length; at += 4) sum = (sum + view.getUint32(at)) >>> 0;
  expect(sum).toBe(0xb1b0afba);
});
