import { expect } from '@playwright/test';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { purposeWords } from '../../src/words/en/choices.ts';
import { common } from '../../src/words/en/common.ts';
import { sequence } from '../../src/words/en/rental-walks.ts';
import { reachFaults, readingFaults } from './access-faults.ts';
import { killProfile, openProfile } from './browsers.ts';
import { keptOffline, test as ownPhone } from './fixtures.ts';
import { base, shoot, thumb } from './rental-phone.ts';
import { handOut } from './rental-yard.ts';
import { test } from './walk-phone.ts';
import { Walker } from './walker.ts';

ownPhone(
  '[RW25] a killed browser goes on in the sequence where it was, every photo there',
  async ({ browserName, origin }) => {
    ownPhone.setTimeout(120_000);
    const profile = await mkdtemp(join(tmpdir(), 'sagline-profile-'));
    const engine = browserName === 'firefox' ? 'firefox' : 'chromium';
    const before = await openProfile(engine, profile);
    const first = await before.newPage();
    await first.goto(origin.url);
    await keptOffline(first);
    const walker = new Walker(first);
    await walker.addMachine('rental 7', 'track-loader', 'rubber-cored', '4500');
    await walker.startWalk('short', 'hand-out');
    expect([await shoot(walker), await shoot(walker)]).toEqual(['plate', 'meter']);
    await expect(first.getByText(sequence.nth(3, 12))).toBeVisible();
    const closed = new Promise((resolve) => before.once('close', resolve));
    await killProfile(profile);
    await closed;
    await origin.stop();

    const after = await openProfile(engine, profile);
    const again = await after.newPage();
    await again.goto(origin.url);
    const resumed = new Walker(again);
    await resumed.tap(again.getByRole('link', { name: new RegExp(purposeWords['hand-out'].label) }).first());
    await expect.poll(() => resumed.step).toBe('sequence.front-left');
    await expect(again.getByText(sequence.settled(2, 12))).toBeVisible();
    await resumed.tap(resumed.link(common.back));
    await expect(thumb(again)).toHaveCount(1);
    await after.close();
    await rm(profile, { recursive: true, force: true });
  },
);

test('[RW26] the screens of rental walks have no fault that axe finds, in light and dark, and every target is big enough', async ({
  walker,
  browserName,
}) => {
  test.skip(browserName !== 'chromium', 'axe reads the same tree in every engine');
  test.setTimeout(240_000);
  const { page } = walker;
  await handOut(walker);
  const out = base(page);
  await page.goto('/');
  await walker.tap(page.getByRole('link', { name: /rental 4/ }).first());
  const form = `${new URL(page.url()).pathname}/contract`;
  await walker.startWalk('short', 'rental-return');
  const back = base(page);
  const found: Record<string, unknown> = {};
  for (const at of [
    `${out}/sequence`,
    `${out}/sequence/plate`,
    `${out}/side-left/lug-depth/s2`,
    `${back}/sequence/plate`,
    `${back}/side-left/lug-depth/s1`,
    `${back}/hand-out`,
    `${back}/map`,
    form,
  ]) {
    await page.goto(at);
    await walker.pastCautions();
    await page.waitForTimeout(300);
    Object.assign(found, await reachFaults(page, at), await readingFaults(page, at));
  }
  expect(found).toEqual({});
});
