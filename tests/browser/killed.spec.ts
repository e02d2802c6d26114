import { expect } from '@playwright/test';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { killProfile, openProfile } from './browsers.ts';
import { keptOffline, test } from './fixtures.ts';

test('[B19] a killed browser starts the app again from its own disk, the server gone', async ({
  browserName,
  origin,
}) => {
  const profile = await mkdtemp(join(tmpdir(), 'sagline-profile-'));
  const engine = browserName === 'firefox' ? 'firefox' : 'chromium';
  const before = await openProfile(engine, profile);
  const page = await before.newPage();
  await page.goto(origin.url);
  await keptOffline(page);
  const closed = new Promise((resolve) => before.once('close', resolve));
  await killProfile(profile);
  await closed;
  await origin.stop();

  const after = await openProfile(engine, profile);
  const again = await after.newPage();
  await again.goto(`${origin.url}/settings`);
  await expect(again.locator('#app > *').first()).toBeVisible();
  await after.close();
  await rm(profile, { recursive: true, force: true });
});
