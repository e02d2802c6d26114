import { writeReportPdf } from '../../src/app/reporting/write-report-pdf.ts';
import { sampleReport } from './sample-report.ts';

/** A photo as large as a phone takes it, with so much grain that it hardly shrinks. */
async function grainyPhoto(width: number, height: number): Promise<Uint8Array> {
  const canvas = new OffscreenCanvas(width, height);
  const context = canvas.getContext('2d');
  if (context === null) throw new Error('no canvas');
  const strip = context.createImageData(width, 1);
  let seed = 7;
  for (let y = 0; y < height; y++) {
    for (let at = 0; at < strip.data.length; at++) {
      seed = (seed * 48271) % 0x7fffffff;
      strip.data[at] = at % 4 === 3 ? 255 : seed & 255;
    }
    context.putImageData(strip, 0, y);
  }
  const blob = await canvas.convertToBlob({ type: 'image/jpeg', quality: 0.9 });
  return new Uint8Array(await blob.arrayBuffer());
}

/** What a test asks of this page. */
const reportPage = {
  /** The PDF of the sample: photo 0 is grain, 1 is no image, all others are gone. Answers it in base 64. */
  async sample(width: number, height: number): Promise<{ photo: number; pdf: string }> {
    const grain = await grainyPhoto(width, height);
    const pdf = await writeReportPdf(sampleReport, {
      paper: 'a4',
      at: { utc: '2026-06-03T09:30:00Z' },
      photos: {
        get: (sha256) => {
          const bytes = { '0': grain, '1': new TextEncoder().encode('no image') }[sha256.charAt(0)];
          const value = bytes === undefined ? undefined : { sha256, type: 'image/jpeg', bytes };
          return Promise.resolve({ ok: true, value });
        },
      },
    });
    let text = '';
    for (const byte of pdf) text += String.fromCharCode(byte);
    return { photo: grain.length, pdf: btoa(text) };
  },
};
export type ReportPage = typeof reportPage;

Object.assign(globalThis, { reportPage });
