import { expect, type BrowserContext } from '@playwright/test';
import { readFileSync } from 'node:fs';
import { deviceIdOf, makeStamp } from '../../src/core/stamp.ts';
import { databaseName, schemaVersion } from '../../src/storage/schema.ts';
import { home } from '../../src/words/en/home.ts';
import { common } from '../../src/words/en/common.ts';
import { shell } from '../../src/words/en/settings.ts';
import { walk as walkWords } from '../../src/words/en/walk.ts';
import { recordsOf } from '../checks/walk-file.ts';
import type { Fixture } from '../storage/older-build.ts';
import { keptOffline } from './fixtures.ts';
import { recordsOn, test } from './walk-phone.ts';
import { Walker } from './walker.ts';

const stored = JSON.parse(
  readFileSync(new URL('../storage/fixtures/v1.json', import.meta.url), 'utf8'),
) as Fixture;

/** As the first build left a phone: its stored fixture, and in it a walk that stops at the left track. */
function oldPhone(): Fixture {
  const device = deviceIdOf(new Uint8Array(8).fill(7));
  const walked = recordsOf('rubber-first-maker').filter(
    ({ key }) => !key.startsWith('reading/') || /\/left\.(idler|adjuster|track\/lug-depth)/.test(key),
  );
  const rows = walked.map(({ key, value }, at) => ({
    key,
    versions: [{ key, value, stamp: makeStamp(at + 10, device), seen: {}, by: device }],
  }));
  const stores = stored.stores.map((store) =>
    store.name === 'versions' ? { ...store, rows: [...store.rows, ...rows] } : store,
  );
  return { ...stored, stores };
}

/** Makes the database on a page of the origin that knows nothing of the app. */
async function leaveDatabase(context: BrowserContext, url: string, fixture: Fixture): Promise<void> {
  const page = await context.newPage();
  await page.goto(`${url}/icon.svg`);
  await page.evaluate(
    ([name, { version, stores }]) =>
      new Promise<void>((resolve, reject) => {
        const opening = indexedDB.open(name, version);
        opening.onerror = () => reject(new Error('the database cannot be made'));
        opening.onupgradeneeded = () => {
          for (const { name: store, keyPath, rows } of stores) {
            const made = opening.result.createObjectStore(store, {
              keyPath: typeof keyPath === 'string' ? keyPath : [...keyPath],
            });
            for (const row of rows) made.put(row);
          }
        };
        opening.onsuccess = () => {
          opening.result.close();
          resolve();
        };
      }),
    [databaseName, fixture] as const,
  );
  await page.close();
}

test('[B38] a phone that the first build left: its walk is there and is gone on with', async ({
  page,
  context,
  origin,
  complaints,
}) => {
  test.setTimeout(120_000);
  await leaveDatabase(context, origin.url, oldPhone());
  await page.goto('/');
  await keptOffline(page);
  await origin.stop();
  await page.reload();
  const open = page.getByRole('link').filter({ hasText: 'Check machine: rubber mini excavator' });
  await expect(open.filter({ hasText: home.goOn })).toBeVisible();
  await open.filter({ hasText: home.goOn }).click();

  const walker = new Walker(page);
  await page.waitForURL(/\/walk\/[^/]+\/./);
  await walker.pastCautions();
  expect(walker.step).toBe('side-left.tread');
  await expect(page.getByRole('button', { name: `left idler, ${walkWords.stopNeeds}` })).toBeVisible();
  await walker.answer({ found: [{ item: 'cord', is: 'showing', count: 1 }] });
  await expect.poll(() => walker.step).toBe('side-left.inner');

  const kept = new Set((await recordsOn(page, 'any')).map(({ key }) => key));
  for (const { key } of oldPhone().stores.flatMap(({ name, rows }) =>
    name === 'versions' ? (rows as unknown as readonly { key: string }[]) : [],
  ))
    expect(kept).toContain(key);
  expect(kept).toContain('reading/check-rubber-first-maker/left.track/cord/1');
  const version = await page.evaluate(
    async (name) => (await indexedDB.databases()).find((each) => each.name === name)?.version,
    databaseName,
  );
  expect(version).toBe(schemaVersion);
  expect(complaints).toEqual([]);
});

test('[B39] a damaged record costs its own screen, which says so, and no other', async ({
  page,
  context,
  origin,
}) => {
  await leaveDatabase(context, origin.url, stored);
  await page.goto('/');
  await expect(page.getByRole('link').filter({ hasText: 'Digger' }).first()).toBeVisible();
  await page.goto('/machine/digger');
  await expect(page.getByRole('alert')).toHaveText(shell.brokenLine);
  await page.getByRole('button', { name: common.toHome }).click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText(home.title);
});
