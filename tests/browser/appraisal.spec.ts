import { expect, type Page } from '@playwright/test';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { appraisal as words, askedSignWords } from '../../src/words/en/appraisal.ts';
import { depthWords, purposeWords } from '../../src/words/en/choices.ts';
import { home } from '../../src/words/en/home.ts';
import { machine } from '../../src/words/en/machine.ts';
import { paperActions } from '../../src/words/en/report.ts';
import { sealed, sealForm } from '../../src/words/en/sealing.ts';
import { appraisalVerdict, verdict } from '../../src/words/en/verdict.ts';
import { beforeStart, walk } from '../../src/words/en/walk.ts';
import { capital } from '../../src/words/outcome-text.ts';
import { openFolds, reachFaults, readingFaults } from './access-faults.ts';
import { givenBy, keepGiven } from './given.ts';
import { recordsOn, test } from './walk-phone.ts';
import type { Plan, Walker } from './walker.ts';

test.use({ viewport: { width: 360, height: 740 } });

/** One track nearly gone, the other half; a roller that leaks. */
const used: Plan = {
  'side-left.lug-depth.s1': { type: ['9'] },
  'side-left.lug-depth.s2': { type: ['8.5'] },
  'side-left.lug-depth.s3': { type: ['7'] },
  'side-right.lug-depth.s1': { type: ['14'] },
  'side-right.lug-depth.s2': { type: ['13.5'] },
  'side-right.lug-depth.s3': { type: ['13'] },
  'side-right.bottom-roller': { found: [{ item: 'roller-leak', part: 2, is: 'leaking' }] },
  'raised-left.sag': { sag: ['12'] },
  'raised-right.sag': { sag: ['12'] },
};

const sums = (page: Page) => page.getByRole('status', { name: words.title });
const part = (page: Page, title: string) =>
  page.locator('section').filter({ has: page.getByRole('heading', { name: title, exact: true }) });
const bare = (text: string): string => text.replace(/\s+/g, '');

/** Walks a machine for an appraisal to its verdict, and answers the walk's address. */
async function appraised(walker: Walker): Promise<string> {
  const { page } = walker;
  await walker.addMachine('used 1.7 t', 'excavator', 'rubber-cored', '1700');
  await walker.tap(walker.link(machine.startWalk));
  await walker.tap(walker.choice(purposeWords.appraisal.label));
  await walker.tap(walker.choice(depthWords.full.label));
  await page.getByLabel(beforeStart.meter).fill('900');
  await walker.tap(walker.button(beforeStart.go));
  await page.waitForURL(/\/walk\/[^/]+\/[^/]+/);
  await walker.walk(used);
  return new URL(page.url()).pathname.replace(/(\/walk\/[^/]+).*/, '$1');
}

/** The appraisal that the one seal on the phone holds. */
async function sealedSums(page: Page): Promise<{ deduct: { minor: number }; settings: object }> {
  const [seal] = (await recordsOn(page)).filter(({ key }) => key.startsWith('seal/'));
  const [, payload = ''] = String(seal?.value['jws']).split('.');
  const text = Buffer.from(payload, 'base64url').toString('utf8');
  const { outcome } = JSON.parse(text) as {
    outcome: { purpose: string; appraisal: { deduct: { minor: number }; settings: object } };
  };
  expect(outcome.purpose).toBe('appraisal');
  return outcome.appraisal;
}

async function pdfText(bytes: Buffer): Promise<string> {
  const task = getDocument({ data: new Uint8Array(bytes), verbosity: 0 });
  const file = await task.promise;
  let text = '';
  for (let at = 1; at <= file.numPages; at += 1) {
    const { items } = await (await file.getPage(at)).getTextContent();
    text += items.map((item) => ('str' in item ? item.str : '')).join('');
  }
  await task.destroy();
  return bare(text);
}

