import { expect, type Page } from '@playwright/test';
import { marks } from '../../src/words/en/rental-walks.ts';
import { jpegWith, markedPicture } from '../photo-files.ts';
import { recordsOn } from './walk-phone.ts';
import type { Walker } from './walker.ts';

let width = 400;

/** Another picture each time: the same one twice would be one record. */
export const picture = () => {
  width += 2;
  return {
    name: 'picture.jpg',
    mimeType: 'image/jpeg',
    buffer: Buffer.from(jpegWith(markedPicture(width, 300, 1), [])),
  };
};

export const camera = (page: Page) => page.locator('input[capture]').first();
export const thumb = (page: Page) => page.getByRole('link', { name: /^Photo: / });
const main = (page: Page) => page.getByRole('navigation').getByRole('link').last();

export const valuesOn = async <T>(page: Page, kind: string): Promise<readonly T[]> =>
  (await recordsOn(page)).filter(({ key }) => key.startsWith(`${kind}/`)).map(({ value }) => value as T);

/** The walk's address without its step. */
export const base = (page: Page): string => new URL(page.url()).pathname.replace(/(\/walk\/[^/]+).*/, '$1');

/** Takes the photo that the sequence asks for and goes on. */
export async function shoot(walker: Walker): Promise<string> {
  const { page } = walker;
  const here = walker.step;
  await walker.pastCautions();
  await camera(page).setInputFiles(picture());
  await expect(thumb(page)).toHaveCount(1);
  await walker.tap(main(page));
  await expect.poll(() => walker.step).not.toBe(here);
  return here.replace('sequence.', '');
}

/** Takes every photo of the sequence that is asked for from here on. */
export async function shootAll(walker: Walker): Promise<readonly string[]> {
  const taken: string[] = [];
  while (walker.step.startsWith('sequence.')) taken.push(await shoot(walker));
  return taken;
}

export async function readLug(walker: Walker, step: string, typed: string, mark?: string): Promise<void> {
  const { page } = walker;
  await expect.poll(() => walker.step).toBe(step);
  await walker.pastCautions();
  if (mark !== undefined) await page.getByLabel(marks.ask).fill(mark);
  await walker.type(typed);
  await walker.next();
}
