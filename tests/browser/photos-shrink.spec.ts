import { expect, test as base, type Browser } from '@playwright/test';
import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { photoFaultLine } from '../../src/words/en/photos.ts';
import { greyJpeg, jpegWith, markedPicture } from '../photo-files.ts';
import { refusedFiles, uprightFaults } from './photos-cases.ts';
import { askPhotos, servePhotos } from './photos-origin.ts';
import type { LocalOrigin } from './local-origin.ts';

const test = base.extend<object, { origin: LocalOrigin }>({
  origin: [
    // eslint-disable-next-line no-empty-pattern -- Playwright reads the names of the fixtures out of the pattern
    async ({}, use) => {
      const origin = await servePhotos();
      await use(origin);
      await origin.close();
    },
    { scope: 'worker' },
  ],
});

test('[PH30] the eight orientations of one picture become the same upright picture, without metadata', async ({
  page,
  origin,
}) => {
  await page.goto(origin.url);
  expect(await uprightFaults((bytes) => askPhotos(page, 'shrink', bytes, 'image/jpeg'))).toEqual([]);
});

test('[PH31] what is no photo, breaks off, or cannot be decoded is refused with its sentence', async ({
  page,
  origin,
}) => {
  await page.goto(origin.url);
  for (const [what, bytes, said] of refusedFiles())
    expect(await askPhotos(page, 'shrink', bytes, 'image/jpeg'), what).toBe(said);
});

/** The most memory that any process of the browser's pages has had, in bytes (Linux). */
async function peakBytes(browser: Browser): Promise<number> {
  const session = await browser.newBrowserCDPSession();
  const { processInfo } = await session.send('SystemInfo.getProcessInfo');
  await session.detach();
  const peaks = processInfo
    .filter(({ type }) => type === 'renderer')
    .map(({ id }) => /VmHWM:\s+(\d+)/.exec(readFileSync(`/proc/${id}/status`, 'utf8'))?.[1]);
  return Math.max(...peaks.map(Number)) * 1024;
}

test('[PH32] a picture of 108 megapixels in 0.4 MB is refused without being decoded, one of 59 is taken', async ({
  page,
  origin,
  browser,
  browserName,
}) => {
  await page.goto(origin.url);
  const isMeasured = browserName === 'chromium' && process.platform === 'linux';
  const peak = (): Promise<number> => (isMeasured ? peakBytes(browser) : Promise.resolve(0));
  await askPhotos(page, 'shrinkFile', [...greyJpeg(200, 100)]);
  const before = await peak();
  const said = await askPhotos(page, 'shrinkFile', [...greyJpeg(12_000, 9_000)]);
  expect(said).toBe(photoFaultLine({ kind: 'too-many-pixels', megapixels: 108, most: 60 }));
  const refused = (await peak()) - before;
  expect(await askPhotos(page, 'shrinkFile', [...greyJpeg(8_850, 6_650)])).toBe('2048 × 1539');
  const taken = (await peak()) - before;
  console.log(
    `${browserName}: 108 MP refused in ${mega(refused)} MB more, 59 MP taken in ${mega(taken)} MB more`,
  );
  if (!isMeasured) return;
  expect(refused).toBeLessThan(60e6);
  // Shows that the measure would see a decoder at work.
  expect(taken).toBeGreaterThan(100e6);
  expect(taken).toBeLessThan(600e6);
});

const mega = (bytes: number): string => (bytes / 1e6).toFixed(0);

test('[PH33] photos are made one after the other, and one that is given up does not hold up the next', async ({
  page,
  origin,
}) => {
  await page.goto(origin.url);
  const file = jpegWith(markedPicture(300, 200, 1), []);
  expect(await askPhotos(page, 'cancelSecond', [...file])).toEqual(['made', 'cancelled', 'made']);
});

test('[PH35] a file that was changed since it was picked cannot be read, which is said', async ({
  page,
  origin,
}, info) => {
  await page.goto(origin.url);
  const path = info.outputPath('photo.jpg');
  writeFileSync(path, jpegWith(markedPicture(300, 200, 1), []));
  await page.locator('input').setInputFiles(path);
  expect(await askPhotos(page, 'shrinkPicked')).toBe('made');
  await page.locator('input').setInputFiles(path);
  rmSync(path);
  expect(await askPhotos(page, 'shrinkPicked')).toBe(photoFaultLine({ kind: 'unreadable' }));
});
