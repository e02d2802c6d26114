import { readFile } from 'node:fs/promises';
import { reportFontPath } from '../../src/app/report-font.mjs';
import type { Block, Report } from '../../src/report/blocks.ts';
import { writePdf, type PdfGiven } from '../../src/report/pdf.ts';
import { samplePhoto } from './sample-report.ts';

/** The font as the app ships it. */
export const font: Uint8Array = await readFile(reportFontPath);

/** A PDF with the font of the app, on A4 and at a fixed moment unless told otherwise. */
export const makePdf = (report: Report, given: Partial<PdfGiven> = {}): Promise<Uint8Array<ArrayBuffer>> =>
  writePdf(report, { photo: samplePhoto, font, paper: 'a4', at: { utc: '2026-06-03T09:30:00Z' }, ...given });

/** A report of these blocks alone. */
export const reportOf = (...blocks: readonly Block[]): Report => ({
  lang: 'en',
  title: 'A report',
  running: 'A running line',
  pageOf: (page, pages) => `Page ${page} of ${pages}`,
  blocks,
});
