import { expect } from '@playwright/test';
import { callWords } from '../../src/words/en/calls.ts';
import { verdict } from '../../src/words/en/verdict.ts';
import { test } from './walk-phone.ts';
import type { Answer, Plan } from './walker.ts';

/** One side of a used chain; the starting sheet of the class reads its sag raised, from frame to shoe. */
const side = (name: 'left' | 'right', bushing: string, sag: string): Record<string, Answer> => ({
  [`side-${name}.link-height.s1`]: { type: ['98.5'] },
  [`side-${name}.link-height.s2`]: { type: ['98'] },
  [`side-${name}.pitch`]: { type: ['768'], links: 4 },
  [`side-${name}.bushing-od.s1`]: { type: [bushing] },
  [`side-${name}.bushing-od.s2`]: { type: [bushing] },
  [`side-${name}.grouser.s1`]: { type: ['20'] },
  [`side-${name}.pad-height.s1`]: { type: ['38'] },
  [`raised-${name}.sag`]: { sag: [sag], by: 'frame-to-shoe', clean: 'clean' },
});

const worn: Plan = {
  ...side('left', '57.4', '345'),
  ...side('right', '52', '320'),
  'side-left.shoes': { found: [{ item: 'pads', is: 'torn', count: 3 }] },
  'side-right.bottom-roller': {
    found: [
      { item: 'roller-flange', part: 3, is: 'worn' },
      { item: 'roller-leak', part: 7, is: 'leaking' },
    ],
  },
};

/** Taps for one reading, beside its digits. */
const mostTapsAReading = 2.5;

test('[B32] a steel machine with pads is walked from an empty phone to its verdict, with no network', async ({
  walker,
  browserName,
}) => {
  test.setTimeout(240_000);
  const { page } = walker;
  const main = page.getByRole('main');
  await walker.addMachine('crawler 3', 'excavator', 'steel-pads', '21000');
  const before = walker.taps;
  await walker.startWalk('full');
  await walker.walk(worn);
  const taps = walker.taps - before;
  console.log(
    `full steel walk in ${browserName}: ${taps} taps and ${walker.digits} digits for ${walker.readings} readings, ${(taps / walker.readings).toFixed(2)} taps a reading`,
  );
  expect(taps / walker.readings).toBeLessThanOrEqual(mostTapsAReading);

  await expect(main).toContainText(callWords.replace.word);
  for (const reason of [
    'bushing diameter, right track: 52 mm109 % worn',
    'sag, left track: 345 mm, too loose',
    'pads, left track: torn, 3 counted',
    'roller flange, right bottom roller 3: worn',
    'roller oil seal, right bottom roller 7: leaking',
    'track pitch, left track: 192 mm',
    'grouser height, left track: 20 mm',
  ])
    await expect(main).toContainText(reason);
  await expect(main).toContainText(verdict.rule('sag.loose'));
  const written = await main.textContent();
  await page.reload();
  await expect(main).toHaveText(written ?? '');
});
