import { expect, type Page } from '@playwright/test';
import { groundWords, trackKindWords } from '../../src/words/en/choices.ts';
import { common } from '../../src/words/en/common.ts';
import { forms } from '../../src/words/en/forms.ts';
import { home } from '../../src/words/en/home.ts';
import { machine } from '../../src/words/en/machine.ts';
import { optionForm, optionShelf } from '../../src/words/en/option-form.ts';
import { optionAnswer, options, optionPaper } from '../../src/words/en/options.ts';
import { verdict } from '../../src/words/en/verdict.ts';
import { openFolds, reachFaults, readingFaults } from './access-faults.ts';
import { recordsOn, test } from './walk-phone.ts';
import type { Walker } from './walker.ts';

test.skip(
  ({ browserName }) => browserName !== 'chromium',
  'the same in every engine: forms and pages are tried in both elsewhere',
);

const answer = (page: Page) => page.getByRole('region', { name: options.answer });
const ground = (walker: Walker, name: keyof typeof groundWords) =>
  walker.page
    .getByRole('radiogroup', { name: options.ground })
    .getByRole('radio', { name: groundWords[name], exact: true });
const size = (page: Page, text: string) => page.getByRole('radio', { name: text, exact: true });

test('[OS20] asked alone from the first screen, offline: by default, then by the ground, and it stays', async ({
  walker,
}) => {
  const { page } = walker;
  await walker.tap(walker.link(home.tracks));
  await expect(answer(page)).toContainText(options.unasked);
  await walker.tap(size(page, '5,500 kg'));
  await expect(answer(page)).toContainText(optionAnswer.default(trackKindWords['rubber-cored'].label));
  await expect(answer(page)).toContainText(optionAnswer.usualOnCompact);
  await walker.tap(ground(walker, 'rock'));
  await walker.tap(page.getByRole('radio', { name: options.sharpYes, exact: true }));
  await expect(answer(page)).toContainText(/^Steel comes first: about €/);
  await expect(page.getByRole('heading', { name: optionAnswer.flips })).toBeVisible();
  await page.reload();
  await expect(answer(page)).toContainText(/^Steel comes first: about €/);
  await walker.tap(page.getByRole('radio', { name: options.noMarksYes, exact: true }));
  await expect(answer(page)).not.toContainText(/^Steel comes first/);
  const card = page.getByRole('heading', { name: 'Steel', exact: true }).first().locator('..');
  await expect(card).toContainText('Paving must not be marked, and steel marks it.');
  await walker.tap(walker.button(options.again));
  await expect(answer(page)).toContainText(options.unasked);
});

/** Enters a steel track for the demo machine at this price. */
async function enterSteel(walker: Walker, price: string): Promise<void> {
  const { page } = walker;
  await walker.tap(walker.link(options.add));
  await page.getByLabel(optionForm.name).fill('Steel of the yard');
  await walker.tap(walker.trackKind('steel'));
  await page.getByLabel(optionForm.price).fill(price);
  await walker.tap(walker.button(optionForm.save));
  await expect(page.getByText(optionShelf.saved)).toBeVisible();
}

async function openDemo(walker: Walker): Promise<void> {
  const { page } = walker;
  await walker.tap(walker.button(home.demo));
  await walker.tap(page.getByRole('link', { name: /Demo mini excavator/ }).first());
  await walker.tap(walker.link(machine.options));
  await expect(answer(page)).toBeVisible();
}

test('[OS21] an option is entered once, compared, copied, removed and brought back; the price moves the answer', async ({
  walker,
}) => {
  const { page } = walker;
  await openDemo(walker);
  await walker.tap(ground(walker, 'soft-soil'));
  await expect(answer(page)).toContainText(/rubber with cores/i);
  await enterSteel(walker, '90');
  await expect(answer(page)).toContainText('“Steel of the yard”');
  await walker.tap(ground(walker, 'rock'));
  await expect(answer(page)).toContainText('“Steel of the yard” comes first');
  await page.reload();
  await expect(answer(page)).toContainText('“Steel of the yard” comes first');
  const kept = (await recordsOn(page)).filter(({ key }) => key.startsWith('demo/option/'));
  expect(kept.map(({ value }) => [value['name'], value['machine'], value['price']])).toEqual([
    [
      'Steel of the yard',
      'demo/machine/mini',
      { minor: 9000, currency: 'EUR', source: { mark: 'entered', text: '' } },
    ],
  ]);
  await walker.tap(walker.link(options.own));
  await walker.tap(walker.button(common.copy));
  await page.getByLabel(optionForm.price).fill('9000');
  await walker.tap(walker.button(optionForm.save));
  await expect(page.getByRole('button', { name: common.remove })).toHaveCount(2);
  await walker.tap(page.getByRole('button', { name: common.remove }).first());
  await expect(page.getByRole('button', { name: common.remove })).toHaveCount(1);
  await walker.tap(walker.button(common.undo));
  await expect(page.getByRole('button', { name: common.remove })).toHaveCount(2);
});

