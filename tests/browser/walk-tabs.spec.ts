import { expect, type Page } from '@playwright/test';
import { common } from '../../src/words/en/common.ts';
import { pad } from '../../src/words/en/pad.ts';
import { step as words, walk } from '../../src/words/en/walk.ts';
import { recordsOn, test } from './walk-phone.ts';
import { Walker } from './walker.ts';

const at = (url: string, step: string): string => url.replace(/(\/walk\/[^/]+).*/, `$1/${step}`);
const field = (page: Page) => page.getByRole('textbox');

/** The typed text of the one reading at a place, on disk. */
async function typedAt(page: Page, reading: string): Promise<unknown> {
  const kept = (await recordsOn(page)).filter(({ key }) => key.endsWith(reading));
  expect(kept).toHaveLength(1);
  const what = kept[0]?.value['what'];
  return what !== undefined && what !== null && typeof what === 'object' && 'typed' in what && what.typed;
}

async function twoTabs(walker: Walker): Promise<readonly [Walker, Walker, url: string]> {
  await walker.addMachine('yard 9', 'excavator', 'rubber-cored', '1700');
  await walker.startWalk('full');
  await walker.pastCautions();
  const other = new Walker(await walker.page.context().newPage());
  return [walker, other, walker.page.url()];
}

test('[B34] a reading made in one tab appears in the other, and none is lost when both write', async ({
  walker,
}) => {
  test.setTimeout(120_000);
  const [one, two, url] = await twoTabs(walker);
  await two.page.goto(at(url, 'map'));
  const row = two.page.getByRole('link', { name: 'Left lug depth 1' });
  await expect(row).toContainText(walk.stopOpen);
  await one.page.goto(at(url, 'side-left/lug-depth/s1'));
  await one.answer({ type: ['12'] });
  await expect(row).toContainText(walk.stopDone);

  await two.page.goto(at(url, 'side-right/lug-depth/s1'));
  for (const more of [1, 2, 3] as const) {
    await expect(field(one.page)).toHaveValue('');
    await expect(field(two.page)).toHaveValue('');
    await one.type(`1${more}`);
    await two.type(`2${more}`);
    await Promise.all([one.button(pad.next).click(), two.button(pad.next).click()]);
    await expect.poll(() => two.step).not.toBe(`side-right.lug-depth.s${more}`);
    if (more === 2) break;
    await expect.poll(() => one.step).toBe(`side-left.lug-depth.s${more + 2}`);
  }
  const readings = (await recordsOn(one.page)).filter(({ key }) => key.includes('/lug-depth/'));
  expect(readings.map(({ value }) => (value['what'] as { typed: string }).typed).sort()).toEqual([
    '11',
    '12',
    '12',
    '21',
    '22',
  ]);
});

test('[B35] one item edited in two tabs: what the other wrote is shown, and can be had back', async ({
  walker,
}) => {
  test.setTimeout(120_000);
  const [one, two, url] = await twoTabs(walker);
  const step = at(url, 'side-left/lug-depth/s1');
  await one.page.goto(step);
  await one.answer({ type: ['12'] });
  await one.page.goto(step);
  await expect(field(one.page)).toHaveValue('12');

  // Nothing typed here: the pad follows the other tab, and leaving it writes nothing.
  await two.page.goto(step);
  await field(two.page).fill('10');
  await two.next();
  await expect(field(one.page)).toHaveValue('10');
  await one.tap(one.link(common.back));
  expect(await typedAt(one.page, 'left.track/lug-depth/1')).toBe('10');

  // Something typed here: it stays, what the other tab read is said, and leaving replaces nothing.
  await one.page.goto(step);
  await field(one.page).fill('9');
  await two.page.goto(step);
  await field(two.page).fill('8');
  await two.next();
  await expect(one.page.getByRole('alert')).toContainText(words.meanwhile('8 mm'));
  await one.tap(one.link(common.back));
  expect(await typedAt(one.page, 'left.track/lug-depth/1')).toBe('8');
  await one.page.goto(step);
  await field(one.page).fill('7');
  await one.next();
  expect(await typedAt(one.page, 'left.track/lug-depth/1')).toBe('7');
  await one.tap(one.button(common.undo));
  await expect.poll(() => typedAt(one.page, 'left.track/lug-depth/1')).toBe('8');
});
