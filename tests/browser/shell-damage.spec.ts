import { expect, type Page } from '@playwright/test';
import { repairWords } from '../../src/words/shell.ts';
import { withoutHttpCache } from './browsers.ts';
import { keptOffline, test } from './fixtures.ts';

/** Takes the files whose address matches out of the worker's cache, as a browser short of space may. */
function evict(page: Page, pattern: string): Promise<number> {
  return page.evaluate(async (source) => {
    let gone = 0;
    for (const name of await caches.keys()) {
      const cache = await caches.open(name);
      for (const request of await cache.keys()) {
        if (new RegExp(source).test(request.url) && (await cache.delete(request))) gone += 1;
      }
    }
    return gone;
  }, pattern);
}

// The browser's own cache would hand the missing script out again: a phone's may have dropped it as well.
test.use({ launchOptions: async ({ browserName }, use) => use(withoutHttpCache(browserName)) });

async function forgetHttpCache(page: Page): Promise<void> {
  if (page.context().browser()?.browserType().name() !== 'chromium') return;
  const session = await page.context().newCDPSession(page);
  await session.send('Network.clearBrowserCache');
}

const app = '#app > *';
const repairTitle = { name: repairWords.title };

for (const [what, pattern] of [
  ['a script', '/assets/index-.*js'],
  ['the page', '/index\\.html'],
  ['a style', '\\.css'],
] as const) {
  test(`[B10] with the network there, a shell that lost ${what} starts and is whole again`, async ({
    page,
    origin,
  }) => {
    await page.goto('/');
    await keptOffline(page);
    const lost = await evict(page, pattern);
    expect(lost).toBeGreaterThan(0);
    await page.reload();
    await expect(page.locator(app).first()).toBeVisible();
    await expect.poll(() => countOf(page, pattern)).toBe(lost);
    await origin.stop();
    await page.reload();
    await expect(page.locator(app).first()).toBeVisible();
  });
}

for (const [what, pattern] of [
  ['its script', '/assets/index-.*js'],
  ['its page', '/index\\.html'],
] as const) {
  test(`[B11] without network and ${what}, the app says so and can be fetched again later`, async ({
    page,
    origin,
  }) => {
    await page.goto('/');
    await keptOffline(page);
    await origin.stop();
    await evict(page, pattern);
    await forgetHttpCache(page);
    await page.reload();
    await expect(page.getByRole('heading', repairTitle)).toBeVisible({ timeout: 15_000 });
    const button = page.getByRole('button', { name: repairWords.button });
    await button.click();
    await expect(page.getByRole('status')).toHaveText(repairWords.offline);
    await origin.start();
    await button.click();
    await expect(page.locator(app).first()).toBeVisible();
    await expect(page.getByRole('heading', repairTitle)).toBeHidden();
  });
}

test('[B11] repairing does not touch the database', async ({ page, origin }) => {
  await page.goto('/');
  await keptOffline(page);
  await page.evaluate(
    () =>
      new Promise<void>((resolve, reject) => {
        const opening = indexedDB.open('kept', 1);
        opening.onupgradeneeded = () => opening.result.createObjectStore('a').put('reading', 'key');
        opening.onsuccess = () => resolve(opening.result.close());
        opening.onerror = () => reject(opening.error);
      }),
  );
  await origin.stop();
  await evict(page, '/assets/index-.*js');
  await forgetHttpCache(page);
  await page.reload();
  await page.getByRole('heading', repairTitle).waitFor();
  await origin.start();
  await page.getByRole('button', { name: repairWords.button }).click();
  await expect(page.locator(app).first()).toBeVisible();
  const kept = await page.evaluate(
    () =>
      new Promise((resolve, reject) => {
        const opening = indexedDB.open('kept', 1);
        opening.onsuccess = () => {
          const getting = opening.result.transaction('a').objectStore('a').get('key');
          getting.onsuccess = () => resolve(getting.result);
        };
        opening.onerror = () => reject(opening.error);
      }),
  );
  expect(kept).toBe('reading');
});

function countOf(page: Page, pattern: string): Promise<number> {
  return page.evaluate(async (source) => {
    let count = 0;
    for (const name of await caches.keys()) {
      const cache = await caches.open(name);
      count += (await cache.keys()).filter((request) => new RegExp(source).test(request.url)).length;
    }
    return count;
  }, pattern);
}
