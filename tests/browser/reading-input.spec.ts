import { expect } from '@playwright/test';
import { common } from '../../src/words/en/common.ts';
import { pad } from '../../src/words/en/pad.ts';
import { questionAnswers } from '../../src/words/en/questions.ts';
import { ambiguousAsk, typedErrorLines } from '../../src/words/en/typed.ts';
import { draftsOn, recordsOn, test } from './walk-phone.ts';
import type { Walker } from './walker.ts';

test.skip(
  ({ browserName }) => browserName !== 'chromium',
  'what is typed is read by the same code in every engine; whole walks are typed in both',
);

/** From the empty phone to the first lug of a rubber machine. */
async function toFirstLug(walker: Walker): Promise<string> {
  await walker.addMachine('yard 2', 'excavator', 'rubber-cored', '1700');
  await walker.startWalk('full');
  await walker.pastCautions();
  const url = walker.page.url().replace(/(\/walk\/[^/]+).*/, '$1/side-left/lug-depth/s1');
  await walker.page.goto(url);
  await walker.settled();
  return url;
}

/** The lug's reading on disk: what was typed and what it means, or undefined. */
async function lugOn({ page }: Walker, n = 1): Promise<unknown> {
  const kept = (await recordsOn(page)).find(({ key }) => key.endsWith(`left.track/lug-depth/${n}`));
  const what = kept?.value['what'] as { typed: string; mm: number } | undefined;
  return what && { typed: what.typed, mm: what.mm, confirmed: kept?.value['confirmed'] };
}

const field = ({ page }: Walker) => page.getByRole('textbox');
const alert = ({ page }: Walker) => page.getByRole('main').getByRole('alert');

/** What is no number at all: its sentence, and nothing lost. */
const unreadable = [
  ['', typedErrorLines.empty],
  ['abc', typedErrorLines.letters],
  ['12 or so', typedErrorLines.letters],
  ['1/4', typedErrorLines.fraction],
  ['9'.repeat(41), typedErrorLines['too-long']],
  ['1000000', typedErrorLines['too-large']],
] as const;

/** What is read as it stands. */
const readable = [
  ['12,5', 12.5],
  ['12.5', 12.5],
  [',5', 0.5],
  [' 7 ', 7],
  ['١٢٫٥', 12.5],
] as const;

test('[B40] what is no number has its sentence, what is one is taken as typed', async ({ walker }) => {
  test.setTimeout(180_000);
  const url = await toFirstLug(walker);
  for (const [typed, line] of unreadable) {
    await field(walker).fill(typed);
    await walker.tap(walker.button(pad.next));
    await expect(alert(walker)).toContainText(line);
    await expect(field(walker)).toHaveValue(typed);
    expect(walker.page.url()).toBe(url);
    await walker.tap(walker.button(questionAnswers.other));
    await expect(alert(walker)).toHaveCount(0);
  }
  expect(await lugOn(walker)).toBeUndefined();
  for (const [typed, mm] of readable) {
    await field(walker).fill(typed);
    await walker.next();
    expect(await lugOn(walker)).toEqual({ typed, mm, confirmed: undefined });
    await walker.page.goto(url);
    await expect(field(walker)).toHaveValue(typed);
  }
});

test('[B41] what can mean two things, or can hardly be right, is asked and never guessed', async ({
  walker,
}) => {
  test.setTimeout(180_000);
  const url = await toFirstLug(walker);
  await field(walker).fill('1,234');
  await walker.tap(walker.button(pad.next));
  await expect(alert(walker)).toContainText(ambiguousAsk('1.234 mm', '1234 mm'));
  expect(await lugOn(walker)).toBeUndefined();
  await walker.tap(walker.button('1.234 mm'));
  await expect.poll(() => lugOn(walker)).toEqual({ typed: '1,234', mm: 1.234, confirmed: undefined });

  await walker.page.goto(url);
  await field(walker).fill('-3');
  await walker.tap(walker.button(pad.next));
  await expect(alert(walker)).toContainText(typedErrorLines.negative);
  await walker.tap(walker.button(questionAnswers.again));
  await expect(field(walker)).toHaveValue('-3');
  expect(await lugOn(walker)).toEqual({ typed: '1,234', mm: 1.234, confirmed: undefined });

  await field(walker).fill('300');
  await walker.tap(walker.button(pad.next));
  await expect(alert(walker)).toContainText('300 mm of lug depth?');
  await walker.tap(walker.button(questionAnswers.again));
  await expect(field(walker)).toHaveValue('300');
  await walker.tap(walker.link(common.back));
  await walker.page.goto(url);
  await expect(field(walker)).toHaveValue('300');
  expect(await lugOn(walker)).toEqual({ typed: '1,234', mm: 1.234, confirmed: undefined });
  await walker.tap(walker.button(pad.next));
  await walker.tap(walker.button(questionAnswers.right));
  await expect.poll(() => lugOn(walker)).toEqual({ typed: '300', mm: 300, confirmed: true });
});

test('[B42] leaving the pad keeps a number as a reading and anything else as a draft', async ({ walker }) => {
  test.setTimeout(120_000);
  const { page } = walker;
  const url = await toFirstLug(walker);
  await walker.type('13.5');
  await walker.tap(walker.link(common.back));
  await expect.poll(() => lugOn(walker)).toEqual({ typed: '13.5', mm: 13.5, confirmed: undefined });
  expect(Object.keys(await draftsOn(page)).filter((key) => key.startsWith('pad/'))).toEqual([]);

  await page.goto(url.replace('s1', 's2'));
  await field(walker).fill('14.');
  await field(walker).fill('14.x');
  await walker.tap(page.getByRole('button', { name: /^left sprocket/ }));
  await expect(page).toHaveURL(/sprocket/);
  expect(await lugOn(walker, 2)).toBeUndefined();
  await page.goto(url.replace('s1', 's2'));
  await expect(field(walker)).toHaveValue('14.x');

  // Turned, and loaded again: still there.
  await page.setViewportSize({ width: 740, height: 360 });
  await expect(field(walker)).toHaveValue('14.x');
  await page.reload();
  await expect(field(walker)).toHaveValue('14.x');
});

test('[B43] a caliper that types like a keyboard goes from lug to lug', async ({ walker }) => {
  test.setTimeout(120_000);
  const { page } = walker;
  await toFirstLug(walker);
  for (const [at, text] of ['12.31', '11.87', '9.02'].entries()) {
    await expect(field(walker)).toBeFocused();
    await page.keyboard.type(text);
    await page.keyboard.press('Enter');
    await expect
      .poll(() => lugOn(walker, at + 1))
      .toEqual({ typed: text, mm: Number(text), confirmed: undefined });
    await expect.poll(() => walker.step).not.toBe(`side-left.lug-depth.s${at + 1}`);
  }
});

test('[B44] the wheel changes no number, and the caret stays where it was put', async ({ walker }) => {
  test.setTimeout(120_000);
  const { page } = walker;
  await toFirstLug(walker);
  await field(walker).fill('12.5');
  await field(walker).hover();
  for (const by of [120, -120, 600]) await page.mouse.wheel(0, by);
  await field(walker).press('ArrowUp');
  await field(walker).press('ArrowDown');
  await expect(field(walker)).toHaveValue('12.5');
  await field(walker).press('Home');
  await page.keyboard.type('3');
  await field(walker).press('Delete');
  await page.keyboard.type('0');
  await expect(field(walker)).toHaveValue('302.5');
});
