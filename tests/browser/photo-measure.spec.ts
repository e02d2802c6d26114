import { expect, type Page } from '@playwright/test';
import type { Reading } from '../../src/core/readings.ts';
import { fromPhoto } from '../../src/words/en/choices.ts';
import { measuring as words, photos } from '../../src/words/en/photos.ts';
import { verdict } from '../../src/words/en/verdict.ts';
import { heldCamera, looking, pictureSize, seenAt, type Camera } from '../checks/pinhole.ts';
import { randomOf } from '../checks/random.ts';
import { jpegWith } from '../photo-files.ts';
import { recordsOn, test } from './walk-phone.ts';
import type { Walker } from './walker.ts';

type Point = readonly [number, number];

/** An A4 sheet, seen from aside, and two discs on it that stand 24 mm apart. */
const camera: Camera = { ...heldCamera(randomOf(5), 420, [0.3, -0.2]), roll: 0.1, pan: [0, 0] };
const corners: readonly Point[] = [
  [-148.5, -105],
  [148.5, -105],
  [148.5, 105],
  [-148.5, 105],
];
const discs: readonly Point[] = [
  [-12, 20],
  [12, 20],
];
const truth = 24;

function sheetPicture(): Buffer {
  const { width, height } = pictureSize;
  const data = new Uint8Array(width * height * 4);
  const lookAt = looking(camera);
  for (let at = 0; at < width * height; at += 1) {
    const [u, v] = lookAt(at % width, Math.floor(at / width));
    const onSheet = Math.abs(u) <= 148.5 && Math.abs(v) <= 105;
    const onDisc = discs.some(([x, y]) => (u - x) ** 2 + (v - y) ** 2 < 4);
    data.set([...Array<number>(3).fill(onDisc ? 20 : onSheet ? 235 : 90), 255], at * 4);
  }
  return Buffer.from(jpegWith({ width, height, data }, []));
}

const marks = (page: Page) => page.locator('button[data-put]');

/** Where a point of the picture stands on the page. */
async function onPage(page: Page, [x, y]: Point): Promise<Point> {
  const box = await page.getByRole('group', { name: words.picture }).boundingBox();
  if (box === null) throw new Error('no picture');
  const { width, height } = pictureSize;
  const zoom = Math.min(box.width / width, box.height / height);
  return [box.x + box.width / 2 + (x - width / 2) * zoom, box.y + box.height / 2 + (y - height / 2) * zoom];
}

const lugReading = async (page: Page): Promise<Reading | undefined> =>
  (await recordsOn(page)).find(({ key }) => key.startsWith('reading/') && key.includes('lug-depth'))
    ?.value as unknown as Reading | undefined;

async function toMeasuring(walker: Walker): Promise<string> {
  const { page } = walker;
  await walker.addMachine('yard 9', 'excavator', 'rubber-cored', '1700');
  await walker.startWalk('full');
  await walker.pastCautions();
  const base = new URL(page.url()).pathname.replace(/(\/walk\/[^/]+).*/, '$1');
  await page.goto(`${base}/side-left/lug-depth/s1`);
  await walker.pastCautions();
  await page
    .locator('input[capture]')
    .first()
    .setInputFiles({ name: 'sheet.jpg', mimeType: 'image/jpeg', buffer: sheetPicture() });
  await walker.tap(walker.link(words.openHere));
  await expect(page.getByRole('heading', { level: 1 })).toHaveText(words.title);
  await expect(marks(page)).toHaveCount(6);
  return base;
}

test('[PM9] a size marked in a picture is right within its interval and becomes the reading with its evidence', async ({
  walker,
}) => {
  const { page } = walker;
  const base = await toMeasuring(walker);
  await expect(page.getByText(words.left(6))).toBeVisible();
  await expect(walker.main).toBeDisabled();
  await page.getByRole('group', { name: words.picture }).scrollIntoViewIfNeeded();
  // Taps put the chosen mark, one after the other; the last one then goes by drag and arrow keys.
  const seen = [...corners, ...discs].map((each) => seenAt(camera, each));
  for (const each of seen) {
    const [x, y] = await onPage(page, each);
    await page.mouse.click(x, y);
    await page.waitForTimeout(450);
  }
  const last = await marks(page).nth(5).boundingBox();
  const target = await onPage(page, seen[5] ?? [0, 0]);
  if (last === null) throw new Error('no mark');
  await page.mouse.move(last.x + 24, last.y + 24);
  await page.mouse.down();
  await page.mouse.move(target[0] + 3, target[1], { steps: 5 });
  await page.mouse.up();
  const said = page.getByRole('region', { name: words.result }).getByRole('status');
  await expect(said).toContainText('±');
  const before = await said.textContent();
  for (let count = 0; count < 40; count += 1) {
    await page.keyboard.press('ArrowLeft');
    const at = await marks(page).nth(5).boundingBox();
    if (at !== null && at.x + 24 <= target[0] + 0.3) break;
  }
  expect(await said.textContent()).not.toBe(before);

  await page.reload();
  await expect(said).toContainText('±');
  await walker.tap(walker.main);
  await page.waitForURL(/lug-depth\/s1$/);
  const reading = await lugReading(page);
  const { from, uMm = 0, what } = reading ?? {};
  expect(what?.kind === 'length' && Math.abs(what.mm - truth)).toBeLessThan(1.96 * uMm + 0.05);
  expect(uMm).toBeGreaterThan(0.05);
  // Two marks as sure as a finger is on a picture of this size, and a half for the leaning sheet.
  expect(uMm).toBeLessThan((1.5 * Math.SQRT2 * (from?.uPx ?? 0) * camera.distanceMm) / camera.focalPx);
  expect(from).toMatchObject({ uMm, measure: 'distance', scale: { kind: 'rectangle', of: 'a4' } });
  expect(from?.scale.marks).toHaveLength(4);
  await page.reload();
  await expect(page.getByText(fromPhoto)).toBeVisible();
  expect(await lugReading(page)).toEqual(reading);
  await expect(walker.link(words.openHere)).toBeVisible();

  await page.goto(`${base}/verdict`);
  const seeMarks = page.getByRole('link', { name: verdict.fromPhoto }).first();
  await expect(seeMarks).toHaveAttribute('href', new RegExp(`photos/${from?.photo}/measure`));
  await page.goto((await seeMarks.getAttribute('href')) ?? '');
  await expect(marks(page)).toHaveCount(6);
  await expect(said).toContainText('±');
  await expect(page.getByText(photos.gone)).toHaveCount(0);
  // On a wide screen the frame has another shape, and the picture still lies in it as the marks do.
  await page.setViewportSize({ width: 1280, height: 900 });
  const frame = page.getByRole('group', { name: words.picture });
  const [around, picture] = [await frame.boundingBox(), await frame.locator('img').first().boundingBox()];
  expect(Math.abs((picture?.height ?? 0) - (around?.height ?? 1))).toBeLessThan(6);
  expect(await said.textContent()).toContain('±');
});
