import { expect } from '@playwright/test';
import { handOutVerdict } from '../../src/words/en/rental-verdict.ts';
import { marks, sequence } from '../../src/words/en/rental-walks.ts';
import { sealed } from '../../src/words/en/sealing.ts';
import { walk } from '../../src/words/en/walk.ts';
import { base, readLug, shootAll } from './rental-phone.ts';
import type { Walker } from './walker.ts';

export const shots = [
  'plate',
  'meter',
  'front-left',
  'left.track.lug-depth.s1',
  'left.track.lug-depth.s2',
  'rear-left',
  'left.sprocket',
  'rear-right',
  'right.sprocket',
  'right.track.lug-depth.s1',
  'right.track.lug-depth.s2',
  'front-right',
];

/** A finished hand-out with its photos and two marked lugs on the left. */
export async function handOut(walker: Walker): Promise<void> {
  const { page } = walker;
  await walker.addMachine('rental 4', 'track-loader', 'rubber-cored', '4500');
  await walker.startWalk('short', 'hand-out');
  expect(walker.step).toBe('sequence.plate');
  expect(await shootAll(walker)).toEqual(shots);
  const at = base(page);
  await page.goto(`${at}/side-left/lug-depth/s1`);
  await readLug(walker, 'side-left.lug-depth.s1', '21', 'yellow paint, third lug from the joint');
  await page.goto(`${at}/side-left/lug-depth/s2`);
  await walker.pastCautions();
  await walker.tap(walker.button(marks.again('yellow paint, third lug from the joint')));
  await readLug(walker, 'side-left.lug-depth.s2', '19');
  await page.goto(`${at}/verdict`);
  await expect(page.getByText(handOutVerdict.fit)).toBeVisible();
  await walker.tap(walker.button(walk.finishAnyway));
  await expect(page.getByRole('link', { name: sequence.link(12, 12) })).toBeVisible();
  await expect(walker.link(sealed.seal)).toBeVisible();
}
