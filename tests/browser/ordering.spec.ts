import { expect, type Locator, type Page } from '@playwright/test';
import Papa from 'papaparse';
import { jobWords } from '../../src/words/en/ahead.ts';
import { home } from '../../src/words/en/home.ts';
import { doubtWords, factWords, orderHeads, ordering as words } from '../../src/words/en/ordering.ts';
import { paperActions } from '../../src/words/en/report.ts';
import { verdict } from '../../src/words/en/verdict.ts';
import { common } from '../../src/words/en/common.ts';
import { walk } from '../../src/words/en/walk.ts';
import { capital } from '../../src/words/outcome-text.ts';
import { readPdf } from '../report/read-pdf.ts';
import { openFolds, reachFaults, readingFaults } from './access-faults.ts';
import { givenBy, keepGiven } from './given.ts';
import { recordsOn, test } from './walk-phone.ts';
import type { Plan, Walker } from './walker.ts';

test.use({ viewport: { width: 360, height: 740 } });
test.skip(
  ({ browserName }) => browserName !== 'chromium',
  'the same in every engine: pads, lists and pages are tried in both elsewhere',
);

/** A short walk of a machine whose left track has a cut cord. */
const cut: Plan = {
  'side-left.lug-depth.s1': { type: ['18'] },
  'side-left.lug-depth.s2': { type: ['16.5'] },
  'side-right.lug-depth.s1': { type: ['18'] },
  'side-right.lug-depth.s2': { type: ['17'] },
  'side-left.sag': { eye: 'right' },
  'side-right.sag': { eye: 'right' },
  'side-left.tread': { found: [{ item: 'cord', is: 'cut', count: 1 }] },
};

const track = (page: Page): Locator => page.getByRole('region', { name: 'Rubber track, left', exact: true });
const heading = (page: Page): Locator => page.getByRole('heading', { level: 1 });

/** Opens the folded part of a card. */
async function unfold(walker: Walker, card: Locator, title: string): Promise<void> {
  const fold = card.locator('details').filter({ hasText: title });
  if ((await fold.getAttribute('open')) === null) await walker.tap(fold.locator('summary'));
}

async function onFact(walker: Walker, name: keyof typeof factWords): Promise<void> {
  await expect(heading(walker.page)).toHaveText(capital(factWords[name].name));
}

async function openFact(walker: Walker, name: keyof typeof factWords): Promise<void> {
  const card = track(walker.page);
  await unfold(walker, card, words.facts);
  await walker.tap(
    card
      .getByRole('link')
      .filter({ hasText: capital(factWords[name].name) })
      .first(),
  );
  await onFact(walker, name);
}

/** The machine as it lies on the phone's disk. */
async function machineOn(page: Page): Promise<Readonly<Record<string, unknown>>> {
  const [machine] = (await recordsOn(page)).filter(({ key }) => key.startsWith('machine/'));
  return machine?.value ?? {};
}

async function walkedTo(walker: Walker): Promise<void> {
  const { page } = walker;
  await keepGiven(page);
  await walker.addMachine('yard 9', 'excavator', 'rubber-cored', '1700');
  await walker.startWalk('short');
  await walker.walk(cut);
  await walker.tap(walker.button(walk.finish).or(walker.button(walk.finishAnyway)));
  await walker.tap(walker.link(verdict.order));
  await expect(heading(page)).toHaveText(words.title);
  await expect(track(page)).toContainText(capital(jobWords['renew-track']).slice(1));
}