test('[AP40] an appraisal is made offline from an empty phone: walk, sums, choices, seal with its sums, page and PDF', async ({
  walker,
}) => {
  test.setTimeout(180_000);
  const { page } = walker;
  const path = await appraised(walker);
  await walker.tap(walker.link(appraisalVerdict.page));
  await expect(page.getByRole('heading', { level: 1 })).toHaveText(words.title);
  await expect(sums(page)).toContainText(/Deduct now\s*€\s?[\d,]+/);
  await expect(sums(page)).toContainText(/Spend in the next 1,000\sh\s*about €/);
  await expect(sums(page)).toContainText(/Value left\s*about €\s?[\d,]+ \(€/);
  await expect(part(page, words.deductLines)).toContainText('Renew the track, left');
  await expect(part(page, words.deductLines)).toContainText('less than 25 %');
  await expect(part(page, words.valueLines)).toContainText('Track, right');
  await expect(part(page, words.meter)).toContainText('worn after 900');
  await expect(part(page, words.notVerified)).toContainText(askedSignWords['fresh-paint']);

  // What somebody saw is a sign at once, and no longer asked for.
  const paint = page.getByRole('radiogroup', { name: capital(askedSignWords['fresh-paint']) });
  await walker.tap(paint.getByRole('radio', { name: words.yes }));
  await expect(part(page, words.signs)).toContainText(capital(askedSignWords['fresh-paint']));
  await expect(part(page, words.notVerified)).not.toContainText(askedSignWords['fresh-paint']);
  await expect
    .poll(async () => JSON.stringify(await recordsOn(page)), { message: 'kept' })
    .toContain('"fresh-paint":"yes"');
  const deducted = (await sums(page).locator('dd').first().textContent()) ?? '';

  await page.goto(`${path}/verdict`);
  await walker.tap(walker.button(walk.finish).or(walker.button(walk.finishAnyway)));
  await walker.tap(walker.link(sealed.seal));
  await page.getByLabel(sealForm.name).fill('Ada Brand');
  await walker.tap(page.getByRole('button', { name: sealForm.byName }));
  await walker.tap(walker.button(sealForm.seal));
  await expect(page.getByRole('heading', { level: 1 })).toHaveText(verdict.title);
  await expect(page.getByRole('region', { name: sealed.title })).toContainText(/Sealed .* by Ada Brand/);
  const kept = await sealedSums(page);
  expect(`€${(kept.deduct.minor / 100).toLocaleString('en-GB')}`).toBe(deducted);
  expect(kept.settings).toMatchObject({ saleable: 25, seen: { 'fresh-paint': 'yes' } });

  await keepGiven(page);
  await page.goto(`${path}/appraisal`);
  await expect(page.getByText(words.sealedNow)).toBeVisible();
  // What is tried out after the seal is not kept.
  await walker.tap(page.getByText(words.choices, { exact: true }));
  await page.getByLabel(words.saleable).fill('90');
  await expect(sums(page)).not.toContainText(deducted);
  await page.reload();
  await expect(sums(page)).toContainText(deducted);
  await walker.tap(walker.link(words.page));
  await expect(page.getByRole('heading', { level: 1 })).toHaveText(words.forMachine('used 1.7 t'));
  await walker.tap(walker.button(paperActions.pdf));
  await expect(page.getByText(paperActions.written)).toBeVisible({ timeout: 30_000 });
  const text = await pdfText(await givenBy(page));
  for (const said of [
    words.forMachine('used 1.7 t'),
    words.deduct,
    deducted,
    words.valueLines,
    'estimate',
    capital(askedSignWords['fresh-paint']),
    words.basisLines[4],
    words.seller,
    words.buyer,
  ])
    expect(text).toContain(bare(said));
  // The report of the walk holds the same sums.
  await page.goto(`${path}/report`);
  await expect(page.getByRole('article')).toContainText(words.deductLines);
  await expect(page.getByRole('article')).toContainText(deducted);
});

test('[AP41] what is chosen answers at once and is there after a reload', async ({ walker }) => {
  const { page } = walker;
  await walker.tap(walker.button(home.demo));
  await expect(walker.button(home.removeDemo)).toBeVisible();
  await page.goto('/walk/demo/mini-last/appraisal');
  await expect(sums(page)).toContainText(words.nothing);
  await walker.tap(page.getByText(words.choices, { exact: true }));
  await page.getByLabel(words.saleable).fill('60');
  await expect(sums(page)).toContainText('€2,420');
  await page.getByLabel(words.hours).fill('200');
  await expect(sums(page)).toContainText(words.spend('200 h'));
  await walker.tap(walker.choice(words.byHours));
  await page.getByLabel(words.noDue).fill('400');
  await expect(part(page, words.stated)).toContainText('Nothing measured due within 400');
  // What cannot be read changes nothing and is said.
  await page.getByLabel(words.saleable).fill('a lot');
  await page.getByLabel(words.hours).click();
  await expect(page.getByLabel(words.saleable)).toHaveAttribute('aria-invalid', 'true');
  await expect(sums(page)).toContainText('€2,420');
  await page.reload();
  await expect(sums(page)).toContainText('€2,420');
  await expect(sums(page)).toContainText(words.spend('200 h'));
});

test('[AP42] the screen and the page have no fault that axe finds, every text 7 to 1, and targets are large enough, in light and dark', async ({
  walker,
  browserName,
}) => {
  test.skip(browserName !== 'chromium', 'axe reads the same tree in every engine');
  test.setTimeout(120_000);
  const { page } = walker;
  await walker.tap(walker.button(home.demo));
  await expect(walker.button(home.removeDemo)).toBeVisible();
  const found: Record<string, unknown> = {};
  for (const path of ['/walk/demo/steel-last/appraisal', '/walk/demo/steel-last/appraisal/page']) {
    await page.goto(path);
    await page.getByText(words.deductLines).first().waitFor();
    await openFolds(page);
    Object.assign(found, await readingFaults(page, path), await reachFaults(page, path));
    const levels = await page
      .locator('h1, h2, h3')
      .evaluateAll((all) => all.map(({ tagName }) => Number(tagName.slice(1))));
    for (const [at, level] of levels.entries())
      if (level > (levels[at - 1] ?? 0) + 1) found[`${path}, heading ${at}`] = level;
  }
  expect(found).toEqual({});
});
