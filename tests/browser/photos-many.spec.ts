import { expect, type Page } from '@playwright/test';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { common } from '../../src/words/en/common.ts';
import { photos as words } from '../../src/words/en/photos.ts';
import { databaseName } from '../../src/storage/schema.ts';
import { jpegWith, markedPicture } from '../photo-files.ts';
import { readingFaults } from './access-faults.ts';
import { covered, tooSmall } from './access-page.ts';
import { killProfile, openProfile } from './browsers.ts';
import { keptOffline } from './fixtures.ts';
import { draftsOn, recordsOn, test } from './walk-phone.ts';
import { Walker } from './walker.ts';

const file = {
  name: 'picture.jpg',
  mimeType: 'image/jpeg',
  buffer: Buffer.from(jpegWith(markedPicture(400, 300, 1), [])),
};
const cord = (page: Page) => page.locator('main li').getByRole('button').filter({ hasText: 'cord' });
const camera = (page: Page) => page.locator('input[capture]').first();
const thumbs = (page: Page) => page.getByRole('link', { name: /^Photo: / });

/** The walk's address, its screen at the tread. */
async function toTread(walker: Walker): Promise<string> {
  await walker.addMachine('yard 8', 'excavator', 'rubber-cored', '1700');
  await walker.startWalk('full');
  await walker.pastCautions();
  const base = walker.page.url().replace(/(\/walk\/[^/]+).*/, '$1');
  await walker.page.goto(`${base}/side-left/tread`);
  await walker.pastCautions();
  await expect(walker.button(words.camera)).toBeVisible();
  return base;
}

test('[PV6] a phone that ends the app behind the camera comes back to the same item, its answers and the offer', async ({
  browserName,
  origin,
}) => {
  test.setTimeout(120_000);
  const profile = await mkdtemp(join(tmpdir(), 'sagline-camera-'));
  const engine = browserName === 'firefox' ? 'firefox' : 'chromium';
  const before = await openProfile(engine, profile);
  const first = new Walker(before.pages()[0] ?? (await before.newPage()));
  await first.page.goto(origin.url);
  await keptOffline(first.page);
  await toTread(first);
  await first.tap(cord(first.page));
  await first.tap(first.page.getByRole('radio', { name: 'showing, dry' }));
  await first.page.getByLabel(words.note).fill('at the master');
  const opened = first.page.waitForEvent('filechooser');
  await first.tap(first.button(words.camera));
  await opened;
  const closed = new Promise((resolve) => before.once('close', resolve));
  await killProfile(profile);
  await closed;
  await origin.stop();

  const after = await openProfile(engine, profile);
  const page = after.pages()[0] ?? (await after.newPage());
  await page.goto(origin.url);
  await expect(page).toHaveURL(/\/side-left\/tread$/);
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('cord');
  await expect(page.getByRole('radio', { name: 'showing, dry', checked: true })).toBeVisible();
  await expect(page.getByLabel(words.note)).toHaveValue('at the master');
  await expect(page.getByRole('button', { name: words.again.camera })).toBeVisible();
  await camera(page).setInputFiles(file);
  await expect(thumbs(page)).toHaveCount(1);
  await expect(page.getByRole('button', { name: words.again.camera })).toHaveCount(0);
  const [photo] = (await recordsOn(page)).filter(({ key }) => key.startsWith('photo/'));
  expect(photo?.value).toMatchObject({ scale: 'wide', shows: [{ place: 'left.track', item: 'cord' }] });
  expect(await draftsOn(page)).not.toHaveProperty('pending-photo');
  await after.close();
  await rm(profile, { recursive: true, force: true });
});

/** Makes so many pictures out of the one that is there, without small ones, as an import does. */
const multiply = (page: Page, count: number): Promise<void> =>
  page.evaluate(
    async ([name, copies]) => {
      const done = <T>(asked: IDBRequest<T>): Promise<T> =>
        new Promise((resolve, reject) => {
          asked.onsuccess = () => resolve(asked.result);
          asked.onerror = () => reject(new Error('the store does not answer'));
        });
      const db = await done(indexedDB.open(name));
      const stores = db.transaction(['versions', 'photos'], 'readwrite');
      const rows: { key: string }[] = await done(stores.objectStore('versions').getAll());
      const row = rows.find(({ key }) => key.startsWith('photo/'));
      const bytes: object[] = await done(stores.objectStore('photos').getAll());
      const walk = row?.key.split('/')[1] ?? '';
      for (let at = 1; at < copies; at += 1) {
        const hash = at.toString(16).padStart(64, '0');
        stores.objectStore('versions').put({ ...structuredClone(row), key: `photo/${walk}/${hash}` });
        stores.objectStore('photos').put({ ...bytes[0], sha256: hash });
      }
      await new Promise((resolve) => (stores.oncomplete = resolve));
      db.close();
    },
    [databaseName, count] as const,
  );

