import { expect, type Page } from '@playwright/test';
import { photoFaultLine, photos as words, scaleWords } from '../../src/words/en/photos.ts';
import { common } from '../../src/words/en/common.ts';
import { verdict } from '../../src/words/en/verdict.ts';
import type { Photo } from '../../src/core/photo.ts';
import { jpegWith, markedPicture } from '../photo-files.ts';
import { draftsOn, recordsOn, test } from './walk-phone.ts';
import type { Walker } from './walker.ts';

/** A camera's file; another size makes another picture. */
const fileOf = (width: number, name = 'picture.jpg') => ({
  name,
  mimeType: 'image/jpeg',
  buffer: Buffer.from(jpegWith(markedPicture(width, 300, 1), [])),
});
const brokenFile = { name: 'broken.jpg', mimeType: 'image/jpeg', buffer: Buffer.from('no picture') };

const camera = (page: Page) => page.locator('input[capture]').first();
const gallery = (page: Page) => page.locator('input[multiple]').first();
const thumbs = (page: Page) => page.getByRole('link', { name: /^Photo: / });
const loaded = (page: Page) =>
  page
    .locator('main img')
    .evaluateAll(
      (all) => all.filter((each) => each instanceof HTMLImageElement && each.naturalWidth > 0).length,
    );

async function toStep(walker: Walker, step: string): Promise<string> {
  const { page } = walker;
  await walker.addMachine('yard 8', 'excavator', 'rubber-cored', '1700');
  await walker.startWalk('full');
  await walker.pastCautions();
  const base = new URL(page.url()).pathname.replace(/(\/walk\/[^/]+).*/, '$1');
  await page.goto(`${base}/${step}`);
  await walker.pastCautions();
  await expect(walker.button(words.camera)).toBeVisible();
  return base;
}

const photosOn = async (page: Page): Promise<readonly Photo[]> =>
  (await recordsOn(page))
    .filter(({ key }) => key.startsWith('photo/'))
    .map(({ value }) => value as unknown as Photo);

test('[PV1] a picture taken at a stop is tied to it, and is there after a reload', async ({ walker }) => {
  const { page } = walker;
  await toStep(walker, 'side-left/lug-depth/s1');
  const [ways, more] = [camera(page), gallery(page)];
  await expect(ways).toHaveAttribute('accept', 'image/*');
  await expect(ways).toHaveAttribute('capture', 'environment');
  await expect(ways).not.toHaveAttribute('multiple');
  await expect(more).toHaveAttribute('accept', 'image/*');
  await expect(more).not.toHaveAttribute('capture');

  await ways.setInputFiles(fileOf(400));
  await expect(page.getByText(words.here(1))).toBeVisible();
  const [photo] = await photosOn(page);
  expect(photo).toMatchObject({
    from: 'camera',
    shows: [{ place: 'left.track', item: 'lug-depth' }],
    width: 400,
    height: 300,
  });
  expect(photo?.position).toBeUndefined();
  await page.reload();
  await expect(thumbs(page)).toHaveCount(1);
  await expect(thumbs(page)).toHaveAccessibleName(words.alt('lug depth, left track', undefined, undefined));
  await expect.poll(() => loaded(page)).toBe(1);
});

test('[PV2] a picture is seen whole and close by buttons and keys, and turned to the next', async ({
  walker,
}) => {
  const { page } = walker;
  await toStep(walker, 'side-left/lug-depth/s1');
  await gallery(page).setInputFiles([fileOf(400), fileOf(410)]);
  await expect(page.getByText(words.here(2))).toBeVisible();
  await walker.tap(thumbs(page).first());
  const picture = page.getByRole('img', { name: /^Photo: / });
  await expect.poll(() => loaded(page)).toBe(1);
  const width = async (): Promise<number> => (await picture.boundingBox())?.width ?? 0;
  const whole = await width();
  await walker.button(words.larger).click();
  await expect.poll(width).toBeGreaterThan(whole * 1.5);
  const left = async (): Promise<number> => (await picture.boundingBox())?.x ?? 0;
  const before = await left();
  await walker.button(words.moves.ArrowRight).click();
  await expect.poll(left).toBeLessThan(before);
  await page.keyboard.press('0');
  await expect.poll(width).toBe(whole);
  await page.keyboard.press('+');
  await expect.poll(width).toBeGreaterThan(whole);
  await walker.button(words.smaller).click();
  await expect.poll(width).toBe(whole);

  await expect(walker.button(words.before)).toBeDisabled();
  await walker.tap(walker.button(words.after));
  await expect(page.getByText(words.nth(2, 2))).toBeVisible();
  await expect(walker.button(words.after)).toBeDisabled();
  await walker.tap(walker.link(common.back));
  await expect(walker.button(words.camera)).toBeVisible();
});

