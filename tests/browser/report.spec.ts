import AxeBuilder from '@axe-core/playwright';
import { expect, type Page } from '@playwright/test';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { home } from '../../src/words/en/home.ts';
import { paperActions as words, paperForm } from '../../src/words/en/report.ts';
import { makeStamp } from '../../src/core/stamp.ts';
import { device, fileOf, machine as digger } from '../files/samples.ts';
import { tooPale, tooSmall } from './access-page.ts';
import { test } from './fixtures.ts';
import { givenBy, keepGiven } from './given.ts';

test.use({ locale: 'en-GB' });

const report = '/walk/demo/steel-last/report';
const form = '/machine/demo/steel/form';

async function open(page: Page, path: string): Promise<void> {
  await page.goto('/');
  await page.getByRole('button', { name: home.demo }).click();
  await expect(page.getByRole('button', { name: home.removeDemo })).toBeVisible();
  await page.goto(path);
  await expect(page.locator('article h2').last()).toBeVisible();
}

/** What Print does, in place of the engine's own sheet, which would wait for a person. */
const printing = (page: Page, begins: boolean): Promise<unknown> =>
  page.evaluate((does) => {
    globalThis.print = () => {
      if (does) dispatchEvent(new Event('beforeprint'));
    };
  }, begins);

for (const [name, path] of [
  ['report', report],
  ['form', form],
] as const) {
  test(`[RP20] the ${name} is read in order, and by whoever sees little or nothing`, async ({
    page,
    complaints,
    browserName,
  }) => {
    test.skip(browserName !== 'chromium', 'axe reads the same tree in every engine');
    await open(page, path);
    const { violations } = await new AxeBuilder({ page }).analyze();
    expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)).toEqual([]);
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme });
      expect(await tooPale(page)).toEqual([]);
    }
    expect(await tooSmall(page)).toEqual([]);
    const levels = await page
      .locator('h1, h2, h3')
      .evaluateAll((all) => all.map(({ tagName }) => Number(tagName.slice(1))));
    expect(levels[0]).toBe(1);
    expect(levels.filter((level) => level === 1)).toHaveLength(1);
    for (const [at, level] of levels.entries()) expect(level).toBeLessThanOrEqual((levels[at - 1] ?? 0) + 1);
    const tables = await page.locator('article table').evaluateAll((all) =>
      all.map((each) => ({
        caption: each.querySelector('caption')?.textContent ?? '',
        bare: each.querySelectorAll('th:not([scope]), tbody tr > td:first-child').length,
      })),
    );
    expect(tables.length).toBeGreaterThan(2);
    for (const { caption, bare } of tables) expect([caption === '', bare]).toEqual([false, 0]);
    expect(complaints).toEqual([]);
  });
}

test('[RP21] script in any field of a machine and its walk is text on the page and does nothing', async ({
  page,
  complaints,
}) => {
  const script = '<img src=x onerror="document.title=1"><script>document.title=2</script>';
  const fields = { maker: script, model: script, pin: '<b>pin</b>', note: script };
  const walk = {
    v: 1,
    machine: 'machine/digger',
    purpose: 'appraisal',
    depth: 'short',
    start: 'walk',
    corner: 'front-left',
    ...{
      customer: script,
      site: script,
      jobNumber: '<b>job</b>',
      contact: script,
      inspector: script,
      note: script,
    },
  };
  const what = { kind: 'finding', finding: 'weeping' };
  const records = [
    { key: 'machine/digger', value: { ...digger, ...fields, name: script } },
    { key: 'walk/w1', value: walk },
    { key: 'reading/w1/left.idler.1/idler-leak/1', value: { v: 1, what, tool: 'eye', note: script } },
  ];
  await page.goto('/settings');
  await page
    .locator('input[type=file]')
    .first()
    .setInputFiles({
      name: 'walk.json',
      mimeType: 'application/json',
      buffer: Buffer.from(
        fileOf(
          records.map((each, at) => ({
            ...each,
            stamp: makeStamp(at + 1, device),
            seen: {},
            by: 'somebody',
          })),
        ),
      ),
    });
  await expect(page.getByText(/records? added/)).toBeVisible();
  await page.goto('/walk/w1/report');
  await expect(page.locator('article h2').last()).toBeVisible();
  expect(await page.locator('main script, main b, main img').count()).toBe(0);
  expect((await page.locator('article').innerText()).split(script).length).toBeGreaterThan(9);
  expect(await page.title()).toContain('<img src=x');
  expect(complaints).toEqual([]);
});