test('[PO30] from a cut cord to the list, offline: what is missing is asked for, entered, and kept', async ({
  walker,
}) => {
  test.setTimeout(180_000);
  const { page } = walker;
  await walkedTo(walker);
  await expect(page.getByRole('main')).toContainText(words.pinMissing);
  await page.getByLabel(words.pinAsk).fill('AB1234567C0001234');
  await walker.tap(walker.button(words.pinSave));
  await expect(page.getByText(words.pinMissing)).toHaveCount(0);

  // One fact after the other, each on its own screen.
  await walker.tap(track(page).getByRole('link', { name: words.lookNow(8) }));
  await onFact(walker, 'moulding');
  await page.getByRole('textbox').fill('300 x 52.5 W x 84');
  await walker.tap(walker.button(words.save));
  await onFact(walker, 'guide');
  await walker.tap(walker.choice(factWords.guide.choices?.['outer'] ?? ''));
  await walker.tap(walker.button(words.save));
  await onFact(walker, 'across-guides');
  await walker.type('96');
  await walker.tap(walker.button(words.save));
  await onFact(walker, 'rollers-on');
  await walker.tap(walker.link(common.back));

  // Two counts that differ are questioned; both stay to be seen.
  await openFact(walker, 'links');
  await walker.type('84');
  await walker.tap(page.getByLabel(words.second));
  await walker.type('83');
  await walker.tap(walker.button(words.save));
  await onFact(walker, 'rollers-on');
  await page.reload();
  await onFact(walker, 'rollers-on');
  await walker.tap(walker.link(common.back));
  await unfold(walker, track(page), words.facts);
  await expect(track(page)).toContainText(doubtWords['counts-differ']);
  await openFact(walker, 'links');
  await page.getByLabel(words.second).fill('84');
  await walker.tap(walker.button(words.save));
  await onFact(walker, 'rollers-on');

  // Half typed is kept as well, and is no fact.
  await page.goto(page.url().replace('rollers-on', 'pitch'));
  await onFact(walker, 'pitch');
  await walker.type('21');
  await page.reload();
  await expect(page.getByRole('textbox')).toHaveValue('21');
  await walker.type('0');
  await walker.tap(walker.button(words.save));
  await onFact(walker, 'rollers-on');
  await walker.tap(walker.link(common.back));
  await unfold(walker, track(page), words.facts);
  await expect(track(page)).toContainText(/52\.5\smm, give or take 0\.\d+\smm, over 4 spaces · measured/);
  await expect(track(page)).not.toContainText(doubtWords['counts-differ']);

  await unfold(walker, track(page), words.more);
  await track(page).getByLabel(words.partNumber).fill('RT-84 W');
  await walker.tap(track(page).getByRole('button', { name: words.match }));
  await expect(track(page).getByRole('button', { name: words.match })).toHaveAttribute(
    'aria-pressed',
    'true',
  );
  await page.reload();
  await expect(track(page)).toContainText(`RT-84 W · ${words.match}`);
  expect(await machineOn(page)).toMatchObject({
    pin: 'AB1234567C0001234',
    left: { size: '300 x 52.5 W x 84' },
    ordered: [{ line: 'left.renew-track.rubber-track', partNumber: 'RT-84 W', match: true }],
  });

  await walker.tap(walker.button(words.saveTable));
  await expect(page.getByText(/^File written/)).toBeVisible();
  const csv = (await givenBy(page)).toString('utf8').replace(/^\ufeff/, '');
  const { data } = Papa.parse<Record<string, string>>(csv, { header: true, skipEmptyLines: true });
  const facts = new Map(data.map((row) => [row[orderHeads.fact], row]));
  expect(facts.get(factWords.pitch.name)?.[orderHeads.valueMm]).toBe('52.5');
  expect(facts.get(factWords.links.name)?.[orderHeads.value]).toBe('84');
  expect(data.every((row) => row[orderHeads.partNumber] === 'RT-84 W')).toBe(true);

  await walker.tap(walker.link(words.page));
  await walker.tap(walker.button(paperActions.pdf));
  await expect(page.getByText(paperActions.written)).toBeVisible({ timeout: 60_000 });
  const { pages } = await readPdf(new Uint8Array(await givenBy(page)));
  const text = pages.flatMap(({ marked }) => marked.map((each) => each.text)).join(' ');
  for (const part of ['AB1234567C0001234', '300 x 52.5 W x 84', 'RT-84 W', 'Rubber track, left'])
    expect(text.replace(/\s+/g, ' ')).toContain(part);
});

test('[PO31] a line that is left out comes back in one tap, and the demo gives no table away', async ({
  walker,
}) => {
  const { page } = walker;
  await walker.button(home.demo).click();
  await expect(walker.button(home.removeDemo)).toBeVisible();
  await page.goto('/walk/demo/mini-last/order');
  const right = page.getByRole('region', { name: 'Rubber track, right', exact: true });
  await unfold(walker, right, words.more);
  await walker.tap(right.getByRole('button', { name: words.out }));
  await expect(right).toContainText(words.isOut);
  await page.reload();
  await walker.tap(right.getByRole('button', { name: words.putIn }));
  await expect(right).not.toContainText(words.isOut);
  await expect(page.getByRole('main')).toContainText(words.demo);
  await expect(walker.button(words.saveTable)).toHaveCount(0);
});

const looks = [
  '/walk/demo/mini-last/order',
  '/walk/demo/steel-last/order',
  '/walk/demo/mini-last/order/right/renew-track/rubber-track/links',
  '/walk/demo/mini-last/order/right/renew-track/rubber-track/pitch',
  '/walk/demo/mini-last/order/right/renew-track/rubber-track/tread',
  '/walk/demo/mini-last/order/right/renew-track/rubber-track/moulding',
  '/walk/demo/mini-last/order/page',
];

test('[PO32] no screen of it has a fault that axe finds, text below 7 to 1, or a target too small', async ({
  walker,
}) => {
  test.setTimeout(180_000);
  const { page } = walker;
  await walker.button(home.demo).click();
  await expect(walker.button(home.removeDemo)).toBeVisible();
  const found: Record<string, unknown> = {};
  for (const path of looks) {
    await page.goto(path);
    await walker.settled();
    await expect(page.getByText(common.loading)).toHaveCount(0);
    await openFolds(page);
    Object.assign(found, await readingFaults(page, path), await reachFaults(page, path));
  }
  expect(found).toEqual({});
});
