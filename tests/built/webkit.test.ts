import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { serveStorage } from '../browser/storage-page.ts';
import { refusedFiles, uprightFaults } from '../browser/photos-cases.ts';
import { servePhotos } from '../browser/photos-origin.ts';
import type { Told } from '../browser/photos-page.ts';
import { contract } from '../storage/contract.ts';
import type { Outcome } from '../storage/page.ts';
import { sentBundle } from '../browser/bundles.ts';
import { startOrigin } from '../browser/server.ts';
import { hasWebKit, startWebKit, type WebKitPage } from './webkit.ts';
import type { LocalOrigin } from '../browser/local-origin.ts';

if (!hasWebKit) console.log('WebKitGTK: not found, not run (Debian: webkit2gtk-driver, xvfb)');

describe.skipIf(!hasWebKit)('the engine of iPhones', () => {
  let page: WebKitPage;
  let origin: LocalOrigin;
  beforeAll(async () => {
    [page, origin] = [await startWebKit(), await serveStorage()];
  }, 60_000);
  afterAll(async () => {
    await page.close();
    await origin.close();
  });

  test('[S106] every rule of the storage contract holds there, photos as bytes among them', async () => {
    await page.goto(origin.url);
    const outcomes = (await page.run('storagePage.runContract()')) as Outcome[];
    expect(outcomes.filter(({ error }) => error !== undefined)).toEqual([]);
    expect(outcomes).toHaveLength(contract.length);
  }, 120_000);

  test('[HO7] a bundle is taken in there, and every picture is kept as bytes', async () => {
    const app = await startOrigin();
    const folder = await mkdtemp(join(tmpdir(), 'sagline-bundle-'));
    try {
      const { photos, file } = await sentBundle('steel', 5);
      await writeFile(join(folder, 'walk.zip'), file);
      await page.goto(`${app.url}/settings`);
      await page.run(until("document.querySelector('input[type=file]') !== null"));
      await page.choose('input[type=file]', join(folder, 'walk.zip'));
      await page.run(until('/records added/.test(document.body.innerText)'));
      const kept = (await page.run(photosKept)) as Record<string, string>;
      expect(kept).toEqual(
        Object.fromEntries(
          photos.map(({ sha256, bytes }) => [sha256, `Uint8Array ${Buffer.from(bytes).toString('hex')}`]),
        ),
      );
    } finally {
      await app.close();
      await rm(folder, { recursive: true });
    }
  }, 60_000);

  test('[PH34] photos come out upright, small and bare there too, and what is none is refused', async () => {
    const photos = await servePhotos();
    const shrink = (bytes: readonly number[]): Promise<Told | string> =>
      page.run(`photosPage.shrink([${bytes.join()}])`) as Promise<Told | string>;
    await page.goto(photos.url);
    expect(await uprightFaults(shrink)).toEqual([]);
    for (const [what, bytes, said] of refusedFiles()) expect(await shrink(bytes), what).toBe(said);
    await photos.close();
  }, 120_000);
});

/** An expression that becomes true. */
const until = (condition: string): string =>
  `new Promise((resolve) => { const look = () => ((${condition}) ? resolve(true) : setTimeout(look, 100)); look(); })`;

/** Every picture on the phone: what kind of object it is, and its bytes. */
const photosKept = `new Promise((resolve, reject) => {
  const opening = indexedDB.open('sagline');
  opening.onerror = reject;
  opening.onsuccess = () => {
    const asked = opening.result.transaction('photos').objectStore('photos').getAll();
    asked.onerror = reject;
    asked.onsuccess = () =>
      resolve(
        Object.fromEntries(
          asked.result.map(({ sha256, bytes }) => [
            sha256,
            bytes.constructor.name + ' ' + Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join(''),
          ]),
        ),
      );
  };
})`;