test('[RP22] Print says so where nothing comes of it, and says nothing where it does', async ({ page }) => {
  await open(page, report);
  await printing(page, true);
  await page.getByRole('button', { name: words.print }).click();
  await page.waitForTimeout(1200);
  await expect(page.getByText(words.noPrint)).toHaveCount(0);
  await printing(page, false);
  await page.getByRole('button', { name: words.print }).click();
  await expect(page.getByText(words.noPrint)).toBeVisible();
});

test('[RP23] the report is saved as a PDF, and the paper that was chosen stays', async ({
  page,
  complaints,
}) => {
  await keepGiven(page);
  await open(page, report);
  await page.getByRole('radio', { name: words.papers.letter }).click();
  await page.reload();
  await expect(page.getByRole('radio', { name: words.papers.letter })).toBeChecked();
  await page.getByRole('button', { name: words.pdf }).click();
  await expect(page.getByText(words.written)).toBeVisible({ timeout: 30_000 });
  const { pages } = await textOf(new Uint8Array(await givenBy(page)));
  expect(pages[0]).toMatchObject({ width: 612, height: 792 });
  expect(complaints).toEqual([]);
});

const bare = (text: string): string => text.replace(/\s+/g, '');

/** The pages of a PDF: their size in points, and their text without its spaces. */
async function textOf(data: Uint8Array) {
  const task = getDocument({ data, verbosity: 0 });
  const file = await task.promise;
  const pages: { width: number; height: number; text: string }[] = [];
  for (let at = 1; at <= file.numPages; at += 1) {
    const page = await file.getPage(at);
    const { width, height } = page.getViewport({ scale: 1 });
    const { items } = await page.getTextContent();
    const text = bare(items.map((item) => ('str' in item ? item.str : '')).join(''));
    pages.push({ width: Math.round(width), height: Math.round(height), text });
  }
  await task.destroy();
  return { pages };
}

for (const [paper, width, height] of [
  ['a4', 595, 842],
  ['letter', 612, 792],
] as const) {
  for (const [name, path] of [
    ['report', report],
    ['form', form],
  ] as const) {
    test(`[RP24] the ${name} prints whole on ${paper}: every text, each row on one page, pages numbered`, async ({
      page,
      browserName,
    }) => {
      test.skip(browserName !== 'chromium', 'only Chromium prints without a person');
      await page.emulateMedia({ colorScheme: 'dark' });
      await open(page, path);
      await page.getByRole('radio', { name: words.papers[paper] }).click();
      const texts = await page
        .locator('article :is(h2, h3, p, li, dt, dd, caption, figcaption)')
        .evaluateAll((all) => all.map(({ textContent }) => textContent));
      const rows = await page
        .locator('article tr')
        .evaluateAll((all) => all.map(({ textContent }) => textContent));
      const { pages } = await textOf(new Uint8Array(await page.pdf({ preferCSSPageSize: true })));
      const whole = pages.map(({ text }, at) => text.replace(`Page${at + 1}of${pages.length}`, ''));
      for (const [at, each] of pages.entries()) {
        expect([each.width, each.height]).toEqual([width, height]);
        expect(each.text).toContain(`Page${at + 1}of${pages.length}`);
      }
      expect(pages.length).toBeGreaterThan(3);
      const running = bare(
        await page.evaluate(
          () =>
            JSON.parse(getComputedStyle(document.documentElement).getPropertyValue('--running')) as string,
        ),
      );
      const all = whole.map((text) => text.replace(running, '')).join('');
      expect(texts.filter((text) => !all.includes(bare(text)))).toEqual([]);
      expect(rows.filter((row) => !whole.some((text) => text.includes(bare(row))))).toEqual([]);
      for (const tapped of [words.print, words.pdf, paperForm.back]) expect(all).not.toContain(bare(tapped));
    });
  }
}

test('[RP25] no row of a table is cut by a page, however many lines it has', async ({
  page,
  browserName,
}) => {
  test.skip(browserName !== 'chromium', 'only Chromium prints without a person');
  await open(page, report);
  // Each row gets as many lines as make the ends of pages fall into rows.
  const rows = await page.locator('article tbody tr').evaluateAll((all) =>
    all.map((row, at) => {
      for (const cell of row.children) cell.textContent = `${at}(${'word '.repeat(60)})${at}`;
      return row.textContent;
    }),
  );
  const { pages } = await textOf(new Uint8Array(await page.pdf({ preferCSSPageSize: true })));
  expect(rows.filter((row) => !pages.some(({ text }) => text.includes(bare(row))))).toEqual([]);
});
