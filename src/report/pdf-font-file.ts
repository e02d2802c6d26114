/** Tables of a TrueType file, in the order in which its directory wants them: by tag. */
export interface FontTables {
  readonly glyf: Uint8Array;
  readonly head: Uint8Array;
  readonly hhea: Uint8Array;
  readonly hmtx: Uint8Array;
  readonly loca: Uint8Array;
  readonly maxp: Uint8Array;
}

const tags = ['glyf', 'head', 'hhea', 'hmtx', 'loca', 'maxp'] as const;
const directoryLength = 12 + 16 * tags.length;
const aligned = (length: number): number => (length + 3) & ~3;

/** The largest power of two that is not more than the number of tables, which the directory repeats. */
const power = 4;

/** Puts tables together as a TrueType file with its checksums (ISO/IEC 14496-22, 4.3 and head). */
export function writeFontFile(tables: FontTables): Uint8Array {
  const size = tags.reduce((sum, tag) => sum + aligned(tables[tag].length), directoryLength);
  const file = new Uint8Array(size);
  const view = new DataView(file.buffer);
  view.setUint32(0, 0x00010000);
  [tags.length, 16 * power, Math.log2(power), 16 * (tags.length - power)].forEach((value, index) =>
    view.setUint16(4 + 2 * index, value),
  );
  let at = directoryLength;
  let headAt = 0;
  tags.forEach((tag, index) => {
    file.set(tables[tag], at);
    if (tag === 'head') headAt = at;
    writeRow(view, 12 + 16 * index, tag, at, tables[tag].length);
    at += aligned(tables[tag].length);
  });
  view.setUint32(headAt + 8, 0xb1b0afba - sumOf(view, 0, size));
  return file;
}

function writeRow(view: DataView, row: number, tag: string, at: number, length: number): void {
  for (let byte = 0; byte < 4; byte++) view.setUint8(row + byte, tag.charCodeAt(byte));
  view.setUint32(row + 4, sumOf(view, at, aligned(length)));
  view.setUint32(row + 8, at);
  view.setUint32(row + 12, length);
}

function sumOf(view: DataView, start: number, length: number): number {
  let sum = 0;
  for (let at = start; at < start + length; at += 4) sum = (sum + view.getUint32(at)) >>> 0;
  return sum;
}
