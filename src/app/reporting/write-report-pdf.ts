import type { Report } from '../../report/blocks.ts';
import type { Photos } from '../../storage/store.ts';
import fontUrl from './report.ttf';
import { shrinkForPdf } from './shrink-for-pdf.ts';

/** What the PDF of a report is made from. */
export interface ReportPdfGiven {
  readonly photos: Pick<Photos, 'get'>;
  readonly paper: 'a4' | 'letter';
  /** The moment that stands in the file's properties, as `observedNow()` gives it. */
  readonly at: { readonly utc: string };
}

/**
 * The report as a PDF. What writes it and its font are loaded when first asked for, and are there without a network;
 * rejects where they are not. A photo that is gone, or that this phone cannot decode, leaves an empty frame.
 */
export async function writeReportPdf(
  report: Report,
  { photos, paper, at }: ReportPdfGiven,
): Promise<Uint8Array<ArrayBuffer>> {
  const [{ writePdf }, font] = await Promise.all([import('../../report/pdf.ts'), loadFont()]);
  return writePdf(report, {
    font,
    paper,
    at,
    photo: async (sha256) => {
      const found = await photos.get(sha256);
      return found.ok && found.value !== undefined ? shrinkForPdf(found.value.bytes) : undefined;
    },
  });
}

async function loadFont(): Promise<Uint8Array> {
  const answer = await fetch(fontUrl);
  if (!answer.ok) throw new Error(`no font: ${answer.status}`);
  return new Uint8Array(await answer.arrayBuffer());
}
