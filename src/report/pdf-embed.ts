import type { FontData } from './pdf-font.ts';
import { cutFont } from './pdf-font-cut.ts';
import { plainValue, type Objects, type Ref, type Value } from './pdf-objects.ts';
import { hex4, syntax } from './pdf-syntax.ts';

/** Six letters and a plus say that the font is a part of the one named (ISO 32000-1, 9.6.4). */
const fontName = 'SAGLIN+DejaVuSansCondensed';

/**
 * Embeds the part of the font that these characters need, each under its own code point, so that what is copied out
 * is what was put in.
 */
export function embedFont(objects: Objects, font: FontData, used: ReadonlySet<number>): Ref {
  const codes = [...used].sort((a, b) => a - b);
  const glyphOf = (code: number): number => font.glyphs.get(code) ?? 0;
  const { file, numbers } = cutFont(font, codes.map(glyphOf));
  const descendant = objects.add({
    Type: 'Font',
    Subtype: 'CIDFontType2',
    BaseFont: fontName,
    CIDSystemInfo: { Registry: plainValue('Adobe'), Ordering: plainValue('Identity'), Supplement: 0 },
    FontDescriptor: descriptor(objects, font, file),
    DW: 0,
    W: codes.flatMap((code): Value[] => [code, [Math.round(font.advance(glyphOf(code)))]]),
    CIDToGIDMap: objects.stream(glyphMap(codes, (code) => numbers.get(glyphOf(code)) ?? 0)),
  });
  return objects.add({
    Type: 'Font',
    Subtype: 'Type0',
    BaseFont: fontName,
    Encoding: 'Identity-H',
    DescendantFonts: [descendant],
    ToUnicode: objects.stream(unicodeMap(codes)),
  });
}

function descriptor(objects: Objects, font: FontData, file: Uint8Array): Ref {
  return objects.add({
    Type: 'FontDescriptor',
    FontName: fontName,
    // Symbolic: its codes are not those of a standard encoding.
    Flags: 4,
    FontBBox: font.box.map(Math.round),
    ItalicAngle: 0,
    Ascent: Math.round(font.ascent),
    Descent: Math.round(font.descent),
    CapHeight: Math.round(font.capHeight),
    StemV: 80,
    FontFile2: objects.stream(file, { Length1: file.length }),
  });
}

function glyphMap(codes: readonly number[], numberOf: (code: number) => number): Uint8Array {
  const map = new Uint8Array(2 * ((codes.at(-1) ?? 0) + 1));
  const view = new DataView(map.buffer);
  for (const code of codes) view.setUint16(2 * code, numberOf(code));
  return map;
}

/** At most so many lines to a block (Adobe technical note 5411, 1.4.1). */
const mostInBlock = 100;

function unicodeMap(codes: readonly number[]): string {
  const blocks: string[] = [];
  for (let at = 0; at < codes.length; at += mostInBlock) {
    const lines = codes.slice(at, at + mostInBlock).map((code) => `<${hex4(code)}> <${hex4(code)}>`);
    blocks.push(syntax`${lines.length} beginbfchar
${lines.join('\n')}
endbfchar`);
  }
  return syntax`/CIDInit /ProcSet findresource begin
12 dict begin
begincmap
/CIDSystemInfo <</Registry (Adobe) /Ordering (UCS) /Supplement 0>> def
/CMapName /Adobe-Identity-UCS def
/CMapType 2 def
1 begincodespacerange
<0000> <FFFF>
endcodespacerange
${blocks.join('\n')}
endcmap
CMapName currentdict /CMap defineresource pop
end
end`;
}
