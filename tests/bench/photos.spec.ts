import { expect, test, type Browser } from '@playwright/test';
import { readFileSync } from 'node:fs';
import { askPhotos, servePhotos } from '../browser/photos-origin.ts';

test.skip(({ browserName }) => browserName !== 'chromium', 'only Chromium can be throttled');

const throttle = 4;

/** Bytes that the processes of the browser's pages hold now (Linux). */
async function residentBytes(browser: Browser): Promise<number> {
  const session = await browser.newBrowserCDPSession();
  const { processInfo } = await session.send('SystemInfo.getProcessInfo');
  await session.detach();
  const held = processInfo
    .filter(({ type }) => type === 'renderer')
    .map(({ id }) => /VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${id}/status`, 'utf8'))?.[1]);
  return held.reduce((sum, kilobytes) => sum + Number(kilobytes), 0) * 1024;
}

test('[PH40] twenty photos of 12 megapixels keep a page four times slower answering, and memory flat', async ({
  page,
  browser,
}) => {
  test.setTimeout(240_000);
  const origin = await servePhotos();
  await page.goto(origin.url);
  const size = await askPhotos(page, 'prepare', 4_000, 3_000);
  const session = await page.context().newCDPSession(page);
  await session.send('Emulation.setCPUThrottlingRate', { rate: throttle });
  const held = async (): Promise<{ heap: number; resident: number }> => {
    await session.send('HeapProfiler.collectGarbage');
    return { heap: await askPhotos(page, 'heap'), resident: await residentBytes(browser) };
  };
  const five = await askPhotos(page, 'take', 5);
  const before = await held();
  const fifteen = await askPhotos(page, 'take', 15);
  const after = await held();
  const longest = Math.max(five.longest, fifteen.longest);
  const [heap, resident] = [after.heap / before.heap, after.resident / before.resident];
  console.log(
    `20 photos of 12 megapixels (${(size / 1e6).toFixed(1)} MB each) at ${throttle}× throttle: longest task ${longest.toFixed(0)} ms, heap after the 20th ${heap.toFixed(2)} × that after the 5th, page processes ${resident.toFixed(2)} × (${(after.resident / 1e6).toFixed(0)} MB), ${((five.ms + fifteen.ms) / 20).toFixed(0)} ms a photo`,
  );
  // Had the thread been busy, it would have been seen.
  expect(await askPhotos(page, 'keepBusy', 250)).toBeGreaterThanOrEqual(250);
  await origin.close();
  expect(longest).toBeLessThan(200);
  expect(heap).toBeLessThan(1.5);
  expect(resident).toBeLessThan(1.5);
});
