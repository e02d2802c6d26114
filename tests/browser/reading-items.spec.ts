import { expect } from '@playwright/test';
import { cautionTick } from '../../src/words/en/cautions.ts';
import { callWords, openCall } from '../../src/words/en/calls.ts';
import { unseenWords } from '../../src/words/en/choices.ts';
import { common } from '../../src/words/en/common.ts';
import { findingLabel, itemName } from '../../src/words/en/items.ts';
import { machineForm } from '../../src/words/en/machine.ts';
import { pad } from '../../src/words/en/pad.ts';
import { questionAnswers } from '../../src/words/en/questions.ts';
import { sagMethodWords } from '../../src/words/en/sag.ts';
import { verdict } from '../../src/words/en/verdict.ts';
import { beforeStart, step, walk } from '../../src/words/en/walk.ts';
import { recordsOn, test } from './walk-phone.ts';

test('[B45] a pitch over five links that are four is asked, with the count put right beside it', async ({
  walker,
  browserName,
}) => {
  test.skip(browserName !== 'chromium', 'what is asked is the same in every engine');
  test.setTimeout(120_000);
  const { page } = walker;
  await walker.addMachine('crawler 4', 'excavator', 'steel', '21000');
  await walker.startWalk('full');
  await walker.pastCautions();
  await page.goto(page.url().replace(/(\/walk\/[^/]+).*/, '$1/side-left/pitch'));
  await walker.settled();
  await walker.setLinks(5);
  await walker.type('768');
  await walker.tap(walker.button(pad.next));
  const asked = page.getByRole('main').getByRole('alert');
  await expect(asked).toContainText('Did the tape span 4 links, not 5? Five pins span four links.');
  await walker.tap(walker.button(questionAnswers.again));
  await expect(page.getByRole('textbox')).toHaveValue('768');
  await walker.setLinks(4);
  await walker.next();
  const kept = (await recordsOn(page)).find(({ key }) => key.endsWith('left.track/pitch/1'));
  expect(kept?.value['what']).toMatchObject({ totalMm: 768, links: 4, typed: '768' });
});

test('[B46] sag by another datum than the sheet’s is kept, and open with the reason', async ({
  walker,
  browserName,
}) => {
  test.skip(browserName !== 'chromium', 'what is asked is the same in every engine');
  test.setTimeout(120_000);
  const { page } = walker;
  await walker.addMachine('yard 5', 'excavator', 'rubber-cored', '1700');
  await walker.startWalk('full');
  await walker.pastCautions();
  const base = page.url().replace(/(\/walk\/[^/]+).*/, '$1');
  await page.goto(`${base}/raised-left/sag`);
  await walker.answer({ sag: ['12'], by: 'string' });
  const kept = (await recordsOn(page)).find(({ key }) => key.endsWith('left.track/sag/1'));
  expect(kept?.value['what']).toMatchObject({ mm: [12], method: 'string' });
  await expect(page.getByRole('main').getByRole('status').first()).toContainText(verdict.openTitle);
  await page.goto(`${base}/verdict`);
  await expect(page.getByRole('main')).toContainText(
    `Not comparable: this sheet measures from ${sagMethodWords['roller-gap'].reads}`,
  );
  await expect(page.getByRole('main')).toContainText(openCall.line);
  await expect(page.getByRole('main')).not.toContainText(callWords.adjust.line);
});

