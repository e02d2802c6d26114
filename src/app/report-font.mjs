// Cuts the font of the report's PDF out of DejaVu Sans Condensed. What it makes is kept beside the app, so that a
// build needs no font; run it again when a range is added.
import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import subsetFont from 'subset-font';
import { root } from './install.mjs';

const source = import.meta.resolve('dejavu-fonts-ttf/ttf/DejaVuSansCondensed.ttf');
/** Where it is kept. */
export const reportFontPath = join(root, 'src/app/reporting/report.ttf');

/**
 * What people may write on a report: Latin with its extensions for Europe, Greek, Cyrillic, marks that stand on
 * letters, punctuation and spaces, fractions, currencies, arrows, signs of mathematics, boxes and checks.
 * @type {readonly (readonly [number, number])[]}
 */
const ranges = [
  [0x20, 0x7e],
  [0xa0, 0x17f],
  [0x218, 0x21b],
  [0x2c6, 0x2dd],
  [0x300, 0x30c],
  [0x323, 0x328],
  [0x370, 0x3ff],
  [0x400, 0x4ff],
  [0x1e80, 0x1e85],
  [0x1e9e, 0x1e9e],
  [0x2000, 0x200a],
  [0x2010, 0x2027],
  [0x202f, 0x203a],
  [0x2044, 0x2044],
  [0x2070, 0x209c],
  [0x20a0, 0x20bf],
  [0x2103, 0x2103],
  [0x2109, 0x2109],
  [0x2113, 0x2117],
  [0x2122, 0x2122],
  [0x2150, 0x215e],
  [0x2190, 0x2199],
  [0x21ba, 0x21bb],
  [0x21d0, 0x21d5],
  [0x2200, 0x2265],
  [0x2300, 0x2300],
  [0x25a0, 0x25cf],
  [0x2610, 0x2612],
  [0x26a0, 0x26a0],
  [0x2713, 0x2717],
  [0xfffd, 0xfffd],
];

/** DejaVu Sans Condensed as the report needs it: no hints and no shaping, which a PDF does not use. */
export async function reportFont() {
  const characters = ranges.flatMap(([from, to]) =>
    Array.from({ length: to - from + 1 }, (_, index) => String.fromCodePoint(from + index)),
  );
  return subsetFont(await readFile(fileURLToPath(source)), characters.join(''), {
    targetFormat: 'truetype',
    noHinting: true,
    dropTables: ['GSUB', 'GPOS', 'GDEF', 'kern', 'gasp', 'FFTM', 'name', 'post', 'MATH'],
  });
}

if (process.argv[1] === fileURLToPath(import.meta.url)) await writeFile(reportFontPath, await reportFont());
