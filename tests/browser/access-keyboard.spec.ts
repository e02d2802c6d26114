import { expect, type Locator } from '@playwright/test';
import { cautionTick } from '../../src/words/en/cautions.ts';
import { findingLabel } from '../../src/words/en/items.ts';
import { machine } from '../../src/words/en/machine.ts';
import { pad } from '../../src/words/en/pad.ts';
import { verdict } from '../../src/words/en/verdict.ts';
import { beforeStart, step as stepWords } from '../../src/words/en/walk.ts';
import { recordsOn, test } from './walk-phone.ts';
import type { Walker } from './walker.ts';

/** Tab after Tab until the control has the focus. */
async function reach({ page }: Walker, target: Locator): Promise<void> {
  for (let tabs = 0; tabs < 60; tabs += 1) {
    if (await target.evaluateAll(([first]) => first !== undefined && first === document.activeElement))
      return;
    await page.keyboard.press('Tab');
  }
  throw new Error(`no Tab reaches ${String(target)}`);
}

async function press(walker: Walker, target: Locator, key: 'Enter' | 'Space' = 'Enter'): Promise<void> {
  await reach(walker, target);
  await walker.page.keyboard.press(key);
}

async function answer(walker: Walker): Promise<void> {
  const { page } = walker;
  const before = walker.step;
  const looks = page.getByRole('radiogroup', { name: stepWords.byEyeTitle });
  if ((await page.getByRole('textbox').count()) > 0) {
    // The pad has the focus already, as for a caliper.
    await expect(page.getByRole('textbox').first()).toBeFocused();
    await page.keyboard.type('15');
    await page.keyboard.press('Enter');
  } else if ((await looks.count()) > 0) {
    await press(walker, looks.getByText(findingLabel('sag-by-eye', 'right'), { exact: true }), 'Space');
  } else {
    await press(walker, walker.main);
  }
  await expect.poll(() => walker.step, { message: `still at ${before}` }).not.toBe(before);
  await walker.settled();
}

test('[B52] a whole short walk needs no finger: Tab, Enter, Space and digits', async ({ walker }) => {
  test.setTimeout(240_000);
  const { page } = walker;
  await walker.addMachine('yard 4', 'excavator', 'rubber-cored', '1700');
  await press(walker, walker.link(machine.startWalk));
  await press(walker, walker.button(beforeStart.go));
  await page.waitForURL(/\/walk\/[^/]+\/./);
  for (let steps = 0; steps < 60 && walker.step !== 'verdict'; steps += 1) {
    await walker.settled();
    const ticks = walker.button(cautionTick);
    for (let at = 0; at < (await ticks.count()); at += 1) await press(walker, ticks.nth(at), 'Space');
    if ((await ticks.count()) > 0) {
      await press(walker, walker.button(stepWords.cautionGo));
      await expect(ticks).toHaveCount(0);
    }
    await answer(walker);
  }
  await expect(page.getByRole('heading', { level: 1 })).toHaveText(verdict.title);
  const readings = (await recordsOn(page)).filter(({ key }) => key.startsWith('reading/'));
  expect(readings.length).toBeGreaterThan(15);
});

test('[B53] the whole pad is in view on a phone of 360 by 740, above the bar', async ({ walker }) => {
  test.setTimeout(120_000);
  const { page } = walker;
  await walker.addMachine('yard 4', 'excavator', 'rubber-cored', '1700');
  await walker.startWalk('full');
  await walker.pastCautions();
  const base = page.url().replace(/(\/walk\/[^/]+).*/, '$1');
  for (const step of [
    'side-left/lug-depth/s1',
    'side-left/lug-depth/s2',
    'side-left/lug-depth/s3',
    'raised-left/sag',
  ]) {
    await page.goto(`${base}/${step}`);
    await walker.pastCautions();
    const key = await walker.button(pad.point).boundingBox();
    const bar = await page.getByRole('navigation').boundingBox();
    expect((key?.y ?? 0) + (key?.height ?? 0) - (bar?.y ?? 0), step).toBeLessThan(1);
    if (step.includes('lug')) await walker.answer({ type: ['12.5'] });
  }
});
