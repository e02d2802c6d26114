import { expect, test as base } from '@playwright/test';
import { build } from 'esbuild';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { reportFontPath } from '../../src/app/report-font.mjs';
import { securityHeaders } from '../../src/server/security-headers.ts';
import { objectsOf, readPdf } from '../report/read-pdf.ts';
import type { ReportPage } from '../report/page.ts';
import { serveLocally } from './local-origin.ts';

/** An origin that serves the writer of PDFs and its font, under the app's own content policy. */
const test = base.extend<object, { origin: string }>({
  origin: [
    // eslint-disable-next-line no-empty-pattern -- Playwright reads the names of the fixtures out of the pattern
    async ({}, use) => {
      const files: Readonly<Record<string, readonly [type: string, body: string | Uint8Array]>> = {
        '/': ['text/html', '<!doctype html><title>report</title><script src="/page.js"></script>'],
        '/page.js': ['text/javascript', await script()],
        '/report.ttf': ['font/ttf', await readFile(reportFontPath)],
      };
      const origin = await serveLocally(({ url = '/' }, answer) => {
        const [type, body] = files[url] ?? ['text/plain', ''];
        answer.writeHead(200, { ...securityHeaders(false), 'content-type': type }).end(body);
      });
      await use(origin.url);
      await origin.close();
    },
    { scope: 'worker' },
  ],
});

async function script(): Promise<string> {
  const built = await build({
    entryPoints: [join(import.meta.dirname, '../report/page.ts')],
    bundle: true,
    write: false,
    format: 'iife',
    logLevel: 'error',
    // The font is served below, at its own address.
    outdir: '/',
    assetNames: '[name]',
    publicPath: '/',
    loader: { '.ttf': 'file' },
  });
  return built.outputFiles.find(({ path }) => path.endsWith('.js'))?.text ?? '';
}

test('[PD40] a phone writes the PDF under the content policy, and no picture in it is above 80 kB', async ({
  page,
  origin,
  browserName,
}) => {
  const broken: string[] = [];
  page.on('console', (message) => message.type() === 'error' && broken.push(message.text()));
  await page.goto(origin);
  const started = Date.now();
  const { photo, pdf } = await page.evaluate(() => {
    const here = globalThis as unknown as { reportPage: ReportPage };
    return here.reportPage.sample(2000, 1500);
  });
  const bytes = Buffer.from(pdf, 'base64');
  const images = (await objectsOf(bytes)).filter((object) => object.includes('/Subtype /Image'));
  const lengths = images.map((image) => Number(/\/Length (\d+)/.exec(image)?.[1]));
  expect(photo).toBeGreaterThan(1_000_000);
  expect(lengths).toHaveLength(1);
  expect(lengths[0]).toBeLessThanOrEqual(80_000);
  expect((await readPdf(bytes)).pages.length).toBeGreaterThan(1);
  expect(broken).toEqual([]);
  console.log(
    `PDF in ${browserName}: a picture of ${photo} bytes became ${lengths[0]}, ${Date.now() - started} ms in all`,
  );
});
