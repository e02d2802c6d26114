import { expect } from '@playwright/test';
import { callWords, meanwhileWords } from '../../src/words/en/calls.ts';
import { jobsiteVerdict, verdict } from '../../src/words/en/verdict.ts';
import { walk } from '../../src/words/en/walk.ts';
import { recordsOn, test } from './walk-phone.ts';
import type { Plan } from './walker.ts';

/** A worn machine: cord at the left, one roller that leaks at the right, sag slack on both. */
const worn: Plan = {
  'side-left.lug-depth.s1': { type: ['12'] },
  'side-left.lug-depth.s2': { type: ['11.5'] },
  'side-left.lug-depth.s3': { type: ['7'] },
  'side-left.tread': { found: [{ item: 'cord', is: 'showing', count: 2 }] },
  'side-right.lug-depth.s1': { type: ['14'] },
  'side-right.lug-depth.s2': { type: ['13.5'] },
  'side-right.lug-depth.s3': { type: ['13'] },
  'side-right.bottom-roller': { found: [{ item: 'roller-leak', part: 2, is: 'leaking' }] },
  'raised-left.sag': { sag: ['18'] },
  'raised-right.sag': { sag: ['12'] },
};

/** Taps for one reading, beside its digits. */
const mostTapsAReading = 2.5;

/** Steps at which the page is loaded again: a caution, the pad, a look, a raised stop. */
const reloadAt = ['front-left.idler', 'side-left.lug-depth.s2', 'side-right.tread', 'raised-left.sag'];

test('[B30] a rubber machine is walked from an empty phone to its verdict, with no network', async ({
  walker,
  browserName,
}) => {
  test.setTimeout(120_000);
  const { page } = walker;
  const heading = page.getByRole('heading', { level: 1 });
  await walker.addMachine('yard 7', 'excavator', 'rubber-cored', '1700');
  const before = walker.taps;
  await walker.startWalk('full');
  await walker.walk(worn, async (step) => {
    if (!reloadAt.includes(step)) return;
    const title = await heading.textContent();
    await page.reload();
    await expect(heading).toHaveText(title ?? '');
    expect(walker.step).toBe(step);
  });
  const taps = walker.taps - before;
  console.log(
    `full rubber walk in ${browserName}: ${taps} taps and ${walker.digits} digits for ${walker.readings} readings, ${(taps / walker.readings).toFixed(2)} taps a reading`,
  );
  expect(taps / walker.readings).toBeLessThanOrEqual(mostTapsAReading);

  const says = page.getByRole('main');
  await expect(says).toContainText(callWords.replace.word);
  await expect(says).toContainText(verdict.meanwhile(meanwhileWords['light-work'].word));
  await expect(says).toContainText(jobsiteVerdict.workLight);
  for (const reason of [
    'cord, left track: showing, dry, 2 counted',
    'lug depth, left track: 7 mm',
    'roller oil seal, right bottom roller 2: leaking',
    'sag, left track: 18 mm',
  ])
    await expect(says).toContainText(reason);
  await expect(says.getByText(/^rule cord\.showing published: /)).toBeVisible();

  const written = await says.textContent();
  await page.reload();
  await expect(says).toHaveText(written ?? '');
  const url = page.url();
  // What the verdict loads besides is there before it is left.
  await page.waitForLoadState('networkidle');
  await page.goto(url.replace('verdict', 'side-left/lug-depth/s3'));
  await expect(page.getByRole('textbox')).toHaveValue('7');
  await page.goto(url);
  await walker.tap(walker.button(walk.finish));
  await expect(walker.button(walk.reopen)).toBeVisible();
  const [finished] = (await recordsOn(page)).filter(({ key }) => key.startsWith('walk/'));
  expect(finished?.value['finishedAt']).toBeDefined();
});