test('[PV3] a picture is removed and had back, and taken again with its ties', async ({ walker }) => {
  const { page } = walker;
  await toStep(walker, 'side-left/lug-depth/s1');
  await camera(page).setInputFiles(fileOf(400));
  await walker.tap(thumbs(page));
  await walker.tap(walker.button(words.about));
  await page.getByLabel(words.note).fill('cut at the edge');
  await walker.tap(page.getByRole('radio', { name: scaleWords.close.label }));
  await expect.poll(async () => (await photosOn(page))[0]?.scale).toBe('close');
  await walker.tap(walker.button(words.remove));
  await expect(page.getByText(words.none)).toBeVisible();
  expect(await photosOn(page)).toHaveLength(0);
  await walker.tap(walker.button(common.undo));
  await expect(thumbs(page)).toHaveCount(1);
  await expect.poll(() => loaded(page)).toBe(1);

  await walker.tap(thumbs(page));
  await walker.tap(walker.button(words.about));
  await camera(page).setInputFiles(fileOf(420));
  await expect(page.getByRole('heading', { name: 'Lug depth, left track' })).toBeVisible();
  const [again, ...rest] = await photosOn(page);
  expect(rest).toHaveLength(0);
  expect(again).toMatchObject({
    width: 420,
    scale: 'close',
    note: 'cut at the edge',
    shows: [{ place: 'left.track', item: 'lug-depth' }],
  });
  await walker.tap(walker.button(common.undo));
  await expect(page.getByText(/ of 2 /)).toBeVisible();
  expect(await photosOn(page)).toHaveLength(2);
});

test('[PV4] of several from the gallery a broken one is said, the others come in, and typing goes on', async ({
  walker,
}) => {
  const { page } = walker;
  const base = await toStep(walker, 'side-left/lug-depth/s1');
  await walker.type('1');
  await gallery(page).setInputFiles([fileOf(400), brokenFile, fileOf(410), fileOf(420)]);
  await walker.type('2');
  await expect(page.getByText(words.faultOf(2, photoFaultLine({ kind: 'not-an-image' })))).toBeVisible();
  await expect(page.getByText(words.here(3))).toBeVisible();
  await expect(page.getByRole('textbox')).toHaveValue('12');
  await walker.tap(walker.button(common.close));
  await page.goto(`${base}/verdict`);
  await expect(page.getByRole('heading', { level: 1 })).toHaveText(verdict.title);
  await walker.tap(walker.link(words.link(3)));
  await expect(thumbs(page)).toHaveCount(3);
  await expect(page.getByRole('heading', { name: words.groupOf('left track', 3) })).toBeVisible();
  expect(await draftsOn(page)).not.toHaveProperty('pending-photo');
});

test('[PV5] damage is shown from far to near, in turn, and one picture can show more', async ({ walker }) => {
  const { page } = walker;
  await toStep(walker, 'side-left/tread');
  await walker.tap(page.locator('main li').getByRole('button').filter({ hasText: 'cord' }));
  await walker.tap(page.getByRole('radio', { name: 'showing, dry' }));
  for (const [at, scale] of (['wide', 'mid', 'close'] as const).entries()) {
    await expect(page.getByText(words.scaleNext(scaleWords[scale].label))).toBeVisible();
    await expect(page.getByRole('radio', { name: scaleWords[scale].label, checked: true })).toBeVisible();
    await camera(page).setInputFiles(fileOf(400 + 10 * at));
    await expect(page.getByText(words.here(at + 1))).toBeVisible();
  }
  await expect(page.getByText(words.scale, { exact: true })).toBeVisible();
  const shown = await photosOn(page);
  expect(new Set(shown.map(({ scale }) => scale))).toEqual(new Set(['wide', 'mid', 'close']));
  await expect(page.getByRole('radio', { name: 'showing, dry', checked: true })).toBeVisible();

  await walker.tap(thumbs(page).first());
  await walker.tap(walker.button(words.about));
  await walker.tap(walker.button(words.editTies));
  await walker.tap(walker.button(words.wholePart));
  await expect
    .poll(async () => (await photosOn(page)).filter(({ shows }) => shows.length === 2).length)
    .toBe(1);
});
