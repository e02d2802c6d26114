import { expect, type Page } from '@playwright/test';
import { comesWithApp } from '../../src/files/import-plan.ts';
import { handover } from '../../src/words/en/handover.ts';
import { contentOf, sentBundle } from './bundles.ts';
import { test } from './fixtures.ts';
import { givenBy, keepGiven } from './given.ts';
import { recordsOn } from './walk-phone.ts';

/** Chooses a file in the settings and waits until it is taken. */
async function takeIn(page: Page, file: Buffer): Promise<void> {
  await page.goto('/settings');
  await page
    .locator('input[type=file]')
    .first()
    .setInputFiles({ name: 'walk.zip', mimeType: 'application/zip', buffer: file });
  await expect(page.getByText(/records? added|already here/)).toBeVisible();
}

/** The bundle as the phone gives it away. */
async function handedOver(page: Page, id: string): Promise<Buffer> {
  await page.goto(`/walk/${id}/hand-over`);
  await page.getByRole('button', { name: handover.save(handover.walk) }).click();
  await expect(page.getByText('File written')).toBeVisible();
  return givenBy(page);
}

test('[HO6] a walk with pictures goes to another phone and back, equal to the byte', async ({
  page,
  browser,
  origin,
  complaints,
}) => {
  await keepGiven(page);
  const { id, file } = await sentBundle('steel', 12);
  await takeIn(page, file);
  const first = await handedOver(page, id);
  const sent = await contentOf(file);
  const given = await contentOf(first);
  expect(given.photos).toEqual(sent.photos);
  // Sheets and rule sets that come with the app go along, for whoever reads the file without it.
  expect(given.records.filter((record) => !comesWithApp(record.split(' ')[0] ?? ''))).toEqual(sent.records);

  const other = await browser.newContext({ baseURL: origin.url });
  try {
    const there = await other.newPage();
    await keepGiven(there);
    await takeIn(there, first);
    const second = await contentOf(await handedOver(there, id));
    expect(second).toEqual(given);
    const before = await recordsOn(there);
    await takeIn(there, first);
    expect(await recordsOn(there)).toEqual(before);
  } finally {
    await other.close();
  }
  expect(complaints).toEqual([]);
});
