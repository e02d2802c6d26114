import { expect, type Page } from '@playwright/test';
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { keptOffline, test } from './fixtures.ts';

const build = join(import.meta.dirname, '../../src/app/build.mjs');
let nextApp: string;

// One worker, so that the next version is built once.
test.describe.configure({ mode: 'default' });

test.beforeAll(() => {
  nextApp = mkdtempSync(join(tmpdir(), 'sagline-next-'));
  execFileSync(process.execPath, [build], {
    env: { ...process.env, APP_DIR: nextApp, BUILD_LABEL: `-next-${process.pid}` },
  });
});
test.afterAll(() => rmSync(nextApp, { recursive: true }));

test('[B14] a new version waits, and the open page keeps its own files when another tab takes it', async ({
  page,
  context,
  origin,
}) => {
  await page.goto('/');
  await keptOffline(page);
  // A page tells its build once the app has started.
  await expect.poll(() => buildOf(page)).toBeDefined();
  const own = await buildOf(page);
  const [ownScript] = await scriptsOf(page);
  await page.evaluate(() => Object.assign(globalThis, { untouched: true }));

  await origin.start(nextApp);
  await page.evaluate(async () => void (await (await navigator.serviceWorker.ready).update()));
  await expect.poll(() => isWaiting(page)).toBe(true);
  const other = await context.newPage();
  await other.goto('/settings');
  await expect.poll(() => buildOf(other)).toBe(own);

  await other.evaluate(async () =>
    (await navigator.serviceWorker.ready).waiting?.postMessage({ type: 'SKIP_WAITING' }),
  );
  await expect.poll(() => isWaiting(other)).toBe(false);
  // The new worker is no longer waiting before it answers: until then a reload may still get the old page.
  const active = () => other.evaluate(async () => (await navigator.serviceWorker.ready).active?.state);
  await expect.poll(active).toBe('activated');
  await origin.stop();
  await other.reload();
  await expect(other.locator('#app > *').first()).toBeVisible();
  await expect.poll(() => buildOf(other)).toMatch(/next/);

  expect(await page.evaluate(() => 'untouched' in globalThis)).toBe(true);
  const status = await page.evaluate(async (url) => (await fetch(url)).status, ownScript ?? '');
  expect(status).toBe(200);
});

test('[B15] only the running version and the one before it are kept', async ({ page, origin }) => {
  await page.goto('/');
  await keptOffline(page);
  await page.evaluate(() => caches.open('sagline-shell-long-ago'));
  const [first] = await shells(page);
  await origin.start(nextApp);
  await page.evaluate(async () => void (await (await navigator.serviceWorker.ready).update()));
  await expect.poll(() => isWaiting(page)).toBe(true);
  expect(await shells(page)).toHaveLength(3);
  await page.evaluate(async () =>
    (await navigator.serviceWorker.ready).waiting?.postMessage({ type: 'SKIP_WAITING' }),
  );
  await expect.poll(() => shells(page)).toHaveLength(2);
  expect(await shells(page)).toContain(first);
  expect(await shells(page)).not.toContain('sagline-shell-long-ago');
});

function scriptsOf(page: Page): Promise<string[]> {
  return page.evaluate(() =>
    [...document.querySelectorAll('script[type=module]')].map((script) => script.getAttribute('src') ?? ''),
  );
}

function buildOf(page: Page): Promise<string | undefined> {
  return page.evaluate(() => document.documentElement.dataset['build']);
}

function isWaiting(page: Page): Promise<boolean> {
  return page.evaluate(
    async () => ((await navigator.serviceWorker.getRegistration())?.waiting ?? null) !== null,
  );
}

function shells(page: Page): Promise<string[]> {
  return page.evaluate(async () => (await caches.keys()).filter((name) => name.startsWith('sagline-shell-')));
}