test('[B47] two taps within 300 ms have one effect, on this screen and on the next', async ({ walker }) => {
  test.setTimeout(120_000);
  const { page } = walker;
  const twice = async (name: string): Promise<void> => {
    // Whatever was tapped before is long ago.
    await page.waitForTimeout(450);
    await walker.button(name).dblclick({ delay: 60 });
  };
  const count = async (kind: string): Promise<number> =>
    (await recordsOn(page)).filter(({ key }) => key.startsWith(`${kind}/`)).length;

  await page.goto('/machine/new');
  await page.getByLabel(machineForm.name).fill('yard 6');
  await page.getByRole('radio', { name: 'excavator' }).click();
  await page.getByRole('radio', { name: 'rubber with cores' }).click();
  await twice(machineForm.save);
  expect(await count('machine')).toBe(1);
  await page.goto(`${page.url()}/start`);
  await page.getByRole('radio', { name: 'full walk' }).click();
  await twice(beforeStart.go);
  expect(await count('walk')).toBe(1);

  await page.waitForURL(/idler/);
  await twice(cautionTick);
  await expect(walker.button(cautionTick)).toHaveAttribute('aria-pressed', 'true');
  await walker.tap(walker.button(step.cautionGo));
  await walker.settled();
  // The second tap of each falls on the next step's own button, at the same place.
  await twice(walk.pass);
  await expect.poll(() => walker.step).toBe('front-left.adjuster');
  await walker.pastCautions();
  await twice(walk.pass);
  await expect.poll(() => walker.step).toBe('side-left.lug-depth.s1');
  await expect(page.getByRole('main').getByRole('alert')).toHaveCount(0);
  for (const spot of [1, 2]) {
    await walker.type('12');
    await twice(pad.next);
    await expect.poll(() => walker.step).toBe(`side-left.lug-depth.s${spot + 1}`);
    await expect(page.getByRole('main').getByRole('alert')).toHaveCount(0);
  }
  await walker.type('11');
  await expect(page.getByRole('textbox')).toHaveValue('11');
  await twice(pad.next);
  await expect.poll(() => walker.step).toBe('side-left.tread');
  const passes = (await recordsOn(page)).filter(({ key }) => key.includes('/pass-'));
  expect(passes.map(({ key }) => key.split('/').at(-2))).toEqual(['pass-adjuster', 'pass-idler']);
  expect(await count('reading')).toBe(5);
});

test('[B48] a finding taken back and the group passed: the place is read, not left behind', async ({
  walker,
  browserName,
}) => {
  test.skip(browserName !== 'chromium', 'what is asked is the same in every engine');
  test.setTimeout(120_000);
  const { page } = walker;
  await walker.addMachine('yard 7', 'excavator', 'rubber-cored', '1700');
  await walker.startWalk('full');
  await walker.pastCautions();
  const tread = page.url().replace(/(\/walk\/[^/]+).*/, '$1/side-left/tread');
  await page.goto(tread);
  await walker.settled();
  await walker.find({ item: 'cord', is: 'cut', count: 1 });
  const cord = page.locator('main li').filter({ hasText: itemName('cord') });
  await expect(cord).toContainText(findingLabel('cord', 'cut'));
  await walker.tap(walker.button(common.undo));
  await expect(cord).toContainText(step.notReadYet);
  await walker.answer({ found: [] });
  await page.goto(tread);
  await expect(cord).toContainText(findingLabel('cord', 'none'));
  await expect(walker.main).toHaveText(common.next);
});

test('[B49] what could not be reached stays open through every Next, and is listed with its reason', async ({
  walker,
  browserName,
}) => {
  test.skip(browserName !== 'chromium', 'what is asked is the same in every engine');
  test.setTimeout(120_000);
  const { page } = walker;
  await walker.addMachine('yard 8', 'excavator', 'rubber-cored', '1700');
  await walker.startWalk('full');
  await walker.pastCautions();
  const base = page.url().replace(/(\/walk\/[^/]+).*/, '$1');
  const mud = page.getByRole('radio', { name: unseenWords.mud });

  await page.goto(`${base}/side-left/lug-depth/s1`);
  await walker.tap(walker.button(walk.couldNot));
  await walker.tap(mud);
  await expect.poll(() => walker.step).toBe('side-left.lug-depth.s2');
  await page.goto(`${base}/side-left/lug-depth/s1`);
  await walker.tap(walker.button(pad.next));
  await expect.poll(() => walker.step).not.toBe('side-left.lug-depth.s1');

  await page.goto(`${base}/side-left/bottom-roller`);
  await walker.tap(walker.button(step.part(2)));
  await walker.tap(
    page
      .locator('main li')
      .getByRole('button')
      .filter({ hasText: itemName('roller-leak') }),
  );
  await walker.tap(walker.button(walk.couldNot));
  await walker.tap(mud);
  await walker.answer({ found: [] });
  await page.goto(`${base}/side-left/bottom-roller`);
  await expect(walker.main).toHaveText(common.next);
  await walker.tap(walker.main);
  await page.goto(`${base}/verdict`);
  const open = page.locator('main li').filter({ hasText: `Not seen: ${unseenWords.mud}.` });
  await expect(open.filter({ hasText: 'left bottom roller 2: roller oil seal' })).toHaveCount(1);
  await expect(open.filter({ hasText: 'left track: lug depth' })).toHaveCount(1);
});
