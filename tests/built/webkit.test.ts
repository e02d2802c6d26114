import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { serveStorage, type StorageOrigin } from '../browser/storage-page.ts';
import { contract } from '../storage/contract.ts';
import type { Outcome } from '../storage/page.ts';
import { hasWebKit, startWebKit, type WebKitPage } from './webkit.ts';

if (!hasWebKit) console.log('WebKitGTK: not found, not run (Debian: webkit2gtk-driver, xvfb)');

describe.skipIf(!hasWebKit)('the engine of iPhones', () => {
  let page: WebKitPage;
  let origin: StorageOrigin;
  beforeAll(async () => {
    [page, origin] = [await startWebKit(), await serveStorage()];
  }, 60_000);
  afterAll(async () => {
    await page.close();
    await origin.close();
  });

  test('[S105] every rule of the storage contract holds there, photos as bytes among them', async () => {
    await page.goto(origin.url);
    const outcomes = (await page.run('storagePage.runContract()')) as Outcome[];
    expect(outcomes.filter(({ error }) => error !== undefined)).toEqual([]);
    expect(outcomes).toHaveLength(contract.length);
  }, 120_000);
});
