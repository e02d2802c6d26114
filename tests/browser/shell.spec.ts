import { expect } from '@playwright/test';
import { keptOffline, test } from './fixtures.ts';

test('[B1] after the first visit the app starts with the server gone', async ({
  page,
  origin,
  complaints,
}) => {
  await page.goto('/');
  await keptOffline(page);
  await origin.stop();
  await page.reload();
  await expect(page.locator('#app > *').first()).toBeVisible();
  await page.goto('/settings?from=test');
  await expect(page.locator('#app > *').first()).toBeVisible();
  expect(complaints).toEqual([]);
});

test('[B2] the worker is ready within ten seconds of the first visit', async ({ page, complaints }) => {
  await page.goto('/');
  const began = Date.now();
  await keptOffline(page);
  expect(Date.now() - began).toBeLessThan(10_000);
  expect(complaints).toEqual([]);
});

test('[B3] the app can be installed', async ({ page, request }) => {
  await page.goto('/');
  const href = await page.locator('link[rel=manifest]').getAttribute('href');
  const answer = await request.get(href ?? '');
  expect(answer.headers()['content-type']).toContain('application/manifest+json');
  const manifest = (await answer.json()) as Manifest;
  expect(manifest.name).toBe('Sagline');
  expect(manifest.id).toBe('/');
  expect(manifest.start_url).toBe('/');
  expect(['standalone', 'fullscreen', 'minimal-ui']).toContain(manifest.display);
  expect(manifest.prefer_related_applications ?? false).toBe(false);
  for (const [purpose, sizes] of [
    ['any', '192x192'],
    ['any', '512x512'],
    ['maskable', '512x512'],
  ]) {
    expect(manifest.icons).toContainEqual(expect.objectContaining({ purpose, sizes, type: 'image/png' }));
  }
  expect(new Set(manifest.screenshots.map(({ form_factor }) => form_factor))).toEqual(
    new Set(['narrow', 'wide']),
  );
  for (const { src, sizes, label } of [...manifest.icons, ...manifest.screenshots]) {
    if (sizes !== 'any') expect(sizeOf(await (await request.get(src)).body()), src).toBe(sizes);
    if (label !== undefined) expect(label).not.toBe('');
  }
  for (const { sizes } of manifest.screenshots) {
    const [short = 0, long = 0] = sizes
      .split('x')
      .map(Number)
      .sort((a, b) => a - b);
    expect(short).toBeGreaterThanOrEqual(320);
    expect(long).toBeLessThanOrEqual(Math.min(3840, short * 2.3));
  }
});

type Picture = {
  src: string;
  sizes: string;
  type: string;
  purpose?: string;
  form_factor?: string;
  label?: string;
};
type Manifest = {
  id: string;
  name: string;
  start_url: string;
  display: string;
  prefer_related_applications?: boolean;
  icons: Picture[];
  screenshots: Picture[];
};

/** Width and height stand in a PNG's first chunk. */
function sizeOf(png: Buffer): string {
  return `${png.readUInt32BE(16)}x${png.readUInt32BE(20)}`;
}