/** Milliseconds of the page's own clock from the start of the list's address to its first picture, the least of five. */
async function openingMs(page: Page, url: string): Promise<number> {
  const times: number[] = [];
  for (let round = 0; round < 5; round += 1) {
    await page.goto(url);
    await page.waitForFunction(() =>
      [...document.images].some(({ naturalWidth, complete }) => complete && naturalWidth > 0),
    );
    times.push(await page.evaluate(() => performance.now()));
  }
  return Math.min(...times);
}

test('[PV7] of 500 pictures those in view are loaded, and the list opens about as fast as one of 5', async ({
  walker,
}) => {
  test.setTimeout(120_000);
  const { page } = walker;
  const base = await toTread(walker);
  await camera(page).setInputFiles(file);
  await expect(thumbs(page)).toHaveCount(1);
  await multiply(page, 5);
  const few = await openingMs(page, `${base}/photos`);
  await expect(thumbs(page)).toHaveCount(5);
  await multiply(page, 500);
  const many = await openingMs(page, `${base}/photos`);
  await expect(thumbs(page)).toHaveCount(500);
  console.log(`list of 5 pictures: ${few.toFixed(0)} ms, of 500: ${many.toFixed(0)} ms`);
  expect(many / few).toBeLessThan(3);
  await page.waitForTimeout(1000);
  const images = page.locator('main img');
  const atTop = await images.count();
  expect(atTop).toBeGreaterThan(4);
  expect(atTop).toBeLessThan(40);
  await thumbs(page).last().scrollIntoViewIfNeeded();
  await expect(thumbs(page).last().locator('img')).toBeVisible();
  await expect.poll(() => images.count()).toBeLessThan(60);
  await expect(thumbs(page).first().locator('img')).toHaveCount(0);
  // Back at the top after their addresses have gone, they are shown anew.
  await page.waitForTimeout(1500);
  await thumbs(page).first().scrollIntoViewIfNeeded();
  const first = thumbs(page).first().locator('img');
  await expect
    .poll(() => first.evaluate((each) => each instanceof HTMLImageElement && each.naturalWidth))
    .toBe(320);
});

test('[PV8] the screens of pictures have no fault that axe finds, every text has 7 to 1, every target its size', async ({
  walker,
  browserName,
}) => {
  test.skip(browserName !== 'chromium', 'axe reads the same tree in every engine');
  test.setTimeout(120_000);
  const { page } = walker;
  const base = await toTread(walker);
  await camera(page).setInputFiles(file);
  await expect(thumbs(page)).toHaveCount(1);
  const found: Record<string, unknown> = {};
  const look = async (name: string): Promise<void> => {
    Object.assign(found, await readingFaults(page, name));
    for (const width of [320, 360, 412]) {
      await page.setViewportSize({ width, height: 740 });
      const faults = [...(await tooSmall(page)), ...(await covered(page))];
      if (faults.length > 0) found[`${name}, ${width} px`] = faults;
    }
    await page.setViewportSize({ width: 360, height: 740 });
  };
  await look('bar');
  await walker.tap(cord(page));
  await walker.tap(page.getByRole('radio', { name: 'showing, dry' }));
  await look('bar of a finding');
  await page.goto(`${base}/photos`);
  await expect(thumbs(page)).toHaveCount(1);
  await look('list');
  await walker.tap(thumbs(page));
  await walker.tap(walker.button(words.larger));
  await look('picture');
  await walker.tap(walker.button(words.about));
  await walker.tap(walker.button(words.editTies));
  await look('about');
  await expect(walker.button(common.back)).toHaveCount(0);
  expect(found).toEqual({});
});
