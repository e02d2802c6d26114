import { expect } from '@playwright/test';
import type { Photo } from '../../src/core/photo.ts';
import type { Walk } from '../../src/core/walk.ts';
import { unseenWords } from '../../src/words/en/choices.ts';
import { photos } from '../../src/words/en/photos.ts';
import { heldAgainst, marks, sequence } from '../../src/words/en/rental-walks.ts';
import { handOutVerdict, rentalVerdict, verdict } from '../../src/words/en/verdict.ts';
import { walk } from '../../src/words/en/walk.ts';
import { base, camera, picture, readLug, shoot, shootAll, valuesOn } from './rental-phone.ts';
import { test } from './walk-phone.ts';
import type { Walker } from './walker.ts';

const shots = [
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
async function handOut(walker: Walker): Promise<void> {
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
}

test('[RW20] a hand-out takes its photos in one sequence, plate and meter first, and goes on where it was cut off', async ({
  walker,
}) => {
  const { page } = walker;
  await walker.addMachine('rental 4', 'track-loader', 'rubber-cored', '4500');
  await walker.startWalk('short', 'hand-out');
  expect([await shoot(walker), await shoot(walker)]).toEqual(['plate', 'meter']);
  await walker.tap(walker.button(sequence.leaveOut));
  await walker.tap(page.getByRole('radio', { name: unseenWords.mud }));
  await expect.poll(() => walker.step).toBe('sequence.left.track.lug-depth.s1');
  await expect(page.getByText(sequence.settled(3, 12))).toBeVisible();

  await page.goto(base(page));
  await expect.poll(() => walker.step).toBe('sequence.left.track.lug-depth.s1');
  await page.goto(`${base(page)}/sequence/plate`);
  const before = await valuesOn<Photo>(page, 'photo');
  await camera(page).setInputFiles(picture());
  await expect(page.getByText(photos.retaken)).toBeVisible();
  const after = await valuesOn<Photo>(page, 'photo');
  expect(new Set(after.map(({ shot }) => shot))).toEqual(new Set(['meter', 'plate']));
  expect(after).toHaveLength(2);
  expect(after).not.toEqual(before);
  const [held] = await valuesOn<Walk>(page, 'walk');
  expect(held?.skipped).toEqual([{ shot: 'front-left', why: 'mud' }]);
  await page.goto(`${base(page)}/verdict`);
  await expect(page.getByText(rentalVerdict.proofPhotos(9))).toBeVisible();
});

test('[RW21] a return is led by its hand-out: the same lugs first, with value, mark and photo, offline', async ({
  walker,
}) => {
  const { page } = walker;
  await handOut(walker);
  await page.goto('/');
  await walker.tap(page.getByRole('link', { name: /rental 4/ }).first());
  await walker.startWalk('short', 'rental-return');
  const [first] = (await valuesOn<Walk>(page, 'walk')).filter(({ purpose }) => purpose === 'rental-return');
  expect(first?.handOut).toMatch(/^walk\//);

  // The photo of the hand-out stands there as the model of this one.
  await expect(page.getByRole('img', { name: /^At hand-out: / })).toBeVisible();
  expect(await shootAll(walker)).toEqual(shots);

  await expect.poll(() => walker.step).toBe('side-left.lug-depth.s1');
  await walker.pastCautions();
  await expect(page.getByText(marks.then('21 mm'))).toBeVisible();
  await expect(page.getByText(/yellow paint, third lug/)).toBeVisible();
  await page.reload();
  await walker.tap(page.getByRole('button', { name: /yellow paint/ }));
  await expect(page.getByRole('img', { name: marks.thenAlt('lug depth') })).toBeVisible();
  await readLug(walker, 'side-left.lug-depth.s1', '18');
  await readLug(walker, 'side-left.lug-depth.s2', '17.5');

  await page.goto(`${base(page)}/hand-out`);
  await expect(page.getByText(heldAgainst.thenNow('21 mm', '18 mm'))).toBeVisible();
  await expect(page.getByText(heldAgainst.thenNow('19 mm', '17.5 mm'))).toBeVisible();
  await walker.tap(walker.link(verdict.title));
  await expect(page.getByText(/^Compared with the hand-out walk of /)).toBeVisible();
});

test('[RW22] without a hand-out walk a return says what can and what cannot be claimed', async ({
  walker,
}) => {
  const { page } = walker;
  await walker.addMachine('rental 5', 'track-loader', 'rubber-cored', '4500');
  await walker.startWalk('short', 'rental-return');
  await page.goto(`${base(page)}/map`);
  await walker.tap(walker.link(heldAgainst.linkNone));
  for (const line of [heldAgainst.none, heldAgainst.canClaim, heldAgainst.cannotClaim])
    await expect(page.getByText(line)).toBeVisible();
  await walker.tap(walker.link(verdict.title));
  await expect(page.getByText(rentalVerdict.noHandOut)).toBeVisible();
});