test('[OS22] what cannot be saved is said, and nothing typed is lost', async ({ walker }) => {
  const { page } = walker;
  await openDemo(walker);
  await walker.tap(walker.link(options.add));
  await page.getByLabel(optionForm.price).fill('a lot');
  await walker.tap(walker.button(optionForm.save));
  await expect(page.getByText(optionForm.nameMissing)).toBeVisible();
  await expect(page.getByText(optionForm.trackMissing)).toBeVisible();
  await expect(page.getByLabel(optionForm.price)).toHaveAttribute('aria-invalid', 'true');
  await page.reload();
  await expect(page.getByLabel(optionForm.price)).toHaveValue('a lot');
});

test('[OS27] what another tab saved meanwhile is told before it is overwritten, and can be looked at', async ({
  walker,
}) => {
  const { page } = walker;
  await openDemo(walker);
  await enterSteel(walker, '90');
  await walker.tap(walker.link(options.own));
  await walker.tap(page.getByRole('link', { name: /Steel of the yard/ }));
  const name = page.getByLabel(optionForm.name);
  await expect(name).toHaveValue('Steel of the yard');
  const other = await page.context().newPage();
  await other.goto(page.url());
  await expect(other.getByLabel(optionForm.name)).toHaveValue('Steel of the yard');
  await name.fill('Mine');
  await other.getByLabel(optionForm.name).fill('Theirs');
  await other.getByRole('button', { name: optionForm.save }).click();
  await expect(other.getByText(optionShelf.saved)).toBeVisible();
  await other.close();
  await walker.tap(walker.button(optionForm.save));
  await expect(page.getByText(forms.changedMeanwhile)).toBeVisible();
  await expect(name).toHaveValue('Mine');
  await walker.tap(walker.button(forms.drop));
  await expect(name).toHaveValue('Theirs');
  await walker.tap(walker.button(common.undo));
  await expect(name).toHaveValue('Mine');
  await walker.tap(walker.button(optionForm.save));
  await expect(page.getByText(optionShelf.saved)).toBeVisible();
  await expect(page.getByText('Mine')).toBeVisible();
});

test('[OS23] from a verdict its ground is there already; what is set can be kept with the machine', async ({
  walker,
}) => {
  const { page } = walker;
  await walker.tap(walker.button(home.demo));
  await expect(walker.button(home.removeDemo)).toBeVisible();
  await page.goto('/walk/demo/mini-last/verdict');
  await walker.tap(walker.link(verdict.options));
  await expect(ground(walker, 'mixed')).toBeChecked();
  await page.getByLabel(options.hours).fill('900');
  await walker.tap(walker.button(options.keep));
  await expect(page.getByText(options.kept)).toBeVisible();
  await page.goto('/machine/demo/mini/options');
  await expect(page.getByLabel(options.hours)).toHaveValue('900');
  await expect(ground(walker, 'mixed')).toBeChecked();
  // How long its tracks last is told by its own walks.
  await openFolds(page);
  await expect(page.getByText(optionAnswer.byWalks).first()).toBeVisible();
});

test('[OS24] the page to print says the answer, every option and its sources', async ({ walker }) => {
  const { page } = walker;
  await openDemo(walker);
  await walker.tap(ground(walker, 'gravel'));
  const said = await answer(page).locator('p').first().textContent();
  await walker.tap(walker.link(options.paper));
  const paper = page.getByRole('article');
  await expect(paper).toContainText(said ?? 'no answer');
  await expect(paper.getByRole('table', { name: optionAnswer.table })).toBeVisible();
  for (const track of ['rubber-cored', 'steel', 'steel-pads'] as const)
    await expect(paper).toContainText(trackKindWords[track].label.slice(1));
  await expect(paper).toContainText('Invented round starting figure for the class');
  await expect(paper).toContainText(optionPaper.aid);
});

const looks = [
  '/tracks',
  '/machine/demo/mini/options',
  '/machine/demo/mini/options/own',
  '/machine/demo/mini/options/new',
];

async function withOption(walker: Walker): Promise<void> {
  const { page } = walker;
  await openDemo(walker);
  await enterSteel(walker, '1200');
  await page.goto('/tracks');
  await walker.tap(size(page, '5,500 kg'));
  await walker.tap(ground(walker, 'rock'));
}

test('[OS25] no screen of it has a fault that axe finds, and every text has 7 to 1, in light and dark', async ({
  walker,
}) => {
  test.setTimeout(120_000);
  const { page } = walker;
  await withOption(walker);
  const found: Record<string, unknown> = {};
  for (const path of looks)
    for (const width of [360, 1280]) {
      await page.setViewportSize({ width, height: 740 });
      await page.goto(path);
      await walker.settled();
      await openFolds(page);
      Object.assign(found, await readingFaults(page, `${path}, ${width}`));
    }
  expect(found).toEqual({});
});

test('[OS26] every target of it is large enough, and nothing scrolls sideways or hides under the bar', async ({
  walker,
}) => {
  test.setTimeout(120_000);
  const { page } = walker;
  await withOption(walker);
  const found: Record<string, unknown> = {};
  for (const path of looks) {
    await page.goto(path);
    await walker.settled();
    await openFolds(page);
    Object.assign(found, await reachFaults(page, path, [320, 360, 412, 1280]));
  }
  expect(found).toEqual({});
});
