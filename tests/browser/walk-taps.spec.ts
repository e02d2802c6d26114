import { expect } from '@playwright/test';
import { verdict } from '../../src/words/en/verdict.ts';
import { test } from './walk-phone.ts';
import type { Plan } from './walker.ts';

/** From the machine's own screen to the verdict, digits of the pad apart. */
const mostTaps = 60;

/** What a short walk measures: a marked lug and the shortest one a side, the sag by eye. */
const quick: Plan = {
  'side-left.lug-depth.s1': { type: ['18'] },
  'side-left.lug-depth.s2': { type: ['16.5'] },
  'side-right.lug-depth.s1': { type: ['18'] },
  'side-right.lug-depth.s2': { type: ['17'] },
  'side-left.sag': { eye: 'right' },
  'side-right.sag': { eye: 'slack' },
  'side-left.bottom-roller': { found: [{ item: 'roller-leak', part: 3, is: 'leaking' }] },
};

test('[B33] a short walk takes at most sixty taps from the machine to the verdict', async ({
  walker,
  browserName,
}) => {
  test.skip(browserName !== 'chromium', 'taps are the same in every engine');
  test.setTimeout(180_000);
  await walker.addMachine('yard 8', 'excavator', 'rubber-cored', '1700');
  const before = walker.taps;
  await walker.startWalk('short');
  await walker.walk(quick);
  const taps = walker.taps - before;
  console.log(
    `short walk in ${browserName}: ${taps} taps and ${walker.digits} digits for ${walker.readings} readings`,
  );
  expect(walker.readings).toBeGreaterThanOrEqual(12);
  expect(taps).toBeLessThanOrEqual(mostTaps);
  await expect(walker.page.getByRole('main')).toContainText(verdict.reasons);
});
