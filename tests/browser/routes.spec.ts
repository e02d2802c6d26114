import { expect } from '@playwright/test';
import { keptOffline, test } from './fixtures.ts';

// With the server gone only the worker can answer: what opens, it answered; what fails, it left to the server.
const screens = [
  '/',
  '/?from=home',
  '/index.html',
  '/machine/0190f1f0-aaaa-7bbb-8ccc-0123456789ab',
  '/machine/0190f1f0?tab=walks',
  '/walk/0190f1f0/stop/3',
  '/sheets',
  '/sheets/1?edit=1',
  '/rules',
  '/settings',
  '/about',
  '/demo',
  '/tracks',
  '/tracks/own',
  '/inbox',
  '/check',
  '/hauling',
];
const others = [
  '/assets/nope.js',
  '/healthz',
  '/walk/1/report.pdf',
  '/walk/1/report.pdf?from=/settings',
  '/api/walk/1',
  '/v1/changes?scope=/settings',
  '/files/1',
  '/auth/callback?next=/',
  '/.well-known/x',
  '/settingsx',
];

test('[B12] the worker answers the screens of the app and nothing else', async ({ page, origin }) => {
  await page.goto('/');
  await keptOffline(page);
  await origin.stop();
  for (const path of screens) {
    await page.goto(path);
    await expect(page.locator('#app > *').first(), path).toBeVisible();
  }
  for (const path of others) {
    const opened = await page.goto(path).then(
      () => true,
      () => false,
    );
    expect(opened, path).toBe(false);
  }
});

test('[B13] what breaks the content policy or asks another address is noticed', async ({
  page,
  complaints,
}) => {
  await page.goto('/');
  await page.evaluate(() => {
    const script = document.createElement('script');
    script.setAttribute('nonce', '');
    script.append('globalThis.broken = 1');
    try {
      document.head.append(script);
    } catch {
      // Trusted Types refuse it at once; either is well.
    }
    void fetch('https://elsewhere.invalid/').catch(() => undefined);
  });
  await expect.poll(() => complaints.length).toBeGreaterThanOrEqual(2);
  expect(await page.evaluate(() => 'broken' in globalThis)).toBe(false);
  complaints.length = 0;
});
